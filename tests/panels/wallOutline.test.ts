import { areaPaths, difference, FillRule } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineInVehicle } from '../../src/basics/placedOutline.ts';
import type { Panel } from '../../src/model/furniture.ts';
import type { Facing } from '../../src/model/geometry.ts';
import type { Vehicle } from '../../src/model/library.ts';
import { demoLibrary, demoOrder, messages } from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';
import { body, standing } from '../helpers/standing.ts';

const library = demoLibrary();
const order = demoOrder(library);
/** 1760 at the floor and straight up to 1000, then drawn in by 100 on each side over 500. */
const drawnIn = body([
  [0, 1760],
  [1000, 1760],
  [1500, 1560],
]);

const side: PanelText = {
  x: [0, 16.2],
  y: [0, 500],
  z: [0, 1400],
  grain: 'z',
  edging: ['front'],
  followsWall: { back: 0 },
};

/** One panel of its own size in a vehicle. */
function onePanel(
  text: PanelText,
  at: { readonly x?: number; readonly y?: number; readonly z?: number } = {},
  vehicle: Vehicle = drawnIn,
  facing: Facing = 'right',
  among = library,
) {
  const size = ([from, to]: readonly [string | number, string | number]) => Number(to) - Number(from);
  const shelf = unit('test', [size(text.x), size(text.y), size(text.z)], { panel: text });
  const furnished = standing('test', {}, at, facing, vehicle, withUnits(among, shelf), order);
  const placed = furnished.furniture?.units[0];
  return { findings: furnished.findings, placed, panel: placed?.panels[0] };
}

const points = (panel: Panel | undefined) =>
  panel?.outline?.map(({ alongLengthUm, alongWidthUm }) => [alongLengthUm, alongWidthUm]);
const sawn = (panel: Panel | undefined) =>
  panel?.byHand?.outline?.map(({ alongLengthUm, alongWidthUm }) => [alongLengthUm, alongWidthUm]);

