import { beforeAll, describe, expect, it } from 'vitest';
import {
  alone,
  demoLibrary,
  demoOrder,
  type Furnished,
  furnish,
  messages,
  panelOf,
} from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);
let furnished: Furnished;
beforeAll(() => {
  furnished = furnish(order, library);
});

function made(
  panels: Record<string, PanelText>,
  size: readonly [number, number, number] = [1000, 1000, 1000],
) {
  return alone('test', {}, withUnits(library, unit('test', size, panels)), order);
}

describe('makePanels', () => {
  it('tells the sizes of a side apart by its board and grain, by hand', () => {
    // wardrobe: 1750 high, 650 deep where the wall is furthest out, less front 16.2 and buffer 1; sawn 1 mm narrower for
    // the edging in front and 15 mm wider for scribing at the back
    const side = panelOf(furnished, 'wardrobe', 'left side');
    expect(side).toMatchObject({
      id: 'wardrobe/left side',
      unit: 'wardrobe',
      order: 'demo-long',
      board: 'poplar-15',
      finish: 'pale-grey',
      thicknessUm: 16_200,
      finishedLengthUm: 1_750_000,
      finishedWidthUm: 632_800,
      cutLengthUm: 1_750_000,
      cutWidthUm: 646_800,
      // Pale grey has no direction to keep.
      grain: 'none',
      edging: { alongLength: ['pale-grey-19', null], alongWidth: [null, null] },
      lengthAxis: 'z',
      widthAxis: 'y',
      thicknessAxis: 'x',
      count: 1,
    });
  });

  it('edges a door all round and keeps its grain', () => {
    const door = panelOf(furnished, 'base cupboard', 'door');
    // 380 − 3 = 377 wide; 828.4 − 60 − 3 = 765.4 high
    expect(door).toMatchObject({
      finishedLengthUm: 765_400,
      finishedWidthUm: 377_000,
      cutLengthUm: 763_400,
      cutWidthUm: 375_000,
      grain: 'length',
    });
    expect(door.edges.map((edge) => [edge.face, edge.edging, edge.lengthUm])).toEqual([
      ['left', 'light-ash-19', 765_400],
      ['right', 'light-ash-19', 765_400],
      ['bottom', 'light-ash-19', 377_000],
      ['top', 'light-ash-19', 377_000],
    ]);
    // core 0.7634 · 0.375 m² · 8.21 kg/m² + 2 · (0.7654 + 0.377) m · 0.021 kg/m
    expect(door.massKg).toBeCloseTo(0.7634 * 0.375 * 8.21 + 2 * (0.7654 + 0.377) * 0.021, 12);
  });

  it('puts openings into the panel’s own plane and takes them off its mass', () => {
    const top = panelOf(furnished, 'galley worktop', 'top');
    // 1450 long; the opening of the sink 270 × 350 in the middle of its cupboard at 400 + 550 / 2, of the hob 360 × 360 at 1450 − 250
    expect(top.cutOuts).toEqual([
      { name: 'sink', alongLength: [540_000, 810_000], alongWidth: [100_000, 450_000] },
      { name: 'hob', alongLength: [1_020_000, 1_380_000], alongWidth: [95_000, 455_000] },
    ]);
    expect(top.massKg).toBeCloseTo(
      (1.448 * 0.539 - 0.27 * 0.35 - 0.36 * 0.36) * 10.88 + (1.45 + 2 * 0.54) * 0.028,
      12,
    );
  });

  it('says where openings lie on the sawn part, and what of them is kept when the order says so', () => {
    const worktop = unit('test', [1000, 600, 21.6], {
      top: {
        role: 'worktop',
        x: [0, 1000],
        y: [0, 600],
        z: [0, 21.6],
        grain: 'x',
        edging: 'all',
        cutOuts: {
          hob: { x: [100, 560.5], y: [85, 485] },
          tap: { x: [700, 740], y: [500, 540] },
          notch: { x: [900, 1000], y: [0, 100] },
        },
      },
    });
    const opened = (cutOutPieces: 'kept' | 'waste') =>
      alone('test', {}, withUnits(library, worktop), { ...order, cutOutPieces }).unit!.panels[0]!.byHand;
    // Sawn 1 mm inside the finished panel on every side; a notch at the edge ends where the sawn part does.
    const openings = [
      { name: 'hob', alongLength: [99_000, 559_500], alongWidth: [84_000, 484_000] },
      { name: 'tap', alongLength: [699_000, 739_000], alongWidth: [499_000, 539_000] },
      { name: 'notch', alongLength: [899_000, 998_000], alongWidth: [0, 99_000] },
    ];
    expect(opened('waste')).toEqual({ openings });
    // 10 mm go on each side to square it up; the saw of the order keeps what is 400 × 200 or more.
    const kept = { lengthUm: 440_500, widthUm: 380_000 };
    expect(opened('kept')).toEqual({ openings: [{ ...openings[0], kept }, ...openings.slice(1)] });
  });

  it('orders rows of fronts along the way they follow each other', () => {
    const places = (unitName: string, names: string[]) =>
      names.map((name) => panelOf(furnished, unitName, name).match);
    expect(places('galley drawers', ['drawer front 1', 'drawer front 2'])).toEqual([
      { run: 'galley drawers fronts', position: 0, follows: 'length' },
      { run: 'galley drawers fronts', position: 1, follows: 'length' },
    ]);
    expect(places('sink cupboard', ['right door', 'left door'])).toEqual([
      { run: 'sink cupboard doors', position: 1, follows: 'width' },
      { run: 'sink cupboard doors', position: 0, follows: 'width' },
    ]);
    expect(places('galley locker', ['front 2'])).toEqual([
      { run: 'galley locker fronts', position: 1, follows: 'length' },
    ]);
    // A row of one needs no matching, nor does a finish without grain.
    expect(panelOf(furnished, 'rear locker', 'left front 1').match).toMatchObject({
      run: 'rear locker fronts',
    });
    const plain = { ...order.roles.get('front')!, finish: 'pale-grey', edging: 'pale-grey-19' };
    const grey = furnish({ ...order, roles: new Map(order.roles).set('front', plain) }, library);
    expect(panelOf(grey, 'sink cupboard', 'left door').match).toBeUndefined();
    expect(panelOf(grey, 'sink cupboard', 'left door').grain).toBe('none');
  });

  it('lets the longer side be the length where the grain does not matter', () => {
    const bottom = panelOf(furnished, 'galley drawers', 'drawer 1 bottom');
    expect([bottom.lengthAxis, bottom.grain]).toEqual(['y', 'none']);
    expect(bottom.finishedLengthUm).toBeGreaterThan(bottom.finishedWidthUm);
  });

  it.each([
    ['the first side of two where it is longer', 500, 300, ['y', 'z']],
    ['the second side of two where it is longer', 300, 500, ['z', 'y']],
    ['the first side of a square', 400, 400, ['y', 'z']],
  ] as const)('without a grain takes for the length %s', (_what, y, z, axes) => {
    const plain: PanelText = { x: [0, 'thickness.carcass'], y: [0, y], z: [0, z] };
    const panel = made({ a: plain }).unit!.panels[0]!;
    expect([panel.lengthAxis, panel.widthAxis]).toEqual(axes);
  });

  it('leaves all edges raw where the order gives the role no edging', () => {
    const raw = { ...order, roles: new Map(order.roles) };
    raw.roles.set('carcass', { ...order.roles.get('carcass')!, edging: null });
    const board = unit('test', [1000, 1000, 1000], {
      a: { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z', edging: 'all' },
    });
    const panel = alone('test', {}, withUnits(library, board), raw).unit!.panels[0]!;
    expect(panel).toMatchObject({ cutLengthUm: 400_000, cutWidthUm: 300_000 });
    expect(panel.edges.map(({ edging }) => edging)).toEqual([null, null, null, null]);
    // All of the board and nothing else.
    expect(panel.massKg).toBeCloseTo(0.4 * 0.3 * library.boards.get(panel.board)!.arealMassKgPerM2, 12);
  });

  it('counts every part for each of the vans alike', () => {
    const five = furnish({ ...order, count: 5 }, library);
    expect(five.furniture!.count).toBe(5);
    expect(panelOf(five, 'wardrobe', 'top').count).toBe(5);
  });

  it('adds pre-milling and leaves thin edging in the cut size', () => {
    const change = (field: Partial<{ preMillingUm: number; deducted: boolean }>) => {
      const edgings = new Map(library.edgings);
      edgings.set('light-ash-19', { ...edgings.get('light-ash-19')!, ...field });
      return panelOf(furnish(order, { ...library, edgings }), 'base cupboard', 'door');
    };
    expect(change({ preMillingUm: 500 })).toMatchObject({ cutLengthUm: 764_400, cutWidthUm: 376_000 });
    expect(change({ deducted: false })).toMatchObject({ cutLengthUm: 765_400, cutWidthUm: 377_000 });
  });

  it('rounds cut sizes to 0.1 mm', () => {
    const { unit: placed } = made({
      a: { x: [0, '1000 / 3'], y: [0, 'thickness.carcass'], z: [0, '2000 / 3'], grain: 'z' },
    });
    expect(placed!.panels[0]).toMatchObject({
      finishedLengthUm: 666_667,
      cutLengthUm: 666_700,
      cutWidthUm: 333_300,
    });
  });
});

describe('makePanels refuses', () => {
  it.each<[string, PanelText, string]>([
    [
      'a box that is nowhere as thick as its board',
      { x: [0, 18], y: [0, 300], z: [0, 400], grain: 'z' },
      'no side of the a of unit is as thick as its board, which is 16.2 mm',
    ],
    [
      'a box that is as thick as its board two ways',
      { x: [0, 16.2], y: [0, 16.2], z: [0, 400], grain: 'z' },
      'more than one side of the a of unit is 16.2 mm, as thick as its board',
    ],
    [
      'grain through the thickness',
      { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'x' },
      'no side of the a of unit is as thick as its board, which is 16.2 mm once the grain along x is kept',
    ],
    [
      'edging on a broad face',
      { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z', edging: ['left'] },
      'the a of unit cannot have edging on its left: that is a broad face, not an edge',
    ],
    [
      'an opening over the edge',
      {
        x: [0, 16.2],
        y: [0, 300],
        z: [0, 400],
        grain: 'z',
        cutOuts: { hole: { y: [200, 310], z: [50, 60] } },
      },
      'the cut-out “hole” of the a of unit goes 10.0 mm over the edge along y',
    ],
    [
      'an opening through the edge',
      { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z', cutOuts: { hole: { x: [2, 8], z: [50, 60] } } },
      'the cut-out “hole” of the a of unit must state z and y, the sides of the panel, and nothing else',
    ],
    [
      'an opening over the far edge along the length',
      {
        x: [0, 16.2],
        y: [0, 300],
        z: [0, 400],
        grain: 'z',
        cutOuts: { hole: { y: [50, 60], z: [350, 400.1] } },
      },
      'the cut-out “hole” of the a of unit goes 0.1 mm over the edge along z',
    ],
    ...(
      [
        ['without its place along the length', { y: [50, 60] }],
        ['without its place along the width', { z: [50, 60] }],
        ['with a place through the thickness besides', { x: [0, 16.2], y: [50, 60], z: [50, 60] }],
      ] as const
    ).map(([what, hole]): [string, PanelText, string] => [
      `an opening ${what}`,
      { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z', cutOuts: { hole } },
      'the cut-out “hole” of the a of unit must state z and y, the sides of the panel, and nothing else',
    ]),
    [
      'a role that the order does not know',
      { role: 'frnt', x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z' },
      'the order gives no board and finish for the role “frnt” of the a of unit',
    ],
  ])('%s', (_what, panel, sentence) => {
    expect(messages(made({ a: panel }).findings)).toEqual([sentence]);
  });

  it('says the three sides of a box that is nowhere as thick as its board', () => {
    const { findings } = made({ a: { x: [0, 18], y: [0, 300], z: [0, 400.55], grain: 'z' } });
    expect(findings[0]?.found).toBe('18.0 mm × 300.0 mm × 400.6 mm');
  });

  it.each([
    ['frnt', 'front'],
    ['quite another', undefined],
  ])('the role “%s”, with the roles of the order and the nearest of them', (role, nearest) => {
    const { findings } = made({ a: { role, x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z' } });
    expect(findings[0]).toMatchObject({
      found: role,
      expected: `one of ${[...order.roles.keys()].join(', ')}`,
      advice: `add the role ${role} to the order`,
    });
    expect(findings[0]?.nearest).toBe(nearest);
    expect('nearest' in findings[0]!).toBe(nearest !== undefined);
  });

  it.each(['boards', 'finishes'] as const)(
    'a role whose entry the %s of the library do not have',
    (which) => {
      const panel: PanelText = { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z' };
      const bare = {
        ...withUnits(library, unit('test', [1000, 1000, 1000], { a: panel })),
        [which]: new Map(),
      };
      expect(messages(alone('test', {}, bare, order).findings)).toContain(
        'the order gives no board and finish for the role “carcass” of the a of unit',
      );
    },
  );

  it('narrow edging only on panels that have edging, and none that is as wide as the board', () => {
    const among = (widthUm: number, edging: PanelText['edging']) => {
      const edgings = new Map(library.edgings);
      edgings.set('pale-grey-19', { ...edgings.get('pale-grey-19')!, widthUm });
      const board = unit('test', [1000, 1000, 1000], {
        a: { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z', ...(edging && { edging }) },
      });
      const { findings } = alone('test', {}, withUnits({ ...library, edgings }, board), order);
      return messages(findings.filter(({ code }) => code === 'edging-too-narrow'));
    };
    expect(among(16_200, 'all')).toEqual([]);
    expect(among(16_199, undefined)).toEqual([]);
    expect(among(16_199, ['front'])).toEqual([
      'the edging pale-grey-19 is 16.2 mm wide, the a of unit is 16.2 mm thick',
    ]);
  });

  it('edging narrower than the board', () => {
    const edgings = new Map(library.edgings);
    edgings.set('light-ash-19', { ...edgings.get('light-ash-19')!, widthUm: 16_000 });
    const { findings } = furnish(order, { ...library, edgings });
    expect(findings[0]?.message).toBe(
      'the edging light-ash-19 is 16.0 mm wide, the door of base cupboard is 16.2 mm thick',
    );
  });

  it('a row of fronts that is none', () => {
    const front = (x: number, z: number): PanelText => ({
      role: 'front',
      x: [x, x + 300],
      y: [0, 16.2],
      z: [z, z + 300],
      grain: 'z',
      match: 'row',
    });
    const { findings } = made({ a: front(0, 0), b: front(310, 0), c: front(0, 310) });
    expect(messages(findings)[0]).toBe(
      'the fronts of the row “row” of unit do not stand one after the other in one plane and one board',
    );
  });
});
