import { describe, expect, it } from 'vitest';
import { FormulaScope } from '../../src/basics/formulaScope.ts';
import type { FormulaValue } from '../../src/basics/formulas.ts';
import type { Finding } from '../../src/model/finding.ts';
import type {
  Appliance,
  Formula,
  LayoutDefinition,
  Library,
  ParameterDefinition,
  UnitDefinition,
} from '../../src/model/library.ts';
import type { Order, OrderChange } from '../../src/model/order.ts';
import { expandUnit } from '../../src/units/expandUnit.ts';
import { expandOrder, settledChoices, unitConstants } from '../../src/units/index.ts';
import { settleParameters } from '../../src/units/settleParameters.ts';
import { expandUnitAlone, otherValuesOf } from '../../src/units/unitAlone.ts';
import { demoLibrary, demoOrder, must } from '../helpers/demoVan.ts';
import { extent, type PanelText, unit, withUnits, written } from '../helpers/handBuilt.ts';
import { body } from '../helpers/standing.ts';

const demo = demoLibrary();
const order = demoOrder(demo);
const place = { file: 'units/test.yaml', line: 1, column: 1 };
const asked = { file: 'units/test.yaml', line: 7, column: 1 };

type Text = string | number;

function parameter(
  kind: 'length' | 'count',
  name: string,
  value: Text,
  least: Text | null = null,
  most: Text | null = null,
): ParameterDefinition {
  const end = (text: Text | null) => (text === null ? null : written(text));
  return { kind, name, default: written(value), least: end(least), most: end(most), note: '', place };
}

function choice(name: string, value: string, choices: readonly string[]): ParameterDefinition {
  return { kind: 'choice', name, default: value, choices, note: '', place };
}

const wishes = (values: Readonly<Record<string, Text>>) =>
  new Map(Object.entries(values).map(([name, text]): [string, Formula] => [name, written(text, 7)]));

/** What parameters come to, with what is told: `shelves` is known to who asks. */
function settle(
  definitions: readonly ParameterDefinition[],
  ...sets: readonly Readonly<Record<string, Text>>[]
) {
  const findings: Finding[] = [];
  const known = new Map<string, FormulaValue>([['shelves', 3]]);
  const scope = new FormulaScope(known, new Map(), findings);
  const request = {
    owner: 'the unit test',
    definitions,
    asked: sets.map((set) => ({ set: wishes(set), scope })),
  };
  const names = new Map([['half', written('width / 2')]]);
  const { values } = settleParameters(request, new Map(), names, findings);
  return { values: Object.fromEntries(values), findings };
}

