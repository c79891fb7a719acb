import { describe, expect, it } from 'vitest';
import { inVehicle } from '../../src/basics/boxes.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Facing } from '../../src/model/geometry.ts';
import type { Formula, UnitDefinition } from '../../src/model/library.ts';
import type { Order, OrderChange } from '../../src/model/order.ts';
import { expandOrder } from '../../src/units/index.ts';
import { demoLibrary, demoOrder, formula, messages, must } from '../helpers/demoVan.ts';
import { extent, unit, withUnits, written } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);
const place = { file: 'orders/test.yaml', line: 9, column: 3 };

function choices(values: Record<string, string | number>): Map<string, Formula> {
  return new Map(Object.entries(values).map(([name, text]) => [name, formula(text)]));
}

function set(name: string, values: Record<string, string | number>): OrderChange {
  return { kind: 'set', unit: name, set: choices(values), place };
}

function findingsOf(changed: Partial<Order>, among = library): readonly Finding[] {
  return expandOrder({ ...order, ...changed }, among).findings;
}

/** One hand-built unit placed by itself in the long van. */
function placed(
  definition: UnitDefinition,
  at: readonly [number, number, number] = [500, 600, 0],
  facing: Facing = 'left',
  others: readonly UnitDefinition[] = [],
) {
  const layout = {
    ...library.layouts.get('rear-bed')!,
    choices: [],
    names: new Map(),
    musts: [],
    cautions: [],
    units: [
      {
        name: 'test',
        place,
        unit: definition.id,
        at: { x: written(at[0]), y: written(at[1]), z: written(at[2]) },
        facing,
        set: new Map(),
        when: null,
        repeat: null,
      },
    ],
  };
  return expandOrder(
    { ...order, choices: new Map(), changes: [] },
    { ...withUnits(library, definition, ...others), layouts: new Map([['rear-bed', layout]]) },
  );
}

