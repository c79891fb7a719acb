import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDrilling } from '../../src/checks/drilling.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Axis } from '../../src/model/geometry.ts';
import { alone, demoLibrary, demoOrder, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();
const order = demoOrder(library);

/** Units with hinged fronts, each with sizes to be tried from its least to its most. */
const hinged: Readonly<Record<string, Readonly<Record<string, readonly [number, number]>>>> = {
  'base-cupboard': { width: [250, 435], height: [700, 1000], shelves: [0, 4] },
  'sink-cupboard': { width: [420, 870], height: [700, 1000] },
  'cooker-cupboard': { width: [400, 600], height: [760, 1000] },
  wardrobe: { width: [350, 600], height: [1500, 1900], split: [900, 1300] },
  'fridge-housing': { width: [480, 650], height: [1500, 1900], fridge_height: [500, 850] },
  'overhead-locker': { width: [600, 900], height: [250, 450] },
  'flap-cupboard': { width: [300, 800], flap: [200, 400] },
};

const faceDepth: Readonly<Record<string, Axis>> = {
  left: 'x',
  right: 'x',
  front: 'y',
  back: 'y',
  bottom: 'z',
  top: 'z',
};

/** Where the middle of a hole is in the unit's frame; along the thickness of its panel the face that it enters. */
function middleOf(panel: Panel, hole: Panel['holes'][number]): Readonly<Record<Axis, number>> {
  const { box, lengthAxis, widthAxis, thicknessAxis } = panel;
  const high = hole.face === 'right' || hole.face === 'back' || hole.face === 'top';
  const middle = { x: 0, y: 0, z: 0 };
  middle[lengthAxis] = box[lengthAxis][0] + hole.alongLengthUm;
  middle[widthAxis] = box[widthAxis][0] + hole.alongWidthUm;
  middle[thicknessAxis] = box[thicknessAxis][high ? 1 : 0];
  return middle;
}

/**
 * Every cup must have its plate: two holes in a panel square to the front, half-way between them as high (or, for a
 * front that is hung along x, as far across) as the cup, on that side of the front from which the cup is nearest.
 */
function cupsWithoutPlate(unit: PlacedUnit): string[] {
  const all = unit.panels.flatMap((panel) =>
    panel.holes.map((hole) => ({ panel, hole, at: middleOf(panel, hole) })),
  );
  const cups = all.filter(({ hole }) => hole.name.endsWith(' cup'));
  const plates = all.filter(({ hole }) => hole.name.includes('hinge plate'));
  return cups.flatMap((cup) => {
    const matched = plates.some((one) => {
      const along: Axis = faceDepth[one.hole.face] === 'z' ? 'x' : 'z';
      const across: Axis = along === 'x' ? 'z' : 'x';
      const near = Math.abs(one.at[across] - cup.at[across]) < 30_000;
      const other = plates.find(
        (two) => two.panel === one.panel && two.at.y === one.at.y && two.at[along] === one.at[along] + 32_000,
      );
      const middle = one.at[along] + 16_000;
      return near && other !== undefined && Math.abs(middle - cup.at[along]) <= 1;
    });
    return matched ? [] : [`${cup.hole.name} of the ${cup.panel.name}`];
  });
}

describe.each(Object.entries(hinged))('%s', (id, sizes) => {
  it('has a plate for the cup of every hinge, as many as it counts, and board around every hole', () => {
    const definition = library.units.get(id)!;
    const hands = definition.parameters.some(({ name }) => name === 'hand') ? ['left', 'right'] : [];
    const model = Object.fromEntries([
      ...Object.entries(sizes).map(
        ([name, [least, most]]) => [name, fc.integer({ min: least, max: most })] as const,
      ),
      ...(hands.length === 0 ? [] : [['hand', fc.constantFrom(...hands)] as const]),
    ]) as Record<string, fc.Arbitrary<string | number>>;
    let built = 0;
    fc.assert(
      fc.property(fc.record(model), (set) => {
        const { unit } = alone(id, set, library, order);
        if (unit === null) return;
        built += 1;
        expect(cupsWithoutPlate(unit)).toEqual([]);
        const cups = unit.panels.flatMap((panel) => panel.holes.filter(({ name }) => name.endsWith(' cup')));
        const counted = unit.fittings.find(({ fitting }) => fitting === 'hinge');
        expect(cups.length).toBe(counted?.count);
        expect(messages(unit.panels.flatMap(checkDrilling))).toEqual([]);
      }),
      { numRuns: 60, seed: 5 },
    );
    expect(built).toBeGreaterThan(20);
  });
});

describe('hinges, by the height of the door (common practice, no source)', () => {
  it.each([
    [900, 2],
    [970, 3],
  ])('a cupboard %d high has %d', (height, count) => {
    const { unit } = alone('base-cupboard', { height, width: 300 }, library, order);
    const door = unit!.panels.find(({ name }) => name === 'door')!;
    expect(door.holes.filter(({ name }) => name.endsWith(' cup'))).toHaveLength(count);
  });
});
