import { describe, expect, it } from 'vitest';
import type { FormulaValue } from '../../src/basics/formulas.ts';
import type { Finding } from '../../src/model/finding.ts';
import type {
  Appliance,
  ApplianceUse,
  DrillingPattern,
  Library,
  UnitDefinition,
  UnitUse,
} from '../../src/model/library.ts';
import { expandUnit } from '../../src/units/expandUnit.ts';
import { demoLibrary } from '../helpers/demoVan.ts';
import { type HoleText, type PanelText, unit, withUnits, written } from '../helpers/handBuilt.ts';

/** Units written down in place, each formula of them tried by itself. */

const demo = demoLibrary();
const place = { file: 'units/test.yaml', line: 1, column: 1 };
const constants = new Map<string, FormulaValue>([['thickness.carcass', 16.2]]);
const board: PanelText = { x: [0, 16.2], y: [0, 100], z: [0, 100], grain: 'z' };
/** A name that no formula knows: what uses it comes to nothing. */
const UNKNOWN = 'nowhere';

const cooker: Appliance = {
  id: 'cooker',
  title: 'Cooker',
  widthUm: 300_000,
  depthUm: 200_000,
  heightUm: 100_000,
  clearUm: { left: 1000, right: 2000, front: 3000, back: 4000, above: 5000, below: 6000 } as never,
  door: null,
  airCm2: { in: 15, out: 25 },
  massKg: 4.5,
  cautions: ['hot'],
};

const library: Library = {
  ...demo,
  units: new Map(),
  appliances: new Map([['cooker', cooker]]),
  fittings: new Map([
    ['screw', { screw: { lengthUm: 40_000, throughUm: 4500, intoUm: 2800 } } as never],
    ['plain', {} as never],
  ]),
  drilling: new Map<string, DrillingPattern>([['cup', { id: 'cup', title: 'Cup', holes: [] }]]),
};

type More = Partial<UnitDefinition>;
const named = (id: string, panels: Record<string, PanelText>, more: More = {}) =>
  unit(id, [100, 100, 100], panels, more);

function expand(panels: Record<string, PanelText>, more: More = {}, inner: readonly UnitDefinition[] = []) {
  const findings: Finding[] = [];
  const body = expandUnit(
    { definition: named('test', panels, more), asked: [], name: 'test', within: [] },
    { library: withUnits(library, ...inner), constants, findings },
  );
  return { body, findings, codes: findings.map(({ code }) => code) };
}

const use = (name: string, of: string, more: Partial<UnitUse> = {}): UnitUse => ({
  name,
  place,
  unit: of,
  at: { x: written(0), y: written(0), z: written(0) },
  facing: 'front',
  set: new Map(),
  when: null,
  repeat: null,
  ...more,
});