describe('a parameter', () => {
  it('has its default, which may use others and names in any order', () => {
    const definitions = [
      parameter('length', 'depth', 'half + 1'),
      parameter('length', 'width', 600),
      choice('hand', 'left', ['left', 'right']),
    ];
    expect(settle(definitions)).toEqual({ values: { depth: 301, width: 600, hand: 'left' }, findings: [] });
  });

  it('has what was asked for last', () => {
    const width = [parameter('length', 'width', 600)];
    expect(settle(width, { width: 500 }, {}, { width: 400 }, {}).values).toEqual({ width: 400 });
    expect(settle(width, { width: '100 * shelves' }).values).toEqual({ width: 300 });
  });

  it('that is a length lies on whole µm, and one that counts does not', () => {
    const both = [parameter('length', 'width', 600), parameter('count', 'drawers', 1)];
    expect(settle(both, { width: '1000 / 3' }).values['width']).toBe(333.333);
    // So large that a µm no longer counts.
    expect(settle(both, { width: '1000000000 + 1 / 3' }).values['width']).toBe(1e9 + 1 / 3);
    expect(settle(both, { width: '0 - 1000000000 - 1 / 3' }).values['width']).toBe(-1e9 - 1 / 3);
    expect(settle(both, { drawers: '2 + 1 / 10000000000' }).values['drawers']).toBe(2 + 1e-10);
  });

  it('lies within its range, ends included', () => {
    const told = (
      value: Text,
      least: Text | null,
      most: Text | null,
      kind: 'length' | 'count' = 'length',
    ) => {
      const { values, findings } = settle([parameter(kind, 'width', 600, least, most)], { width: value });
      return [
        values['width'],
        findings.map(({ code, message, found, expected }) => [code, message, found, expected]),
      ];
    };
    const refused = (found: string, range: string, unit = ' mm') => [
      600,
      [
        [
          'out-of-range',
          `width of the unit test is ${found}${unit}; it may go ${range}${unit}`,
          found,
          `${range}${unit}`,
        ],
      ],
    ];
    expect(told(500, 500, 700)).toEqual([500, []]);
    expect(told(700, 500, 700)).toEqual([700, []]);
    expect(told(499.9, 500, 700)).toEqual(refused('499.9', 'from 500 up to 700'));
    expect(told(700.1, 500, 700)).toEqual(refused('700.1', 'from 500 up to 700'));
    expect(told(499, 500, null)).toEqual(refused('499', 'from 500'));
    expect(told(701, null, 700)).toEqual(refused('701', 'up to 700'));
    expect(told(-5, null, 700)).toEqual([-5, []]);
    expect(told(100_000, 500, null)).toEqual([100_000, []]);
    expect(told(-1, null, null)).toEqual([-1, []]);
    // What counts counts from 0.
    expect(told(0, null, 700, 'count')).toEqual([0, []]);
    expect(told(-1, null, 700, 'count')).toEqual(refused('-1', 'from 0 up to 700', ''));
    expect(told(-1, -2, 700, 'count')).toEqual([-1, []]);
    expect(told(701, 0, 700, 'count')).toEqual(refused('701', 'from 0 up to 700', ''));
  });

  it('with a range that cannot be worked out is told once', () => {
    for (const [least, most] of [
      ['nowhere', 700],
      [500, 'nowhere'],
    ] as const) {
      const { values, findings } = settle([parameter('length', 'width', 600, least, most)], { width: 550 });
      expect([values['width'], findings.length]).toEqual([550, 1]);
    }
    const circle = settle([parameter('length', 'width', 'nowhere', 500, 700)]);
    expect([circle.values, circle.findings.length]).toEqual([{}, 1]);
  });

  it('is told where it was asked for, or where its default stands', () => {
    const width = parameter('length', 'width', 600, 500, 550);
    expect(settle([width], { width: 400 }).findings[0]?.place).toEqual(asked);
    expect(settle([width]).findings[0]?.place).toEqual(place);
  });

  it('that counts is whole', () => {
    const { values, findings } = settle([parameter('count', 'drawers', 2)], { drawers: 2.5 });
    expect(values['drawers']).toBe(2);
    expect(findings).toEqual([
      {
        code: 'count-wrong',
        severity: 'error',
        message: 'drawers of the unit test is 2.5; it counts, so it must be whole',
        place: asked,
        found: '2.5',
        expected: 'a whole number',
      },
    ]);
  });

  it('is a number where it is one', () => {
    const { findings } = settle([parameter('length', 'width', "'wide'")]);
    expect(findings).toMatchObject([
      {
        code: 'formula-kind',
        message: 'width of the unit test is “wide”; wanted is a number',
        found: 'wide',
        expected: 'a number',
      },
    ]);
  });

  it('that is a choice is one of its words, or a formula that comes to one', () => {
    const hand = [choice('hand', 'left', ['left', 'right', '3'])];
    const told = (text: Text) => {
      const { values, findings } = settle(hand, { hand: text });
      return [values['hand'], findings.map(({ code, found, nearest }) => [code, found, nearest])];
    };
    expect(told('right')).toEqual(['right', []]);
    expect(told(' right ')).toEqual(['right', []]);
    expect(told("'right'")).toEqual(['right', []]);
    // The name of something that whoever asks knows.
    expect(told('shelves')).toEqual(['3', []]);
    expect(told('1 + 2')).toEqual(['3', []]);
    expect(told('rigth')).toEqual(['left', [['unknown-choice', 'rigth', 'right']]]);
    expect(told('something-else')).toEqual(['left', [['unknown-choice', 'something-else', undefined]]]);
    expect(told('1 +')).toEqual(['left', [expect.anything()]]);
    expect(settle(hand, { hand: 'up' }).findings[0]).toEqual({
      code: 'unknown-choice',
      severity: 'error',
      message: '“up” is not a choice for hand',
      place: asked,
      found: 'up',
      expected: 'one of left, right, 3',
    });
  });

  it('that is not there is told with those that are', () => {
    const told = (definitions: ParameterDefinition[], name: string) =>
      settle(definitions, { [name]: 1 }).findings;
    const both = [parameter('length', 'width', 600), parameter('length', 'depth', 400)];
    expect(told(both, 'widht')).toEqual([
      {
        code: 'unknown-parameter',
        severity: 'error',
        message: 'the unit test has no parameter “widht”',
        place: asked,
        found: 'widht',
        expected: 'one of width, depth',
        nearest: 'width',
      },
    ]);
    const [none] = told([], 'something');
    expect(none?.expected).toBe('it has none');
    expect('nearest' in none!).toBe(false);
  });
});

