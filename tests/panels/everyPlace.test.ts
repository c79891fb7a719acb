import { describe, expect, it } from 'vitest';
import type { ExpandedHole, ExpandedOrder, ExpandedPanel, ExpandedUnit } from '../../src/model/expanded.ts';
import type { Extent, Face } from '../../src/model/geometry.ts';
import { makePanels } from '../../src/panels/index.ts';
import { demoLibrary, demoOrder, must } from '../helpers/demoVan.ts';
import { body } from '../helpers/standing.ts';

/** Units whose boxes are written down, without formulas: sides of poplar of 16.2 mm, fronts of light ash. */

const library = demoLibrary();
const order = demoOrder(library);
const place = { file: 'test.yaml', line: 1, column: 1 };
const T = 16.2;

type Pair = readonly [number, number];
const um = ([from, to]: Pair): Extent => [Math.round(from * 1000), Math.round(to * 1000)];
const boxOf = (x: Pair, y: Pair, z: Pair) => ({ x: um(x), y: um(y), z: um(z) });

function panel(name: string, [x, y, z]: readonly [Pair, Pair, Pair], more: Partial<ExpandedPanel> = {}) {
  return {
    name,
    baseName: name,
    role: 'carcass',
    place,
    box: boxOf(x, y, z),
    grain: 'z',
    edging: [],
    cutOuts: [],
    holes: [],
    housings: [],
    match: null,
    ...more,
  } satisfies ExpandedPanel;
}

function unit(panels: readonly ExpandedPanel[], more: Partial<ExpandedUnit> = {}): ExpandedUnit {
  return {
    name: 'unit',
    unit: 'test',
    place,
    facing: 'left',
    parameters: new Map(),
    outside: boxOf([0, 600], [0, 400], [0, 500]),
    placeOutside: boxOf([0, 600], [0, 400], [0, 500]),
    panels,
    hangings: [],
    fittings: [],
    ...more,
  };
}

function make(
  units: readonly ExpandedUnit[],
  more: Partial<ExpandedOrder> = {},
  among = library,
  by = order,
) {
  const expanded = { order: 'demo', count: 1, vehicle: body([[0, 2000]]), units, ...more };
  return makePanels(expanded, by, among);
}

const side = (more: Partial<ExpandedPanel> = {}) =>
  panel(
    'side',
    [
      [0, T],
      [0, 400],
      [0, 500],
    ],
    more,
  );

describe('furniture', () => {
  it('has what is said of the order as a whole, and nothing else', () => {
    const said = { seats: 4, persons: 2, sleepingPlaces: 3, cautions: ['hot'] };
    const { order: id, count, units, ...whole } = must(make([unit([side()])], said));
    expect([id, count, units.length]).toEqual(['demo', 1, 1]);
    expect(whole).toStrictEqual(said);
    expect(Object.keys(must(make([unit([side()])])))).toEqual(['order', 'count', 'units']);
  });

  it('counts its panels through all units, and names others by their unit', () => {
    const held = {
      name: 'cooker',
      appliance: 'cooker',
      title: 'Cooker',
      massKg: 3,
      body: boxOf([0, 1], [0, 1], [0, 1]),
      through: ['side'],
      air: { in: [{ panels: ['side'], cutOut: 'vent' }], out: [{ panels: ['other'], cutOut: 'slot' }] },
      place,
    };
    const first = unit(
      [
        side({ loadKg: 25 }),
        panel('other', [
          [20, 20 + T],
          [0, 400],
          [0, 500],
        ]),
      ],
      {
        hangings: [{ panels: ['side'], on: ['other'], gapUm: 3000, place }],
        appliances: [held],
        cautions: ['hot'],
      },
    );
    const { units } = must(make([first, unit([side()], { name: 'second' })]));
    const panels = units.flatMap((one) => one.panels);
    expect(panels.map(({ id, number }) => [id, number])).toEqual([
      ['unit/side', 1],
      ['unit/other', 2],
      ['second/side', 3],
    ]);
    expect(panels.map((one) => one.loadKg)).toEqual([25, undefined, undefined]);
    expect(panels.map((one) => 'loadKg' in one)).toEqual([true, false, false]);
    expect(panels.some((one) => 'match' in one || 'edgeHoles' in one)).toBe(false);
    expect(units[0]).toMatchObject({
      hangings: [{ panels: ['unit/side'], on: ['unit/other'], gapUm: 3000, place }],
      appliances: [
        {
          ...held,
          through: ['unit/side'],
          air: {
            in: [{ panels: ['unit/side'], cutOut: 'vent' }],
            out: [{ panels: ['unit/other'], cutOut: 'slot' }],
          },
        },
      ],
      cautions: ['hot'],
    });
    expect('appliances' in units[1]! || 'cautions' in units[1]!).toBe(false);
  });

  it('lets a panel into those of a name that it reaches into, or into the first', () => {
    const into = (x: Pair) => {
      const shelf = panel('shelf', [x, [0, 400], [100, 100 + T]], {
        grain: 'x',
        housings: [{ into: ['side 1', 'side 2'], depthUm: 6000, place }],
      });
      const sides = [
        panel('side 1', [
          [0, T],
          [0, 400],
          [0, 500],
        ]),
        panel('side 2', [
          [500, 500 + T],
          [0, 400],
          [0, 500],
        ]),
      ];
      return must(make([unit([shelf, ...sides])])).units[0]!.panels[0]!.housings;
    };
    const one = { into: 'unit/side 1', depthUm: 6000 };
    const two = { into: 'unit/side 2', depthUm: 6000 };
    expect(into([10.2, 506])).toEqual([one, two]);
    expect(into([T, 506])).toEqual([two]);
    expect(into([10.2, 500])).toEqual([one]);
    expect(into([T, 500])).toEqual([one]);
  });

  it('lets a front lie anyhow that has no grain to keep in a finish that has one', () => {
    const front = (grain: 'z' | null) =>
      must(
        make([
          unit([
            panel(
              'front',
              [
                [0, 300],
                [0, T],
                [0, 500],
              ],
              { role: 'front', grain },
            ),
          ]),
        ]),
      ).units[0]!.panels[0]!.grain;
    expect([front('z'), front(null)]).toEqual(['length', 'none']);
  });
});

