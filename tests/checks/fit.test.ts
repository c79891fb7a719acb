import { describe, expect, it } from 'vitest';
import type { OrderChange } from '../../src/model/order.ts';
import { demoLibrary, demoOrder, formula, furnish, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();
const order = demoOrder(library);
const place = { file: 'orders/test.yaml', line: 9, column: 3 };

function add(
  unit: string,
  at: readonly [string | number, string | number, string | number],
  set: Record<string, string | number> = {},
  facing: 'left' | 'right' | 'front' | 'rear' = 'right',
): OrderChange {
  return {
    kind: 'add',
    name: 'newcomer',
    unit,
    at: { x: formula(at[0]), y: formula(at[1]), z: formula(at[2]) },
    facing,
    set: new Map(Object.entries(set).map(([name, value]) => [name, formula(value)])),
    place,
  };
}

function sentences(...changes: OrderChange[]): string[] {
  const { findings } = furnish({ ...order, changes }, library);
  return messages(findings.filter(({ severity }) => severity === 'error'));
}

const noBed: OrderChange = { kind: 'leave out', unit: 'bed base', place };

describe('the fit check', () => {
  it.each<[string, OrderChange, string]>([
    [
      'another unit',
      add('base-cupboard', [430, 0, 0], { width: 400, height: 828 }),
      'the newcomer goes 30.0 mm into the base cupboard',
    ],
    [
      'the wall, where it narrows upward',
      add('drawer-box', [2700, 50, 1350], { width: 600, depth: 280, height: 350 }),
      'the left of the newcomer stands 10.0 mm through the left wall, between 1350 and 1700 mm above the floor',
    ],
    [
      'the right wall',
      add(
        'drawer-box',
        [2700, 'vehicle.width - wall(1350, 1700) - 275', 1350],
        { width: 600, depth: 280, height: 350 },
        'left',
      ),
      'the left of the newcomer stands 5.0 mm through the right wall, between 1350 and 1700 mm above the floor',
    ],
    [
      'the wall behind a back that stands upright, though the sides follow it',
      add('overhead-locker', [2700, 40, 1350], { width: 600, fronts: 1, depth: 320 }),
      'the back of the newcomer stands 6.0 mm through the left wall, between 1360.2 and 1689.8 mm above the floor',
    ],
    [
      'the roof',
      add('overhead-locker', [2700, 300, 1570], { width: 600, fronts: 1 }),
      'the left side of the newcomer stands 20.0 mm through the roof',
    ],
    [
      'a wheel arch',
      add('drawer-box', [2660, 100, 0]),
      'the left of the newcomer goes 100.0 mm into the wheel arch left',
    ],
    [
      'the door',
      add('side-table', [300, 1550, 900], { width: 300, depth: 200 }),
      'the top of the newcomer goes 50.0 mm into the opening of the sliding door',
    ],
  ])('finds a unit that goes into %s', (_what, change, sentence) => {
    expect(sentences(change, noBed).join('\n')).toContain(sentence);
  });

  it('lets a unit reach over a wheel arch', () => {
    expect(sentences()).toEqual([]);
  });
});