describe('a panel', () => {
  const wall = (allowance: string | number) => {
    const { body, findings } = expand({ side: { ...board, followsWall: { back: allowance } } });
    return [body.panels[0]!.followsWall?.map(({ face, allowanceUm }) => [face, allowanceUm]), findings];
  };

  it('follows the wall with an allowance of 0 to 50 mm', () => {
    expect(wall(0)).toEqual([[['back', 0]], []]);
    expect(wall(50)).toEqual([[['back', 50_000]], []]);
    expect(wall(50.1)).toEqual([
      undefined,
      [
        {
          code: 'out-of-range',
          severity: 'error',
          message: 'the allowance for scribing the side comes to 50.1 mm; it may go from 0 up to 50.0 mm',
          place,
          found: '50.1',
        },
      ],
    ]);
    expect(wall('0 - 1')[0]).toBeUndefined();
    expect(wall(UNKNOWN)[1]).toHaveLength(1);
    expect('followsWall' in expand({ side: board }).body.panels[0]!).toBe(false);
  });

  it('bears a load of 0 to 2000 kg', () => {
    const load = (text: string | number) => {
      const { body, findings } = expand({ side: { ...board, load: text } });
      return [body.panels[0]!.loadKg, findings.map(({ message, found }) => [message, found])];
    };
    expect(load(0)).toEqual([0, []]);
    expect(load(2000)).toEqual([2000, []]);
    const range = 'it may go from 0 up to 2000 kg';
    expect(load(2001)).toEqual([undefined, [[`the load on the side comes to 2001 kg; ${range}`, '2001']]]);
    expect(load('0 - 5')).toEqual([undefined, [[`the load on the side comes to -5 kg; ${range}`, '0 - 5']]]);
    expect(expand({ side: { ...board, load: UNKNOWN } }).findings).toHaveLength(1);
    expect('loadKg' in expand({ side: board }).body.panels[0]!).toBe(false);
  });

  it('is there when its condition holds, and has a size along each side', () => {
    expect(expand({ side: { ...board, when: '1 > 2' } }).body.panels).toEqual([]);
    expect(expand({ side: { ...board, when: '2 > 1' } }).body.panels).toHaveLength(1);
    for (const axis of ['x', 'y', 'z'] as const) {
      const { body, findings } = expand({ side: { ...board, [axis]: [5, 5] } });
      expect(body.panels).toEqual([]);
      expect(findings).toEqual([
        {
          code: 'nothing-left',
          severity: 'error',
          message: `the panel “side” in test has no ${axis}-size left: it runs from 5.0 to 5.0 mm`,
          place,
          found: '[5, 5]',
          advice: 'the second figure must be greater than the first',
        },
      ]);
      // One that cannot be worked out is told once.
      expect(expand({ side: { ...board, [axis]: [0, UNKNOWN] } }).codes).toHaveLength(1);
      expect(expand({ side: { ...board, [axis]: [UNKNOWN, 5] } }).body.panels).toEqual([]);
    }
  });

  it('is let into others by their names, numbered or all of them', () => {
    const sides: PanelText = { ...board, repeat: ['i', 2] };
    const into = (name: string, depth: string | number = 6) => {
      const { body, findings } = expand({
        side: sides,
        gone: { ...board, when: '1 > 2' },
        shelf: { ...board, letInto: { [name]: depth } },
      });
      const housings = body.panels.at(-1)!.housings.map(({ into, depthUm }) => [into, depthUm]);
      return [housings, findings.map(({ code, found, nearest }) => [code, found, nearest])];
    };
    expect(into('side')).toEqual([[[['side 1', 'side 2'], 6000]], []]);
    expect(into('side 2')).toEqual([[[['side 2'], 6000]], []]);
    // One that is left out now is known all the same.
    expect(into('gone')).toEqual([[], []]);
    expect(into('sidd 2')).toEqual([[], [['unknown-panel', 'sidd 2', 'side 2']]]);
    expect(into('something else')).toEqual([[], [['unknown-panel', 'something else', undefined]]]);
    expect(into('side', UNKNOWN)).toEqual([[], [expect.anything()]]);
  });

  it('is held by others across a gap', () => {
    const held = (name: string, gap: string | number) => {
      const { body, codes } = expand({ side: board, door: { ...board, heldBy: { [name]: gap } } });
      return [body.hangings.map(({ panels, on, gapUm }) => [panels, on, gapUm]), codes.length];
    };
    expect(held('side', 1)).toEqual([[[['door'], ['side'], 1000]], 0]);
    expect(held('side', UNKNOWN)).toEqual([[], 1]);
    expect(held('something else', 1)).toEqual([[], 1]);
  });

  it('has its openings where their conditions hold', () => {
    const cut = (hole: NonNullable<PanelText['cutOuts']>[string], when?: string) => {
      const definition = named('test', { side: { ...board, cutOuts: { hole } } });
      const cutOuts = definition.panels[0]!.cutOuts.map((one) => ({
        ...one,
        when: when === undefined ? null : written(when),
      }));
      const { body, codes } = expand({}, { panels: [{ ...definition.panels[0]!, cutOuts }] });
      return [body.panels[0]!.cutOuts.map(({ name, x, y, z }) => [name, x, y, z]), codes.length];
    };
    const whole = [['hole', null, [10_000, 20_000], [30_000, 40_000]]];
    expect(cut({ y: [10, 20], z: [30, 40] })).toEqual([whole, 0]);
    expect(cut({ y: [10, 20], z: [30, 40] }, '2 > 1')).toEqual([whole, 0]);
    expect(cut({ y: [10, 20], z: [30, 40] }, '1 > 2')).toEqual([[], 0]);
    expect(cut({ y: [10, 20], z: [30, 30] })).toEqual([[], 1]);
  });
});

