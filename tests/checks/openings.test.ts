import { describe, expect, it } from 'vitest';
import { sharedUm } from '../../src/basics/boxes.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Axis, Box } from '../../src/model/geometry.ts';
import type { Library } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { readOrder } from '../../src/order/index.ts';
import { alone, demoLibrary, demoOrder, libraryFiles, must } from '../helpers/demoVan.ts';

const axes = ['x', 'y', 'z'] as const;

/** What an opening takes out of its panel, as a box of the unit. */
function openingBox(panel: Panel, { alongLength, alongWidth }: Panel['cutOuts'][number]): Box {
  const along = (axis: Axis) => {
    if (axis === panel.thicknessAxis) return panel.box[axis];
    const [from, to] = axis === panel.lengthAxis ? alongLength : alongWidth;
    return [panel.box[axis][0] + from, panel.box[axis][0] + to] as const;
  };
  return { x: along('x'), y: along('y'), z: along('z') };
}

/** Boards whose edge stands across an opening of the panel that they meet; flaps lie flat on theirs. */
function acrossOpenings({ panels }: PlacedUnit): string[] {
  return panels.flatMap((panel) =>
    panel.cutOuts.flatMap((cutOut) => {
      const opening = openingBox(panel, cutOut);
      const meets = (axis: Axis, other: Panel) => {
        const shared = sharedUm(opening[axis], other.box[axis]);
        return axis === panel.thicknessAxis ? shared >= 0 : shared > 0;
      };
      return panels
        .filter((other) => other.thicknessAxis !== panel.thicknessAxis)
        .filter((other) => axes.every((axis) => meets(axis, other)))
        .map((other) => `${other.name} across ${cutOut.name} of ${panel.name}`);
    }),
  );
}

const workshopRoot = 'parts-libraries/workshop-bench';
const workshopFiles = libraryFiles(workshopRoot);
const workshop = must(readLibrary(workshopFiles, workshopRoot));
const benchOrder = `${workshopRoot}/orders/garage-bench.yaml`;
const demo = demoLibrary();
const libraries: readonly (readonly [Library, Order])[] = [
  [demo, demoOrder(demo)],
  [workshop, must(readOrder(workshopFiles.get(benchOrder)!, benchOrder, workshop))],
];
const units = libraries.flatMap(([library, order]) =>
  [...library.units.values()].map((unit) => ({ id: unit.id, unit, library, order })),
);

describe('openings', () => {
  it.each(units)('of $id are clear of the boards that the panel meets', ({ id, unit, library, order }) => {
    const choices = unit.parameters.flatMap((parameter) =>
      parameter.kind === 'choice' ? parameter.choices.map((choice) => ({ [parameter.name]: choice })) : [],
    );
    for (const set of [{}, ...choices]) {
      const { unit: placed } = alone(id, set, library, order);
      if (placed !== null) expect(acrossOpenings(placed), JSON.stringify(set)).toEqual([]);
    }
  });

  it.each([450, 500, 520, 544, 560, 600, 650])(
    'for a hose keep clear of the drawer below them in a cupboard %i mm deep',
    (depth) => {
      const { unit } = alone('cooker-drawer-cupboard', { depth, fuel: 'gas' }, demo, demoOrder(demo));
      const shelf = unit!.panels.find(({ name }) => name === 'guard shelf')!;
      const [hoseFrom, hoseTo] = openingBox(shelf, shelf.cutOuts[0]!).y;
      expect(hoseTo - hoseFrom).toBeGreaterThanOrEqual(25_000);
      const drawer = unit!.panels.filter(({ name }) => name.startsWith('drawer '));
      expect(drawer.length).toBeGreaterThan(4);
      for (const { name, box } of drawer) expect(box.y[1], name).toBeLessThanOrEqual(hoseFrom);
    },
  );
});