const board: PanelText = { x: [0, 10], y: [0, 10], z: [0, 10], grain: 'z' };

describe('a unit by itself', () => {
  const definition: UnitDefinition = unit(
    'wall-shelf',
    ['width', 200, 300],
    { side: { ...board, x: [0, 'width / 2'] } },
    {
      parameters: [
        parameter('length', 'width', 600, 500, 700),
        parameter('count', 'drawers', 1, null, 4),
        choice('hand', 'left', ['left', 'right']),
      ],
      outside: { x: extent(-5, 'width'), y: extent(10, 210), z: extent(0, 300) },
      musts: [{ that: written('width < 700'), says: 'too wide', place }],
    },
  );

  it('may have each end of its ranges and each choice besides its defaults', () => {
    expect(otherValuesOf(definition, new Map())).toEqual([
      { parameter: 'width', value: 500 },
      { parameter: 'width', value: 700 },
      { parameter: 'drawers', value: 4 },
      { parameter: 'hand', value: 'right' },
    ]);
  });

  it('stands at the corner of nothing, facing the front, with its defaults or one other value', () => {
    const alone = must(expandUnitAlone(definition, null, demo, new Map()));
    expect(alone).toMatchObject({
      name: 'wall shelf',
      unit: 'wall-shelf',
      facing: 'front',
      place: { file: 'units/wall-shelf.yaml' },
      outside: { x: [-5000, 600_000], y: [10_000, 210_000], z: [0, 300_000] },
      placeOutside: { x: [0, 605_000], y: [0, 200_000], z: [0, 300_000] },
    });
    expect(alone.panels[0]!.box.x).toEqual([0, 300_000]);
    const wider = must(expandUnitAlone(definition, { parameter: 'width', value: 500 }, demo, new Map()));
    expect(wider.panels[0]!.box.x).toEqual([0, 250_000]);
    expect(wider.parameters.get('width')).toBe(500);
    const right = must(expandUnitAlone(definition, { parameter: 'hand', value: 'right' }, demo, new Map()));
    expect(right.parameters.get('hand')).toBe('right');
  });

  it('is refused with what is wrong', () => {
    const wide = expandUnitAlone(definition, { parameter: 'width', value: 700 }, demo, new Map());
    expect(wide).toMatchObject({
      ok: false,
      findings: [{ code: 'must-not-met', message: 'wall shelf: too wide' }],
    });
    const flat = { ...definition, outside: { ...definition.outside, y: extent(5, 5) } };
    expect(expandUnitAlone(flat, null, demo, new Map())).toMatchObject({
      ok: false,
      findings: [{ code: 'nothing-left' }],
    });
  });

  it('says no more of its boxes when a parameter is refused, and all when another unit was', () => {
    const flat = unit(
      'flat',
      ['width', 1, 1],
      { side: { ...board, x: [5, 5] } },
      {
        parameters: [parameter('length', 'width', 1, 0, 2)],
        units: [
          {
            name: 'in',
            place,
            unit: 'inner',
            at: { x: written(0), y: written(0), z: written(0) },
            facing: 'front',
            set: new Map(),
            when: null,
            repeat: null,
          },
        ],
      },
    );
    const inner = unit('inner', [1, 1, 1], { wrong: { ...board, y: [3, 3] } });
    const library = withUnits(demo, inner);
    const codes = (set: Record<string, Text>, findings: Finding[] = []) => {
      const scope = new FormulaScope(new Map(), new Map(), findings);
      expandUnit(
        { definition: flat, asked: [{ set: wishes(set), scope }], name: 'flat', within: [] },
        { library, constants: new Map(), findings },
      );
      return findings.map(({ code }) => code);
    };
    expect(codes({ width: 3 })).toEqual(['out-of-range']);
    expect(codes({})).toEqual(['nothing-left', 'nothing-left']);
    const earlier: Finding = { code: 'out-of-range', severity: 'error', message: 'of another' };
    expect(codes({}, [earlier])).toEqual(['out-of-range', 'nothing-left', 'nothing-left']);
  });
});