describe('a hole', () => {
  const drilled = (hole: HoleText) => {
    const { body, findings } = expand({ side: { ...board, holes: { hole } } });
    return [body.panels[0]!.holes, findings.map(({ code, found, nearest }) => [code, found, nearest])];
  };
  const at = { y: 50, z: 60 };
  const middle = { name: 'hole', x: null, y: 50_000, z: 60_000, from: 'left' };

  it('goes as deep as it says, or right through', () => {
    const bored = (depthUm: number | null) => [
      expect.objectContaining({ ...middle, diameterUm: 5000, depthUm }),
    ];
    expect(drilled({ at, from: 'left', bore: [5, 12] })).toEqual([bored(12_000), []]);
    expect(drilled({ at, from: 'left', bore: [5, 'through'] })).toEqual([bored(null), []]);
    expect(drilled({ at, from: 'left', bore: [0, 12] })).toEqual([[], [['hole-wrong', '0', undefined]]]);
    expect(drilled({ at, from: 'left', bore: [5, 0] })).toEqual([[], [['hole-wrong', '0', undefined]]]);
  });

  it.each<[string, HoleText]>([
    ['place', { at: { y: UNKNOWN, z: 60 }, from: 'left', bore: [5, 12] }],
    ['other place', { at: { y: 50, z: UNKNOWN }, from: 'left', bore: [5, 12] }],
    ['diameter', { at, from: 'left', bore: [UNKNOWN, 12] }],
    ['depth', { at, from: 'left', bore: [5, UNKNOWN] }],
  ])('is left out where its %s cannot be worked out, which is told once', (_what, hole) => {
    const [holes, findings] = drilled(hole);
    expect(holes).toEqual([]);
    expect(findings).toHaveLength(1);
  });

  it('for a screw is as wide as the screw asks, right through', () => {
    expect(drilled({ at, from: 'left', screw: 'screw' })).toEqual([
      [
        expect.objectContaining({
          ...middle,
          diameterUm: 4500,
          depthUm: null,
          screw: { fitting: 'screw', lengthUm: 40_000, intoUm: 2800 },
        }),
      ],
      [],
    ]);
    for (const fitting of ['plain', 'none'])
      expect(drilled({ at, from: 'left', screw: fitting })).toEqual([[], [['no-screw', fitting, undefined]]]);
  });

  it('of a pattern that is not there is told with the nearest one', () => {
    const pattern = (name: string) => drilled({ at, from: 'left', pattern: [name, 'top'] })[1];
    expect(pattern('cap')).toEqual([['unknown-pattern', 'cap', 'cup']]);
    expect(pattern('something else')).toEqual([['unknown-pattern', 'something else', undefined]]);
    const told = expand({
      side: { ...board, holes: { h: { at, from: 'left', pattern: ['dowels', 'top'] } } },
    });
    expect('nearest' in told.findings[0]!).toBe(false);
  });

  it('is one of at most 10,000 of a unit', () => {
    const many = (count: number) => {
      const rows = Math.ceil(count / 200);
      const holes = Object.fromEntries(
        Array.from({ length: rows }, (_, row) => [
          `row ${row} x`,
          {
            at,
            from: 'left' as const,
            bore: [5, 12] as const,
            repeat: ['i', Math.min(200, count - 200 * row)] as const,
          },
        ]),
      );
      const { body, codes, findings } = expand({ side: { ...board, holes } });
      return [body.panels[0]!.holes.length, codes, findings[0]?.message];
    };
    expect(many(10_000)).toEqual([10_000, [], undefined]);
    expect(many(10_001)).toEqual([0, ['too-many-holes'], 'test has more than 10000 holes']);
    const twice = Object.fromEntries(
      Array.from({ length: 51 }, (_, row) => [
        `row ${row} x`,
        { at, from: 'left' as const, bore: [5, 12] as const, repeat: ['i', 200] as const },
      ]),
    );
    const both = expand({
      a: { ...board, holes: twice },
      b: { ...board, holes: twice },
      c: { ...board, when: UNKNOWN },
    });
    expect(both.codes.filter((code) => code === 'too-many-holes')).toHaveLength(1);
  });
});