describe('expandOrder', () => {
  it('stands every unit of the demonstration order in the long van', () => {
    const { units, vehicle, count } = must(expandOrder(order, library));
    expect([vehicle.id, count]).toEqual(['van-long', 1]);
    expect(units.map((one) => one.name)).toEqual([
      'dining table',
      'base cupboard',
      'flap cupboard',
      'left worktop',
      'fridge housing',
      'wardrobe',
      'galley drawers',
      'sink cupboard',
      'cooker cupboard',
      'galley worktop',
      'galley locker',
      'bed base',
      'side table',
      'rear locker',
    ]);
    // bed: 3900 − 50 − 1250 = 2600; wardrobe 2600 − (800 + 380 + 400 + 560) = 460; its front 620 in from the
    // floor's edge, its back where the wall is furthest out: (1820 − 1760) / 2 = 30 beyond that edge
    const wardrobe = units.find((one) => one.name === 'wardrobe')!;
    expect(wardrobe.placeOutside).toEqual({
      x: [2_140_000, 2_600_000],
      y: [-30_000, 620_000],
      z: [0, 1_750_000],
    });
    expect(wardrobe.parameters.get('hand')).toBe('right');
  });

  it('puts panels where their formulas say, by hand', () => {
    const { units } = must(expandOrder(order, library));
    const cupboard = units.find((one) => one.name === 'base cupboard')!;
    const shelf = cupboard.panels.find((panel) => panel.name === 'shelf 1')!;
    // height 850 − 21.6 = 828.4; spacing (828.4 − 16.2 − 76.2) / 2 = 368; z = 76.2 + 368 ∓ 8.1
    expect(shelf.box).toEqual({ x: [16_700, 363_300], y: [37_200, 503_500], z: [436_100, 452_300] });
  });

  it('names repeats and the panels of inner units after both', () => {
    const { units } = must(
      expandOrder({ ...order, changes: [set('galley drawers', { drawers: 3 })] }, library),
    );
    const drawers = units.find((one) => one.name === 'galley drawers')!;
    const names = drawers.panels.map((panel) => panel.name);
    expect(names).toContain('drawer front 3');
    expect(names).toContain('drawer 3 box front');
    expect(drawers.panels.find((panel) => panel.name === 'drawer 3 box front')?.baseName).toBe(
      'drawer box front',
    );
    expect(drawers.fittings.find(({ fitting }) => fitting === 'runner-pair')?.count).toBe(3);
    expect(drawers.hangings).toHaveLength(6);
  });

  it.each<[Facing, readonly [number, number], readonly [number, number]]>([
    ['left', [500, 530], [600, 700]],
    ['right', [770, 800], [700, 800]],
    // Its left is on the van's left, its front at the greatest x.
    ['rear', [600, 700], [600, 630]],
    ['front', [500, 600], [870, 900]],
  ])('turns a unit that faces %s about its corner', (facing, x, y) => {
    // 300 wide, 200 deep: the post stands at its front left.
    const test = unit('test', [300, 200, 100], { post: { x: [0, 30], y: [0, 100], z: [0, 100] } });
    const [one] = must(placed(test, [500, 600, 10], facing)).units;
    const [width, depth] = facing === 'left' || facing === 'right' ? [300, 200] : [200, 300];
    expect(one!.placeOutside).toEqual({
      x: [500_000, (500 + width) * 1000],
      y: [600_000, (600 + depth) * 1000],
      z: [10_000, 110_000],
    });
    const post = inVehicle(one!.panels[0]!.box, { ...one!, facing });
    const um = ([from, to]: readonly [number, number]) => [from * 1000, to * 1000];
    expect(post).toEqual({ x: um(x), y: um(y), z: [10_000, 110_000] });
  });

  it('moves inner units by the corner of their outside box', () => {
    const inner = unit(
      'inner',
      [100, 100, 100],
      { post: { x: [20, 120], y: [0, 100], z: [0, 100] } },
      {
        outside: { x: extent(20, 120), y: extent(0, 100), z: extent(0, 100) },
      },
    );
    const outer = unit(
      'outer',
      [300, 100, 100],
      {},
      {
        units: [
          {
            name: 'part',
            place,
            unit: 'inner',
            at: { x: written('50 * i'), y: written(0), z: written(5) },
            facing: 'front',
            set: new Map(),
            when: null,
            repeat: { counter: 'i', count: written(2) },
          },
        ],
      },
    );
    const [one] = must(placed(outer, [0, 0, 0], 'left', [inner])).units;
    expect(one!.panels.map((panel) => [panel.name, panel.box.x, panel.box.z])).toEqual([
      ['part 1 post', [50_000, 150_000], [5000, 105_000]],
      ['part 2 post', [100_000, 200_000], [5000, 105_000]],
    ]);
  });

  it('leaves units out, adds others and sets their parameters', () => {
    const changes: OrderChange[] = [
      { kind: 'leave out', unit: 'rear locker', place },
      {
        kind: 'add',
        name: 'shoe locker',
        unit: 'overhead-locker',
        at: { x: formula('bed_start + 10'), y: formula(300), z: formula(1200) },
        facing: 'right',
        set: choices({ width: 500, fronts: 1 }),
        place,
      },
      set('shoe locker', { width: 600 }),
    ];
    const { units } = must(expandOrder({ ...order, changes }, library));
    expect(units.some((one) => one.name === 'rear locker')).toBe(false);
    const added = units.find((one) => one.name === 'shoe locker')!;
    expect(added.placeOutside.x).toEqual([2_610_000, 3_210_000]);
  });

  it('gives the long van one more cupboard on each side', () => {
    const short = must(expandOrder(demoOrder(library, 'demo-short'), library));
    const names = short.units.map((one) => one.name);
    expect(names).not.toContain('flap cupboard');
    expect(names).not.toContain('galley drawers');
    expect(names).toContain('left bed locker');
  });
});

