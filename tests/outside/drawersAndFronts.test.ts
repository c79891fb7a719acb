import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axes, sharedUm } from '../../src/basics/boxes.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Axis } from '../../src/model/geometry.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';

/**
 * Drawers on side runners, from the fitting guide of a maker of runners: on each side the runner's thickness and 0.2 to
 * 0.5 mm more, so that with runners of 12.7 mm a drawer is 25.8 to 26.4 mm narrower than its opening.
 *
 * Gaps between fronts, from a cabinetmakers' forum on frameless doors (2007) and what it quotes of a North American
 * standard: two doors in a cupboard of 304 with 1.5 mm at each side and 3 between them are 149 each. Gaps of the highest class are 3.2 ± 0.8 mm. 3 mm between fronts and 1.5 at the sides are
 * usual. The distance between the hinges of a door is checked in `hingeBoring.test.ts`.
 *
 * Common practice, no source: runners come in steps of 50 mm.
 */
const RUNNER_MM = 12.7;
const MORE_MM = { least: 0.2, most: 0.5 };
const CLASS_GAP_MM = { least: 2.4, most: 4 };

const library = demoLibrary();
const order = demoOrder(library);
const mm = (um: number) => um / 1000;
const count = (unit: PlacedUnit, fitting: string) =>
  unit.fittings.find((each) => each.fitting === fitting)?.count ?? 0;

const inRange = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => tenths / 10);

const drawerUnits = [
  [
    'drawer-cupboard',
    fc.record({
      width: inRange(300, 900),
      depth: inRange(350, 650),
      height: inRange(500, 1000),
      drawers: fc.integer({ min: 1, max: 5 }),
    }),
  ],
  [
    'cooker-drawer-cupboard',
    fc.record({ width: inRange(400, 600), depth: inRange(450, 650), height: inRange(760, 1000) }),
  ],
] as const;

/** Each unit that can be built with some of the values. */
function built(
  id: string,
  values: fc.Arbitrary<Record<string, number>>,
  look: (unit: PlacedUnit) => void,
): number {
  let units = 0;
  fc.assert(
    fc.property(values, (set) => {
      const { unit } = alone(id, set, library, order);
      if (unit === null) return;
      units += 1;
      look(unit);
    }),
    { numRuns: 60, seed: 11 },
  );
  return units;
}

describe('the fitting guide of runners', () => {
  it('leaves 25.8 to 26.4 mm of the opening to runners of 12.7 mm', () => {
    expect(2 * (RUNNER_MM + MORE_MM.least)).toBeCloseTo(25.8, 9);
    expect(2 * (RUNNER_MM + MORE_MM.most)).toBeCloseTo(26.4, 9);
    expect(library.fittings.get('runner-pair')!.title).toContain(`${RUNNER_MM} mm`);
  });

  it.each(drawerUnits)('holds for every drawer of the unit %s', (id, values) => {
    const units = built(id, values, (unit) => {
      const sides = ['left side', 'right side'].map(
        (name) => unit.panels.find((panel) => panel.name === name)!.box,
      );
      const opening = sides[1]!.x[0] - sides[0]!.x[1];
      const lefts = unit.panels.filter(({ baseName }) => baseName === 'drawer left');
      const rights = unit.panels.filter(({ baseName }) => baseName === 'drawer right');
      const back = unit.panels.find(({ name }) => name === 'back')!.box;
      expect(lefts.length).toBe(count(unit, 'runner-pair'));
      expect(lefts.length).toBeGreaterThan(0);
      lefts.forEach(({ box }, index) => {
        const right = rights[index]!.box;
        const narrower = mm(opening - (right.x[1] - box.x[0]));
        expect(narrower).toBeGreaterThanOrEqual(25.8);
        expect(narrower).toBeLessThanOrEqual(26.4);
        const [beside, other] = [mm(box.x[0] - sides[0]!.x[1]), mm(sides[1]!.x[0] - right.x[1])];
        expect(beside).toBe(other);
        const long = mm(box.y[1] - box.y[0]);
        expect(long % 50).toBe(0);
        expect(box.y[1]).toBeLessThanOrEqual(back.y[0]);
      });
    });
    expect(units).toBeGreaterThan(30);
  });
});

/** Gaps in mm between fronts that lie in one plane beside or above each other. */
function gapsBetween(fronts: readonly Panel[]): number[] {
  return fronts.flatMap((a, index) =>
    fronts.slice(index + 1).flatMap((b) => {
      if (sharedUm(a.box.y, b.box.y) <= 0) return [];
      const apart = axes.filter((axis) => sharedUm(a.box[axis], b.box[axis]) <= 0);
      if (apart.length !== 1) return [];
      const gap = -sharedUm(a.box[apart[0]!], b.box[apart[0]!]);
      return gap < 20_000 ? [mm(gap)] : [];
    }),
  );
}

const frontUnits = [
  ['sink-cupboard', fc.record({ width: inRange(420, 1000), height: inRange(700, 1000) })],
  ['cooker-cupboard', fc.record({ width: inRange(400, 600), height: inRange(760, 1000) })],
  ...drawerUnits,
] as const;

describe('gaps between fronts', () => {
  it('leave two doors of 149 mm in a cupboard of 304', () => {
    const narrow = demoLibrary(['units/sink-cupboard.yaml', 'least: 420', 'least: 300']);
    const { panels } = alone('sink-cupboard', { width: 304 }, narrow, order).unit!;
    const doors = panels.filter(({ name }) => name.endsWith('door'));
    expect(doors.map(({ finishedWidthUm }) => mm(finishedWidthUm))).toEqual([149, 149]);
  });

  it.each(frontUnits)('of the unit %s are of the highest class, half as much at the sides', (id, values) => {
    const units = built(id, values as fc.Arbitrary<Record<string, number>>, (unit) => {
      const fronts = unit.panels.filter(({ role }) => role === 'front');
      for (const gap of gapsBetween(fronts)) {
        expect(gap).toBeGreaterThanOrEqual(CLASS_GAP_MM.least);
        expect(gap).toBeLessThanOrEqual(CLASS_GAP_MM.most);
      }
      const edge = (axis: Axis, end: 0 | 1) =>
        end === 0
          ? Math.min(...fronts.map(({ box }) => box[axis][0])) - unit.outside[axis][0]
          : unit.outside[axis][1] - Math.max(...fronts.map(({ box }) => box[axis][1]));
      expect([mm(edge('x', 0)), mm(edge('x', 1))]).toEqual([1.5, 1.5]);
      const doors = fronts.filter(({ name }) => name === 'left door' || name === 'right door');
      for (const door of doors) {
        const wide = mm(unit.outside.x[1] - unit.outside.x[0]);
        const half = (wide - 2 * 1.5 - 3) / 2;
        expect(Math.abs(mm(door.box.x[1] - door.box.x[0]) - half)).toBeLessThanOrEqual(0.001);
      }
    });
    expect(units).toBeGreaterThan(30);
  });
});