describe('units inside a unit', () => {
  const drawer = named(
    'drawer',
    {
      side: {
        ...board,
        holes: { pin: { at: { y: 50, z: 60 }, from: 'left', bore: [5, 12] } },
        cutOuts: { slot: { y: [10, 20], z: [30, 40] } },
      },
      shelf: { ...board, letInto: { side: 4 }, heldBy: { side: 2 } },
    },
    {
      fittings: [{ fitting: 'pull', count: written(2), when: null, place }],
      cautions: [{ caution: 'heavy', when: null, place }],
    },
  );
  const outer = (more: Partial<UnitUse> = {}, wall: Record<string, PanelText> = { wall: board }) =>
    expand(
      wall,
      {
        units: [use('box', 'drawer', { at: { x: written(7), y: written(8), z: written(9) }, ...more })],
        fittings: [{ fitting: 'pull', count: written(1), when: null, place }],
        cautions: [{ caution: 'sharp', when: null, place }],
      },
      [drawer],
    );

  it('are moved with all that they have, under both names', () => {
    const { body, findings } = outer({ heldBy: [{ panel: 'wall', gap: written(3), place }] });
    expect(findings).toEqual([]);
    expect(body.panels.map(({ name, baseName }) => [name, baseName])).toEqual([
      ['wall', 'wall'],
      ['box side', 'box side'],
      ['box shelf', 'box shelf'],
    ]);
    const [, side, shelf] = body.panels;
    expect(side!.box).toEqual({ x: [7000, 23_200], y: [8000, 108_000], z: [9000, 109_000] });
    expect(side!.cutOuts).toMatchObject([
      { name: 'slot', x: null, y: [18_000, 28_000], z: [39_000, 49_000] },
    ]);
    expect(side!.holes).toMatchObject([{ x: null, y: 58_000, z: 69_000 }]);
    expect(shelf!.housings).toMatchObject([{ into: ['box side'], depthUm: 4000 }]);
    expect(body.hangings.map(({ panels, on, gapUm }) => [panels, on, gapUm])).toEqual([
      [['box shelf'], ['box side'], 2000],
      [['box side', 'box shelf'], ['wall'], 3000],
    ]);
    expect(body.fittings).toEqual([{ fitting: 'pull', count: 3 }]);
    expect(body.cautions).toEqual(['heavy', 'sharp']);
  });

  it('are there when their condition holds and their place is known', () => {
    const names = (more: Partial<UnitUse>) => outer(more).body.panels.length;
    expect(names({})).toBe(3);
    expect(names({ when: written('1 > 2') })).toBe(1);
    for (const axis of ['x', 'y', 'z'] as const) {
      const at = { x: written(7), y: written(8), z: written(9), [axis]: written(UNKNOWN) };
      expect(names({ at })).toBe(1);
    }
    const flat = { ...drawer, outside: { ...drawer.outside, x: [written(5), written(5)] as const } };
    expect(expand({ wall: board }, { units: [use('box', 'drawer')] }, [flat]).body.panels).toHaveLength(1);
  });

  it('are told where the library has none of that name', () => {
    const told = (name: string) =>
      outer({ unit: name }).findings.map(({ code, message, found, nearest }) => [
        code,
        message,
        found,
        nearest,
      ]);
    expect(told('drawr')).toEqual([['unknown-unit', 'the library has no unit “drawr”', 'drawr', 'drawer']]);
    expect(told('something-else')[0]![3]).toBeUndefined();
    expect('nearest' in outer({ unit: 'something-else' }).findings[0]!).toBe(false);
  });

  it('take the values that they are given', () => {
    const wide = named(
      'wide',
      { shelf: { ...board, y: [0, 'width'] } },
      {
        parameters: [
          { kind: 'length', name: 'width', default: written(50), least: null, most: null, note: '', place },
        ],
      },
    );
    const { body } = expand(
      {},
      { units: [use('box', 'wide', { set: new Map([['width', written('40 + 5')]]) })] },
      [wide],
    );
    expect(body.panels[0]!.box.y).toEqual([0, 45_000]);
  });

  it('lie in each other eight deep and no deeper, nor in a circle', () => {
    const chain = (length: number) =>
      Array.from({ length }, (_, index) =>
        named(`u${index}`, index === length - 1 ? { end: board } : {}, {
          units: index === length - 1 ? [] : [use('in', `u${index + 1}`)],
        }),
      );
    // The outermost one counts.
    const deep = (length: number) => expand({}, { units: [use('in', 'u0')] }, chain(length));
    expect(deep(7).findings).toEqual([]);
    expect(deep(7).body.panels).toHaveLength(1);
    expect(deep(8).findings.map(({ message }) => message)).toEqual([
      'units are inside each other too deeply: test → u0 → u1 → u2 → u3 → u4 → u5 → u6 → u7',
    ]);
    const [a, b] = [named('a', {}, { units: [use('in', 'b')] }), named('b', {}, { units: [use('in', 'a')] })];
    expect(expand({}, { units: [use('in', 'a')] }, [a, b]).findings.map(({ message }) => message)).toEqual([
      'units are inside each other in a circle: a → b → a',
    ]);
  });

  it('have at most 2000 panels together', () => {
    const rows = (count: number) =>
      Object.fromEntries(
        Array.from({ length: Math.ceil(count / 200) }, (_, row) => [
          `row ${row} x`,
          { ...board, repeat: ['i', Math.min(200, count - 200 * row)] as const },
        ]),
      );
    const own = (count: number) => {
      const { body, codes, findings } = expand(rows(count));
      return [body.panels.length, codes, findings[0]?.message, findings[0]?.place];
    };
    expect(own(2000)).toEqual([2000, [], undefined, undefined]);
    expect(own(2002)).toEqual([
      2000,
      ['too-many-panels'],
      'test has more than 2000 panels',
      { file: 'units/test.yaml' },
    ]);
    const inner = expand(rows(1999), { units: [use('box', 'drawer')] }, [drawer]);
    expect([inner.body.panels.length, inner.codes]).toEqual([2000, ['too-many-panels']]);
    // Other findings do not keep it from being told.
    const besides = expand({ ...rows(2001), last: { ...board, x: [5, 5] } });
    expect(besides.codes).toEqual(['too-many-panels', 'nothing-left']);
  });
});

