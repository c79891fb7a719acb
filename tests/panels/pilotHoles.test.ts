import { describe, expect, it } from 'vitest';
import { axisFaces, faceAxis } from '../../src/basics/boxes.ts';
import type { EdgeHole, Panel } from '../../src/model/furniture.ts';
import type { Axis, Um } from '../../src/model/geometry.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { alone, demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { type HoleText, type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);

/** Sides of 16.2 mm, 400 deep and 500 high, with a bottom between them that begins 40 mm above the floor. */
function box(holes: Readonly<Record<string, HoleText>>, more: Record<string, PanelText> = {}) {
  const panels: Record<string, PanelText> = {
    'left side': { x: [0, 'board'], y: [0, 400], z: [0, 500], grain: 'z', holes },
    'right side': { x: ['600 - board', 600], y: [0, 400], z: [0, 500], grain: 'z' },
    bottom: { x: ['board', '600 - board'], y: [0, 400], z: [40, '40 + board'], grain: 'x' },
    ...more,
  };
  const names = new Map([
    ['board', { text: 'thickness.carcass', place: { file: 'test.yaml', line: 1, column: 1 } }],
  ]);
  const built = unit('test', [600, 400, 500], panels, { names } as never);
  const { furniture, findings } = alone('test', {}, withUnits(library, built), order);
  const panel = (name: string) =>
    furniture?.units.flatMap(({ panels }) => panels).find((one) => one.name === name);
  return { panel, findings, codes: findings.map(({ code }) => code) };
}

const screw = (at: HoleText['at'], more: Partial<HoleText> = {}): HoleText => ({
  at,
  from: 'left',
  screw: 'carcass-screw',
  ...more,
});

describe('a screw from panel to panel', () => {
  it('slides through the one and holds in the edge of the other, as deep as it reaches', () => {
    const { panel, codes } = box({ screw: screw({ y: 70, z: '40 + board / 2' }) });
    expect(codes).not.toContain('screw-holds-nothing');
    expect(panel('left side')!.holes).toMatchObject([
      { diameterUm: 4500, depthUm: null, alongLengthUm: 48_100 },
    ]);
    // 40 long through 16.2: 23.8 are left. In the middle of the thickness, 70 from the front.
    expect(panel('bottom')!.edgeHoles).toMatchObject([
      { name: 'screw', face: 'left', alongUm: 70_000, acrossUm: 8100, diameterUm: 2800, depthUm: 23_800 },
    ]);
    expect(panel('right side')!.edgeHoles).toBeUndefined();
  });

  it('holds in a broad face, short of the other side, and is an error where it comes out there', () => {
    const batten: PanelText = { x: ['board', '2 * board'], y: [0, 400], z: [300, 360], grain: 'y' };
    const short = box({ screw: screw({ y: 70, z: 330 }, { screw: 'panel-screw' }) }, { batten });
    // 30 through 16.2 leaves 13.8 in 16.2.
    expect(short.panel('batten')!.holes).toMatchObject([{ diameterUm: 2800, depthUm: 13_800, face: 'left' }]);
    expect(short.codes).not.toContain('hole-too-deep');
    const long = box({ screw: screw({ y: 70, z: 330 }) }, { batten });
    expect(long.codes).toContain('hole-too-deep');
  });

  it('begins where a panel that is let in begins', () => {
    const shelf: PanelText = {
      x: ['board - 6', '600 - board'],
      y: [0, 400],
      z: [300, '300 + board'],
      grain: 'x',
      letInto: { 'left side': 6 },
    };
    const { panel } = box({ screw: screw({ y: 70, z: '300 + board / 2' }) }, { shelf });
    expect(panel('shelf')!.edgeHoles).toMatchObject([{ face: 'left', depthUm: 29_800 }]);
  });

  it('is told where there is no panel behind it, or where it splits the edge', () => {
    const beside = box({ screw: screw({ y: 70, z: 200 }) });
    expect(beside.findings.find(({ code }) => code === 'screw-holds-nothing')).toMatchObject({
      severity: 'warning',
      message: 'the screw “screw” of the left side of unit reaches no panel behind it',
    });
    expect(box({ screw: screw({ y: 70, z: 43 }) }).codes).toContain('hole-near-edge');
    expect(box({ screw: screw({ y: 70, z: 41 }) }).codes).toContain('hole-outside');
    expect(box({ screw: screw({ y: 70, z: 48 }, { screw: 'latch' }) }).codes).toContain('no-screw');
  });
});

/** The middle of a hole in an edge, in the frame of its unit. */
function inUnit(panel: Panel, hole: EdgeHole): Record<Axis, Um> {
  const axis = faceAxis[hole.face];
  const along = axis === panel.lengthAxis ? panel.widthAxis : panel.lengthAxis;
  const at = { x: 0, y: 0, z: 0 };
  at[axis] = panel.box[axis][axisFaces[axis][0] === hole.face ? 0 : 1];
  at[along] = panel.box[along][0] + hole.alongUm;
  at[panel.thicknessAxis] = panel.box[panel.thicknessAxis][0] + hole.acrossUm;
  return at;
}

describe.each(demoOrders)('the screws of %s', (name) => {
  const { furniture, findings } = furnish(demoOrder(library, name), library);

  it('each hold in a panel, in line with the hole that they slide through', () => {
    expect(findings.filter(({ code }) => code === 'screw-holds-nothing')).toEqual([]);
    let count = 0;
    for (const { panels } of furniture!.units) {
      const through = panels.flatMap((panel) =>
        panel.holes
          .filter(({ depthUm, diameterUm }) => depthUm === null && diameterUm === 4500)
          .map((hole) => ({ panel, hole })),
      );
      for (const panel of panels) {
        for (const edgeHole of panel.edgeHoles ?? []) {
          const at = inUnit(panel, edgeHole);
          const held = through.filter(({ panel: other, hole }) => {
            const [u, v] = [
              other.box[other.lengthAxis][0] + hole.alongLengthUm,
              other.box[other.widthAxis][0] + hole.alongWidthUm,
            ];
            const touches = other.box[other.thicknessAxis].some((end) => end === at[other.thicknessAxis]);
            return (
              hole.name === edgeHole.name &&
              touches &&
              at[other.lengthAxis] === u &&
              at[other.widthAxis] === v
            );
          });
          expect(held, `${panel.id}: ${edgeHole.name}`).toHaveLength(1);
          expect(edgeHole.depthUm).toBe(40_000 - held[0]!.panel.thicknessUm);
          count++;
        }
      }
    }
    expect(count).toBeGreaterThan(60);
  });
});