describe('a side against a wall that draws in', () => {
  it('takes the shape of the wall, by hand', () => {
    // Facing right, the back is at the left wall. At 1400 the wall stands 80 in: 400 / 500 of 100.
    const { panel, findings } = onePanel(side);
    expect(messages(findings)).toEqual([]);
    expect(panel).toMatchObject({ finishedLengthUm: 1_400_000, finishedWidthUm: 500_000 });
    expect(points(panel)).toEqual([
      [0, 0],
      [1_400_000, 0],
      [1_400_000, 420_000],
      [1_000_000, 500_000],
      [0, 500_000],
    ]);
    expect(panel?.scribed).toEqual([{ face: 'back', allowanceUm: 0 }]);
    // Sawn 1 mm narrower for the edging in front, so all of it lies 1 mm nearer to the corner.
    expect(panel).toMatchObject({ cutLengthUm: 1_400_000, cutWidthUm: 499_000 });
    expect(sawn(panel)).toEqual([
      [0, 0],
      [1_400_000, 0],
      [1_400_000, 419_000],
      [1_000_000, 499_000],
      [0, 499_000],
    ]);
    // Edged along the front only; the back is cut by hand, the top is as long as the wall leaves it.
    expect(panel?.edges.map(({ face, edging, lengthUm }) => [face, edging, lengthUm])).toEqual([
      ['front', 'pale-grey-19', 1_400_000],
      ['back', null, 1_000_000],
      ['bottom', null, 500_000],
      ['top', null, 420_000],
    ]);
    // 1.4 · 0.5 less the triangle 0.4 · 0.08 / 2, less 1 mm along the front; 8.21 kg/m², edging 0.021 kg/m.
    expect(panel?.massKg).toBeCloseTo((1.4 * 0.499 - 0.016) * 8.21 + 1.4 * 0.021, 9);
  });

  it('keeps an allowance for scribing on the sawn part alone', () => {
    const { panel } = onePanel({ ...side, followsWall: { back: 15 } });
    expect(points(panel)?.[2]).toEqual([1_400_000, 420_000]);
    expect(panel).toMatchObject({ finishedWidthUm: 500_000, cutWidthUm: 514_000 });
    expect(sawn(panel)).toEqual([
      [0, 0],
      [1_400_000, 0],
      [1_400_000, 434_000],
      [1_000_000, 514_000],
      [0, 514_000],
    ]);
    expect(panel?.massKg).toBe(onePanel(side).panel?.massKg);
  });

  it('keeps the same allowance at the right wall', () => {
    const scribed: PanelText = { ...side, followsWall: { back: 15 } };
    const { panel } = onePanel(scribed, { y: 1260 }, drawnIn, 'left');
    expect(panel?.cutWidthUm).toBe(514_000);
    expect(sawn(panel)).toEqual(sawn(onePanel(scribed).panel));
  });

  it('lies level at its own height, whatever the wall does below', () => {
    // 1500 at the floor, so that the wall is 130 further out from 500 on.
    const widening = body([
      [0, 1500],
      [500, 1760],
    ]);
    const level: PanelText = {
      x: [0, 600],
      y: [0, 500],
      z: [0, 16.2],
      grain: 'x',
      followsWall: { back: 0 },
    };
    const { panel } = onePanel(level, { y: -130, z: 800 }, widening);
    expect(panel).toMatchObject({ finishedLengthUm: 600_000, finishedWidthUm: 500_000 });
    expect(panel?.scribed).toEqual([{ face: 'back', allowanceUm: 0 }]);
    const behind = onePanel(level, { y: -140, z: 800 }, widening);
    expect(behind.panel?.finishedWidthUm).toBe(490_000);
  });

  it('is told which of its edges can follow a wall', () => {
    const { findings } = onePanel({ ...side, edging: [], followsWall: { left: 0 } });
    expect(findings.find(({ code }) => code === 'follows-on-face')).toMatchObject({
      found: 'left',
      expected: 'front or back',
    });
  });

  it('is shaped alike, mirrored or turned, wherever the unit looks', () => {
    const expected = points(onePanel(side).panel);
    expect(points(onePanel(side, { y: 1260 }, drawnIn, 'left').panel)).toEqual(expected);
    // Across the van: the right side at the right wall (facing the rear), the left side at the left wall.
    const across = (follows: 'left' | 'right'): PanelText => ({
      ...side,
      x: [0, 500],
      y: [0, 16.2],
      edging: [],
      followsWall: { [follows]: 0 },
    });
    expect(points(onePanel(across('right'), { y: 1260 }, drawnIn, 'rear').panel)).toEqual(expected);
    expect(points(onePanel(across('right'), {}, drawnIn, 'front').panel)).toEqual(expected);
    expect(points(onePanel(across('left'), {}, drawnIn, 'rear').panel)).toEqual([
      [0, 0],
      [1_000_000, 0],
      [1_400_000, 80_000],
      [1_400_000, 500_000],
      [0, 500_000],
    ]);
  });

  it('takes the height at which it stands', () => {
    expect(points(onePanel({ ...side, z: [0, 400] }, { z: 1000 }).panel)).toEqual([
      [0, 0],
      [400_000, 0],
      [400_000, 420_000],
      [0, 500_000],
    ]);
  });

  it('stays straight where it does not come up to the wall, or looks along the vehicle', () => {
    const off = onePanel({ ...side, followsWall: { back: 15 } }, { y: 81 });
    expect(off.panel).toMatchObject({ cutWidthUm: 499_000, finishedWidthUm: 500_000 });
    expect(off.panel).not.toHaveProperty('outline');
    expect(off.panel).not.toHaveProperty('byHand');
    const turned = onePanel({ ...side, followsWall: { back: 15 } }, {}, drawnIn, 'rear');
    expect(turned.panel).not.toHaveProperty('scribed');
  });

  it('is shorter as a whole where the wall takes all of its edge', () => {
    const { panel, findings } = onePanel({ ...side, z: [0, 400] }, { y: -20 });
    expect(messages(findings)).toEqual([]);
    expect(panel).toMatchObject({ finishedWidthUm: 480_000, cutWidthUm: 479_000 });
    expect(panel).not.toHaveProperty('outline');
    expect(panel?.placeBox.y).toEqual([0, 480_000]);
  });

  it('against a straight wall is a rectangle, with its allowance', () => {
    const straight = body([[0, 1760]]);
    const { panel } = onePanel({ ...side, followsWall: { back: 12 } }, {}, straight);
    expect(panel).toMatchObject({ finishedWidthUm: 500_000, cutWidthUm: 511_000 });
    expect(panel).not.toHaveProperty('outline');
    expect(panel).not.toHaveProperty('byHand');
  });
});