describe('fittings and cautions', () => {
  it('are counted where their conditions hold', () => {
    const fitting = (name: string, count: string | number, when?: string) => ({
      fitting: name,
      count: written(count),
      when: when === undefined ? null : written(when),
      place,
    });
    const { body, codes } = expand(
      {},
      {
        fittings: [
          fitting('hinge', 2),
          fitting('hinge', '1 + 1'),
          fitting('pull', 0),
          fitting('lock', 1, '1 > 2'),
          fitting('latch', 1, '2 > 1'),
          fitting('hook', 100_000),
          fitting('wrong', UNKNOWN),
          fitting('many', 100_001),
        ],
      },
    );
    expect(body.fittings).toEqual([
      { fitting: 'hinge', count: 4 },
      { fitting: 'latch', count: 1 },
      { fitting: 'hook', count: 100_000 },
    ]);
    expect(codes).toHaveLength(2);
  });

  it('of screws are counted from the holes that name them, with those that the unit says the place of', () => {
    const screwed = {
      ...board,
      holes: { h: { at: { y: 50, z: 60 }, from: 'left' as const, screw: 'screw' } },
    };
    const use = { fitting: 'screw', count: written(4), when: null, place };
    const counted = (more: More) => {
      const { body, findings } = expand({ side: { ...screwed, repeat: ['i', 3] } }, more);
      return [body.fittings, findings];
    };
    expect(counted({})).toEqual([[{ fitting: 'screw', count: 3, inHoles: 3 }], []]);
    expect(counted({ fittings: [{ ...use, where: 'through the floor' }] })).toEqual([
      [{ fitting: 'screw', count: 7, inHoles: 3, where: ['through the floor'] }],
      [],
    ]);
    expect(counted({ fittings: [use] })).toEqual([
      [{ fitting: 'screw', count: 7, inHoles: 3 }],
      [
        expect.objectContaining({
          code: 'screw-counted-twice',
          severity: 'warning',
          message:
            '4 of “screw” come to the 3 that go through holes of the unit, and nothing says where they go',
          place,
        }),
      ],
    ]);
    expect(counted({ fittings: [{ ...use, count: written(0) }] })[1]).toEqual([]);
  });

  it('are said once each', () => {
    const caution = (name: string, when?: string) => ({
      caution: name,
      when: when === undefined ? null : written(when),
      place,
    });
    const cautions = [caution('hot'), caution('sharp', '1 > 2'), caution('heavy', '2 > 1'), caution('hot')];
    expect(expand({}, { cautions }).body.cautions).toEqual(['hot', 'heavy']);
    expect(expand({}).body.cautions).toEqual([]);
  });
});