const hole = (from: Face, at: Partial<Record<'x' | 'y' | 'z', number>>, more: Partial<ExpandedHole> = {}) => {
  const along = (mm: number | undefined) => (mm === undefined ? null : Math.round(mm * 1000));
  return {
    name: 'hole',
    place,
    x: along(at.x),
    y: along(at.y),
    z: along(at.z),
    from,
    diameterUm: 5000,
    depthUm: 12_000,
    ...more,
  } satisfies ExpandedHole;
};

describe('a hole', () => {
  it('lies in a broad face, from the corner of its panel', () => {
    const standing = panel(
      'side',
      [
        [0, T],
        [20, 400],
        [30, 500],
      ],
      {
        holes: [hole('left', { y: 60, z: 100 })],
      },
    );
    expect(must(make([unit([standing])])).units[0]!.panels[0]!.holes).toEqual([
      {
        name: 'hole',
        alongLengthUm: 70_000,
        alongWidthUm: 40_000,
        diameterUm: 5000,
        depthUm: 12_000,
        face: 'left',
        place,
      },
    ]);
  });

  it.each([
    ['in an edge', hole('front', { x: 8, z: 100 })],
    ['in an edge, with both places on the face', hole('front', { y: 60, z: 100 })],
    ['without its place along the length', hole('left', { y: 60 })],
    ['without its place along the width', hole('left', { z: 100 })],
  ])('is refused %s', (_what, wrong) => {
    const made = make([unit([side({ holes: [wrong] })])]);
    expect(made.ok).toBe(false);
    expect(made.findings).toEqual([
      {
        code: 'hole-on-edge',
        severity: 'error',
        message: `the hole “hole” of the side of unit cannot be drilled from the ${wrong.from}: that is an edge, not a broad face`,
        place,
        found: wrong.from,
      },
    ]);
  });
});