describe('a wall that is straight but for less than a tenth of a millimetre', () => {
  const nearly = (width: number) =>
    body([
      [0, 1760],
      [1000, 1760],
      [1400, width],
    ]);

  it('is taken as straight', () => {
    const { panel, findings } = onePanel(side, {}, nearly(1759.82));
    expect(messages(findings)).toEqual([]);
    expect(panel).not.toHaveProperty('outline');
    expect(panel).toMatchObject({ finishedWidthUm: 499_910, cutWidthUm: 498_900 });
  });

  it('is not from a tenth on', () => {
    expect(points(onePanel(side, {}, nearly(1759.8)).panel)).toContainEqual([1_400_000, 499_900]);
  });
});

describe('a level panel', () => {
  const shelf: PanelText = {
    x: [0, 800],
    y: [0, 300],
    z: [0, 16.2],
    grain: 'x',
    followsWall: { back: 10 },
  };

  it('ends where the wall stands furthest in beside it', () => {
    // At 1216.2 the wall stands 43.24 in.
    const { panel, findings } = onePanel(shelf, { z: 1200 });
    expect(messages(findings)).toEqual([]);
    expect(panel).toMatchObject({ finishedWidthUm: 256_760, cutWidthUm: 266_800 });
    expect(panel).not.toHaveProperty('outline');
  });

  it('keeps its openings where they are in the unit', () => {
    const cutOuts = { cable: { x: [100, 160], y: [100, 150] } } as const;
    const { panel } = onePanel(
      { ...shelf, followsWall: { left: 0 }, cutOuts },
      { z: 1200 },
      drawnIn,
      'front',
    );
    // The left side looks to the left wall's right: 43.24 of the length is gone from its far end or its near one.
    const rear = onePanel({ ...shelf, followsWall: { left: 0 }, cutOuts }, { z: 1200 }, drawnIn, 'rear');
    expect(panel).not.toHaveProperty('scribed');
    expect(rear.panel).toMatchObject({ finishedLengthUm: 756_760 });
    expect(rear.panel?.cutOuts[0]?.alongLength).toEqual([56_760, 116_760]);
    expect(rear.panel?.box.x).toEqual([43_240, 800_000]);
  });
});

describe('what cannot follow a wall is refused', () => {
  it.each([
    ['with a broad face', { ...side, followsWall: { left: 0 } }, {}, /cannot follow the wall with its left/],
    ['beyond the wall', { ...side, y: [0, 50], z: [0, 20] }, { y: -50 }, /lies wholly behind the wall/],
    [
      'with an opening that the wall cuts',
      { ...side, cutOuts: { hole: { y: [440, 480], z: [1350, 1390] } } },
      {},
      /goes over the edge that the wall gives the panel/,
    ],
    ['with more than may be scribed', { ...side, followsWall: { back: 51 } }, {}, /from 0 up to 50\.0 mm/],
  ] as const)('%s', (_what, text, at, message) => {
    const { findings, panel } = onePanel(text as PanelText, at);
    expect(panel).toBeUndefined();
    expect(messages(findings).join('\n')).toMatch(message);
  });

  it('in pieces', () => {
    const ribbed = body([
      [0, 1760],
      [600, 1760],
      [650, 800],
      [700, 1760],
    ]);
    const { findings } = onePanel({ ...side, y: [0, 100] }, {}, ribbed);
    expect(messages(findings)).toEqual(['the wall cuts the panel of unit into 2 pieces']);
  });

  it('where a panel without the field stands in the same place', () => {
    const { findings } = onePanel({ ...side, followsWall: {} });
    expect(messages(findings)).toEqual([
      'the panel of the unit stands 80.0 mm through the left wall, between 0 and 1400 mm above the floor',
    ]);
  });
});

