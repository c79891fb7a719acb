import { describe, expect, it } from 'vitest';
import type { DrillingPattern, Library } from '../../src/model/library.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';
import { type HoleText, type PanelText, unit, withUnits, written } from '../helpers/handBuilt.ts';

const demo = demoLibrary();
const order = demoOrder(demo);

const pattern: DrillingPattern = {
  id: 'two',
  title: 'Two holes',
  holes: [
    { name: 'a', alongUm: 1000, acrossUm: 2000, diameterUm: 5000, depthUm: 7000 },
    { name: 'b', alongUm: -3000, acrossUm: 0, diameterUm: 6000, depthUm: null },
  ],
};
const library: Library = { ...demo, drilling: new Map([[pattern.id, pattern]]) };
const t = 'thickness.carcass';

/** A panel that stands on edge, its broad faces left and right, 300 deep and 500 high, from (50, 20, 10) on. */
const side: PanelText = { x: [50, `50 + ${t}`], y: [20, 320], z: [10, 510], grain: 'z' };

function made(holes: Record<string, HoleText>, more: Partial<PanelText> = {}) {
  const test = unit('test', [500, 500, 600], { side: { ...side, ...more, holes } });
  return alone('test', {}, withUnits(library, test), order);
}

/** Name, place along the length (z) and the width (y), in mm. */
function placed(holes: Record<string, HoleText>, more: Partial<PanelText> = {}) {
  const { furniture, findings } = made(holes, more);
  if (furniture === null) throw new Error(findings.map(({ message }) => message).join('\n'));
  return furniture.units[0]!.panels.flatMap((panel) =>
    panel.holes.map((hole) => [hole.name, hole.alongLengthUm / 1000, hole.alongWidthUm / 1000, hole.face]),
  );
}

describe('holes of a unit', () => {
  it('are measured from the corner of the finished panel, rows and conditions worked out', () => {
    const at = { y: 57, z: '110 + (n - 1) * 32' };
    expect(
      placed({
        pin: { at, from: 'right', bore: [5, 12], repeat: ['n', 3] },
        never: { at: { y: 100, z: 100 }, from: 'right', bore: [5, 12], when: '1 > 2' },
      }),
    ).toEqual([
      ['pin 1', 100, 37, 'right'],
      ['pin 2', 132, 37, 'right'],
      ['pin 3', 164, 37, 'right'],
    ]);
  });

  it.each([
    [
      'back',
      [
        ['h a', 92, 81],
        ['h b', 90, 77],
      ],
    ],
    [
      'front',
      [
        ['h a', 92, 79],
        ['h b', 90, 83],
      ],
    ],
    [
      'top',
      [
        ['h a', 91, 82],
        ['h b', 87, 80],
      ],
    ],
    [
      'bottom',
      [
        ['h a', 89, 82],
        ['h b', 93, 80],
      ],
    ],
  ] as const)('lay a pattern towards the %s', (towards, expected) => {
    const holes = placed({ h: { at: { y: 100, z: 100 }, from: 'right', pattern: ['two', towards] } });
    expect(holes.map((hole) => hole.slice(0, 3))).toEqual(expected);
  });

  it('know the counter of a repeated panel beside their own', () => {
    const repeated: Partial<PanelText> = {
      x: ['i * 100', `i * 100 + ${t}`],
      repeat: ['i', 2],
    };
    const hole: HoleText = {
      at: { y: '20 + 10 * i', z: '10 + 20 * n' },
      from: 'left',
      bore: [5, 3],
      repeat: ['n', 2],
    };
    expect(placed({ hole }, repeated).map((one) => one.slice(0, 3))).toEqual([
      ['hole 1', 20, 10],
      ['hole 2', 40, 10],
      ['hole 1', 20, 20],
      ['hole 2', 40, 20],
    ]);
  });

  it('go with the unit that they are in', () => {
    const inner = unit('inner', [500, 500, 600], {
      side: { ...side, holes: { pin: { at: { y: 57, z: 110 }, from: 'right', bore: [5, 12] } } },
    });
    const use = (name: string, x: number) => ({
      name,
      place: { file: 'units/test.yaml', line: 1, column: 1 },
      unit: 'inner',
      at: { x: written(x), y: written(7), z: written(9) },
      facing: 'front' as const,
      set: new Map(),
      when: null,
      repeat: null,
    });
    const outer = unit('outer', [1000, 507, 609], {}, { units: [use('one', 0), use('two', 500)] });
    const { furniture } = alone('outer', {}, withUnits(library, inner, outer), order);
    const holes = furniture!.units[0]!.panels.map((panel) => panel.holes);
    expect(
      holes.map((own) => own.map(({ alongLengthUm, alongWidthUm }) => [alongLengthUm, alongWidthUm])),
    ).toEqual([[[100_000, 37_000]], [[100_000, 37_000]]]);
  });

  it('are refused where they come to nothing, or where the library lacks their pattern', () => {
    const at = { y: 100, z: 100 };
    const said = (hole: HoleText) => made({ hole }).findings.map(({ message }) => message);
    expect(said({ at, from: 'right', bore: ['2 - 2', 12] })).toEqual([
      'the hole “hole” comes to 0.0 mm wide',
    ]);
    expect(said({ at, from: 'right', bore: [5, '2 - 3'] })).toEqual([
      'the hole “hole” comes to -1.0 mm deep',
    ]);
    expect(said({ at, from: 'right', pattern: ['twe', 'top'] })).toEqual([
      'the library has no drilling pattern “twe”',
    ]);
    expect(said({ at: { x: 57, z: 100 }, from: 'front', bore: [5, 2] })).toEqual([
      'the hole “hole” of the side of unit cannot be drilled from the front: that is an edge, not a broad face',
    ]);
  });

  it('are bounded in number', () => {
    const row: HoleText = { at: { y: 100, z: 100 }, from: 'right', bore: [5, 12], repeat: ['n', 200] };
    const rows = Object.fromEntries(Array.from({ length: 60 }, (_, index) => [`row ${index}x`, row]));
    expect(made(rows).findings.map(({ code }) => code)).toEqual(['too-many-holes']);
  });
});