describe('a screw', () => {
  const screw = (from: Face, at: Parameters<typeof hole>[1], lengthUm: number) =>
    hole(from, at, {
      name: 'screw',
      diameterUm: 4500,
      depthUm: null,
      screw: { fitting: 'carcass-screw', lengthUm, intoUm: 2800 },
    });
  const at = { y: 110, z: 108.1 };
  /** The holes in the panels behind a side that a screw of so many mm goes through. */
  const behind = (others: readonly ExpandedPanel[], mm = 40, more: Partial<ExpandedPanel> = {}) => {
    const held = side({ holes: [screw('left', at, mm * 1000)], ...more });
    const made = make([unit([held, ...others])]);
    const panels = must(made).units[0]!.panels.slice(1);
    return {
      edges: panels.map(({ edgeHoles }) => edgeHoles),
      faces: panels.map(({ holes }) => holes),
      codes: made.findings.map(({ code }) => code),
      found: made.findings[0]?.found,
    };
  };
  const shelf = (more: Partial<ExpandedPanel> = {}, x: Pair = [T, 516.2], y: Pair = [10, 390]) =>
    panel('shelf', [x, y, [100, 100 + T]], { grain: 'x', ...more });
  const board = (more: Partial<ExpandedPanel> = {}, x: Pair = [T, 2 * T]) =>
    panel('board', [x, [50, 350], [20, 480]], more);
  const inEdge = {
    name: 'screw',
    face: 'left',
    alongUm: 100_000,
    acrossUm: 8100,
    diameterUm: 2800,
    depthUm: 23_800,
    place,
  };

  it('holds in an edge, whichever way the grain runs', () => {
    expect(behind([shelf()]).edges).toEqual([[inEdge]]);
    expect(behind([shelf({ grain: 'y' })]).edges).toEqual([[inEdge]]);
    expect(behind([shelf()]).faces).toEqual([[]]);
  });

  it('from the other side goes the other way', () => {
    const right = panel(
      'right',
      [
        [516.2, 516.2 + T],
        [0, 400],
        [0, 500],
      ],
      {
        holes: [screw('right', at, 40_000)],
      },
    );
    const beyond = panel('beyond', [
      [533, 533 + T],
      [0, 400],
      [0, 500],
    ]);
    const made = must(make([unit([right, shelf(), beyond])])).units[0]!.panels;
    expect(made[1]!.edgeHoles).toEqual([{ ...inEdge, face: 'right' }]);
    expect(made[2]!.holes).toEqual([]);
    // A panel in front of its head, or one that ends where it begins, holds nothing.
    const alone = make([
      unit([
        right,
        panel('beyond', [
          [516.2, 616.2],
          [100, 100 + T],
          [0, 500],
        ]),
      ]),
    ]);
    expect(alone.findings.map(({ code }) => code)).toEqual(['screw-holds-nothing']);
  });

  it('goes as deep wherever its panels stand', () => {
    for (const by of [-300, 300]) {
      const held = panel(
        'side',
        [
          [by, by + T],
          [0, 400],
          [0, 500],
        ],
        {
          holes: [screw('left', at, 40_000)],
        },
      );
      // One that is let in ends within the panel that is held, and holds nothing.
      const letIn = panel('let in', [
        [by + 5, by + T],
        [101.9, 118.1],
        [0, 300],
      ]);
      const made = must(make([unit([held, letIn, shelf({}, [by + T, by + 516.2])])])).units[0]!.panels;
      expect(made.map(({ edgeHoles }) => edgeHoles)).toEqual([undefined, undefined, [inEdge]]);
      const turned = panel(
        'side',
        [
          [by, by + T],
          [0, 400],
          [0, 500],
        ],
        {
          holes: [screw('right', at, 40_000)],
        },
      );
      const inward = panel('let in', [
        [by, by + T - 5],
        [101.9, 118.1],
        [0, 300],
      ]);
      const other = must(make([unit([turned, inward, shelf({}, [by - 500, by])])])).units[0]!.panels;
      expect(other.map(({ edgeHoles }) => edgeHoles)).toEqual([
        undefined,
        undefined,
        [{ ...inEdge, face: 'right' }],
      ]);
    }
  });

  it.each([
    [30, 13_800],
    // 1.5 mm before the face behind the drill stops.
    [31.5, 14_700],
    [32.399, 14_700],
    // The screw comes out: that is for the checks to say.
    [32.4, 16_200],
    [50, 33_800],
  ])('of %f mm is bored %i µm deep into a broad face', (mm, depthUm) => {
    const own = hole('left', { y: 300, z: 300 });
    const { faces, edges } = behind([board({ holes: [own] })], mm);
    expect(edges).toEqual([undefined]);
    expect(faces[0]).toMatchObject([
      { name: 'hole' },
      {
        name: 'screw',
        alongLengthUm: 88_100,
        alongWidthUm: 60_000,
        diameterUm: 2800,
        depthUm,
        face: 'left',
        place,
      },
    ]);
  });

  it('holds in the nearest panel, wherever that is listed', () => {
    const far = board({ name: 'far' }, [20, 20 + T]);
    expect(behind([far, board()]).faces.map((holes) => holes.length)).toEqual([0, 1]);
    expect(behind([board(), far]).faces.map((holes) => holes.length)).toEqual([1, 0]);
  });

  it.each<[string, ExpandedPanel[], number]>([
    ['where none is', [], 40],
    ['where it is too short', [shelf()], 16.2],
    ['at the near end of one', [shelf({}, [T, 516.2], [110, 390])], 40],
    ['at the far end of one', [shelf({}, [T, 516.2], [10, 110])], 40],
    ['beside one', [shelf({}, [T, 516.2], [200, 390])], 40],
    [
      'above one',
      [
        panel(
          'low',
          [
            [T, 516.2],
            [10, 390],
            [0, T],
          ],
          { grain: 'x' },
        ),
      ],
      40,
    ],
    [
      'in one that begins with its own panel',
      [
        panel('upright', [
          [0, 300],
          [101.9, 118.1],
          [0, 300],
        ]),
      ],
      40,
    ],
    [
      'in one that ends with its own panel',
      [
        panel('let in', [
          [5, T],
          [101.9, 118.1],
          [0, 300],
        ]),
      ],
      40,
    ],
  ])('holds nothing %s', (_what, others, mm) => {
    const { codes, edges, found } = behind(others, mm);
    expect(codes).toEqual(['screw-holds-nothing']);
    expect(found).toBe(`${mm.toFixed(1)} mm long, from the left`);
    expect(edges.every((holes) => holes === undefined)).toBe(true);
  });

  it('from an edge is wrong once', () => {
    const made = make([unit([side({ holes: [screw('front', { x: 8, z: 108.1 }, 40_000)] }), shelf()])]);
    expect(made.findings.map(({ code }) => code)).toEqual(['hole-on-edge']);
  });
});