/** Sections of a body, any number of bends, not too wild. */
const sections = fc
  .uniqueArray(fc.integer({ min: 0, max: 2000 }), { minLength: 1, maxLength: 7 })
  .chain((heights) =>
    fc.tuple(
      ...heights
        .sort((a, b) => a - b)
        .map((height) =>
          fc.tuple(
            fc.constant(height),
            fc.integer({ min: 15_000, max: 19_000 }).map((tenths) => tenths / 10),
          ),
        ),
    ),
  );

const facings = fc.constantFrom<Facing>('left', 'right', 'front', 'rear');

/** A panel square to the van's length, against one wall, somewhere in its height. */
const stands = fc.record({
  section: sections,
  facing: facings,
  wall: fc.constantFrom<'left' | 'right'>('left', 'right'),
  deep: fc.integer({ min: 400, max: 700 }),
  high: fc.integer({ min: 50, max: 1500 }),
  up: fc.integer({ min: 0, max: 500 }),
  into: fc.integer({ min: -1000, max: 3000 }).map((tenths) => tenths / 10),
  allowance: fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10),
  edging: fc.constantFrom<PanelText['edging']>([], 'all', ['top', 'bottom']),
});

type Stand = typeof stands extends fc.Arbitrary<infer T> ? T : never;

function stand({ section, facing, wall, deep, high, up, into, allowance, edging }: Stand) {
  const vehicle = body(section as [number, number][]);
  const lengthways = facing === 'left' || facing === 'right';
  // Which face of the unit looks to the wall.
  const low = (facing === 'left' || facing === 'rear') === (wall === 'left');
  const face = lengthways ? (low ? 'front' : 'back') : low ? 'left' : 'right';
  const text: PanelText = {
    x: lengthways ? [0, 16.2] : [0, deep],
    y: lengthways ? [0, deep] : [0, 16.2],
    z: [0, high],
    grain: 'z',
    edging: edging ?? [],
    followsWall: { [face]: allowance },
  };
  const floor = section[0]![1];
  const y = wall === 'left' ? -into : floor - deep + into;
  return { vehicle, text, ...onePanel(text, { x: 1000, y, z: up }, vehicle, facing) };
}

function shoelace(outline: readonly { readonly alongLengthUm: number; readonly alongWidthUm: number }[]) {
  return (
    outline.reduce((sum, { alongLengthUm: u, alongWidthUm: v }, index) => {
      const next = outline[(index + 1) % outline.length]!;
      return sum + u * next.alongWidthUm - next.alongLengthUm * v;
    }, 0) / 2
  );
}

const path = (outline: NonNullable<Panel['outline']>) =>
  outline.map(({ alongLengthUm, alongWidthUm }) => ({ x: alongLengthUm, y: alongWidthUm }));