describe('the order in which a unit goes together', () => {
  const step = (way: 'put' | 'apart' | 'hang', ...names: string[]) => ({
    way,
    names: names.map((name) => ({ name, place })),
  });
  const box = named('box', { bottom: board, rear: { ...board, when: '1 > 2' }, lid: board });
  const use = {
    name: 'drawer',
    place,
    unit: 'box',
    at: { x: written(0), y: written(0), z: written(0) },
    facing: 'front' as const,
    set: new Map(),
    when: null,
    repeat: { counter: 'i', count: written(2) },
  };

  it('has the panels that there are, repeated ones and whole units together', () => {
    const { body, findings } = expand(
      { side: { ...board, repeat: ['i', 2] }, top: { ...board, when: '1 > 2' } },
      {
        units: [use],
        assembly: [
          step('put', 'side', 'top'),
          step('hang', 'top', 'drawer rear'),
          step('apart', 'drawer'),
          step('hang', 'drawer lid'),
        ],
      },
      [box],
    );
    expect(findings).toEqual([]);
    expect(body.assembly).toEqual([
      { way: 'put', panels: ['side 1', 'side 2'] },
      { way: 'apart', panels: ['drawer 1 bottom', 'drawer 2 bottom'] },
      { way: 'hang', panels: ['drawer 1 lid', 'drawer 2 lid'] },
    ]);
    expect(expand({ side: board }).body).not.toHaveProperty('assembly');
  });

  it('takes for a unit inside no panel that is only called alike', () => {
    const { body } = expand(
      { 'drawer side': board },
      { units: [use], assembly: [step('apart', 'drawer'), step('put', 'drawer side')] },
      [box],
    );
    expect(body.assembly!.map(({ panels }) => panels.length)).toEqual([4, 1]);
    const alike = { ...use, name: 'drawer box', repeat: null };
    const both = expand(
      {},
      { units: [use, alike], assembly: [step('apart', 'drawer'), step('hang', 'drawer box')] },
      [box],
    );
    expect(both.body.assembly!.map(({ panels }) => panels)).toEqual([
      ['drawer 1 bottom', 'drawer 1 lid', 'drawer 2 bottom', 'drawer 2 lid'],
      ['drawer box bottom', 'drawer box lid'],
    ]);
  });
});