describe('expandOrder refuses', () => {
  it.each<[string, Partial<Order>, Partial<Finding>]>([
    [
      'a value out of its range',
      { choices: choices({ bed_width: 1500 }) },
      {
        code: 'out-of-range',
        message: 'bed_width of the layout rear-bed is 1500 mm; it may go from 1200 up to 1350 mm',
      },
    ],
    [
      'a count that is not whole',
      { changes: [set('galley drawers', { drawers: 2.5 })] },
      {
        code: 'count-wrong',
        message: 'drawers of the unit drawer-cupboard is 2.5; it counts, so it must be whole',
      },
    ],
    [
      'a parameter that is not there',
      { changes: [set('galley drawers', { draws: 3 })] },
      { code: 'unknown-parameter', found: 'draws', nearest: 'drawers' },
    ],
    [
      'a choice that is not there',
      { choices: choices({ cooker: 'two-burners' }) },
      { code: 'unknown-choice', found: 'two-burners', nearest: 'two-burner' },
    ],
    [
      'a unit that is not there',
      { changes: [set('galley drawer', { drawers: 3 })] },
      { code: 'unknown-unit', found: 'galley drawer', nearest: 'galley drawers' },
    ],
    [
      'a name that is taken',
      {
        changes: [
          {
            kind: 'add',
            name: 'wardrobe',
            unit: 'wardrobe',
            at: { x: formula(0), y: formula(0), z: formula(0) },
            facing: 'left',
            set: new Map(),
            place,
          },
        ],
      },
      { code: 'name-taken', message: 'two units are named “wardrobe”' },
    ],
    [
      'a must that does not hold',
      { changes: [set('galley drawers', { drawers: 5 }), set('galley drawers', { height: 500 })] },
      {
        code: 'must-not-met',
        message: 'galley drawers: the drawers would be lower than 80 mm inside; take fewer drawers',
      },
    ],
  ])('%s', (_what, changed, expected) => {
    const found = findingsOf(changed);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject(expected);
  });

  it('a vehicle that the layout is not drawn for', () => {
    const other = { ...library.vehicles.get('van-long')!, id: 'barge' };
    const among = { ...library, vehicles: new Map([['barge', other]]) };
    expect(findingsOf({ vehicle: 'barge' }, among)[0]?.message).toBe(
      'the layout rear-bed is not drawn for the vehicle barge',
    );
  });

  it('units inside each other in a circle', () => {
    const use = (of: string) => ({
      name: 'part',
      place,
      unit: of,
      at: { x: written(0), y: written(0), z: written(0) },
      facing: 'front' as const,
      set: new Map(),
      when: null,
      repeat: null,
    });
    const a = unit('a', [1, 1, 1], {}, { units: [use('b')] });
    const b = unit('b', [1, 1, 1], {}, { units: [use('a')] });
    expect(messages(placed(a, [0, 0, 0], 'left', [b]).findings)).toEqual([
      'units are inside each other in a circle: a → b → a',
    ]);
  });

  it('formulas that need each other, a box with nothing in it and too many repeats, all at once', () => {
    const test = unit(
      'test',
      [100, 100, 100],
      {
        a: { x: [0, 'inside'], y: [0, 10], z: [0, 10] },
        b: { x: [60, 60], y: [0, 10], z: [0, 10] },
        c: { x: [0, 10], y: [0, 10], z: ['i', 'i + 1'], repeat: ['i', 1000] },
        d: { x: [0, 10], y: [0, 10], z: [0, 10], letInto: { bb: 5 } },
      },
      {
        names: new Map([
          ['inside', written('clear + 1')],
          ['clear', written('inside - 1')],
        ]),
      },
    );
    expect(messages(placed(test).findings)).toEqual([
      'these formulas need each other in a circle: inside → clear → inside',
      'the panel “b” in test has no x-size left: it runs from 60.0 to 60.0 mm',
      'the count comes to 1000; it must be a whole number from 0 to 200',
      'the unit test has no panel “bb”',
    ]);
  });
});