describe('a row of fronts', () => {
  const front = (name: string, x: Pair, more: Partial<ExpandedPanel> = {}, z: Pair = [0, 300]) =>
    panel(name, [x, [0, T], z], { role: 'front', match: 'row', ...more });
  const boards = new Map(library.boards);
  const finishes = new Map(library.finishes);
  const roles = new Map(order.roles);
  const own = order.roles.get('front')!;
  boards.set('other', { ...boards.get(own.board)!, id: 'other' });
  finishes.set('other', { ...finishes.get(own.finish)!, id: 'other' });
  roles.set('other board', { ...own, board: 'other' });
  roles.set('other finish', { ...own, finish: 'other' });
  const row = (...fronts: ExpandedPanel[]) => {
    const made = make([unit(fronts)], {}, { ...library, boards, finishes }, { ...order, roles });
    if (!made.ok) return made.findings.map(({ code, found }) => [code, found]);
    return made.value.units[0]!.panels.map(({ match }) => match && [match.position, match.follows]);
  };
  const broken = (found: string) => [['row-broken', found]];

  it('is counted from its low end, in whichever order it is listed', () => {
    const [a, b, c] = [front('a', [0, 300]), front('b', [303, 600]), front('c', [603, 800])];
    const across = (...positions: number[]) => positions.map((position) => [position, 'width']);
    expect(row(a, b, c)).toEqual(across(0, 1, 2));
    expect(row(c, b, a)).toEqual(across(2, 1, 0));
    expect(row(b, c, a)).toEqual(across(1, 2, 0));
    expect(row(a, front('b', [0, 300], {}, [303, 600]))).toEqual([
      [0, 'length'],
      [1, 'length'],
    ]);
  });

  it('may overlap a little, but none lies within another', () => {
    expect(row(front('a', [0, 300]), front('b', [299, 600]))).toEqual([
      [0, 'width'],
      [1, 'width'],
    ]);
    expect(row(front('a', [0, 300]), front('b', [100, 300]))).toEqual(broken('a, b'));
    expect(row(front('a', [0, 300]), front('b', [0, 400]))).toEqual(broken('a, b'));
    expect(row(front('a', [0, 300]), front('b', [100, 200]))).toEqual(broken('a, b'));
  });

  it('is of one kind and in one plane, all of it', () => {
    const [a, b] = [front('a', [0, 300]), front('b', [303, 600])];
    const third = (more: Partial<ExpandedPanel>) => row(a, b, front('c', [603, 900], more));
    expect(third({ grain: 'x' })).toEqual(broken('a, b, c'));
    expect(third({ role: 'other board' })).toEqual(broken('a, b, c'));
    expect(third({ role: 'other finish' })).toEqual(broken('a, b, c'));
    expect(third({ box: boxOf([603, 900], [5, 5 + T], [0, 300]) })).toEqual(broken('a, b, c'));
    // One across whose broad face begins where the others' do.
    const across = panel(
      'c',
      [
        [0, T],
        [0, 300],
        [0, 300],
      ],
      { role: 'front', match: 'row' },
    );
    expect(row(front('a', [-310, -10]), across)).toEqual(broken('a, c'));
  });

  it('needs two with grain', () => {
    expect(row(front('a', [0, 300]))).toEqual([undefined]);
    expect(row(front('a', [0, 300]), front('b', [303, 600], { grain: null }))).toEqual([
      undefined,
      undefined,
    ]);
  });
});