describe('an appliance', () => {
  const held = (more: Partial<ApplianceUse> = {}): ApplianceUse => ({
    name: 'hob',
    place,
    appliance: written('cooker'),
    at: { x: written(10), y: written(20), z: written(30) },
    when: null,
    through: [{ panel: 'top', place }],
    air: { in: [{ panel: 'side', cutOut: 'vent', place }], out: [{ panel: 'top', cutOut: 'slot', place }] },
    ...more,
  });
  const panels = { side: { ...board, repeat: ['i', 2] as const }, top: board };
  const hold = (more: Partial<ApplianceUse> = {}, others: More = {}) =>
    expand(panels, { appliances: [held(more)], ...others });

  it('stands where its unit says, as large as it is, with its cautions', () => {
    const { body, findings } = hold();
    expect(findings).toEqual([]);
    expect(body.appliances).toEqual([
      {
        name: 'hob',
        appliance: 'cooker',
        title: 'Cooker',
        massKg: 4.5,
        body: { x: [10_000, 310_000], y: [20_000, 220_000], z: [30_000, 130_000] },
        through: ['top'],
        air: {
          in: [{ panels: ['side 1', 'side 2'], cutOut: 'vent' }],
          out: [{ panels: ['top'], cutOut: 'slot' }],
        },
        place,
      },
    ]);
    expect(body.cautions).toEqual(['hot']);
  });

  it('goes with the unit that it is in', () => {
    const galley = named('galley', panels, { appliances: [held()] });
    const at = { x: written(1), y: written(2), z: written(3) };
    const { body } = expand({}, { units: [use('left', 'galley', { at })] }, [galley]);
    expect(body.appliances).toMatchObject([
      {
        name: 'left hob',
        body: { x: [11_000, 311_000], y: [22_000, 222_000], z: [33_000, 133_000] },
        through: ['left top'],
        air: {
          in: [{ panels: ['left side 1', 'left side 2'], cutOut: 'vent' }],
          out: [{ panels: ['left top'], cutOut: 'slot' }],
        },
      },
    ]);
    expect(body.cautions).toEqual(['hot']);
  });

  it('is named by a word or by a formula', () => {
    const names = new Map([['which', written("'cooker'")]]);
    expect(hold({ appliance: written('which') }, { names }).body.appliances).toHaveLength(1);
    expect(hold({ appliance: written(' cooker ') }).body.appliances).toHaveLength(1);
    const unknown = hold({ appliance: written('cookers') });
    expect(unknown.body.appliances).toEqual([]);
    expect(unknown.findings).toEqual([
      {
        code: 'unknown-appliance',
        severity: 'error',
        message: 'the library has no appliance “cookers”',
        place,
        found: 'cookers',
        nearest: 'cooker',
      },
    ]);
    expect('nearest' in hold({ appliance: written('refrigerator') }).findings[0]!).toBe(false);
    const wrong = hold({ appliance: written('1 +') });
    expect([wrong.body.appliances, wrong.findings.length]).toEqual([[], 1]);
  });

  it('is there when its condition holds and its place is known', () => {
    expect(hold({ when: written('1 > 2') }).body.appliances).toEqual([]);
    expect(hold({ when: written('2 > 1') }).body.appliances).toHaveLength(1);
    for (const axis of ['x', 'y', 'z'] as const) {
      const at = { x: written(10), y: written(20), z: written(30), [axis]: written(UNKNOWN) };
      const { body, findings } = hold({ at });
      expect([body.appliances, body.cautions, findings.length]).toEqual([[], [], 1]);
    }
  });
});