describe('any panel at any wall', () => {
  it('has an outline within its rectangle that touches all four sides, counter-clockwise', () => {
    let shaped = 0;
    fc.assert(
      fc.property(stands, (asked) => {
        const { panel } = stand(asked);
        if (panel?.outline === undefined) return;
        shaped += 1;
        for (const [outline, lengthUm, widthUm, onAll] of [
          [panel.outline, panel.finishedLengthUm, panel.finishedWidthUm, true],
          [panel.byHand?.outline, panel.cutLengthUm, panel.cutWidthUm, false],
        ] as const) {
          if (outline === undefined) continue;
          const us = outline.map((point) => point.alongLengthUm);
          const vs = outline.map((point) => point.alongWidthUm);
          expect([...us, ...vs].every(Number.isInteger)).toBe(true);
          expect(Math.min(...us, ...vs)).toBeGreaterThanOrEqual(0);
          expect(Math.max(...us)).toBeLessThanOrEqual(lengthUm);
          expect(Math.max(...vs)).toBeLessThanOrEqual(widthUm);
          const ends = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)];
          if (onAll) expect(ends).toEqual([0, lengthUm, 0, widthUm]);
          const area = shoelace(outline);
          expect(area).toBeGreaterThan(0);
          expect(area).toBeLessThan(lengthUm * widthUm);
          expect(areaPaths([path(outline)])).toBe(area);
        }
      }),
    );
    expect(shaped).toBeGreaterThan(20);
  });

  it('lies within the section, and sticks out where its rectangle would', () => {
    fc.assert(
      fc.property(stands, (asked) => {
        const { panel, placed, vehicle, findings } = stand(asked);
        if (panel === undefined || placed === undefined) return;
        if (panel.scribed === undefined) return;
        expect(messages(findings).filter((text) => text.includes(`${asked.wall} wall`))).toEqual([]);
        // The section as a polygon of its own, straight beyond its ends.
        const heights = vehicle.widthAtHeight;
        const floor = heights[0]!.widthUm;
        const outer = [
          { heightUm: -10_000_000, widthUm: floor },
          ...heights,
          { heightUm: 10_000_000, widthUm: heights.at(-1)!.widthUm },
        ];
        const section = [
          ...outer.map(({ heightUm, widthUm }) => ({ x: Math.round((floor - widthUm) / 2), y: heightUm })),
          ...outer
            .map(({ heightUm, widthUm }) => ({ x: Math.round((floor + widthUm) / 2), y: heightUm }))
            .reverse(),
        ];
        const { y, z } = panel.placeBox;
        const corners = [
          [y[0], z[0]],
          [y[1], z[0]],
          [y[1], z[1]],
          [y[0], z[1]],
        ].map(([across, up]) => ({ y: across!, z: up! }));
        const own = panel.outline === undefined ? corners : outlineInVehicle(panel, placed);
        const out = difference([own.map((at) => ({ x: at.y, y: at.z }))], [section], FillRule.NonZero);
        // Corners are rounded to whole µm: no more than that times the height.
        const outside = out.map((piece) => Math.abs(areaPaths([piece]))).reduce((sum, area) => sum + area, 0);
        const highUm = z[1] - z[0];
        const onOtherSide = asked.wall === 'left' ? y[1] > floor / 2 + 500_000 : y[0] < floor / 2 - 500_000;
        if (!onOtherSide) expect(outside).toBeLessThanOrEqual(4 * highUm);
      }),
    );
  });

  it('weighs what its finished shape and its edging weigh', () => {
    fc.assert(
      fc.property(stands, (asked) => {
        const { panel } = stand({ ...asked, edging: [] });
        if (panel === undefined) return;
        const areaUm2 = panel.outline
          ? shoelace(panel.outline)
          : panel.finishedLengthUm * panel.finishedWidthUm;
        const board = library.boards.get(panel.board)!;
        // Volume in m³ times density in kg/m³.
        const volume = (areaUm2 / 1e12) * (panel.thicknessUm / 1e6);
        const density = board.arealMassKgPerM2 / (board.thicknessUm / 1e6);
        expect(panel.massKg).toBeCloseTo(volume * density, 6);
      }),
    );
  });

  it('keeps edging on straight edges that are left, never along the wall', () => {
    fc.assert(
      fc.property(stands, (asked) => {
        const { panel, text } = stand({ ...asked, edging: 'all' });
        for (const { face, edging, lengthUm } of panel?.edges ?? []) {
          const follows = face in (text.followsWall ?? {});
          expect(edging !== null).toBe(!follows && lengthUm > 0);
        }
      }),
    );
  });
});
