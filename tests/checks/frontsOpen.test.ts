import { describe, expect, it } from 'vitest';
import { inVehicle, sharedBox } from '../../src/basics/boxes.ts';
import type { Furniture, Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Box, Um } from '../../src/model/geometry.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';

const library = demoLibrary();

/** Whether a panel hangs on fittings or runs in and out, as doors, flaps and drawers do. */
function moves(panel: Panel, { assembly, hangings }: PlacedUnit): boolean {
  return (
    panel.holes.some(({ name }) => name.includes('hinge')) ||
    (hangings ?? []).some(({ panels }) => panels.includes(panel.id)) ||
    (assembly ?? []).some(({ way, panels }) => way === 'hang' && panels.includes(panel.id))
  );
}

/** What lies before a front as deep as its shorter side, which a door or flap sweeps when it turns by a quarter. */
function roomBefore({ box, thicknessAxis: through }: Panel, { outside }: PlacedUnit): Box {
  const [low, high] = box[through];
  const sides = (['x', 'y', 'z'] as const).filter((axis) => axis !== through);
  const reachUm = sides.reduce<Um>((least, axis) => Math.min(least, box[axis][1] - box[axis][0]), Infinity);
  const looksLow = low + high < outside[through][0] + outside[through][1];
  return { ...box, [through]: looksLow ? [low - reachUm, low] : [high, high + reachUm] };
}

/** Fronts that move, each with the panels of other units in its way. */
function blocked({ units }: Furniture): string[] {
  return units.flatMap((unit) => {
    const others = units.filter((other) => other !== unit).flatMap(({ panels }) => panels);
    return unit.panels
      .filter((panel) => panel.role === 'front' && moves(panel, unit))
      .flatMap((panel) => {
        const room = inVehicle(roomBefore(panel, unit), unit);
        return others
          .filter(({ placeBox }) => sharedBox(room, placeBox) !== null)
          .map((other) => `${unit.name} ${panel.name}: ${other.unit} ${other.name}`);
      });
  });
}

describe.each(demoOrders)('%s', (name) => {
  const { furniture } = furnish(demoOrder(library, name), library);

  it('has nothing of another unit before a front that opens', () => {
    const fronts = furniture!.units.flatMap((unit) => unit.panels.filter((panel) => moves(panel, unit)));
    expect(fronts.length).toBeGreaterThan(4);
    expect(blocked(furniture!)).toEqual([]);
  });
});

describe('the posts of a boot divider', () => {
  it.each(['weekend-dog-long', 'weekend-dog-short'])(
    'stand against other units, which hold them (%s)',
    (name) => {
      const { units } = furnish(demoOrder(library, name), library).furniture!;
      const divider = units.find(({ unit }) => unit === 'boot-divider')!;
      const posts = divider.panels.filter((panel) => panel.name.endsWith('post'));
      expect(posts).toHaveLength(2);
      for (const { name: post, placeBox: box } of posts) {
        const beside = units.filter((unit) => {
          const highUm = unit.placeOutside.z[1];
          const touches = unit.panels.some(({ placeBox: { x, y } }) => {
            const meets = (axis: 'x' | 'y', um: Um) =>
              box[axis][0] <= (axis === 'x' ? x : y)[1] + um &&
              (axis === 'x' ? x : y)[0] <= box[axis][1] + um;
            return meets('x', 0) && meets('y', 0);
          });
          return unit !== divider && highUm >= 800_000 && touches;
        });
        expect(
          beside.map((unit) => unit.name),
          post,
        ).not.toEqual([]);
      }
    },
  );
});