describe('an order', () => {
  const shelf = unit(
    'shelf',
    ['width', 100, 100],
    { side: board },
    {
      parameters: [parameter('length', 'width', 300, 100, 900)],
    },
  );
  const standing = (name: string, more: Partial<LayoutDefinition['units'][number]> = {}) => ({
    name,
    place,
    unit: 'shelf',
    at: { x: written(10), y: written(20), z: written(30) },
    facing: 'left' as const,
    set: new Map<string, Formula>(),
    when: null,
    repeat: null,
    ...more,
  });
  const layoutOf = (more: Partial<LayoutDefinition>): LayoutDefinition => ({
    id: 'one',
    title: 'One',
    file: 'layouts/one.yaml',
    vehicles: ['body'],
    choices: [choice('side', 'left', ['left', 'right'])],
    names: new Map(),
    units: [standing('shelf')],
    musts: [],
    ...more,
  });
  const libraryOf = (more: Partial<LayoutDefinition> = {}, others: Partial<Library> = {}): Library => ({
    ...withUnits(demo, shelf),
    layouts: new Map([['one', layoutOf(more)]]),
    vehicles: new Map([
      [
        'body',
        body([
          [0, 1700],
          [2000, 1900],
        ]),
      ],
    ]),
    ...others,
  });
  const expand = (
    more: Partial<LayoutDefinition> = {},
    changes: readonly OrderChange[] = [],
    ordered: Partial<Order> = {},
  ) =>
    expandOrder(
      { ...order, layout: 'one', vehicle: 'body', choices: new Map(), changes: [...changes], ...ordered },
      libraryOf(more),
    );
  const codes = (checked: ReturnType<typeof expand>) =>
    checked.findings.map(({ code, found, nearest }) => [code, found, nearest]);

  it('says how many ride and sleep where its layout does', () => {
    const whole = (more: Partial<LayoutDefinition>) => {
      const { order: _order, count: _count, vehicle: _vehicle, units: _units, ...rest } = must(expand(more));
      return rest;
    };
    expect(whole({})).toStrictEqual({ cautions: [] });
    expect(
      whole({
        seats: written('2 + 3'),
        persons: written(4),
        sleepingPlaces: written(0),
        cautions: [{ caution: 'hot', when: written("side == 'left'"), place }],
      }),
    ).toStrictEqual({ seats: 5, persons: 4, sleepingPlaces: 0, cautions: ['hot'] });
    expect(expand({ seats: written(0) })).toMatchObject({
      ok: false,
      findings: [{ code: 'count-wrong', message: 'nobody would drive: the seats come to 0', place }],
    });
    expect(expand({ persons: written('nobody') }).findings).toHaveLength(1);
    expect(expand({ seats: written(101) }).findings).toHaveLength(1);
  });

  it('is refused where its layout or vehicle is not there', () => {
    const told = (ordered: Partial<Order>) => expand({}, [], ordered);
    expect(told({ layout: 'two' })).toEqual({
      ok: false,
      findings: [
        {
          code: 'unknown-layout',
          severity: 'error',
          message: 'the library has no layout “two”',
          place: order.place,
          found: 'two',
        },
      ],
    });
    expect(codes(told({ vehicle: 'cart' }))).toEqual([['unknown-vehicle', 'cart', undefined]]);
    expect(codes(told({ vehicle: 'cart', layout: 'two' }))).toHaveLength(2);
    expect(expand({ vehicles: ['barge', 'cart'] }).findings[0]).toMatchObject({
      code: 'vehicle-not-for-layout',
      found: 'body',
      expected: 'one of barge, cart',
    });
  });

  it('has its choices settled, unless it is of another library', () => {
    const settled = (ordered: Partial<Order>) =>
      Object.fromEntries(
        settledChoices(
          {
            ...order,
            layout: 'one',
            vehicle: 'body',
            choices: wishes({ side: 'right' }),
            changes: [],
            ...ordered,
          },
          libraryOf(),
        ),
      );
    expect(settled({})).toEqual({ side: 'right' });
    expect(settled({ choices: new Map() })).toEqual({ side: 'left' });
    expect([settled({ layout: 'two' }), settled({ vehicle: 'cart' })]).toEqual([{}, {}]);
  });

  it('knows the inch, its boards and every figure of an appliance', () => {
    const cooker = {
      id: 'cooker',
      widthUm: 300_000,
      depthUm: 200_000,
      heightUm: 100_000,
      clearUm: { left: 1000, right: 2000, front: 3000, back: 4000, above: 5000, below: 6000 },
      airCm2: { in: 15, out: 25 },
    } as unknown as Appliance;
    const role = { ...order.roles.get('carcass')!, board: 'nothing' };
    const ordered = { ...order, roles: new Map(order.roles).set('odd', role) };
    const known = unitConstants(ordered, libraryOf({}, { appliances: new Map([['cooker', cooker]]) }));
    const figures = Object.fromEntries(known);
    expect(figures).toMatchObject({
      inch: 25.4,
      'thickness.carcass': 16.2,
      'appliance cooker width': 300,
      'appliance cooker depth': 200,
      'appliance cooker height': 100,
      'appliance cooker air in': 15,
      'appliance cooker air out': 25,
    });
    expect('thickness.odd' in figures).toBe(false);
    const { appliances: _none, ...bare } = libraryOf();
    expect([...unitConstants(order, bare).keys()].some((name) => name.startsWith('appliance'))).toBe(false);
  });

  it('knows how far the wall stands in between two heights, whichever is said first', () => {
    const at = (formula: string) => {
      const x = written(formula);
      const { units } = must(expand({ units: [standing('shelf', { at: { x, y: x, z: x } })] }));
      return units[0]!.placeOutside.x[0];
    };
    // 1700 at the floor, 1900 at 2000: at 1000 the wall is 50 out from the floor's edge.
    expect([at('wall(1000, 1000)'), at('wall(1000, 2000)'), at('wall(2000, 1000)')]).toEqual([
      -50_000, -50_000, -50_000,
    ]);
    expect(at('wall(0, 2000)')).toBe(0);
    expect([at('vehicle.length'), at('vehicle.height'), at('vehicle.width')]).toEqual([
      6_000_000, 2_400_000, 1_700_000,
    ]);
    expect(at('vehicle.width_at_top')).toBe(1_900_000);
  });

  it('leaves out, sets and adds units by their names, numbered or all of them', () => {
    const repeated = { units: [standing('shelf', { repeat: { counter: 'i', count: written(2) } })] };
    const widths = (...changes: OrderChange[]) =>
      must(expand(repeated, changes)).units.map(({ name, placeOutside: { x } }) => [
        name,
        (x[1] - x[0]) / 1000,
      ]);
    const both = (one: number, two: number) => [
      ['shelf 1', one],
      ['shelf 2', two],
    ];
    const set = (name: string, width: Text): OrderChange => ({
      kind: 'set',
      unit: name,
      set: wishes({ width }),
      place,
    });
    expect(widths()).toEqual(both(300, 300));
    expect(widths(set('shelf', 400))).toEqual(both(400, 400));
    expect(widths(set('shelf 2', 400))).toEqual(both(300, 400));
    expect(widths({ kind: 'leave out', unit: 'shelf 1', place })).toEqual([['shelf 2', 300]]);
    expect(widths({ kind: 'leave out', unit: 'shelf', place })).toEqual([]);
    const added: OrderChange = {
      kind: 'add',
      name: 'low shelf',
      unit: 'shelf',
      at: { x: written(1), y: written(2), z: written(3) },
      facing: 'left',
      set: wishes({ width: 200 }),
      place,
    };
    expect(widths(added, set('low shelf', 250))).toEqual([...both(300, 300), ['low shelf', 250]]);
    expect(codes(expand(repeated, [set('shelf 3', 400)]))).toEqual([['unknown-unit', 'shelf 3', 'shelf 1']]);
    expect(codes(expand(repeated, [set('something else', 400)]))).toEqual([
      ['unknown-unit', 'something else', undefined],
    ]);
    expect('nearest' in expand(repeated, [set('something else', 400)]).findings[0]!).toBe(false);
    expect(codes(expand(repeated, [{ ...added, name: 'shelf 1' }]))).toEqual([
      ['name-taken', 'shelf 1', undefined],
    ]);
  });

  it('stands its units where their conditions hold, and tells what cannot be placed once', () => {
    const units = (more: Parameters<typeof standing>[1]) => expand({ units: [standing('shelf', more)] });
    expect(must(units({ when: written('1 > 2') })).units).toEqual([]);
    expect(must(units({})).units[0]!.placeOutside).toEqual({
      x: [10_000, 310_000],
      y: [20_000, 120_000],
      z: [30_000, 130_000],
    });
    expect(codes(units({ unit: 'shelv' }))).toEqual([['unknown-unit', 'shelv', 'shelf']]);
    for (const axis of ['x', 'y', 'z'] as const) {
      const at = { x: written(1), y: written(2), z: written(3), [axis]: written('nowhere') };
      expect(units({ at }).findings).toHaveLength(1);
    }
    expect(codes(units({ set: wishes({ width: 950 }) }))).toEqual([['out-of-range', '950', undefined]]);
  });

  it('is refused where a must of its layout does not hold', () => {
    const musts = [{ that: written("side == 'left'"), says: 'left only', place }];
    expect(expand({ musts }).ok).toBe(true);
    expect(expand({ musts }, [], { choices: wishes({ side: 'right' }) })).toMatchObject({
      ok: false,
      findings: [
        { code: 'must-not-met', message: 'the layout one: left only', place, expected: "side == 'left'" },
      ],
    });
  });
});
