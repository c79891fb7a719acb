import { describe, expect, it } from 'vitest';
import { checkAppliances } from '../../src/checks/appliances.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Furniture, PlacedUnit } from '../../src/model/furniture.ts';
import type { Appliance, Library } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import {
  alone,
  demoFiles,
  demoLibrary,
  demoOrder,
  demoRoot,
  formula,
  furnish,
  messages,
  must,
} from '../helpers/demoVan.ts';
import { box, boxVan, weighedPanel, weighedUnit } from '../helpers/weighedFurniture.ts';

const MM = 1000;
const place = { file: 'test.yaml', line: 1, column: 1 };

const nothing = { left: 0, right: 0, front: 0, back: 0, above: 0, below: 0 };
const stove: Appliance = {
  id: 'stove',
  title: 'A stove',
  widthUm: 400 * MM,
  depthUm: 300 * MM,
  heightUm: 500 * MM,
  clearUm: nothing,
  door: null,
  airCm2: { in: 0, out: 0 },
  massKg: null,
};

/** A unit of 1000 × 600 × 800 mm whose front looks to the right side, with the stove in its middle. */
function holder(extra: Partial<NonNullable<PlacedUnit['appliances']>[number]> = {}): PlacedUnit {
  const own = { x: [0, 1000 * MM], y: [0, 600 * MM], z: [0, 800 * MM] } as const;
  const place_ = box([1500, 2500], [100, 700], [0, 800]);
  return {
    ...weighedUnit('holder', [], [], place_),
    facing: 'right',
    outside: own,
    placeOutside: place_,
    appliances: [
      {
        name: 'stove',
        appliance: 'stove',
        title: 'A stove',
        massKg: null,
        body: { x: [300 * MM, 700 * MM], y: [100 * MM, 400 * MM], z: [100 * MM, 600 * MM] },
        through: [],
        air: { in: [], out: [] },
        place,
        ...extra,
      },
    ],
  };
}

/** A board in a unit of its own, in mm of the vehicle. Facing right, left of the stove is where x is greater. */
function board(
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
): PlacedUnit {
  const at = box(x, y, z);
  const panel = { ...weighedPanel('board', at, 1, 0), id: 'other/board', name: 'board', unit: 'other' };
  return weighedUnit('other', [panel], [], at);
}

function found(asks: Partial<Appliance>, units: readonly PlacedUnit[]): string[] {
  const library = { appliances: new Map([['stove', { ...stove, ...asks }]]) };
  const furniture: Furniture = { order: 'test', count: 1, units };
  return messages(checkAppliances(furniture, boxVan, library));
}

// In the vehicle the body of the stove is x 1800–2200, y 300–600, z 100–600; its front looks to greater y.
describe('what an appliance wants clear', () => {
  it.each([
    ['left', [2230, 2250], [350, 400], [200, 300], 'to the left of'],
    ['right', [1750, 1770], [350, 400], [200, 300], 'to the right of'],
    ['front', [1900, 2000], [630, 650], [200, 300], 'in front of'],
    ['back', [1900, 2000], [250, 270], [200, 300], 'behind'],
    ['above', [1900, 2000], [350, 400], [630, 650], 'above'],
    ['below', [1900, 2000], [350, 400], [50, 70], 'below'],
  ] as const)('on its %s is held against boards of all units', (side, x, y, z, where) => {
    const units = [holder(), board(x, y, z)];
    const asks = (um: number) => ({ clearUm: { ...nothing, [side]: um } });
    expect(found(asks(30 * MM), units)).toEqual([]);
    expect(found(asks(31 * MM), units)).toEqual([
      `the board of the other stands 30.0 mm ${where} the stove of the holder; its entry asks for 31 mm`,
    ]);
    for (const other of Object.keys(nothing).filter((each) => each !== side)) {
      expect(found({ clearUm: { ...nothing, [other]: 31 * MM } }, units)).toEqual([]);
    }
  });

  it('is held against walls, ends, floor and roof, and against other appliances', () => {
    const alone = [holder()];
    const asks = (side: string, um: number) => ({ clearUm: { ...nothing, [side]: um * MM } });
    expect(found(asks('back', 300), alone)).toEqual([]);
    expect(found(asks('back', 301), alone)[0]).toContain('the left wall stands 300.0 mm behind the stove');
    expect(found(asks('front', 1401), alone)[0]).toContain('the right wall stands 1400.0 mm in front of');
    expect(found(asks('below', 101), alone)[0]).toContain('the floor stands 100.0 mm below');
    expect(found(asks('above', 1401), alone)[0]).toContain('the roof stands 1400.0 mm above');
    expect(found(asks('left', 1801), alone)[0]).toContain('the rear end stands 1800.0 mm to the left of');
    const second = { ...holder(), name: 'second', placeOutside: box([2000, 3000], [100, 700], [0, 800]) };
    // Its body is x 2300–2700: 100 mm from the first.
    expect(found(asks('left', 101), [holder(), second]).join()).toContain(
      'the stove of the second stands 100.0 mm to the left of the stove of the holder',
    );
  });

  it('is not held against the panel in whose opening it hangs, whatever else is', () => {
    const other = board([1900, 2000], [350, 400], [200, 700]);
    const asks = { clearUm: { ...nothing, above: 50 * MM } };
    expect(found(asks, [holder(), other])).toEqual([
      'the board of the other stands in the body of the stove of the holder',
    ]);
    expect(found(asks, [holder({ through: [other.panels[0]!.id] }), other])).toEqual([]);
  });
});

describe('the air of an appliance', () => {
  const opening = (name: string, widthMm: number) => ({
    name,
    alongLength: [0, 200 * MM] as const,
    alongWidth: [0, widthMm * MM] as const,
  });
  const at = box([0, 10], [0, 10], [0, 10]);
  const withOpenings = (low: number, high: number): PlacedUnit => {
    const panels = [
      { ...weighedPanel('low', at, 1, 0), cutOuts: [opening('air', low), opening('pipes', 500)] },
      { ...weighedPanel('high', at, 1, 0), cutOuts: [opening('air', high)] },
    ];
    const way = panels.map(({ id }) => ({ panels: [id], cutOut: 'air' }));
    return { ...holder({ air: { in: way, out: [] } }), panels };
  };

  it('passes openings one after the other, of which the smallest counts', () => {
    // 200 × 50 mm are 100 cm².
    expect(found({ airCm2: { in: 100, out: 0 } }, [withOpenings(50, 50)])).toEqual([]);
    expect(found({ airCm2: { in: 100, out: 0 } }, [withOpenings(50, 40)])).toEqual([
      'openings of 80 cm² are left for the air that goes in of the stove of the holder; its entry asks for 100 cm²',
    ]);
    expect(found({ airCm2: { in: 0, out: 20 } }, [withOpenings(50, 50)])[0]).toContain('0 cm² are left');
  });
});

describe('the door of an appliance', () => {
  // The front at y 600, 400 mm wide, so that the door sweeps a quarter of a circle of 400 mm; left is at x 2200.
  it.each([
    ['left', [1800, 1850], [880, 950], true, 'a far corner outside of its circle'],
    ['left', [1800, 1850], [700, 750], false, 'near the edge that opens'],
    ['left', [2150, 2190], [950, 999], false, 'right before the hinges'],
    ['left', [2150, 2190], [1001, 1050], true, 'beyond its reach'],
    ['right', [2150, 2190], [880, 950], true, 'a far corner, hinged on the other side'],
    ['right', [1810, 1850], [950, 999], false, 'right before the hinges on the other side'],
  ] as const)('hinged on the %s opens past a board at x %j, y %j: %s, %s', (door, x, y, opens, _what) => {
    const hits = found({ door }, [holder(), board(x, y, [200, 300])]);
    expect(hits).toEqual(
      opens ? [] : ['the door of the stove of the holder hits the board of the other when it opens'],
    );
  });

  it('that folds down is as high as its body, and hits what is low', () => {
    const low = (y: readonly [number, number]) => [holder(), board([1900, 2000], y, [0, 350])];
    // Hinged at z 100: within 500 mm of y 600, z 100.
    expect(found({ door: 'bottom' }, low([1000, 1090]))).toHaveLength(1);
    expect(found({ door: 'bottom' }, low([1101, 1190]))).toEqual([]);
    expect(found({ door: 'top' }, [holder(), board([1900, 2000], [1000, 1050], [100, 120])])).toEqual([]);
  });

  it('is no matter where there is none, nor what is above or below it', () => {
    expect(found({}, [holder(), board([1800, 1850], [700, 750], [200, 300])])).toEqual([]);
    expect(found({ door: 'left' }, [holder(), board([1800, 1850], [700, 750], [610, 700])])).toEqual([]);
  });
});

describe('appliances of the demonstration library', () => {
  const library = demoLibrary();

  function errorsOf(of: Library, layout: string, vehicle: string, choices: Record<string, string | number>) {
    const values = new Map(Object.entries(choices).map(([name, value]) => [name, formula(value)]));
    const order: Order = { ...demoOrder(of), layout, vehicle, choices: values, changes: [] };
    return messages(furnish(order, of).findings.filter(({ severity }) => severity === 'error')).join('\n');
  }

  it('stand in every layout', () => {
    const names = (layout: string, choices: Record<string, string | number>) => {
      const values = new Map(Object.entries(choices).map(([name, value]) => [name, formula(value)]));
      const order: Order = {
        ...demoOrder(library),
        layout,
        vehicle: 'van-long',
        choices: values,
        changes: [],
      };
      return furnish(order, library).furniture!.units.flatMap(({ appliances }) =>
        (appliances ?? []).map(({ appliance }) => appliance),
      );
    };
    expect(names('rear-bed', {})).toEqual(['large-fridge', 'gas-hob-two', 'sink-small']);
    expect(names('lengthways-beds', { cooker: 'spirit', toilet: 'portable' })).toEqual([
      'spirit-cooker',
      'sink-small',
      'small-fridge',
      'portable-toilet',
    ]);
    expect(names('bench-and-boot', { heater: 'air-heater', cooker: 'electric' })).toEqual([
      'air-heater',
      'small-fridge',
      'electric-plate',
      'sink-small-short',
    ]);
    expect(names('roof-bed-and-galley', { heater: 'air-heater', fridge: 'large' })).toEqual([
      'gas-hob-two',
      'sink-small',
      'large-fridge',
      'air-heater',
    ]);
  });

  it.each<[string, readonly [string, string], string, Record<string, string | number>, string]>([
    ['a hob’s wall', ['back: 55', 'back: 110'], 'rear-bed', {}, 'the right wall stands'],
    ['what hangs above it', ['above: 700', 'above: 1100'], 'rear-bed', {}, 'the roof stands'],
    [
      'a fridge’s sides',
      ['left: 10, right: 10', 'left: 60, right: 60'],
      'rear-bed',
      {},
      'too narrow for the fridge',
    ],
    [
      'its openings',
      ['in: 100', 'in: 120'],
      'lengthways-beds',
      {},
      'openings of 108 cm² are left for the air that goes in',
    ],
    [
      'a heater’s room',
      ['left: 50', 'left: 300'],
      'bench-and-boot',
      { heater: 'air-heater' },
      'the bay is too narrow for the heater',
    ],
  ])('are checked by their own entry: %s', (_what, [before, after], layout, choices, sentence) => {
    expect(errorsOf(library, layout, 'van-long', choices)).toBe('');
    const files = demoLibraryWithAll(before, after);
    expect(errorsOf(files, layout, 'van-long', choices)).toContain(sentence);
  });

  it('give formulas their figures, and say which there are', () => {
    const asked = (text: string) =>
      alone('side-table', { width: text }, library, demoOrder(library)).findings.map(
        ({ message }) => message,
      );
    const settled = alone(
      'side-table',
      { width: "appliance('small-fridge', 'width')" },
      library,
      demoOrder(library),
    );
    expect(settled.unit!.parameters.get('width')).toBe(420);
    expect(asked("appliance('smal-fridge', 'width')").join()).toContain(
      'the library has no appliance “smal-fridge”',
    );
    expect(asked("appliance('small-fridge', 'weight')").join()).toContain(
      'these are width, depth, height, opening width',
    );
    expect(asked("appliance(1, 'width')").join()).toContain('a text in quotes is wanted here');
  });
});

/** The demonstration library with a text changed in every appliance that has it. */
function demoLibraryWithAll(before: string, after: string): Library {
  const files = demoFiles();
  const path = `${demoRoot}/appliances.yaml`;
  files.set(path, files.get(path)!.replaceAll(before, after));
  return must(readLibrary(files, demoRoot));
}

describe('an appliance that hangs by its rim', () => {
  const openingUm = { width: 360 * MM, depth: 260 * MM };
  /** Under the stove, whose body is 400 × 300 mm from x 300 and y 100, a board with an opening; in mm of its unit. */
  const told = (
    opening: { x: readonly [number, number]; y: readonly [number, number] } | null,
    turned = false,
    asks: Partial<Appliance> = { openingUm },
  ) => {
    const plain = {
      ...weighedPanel('top', box([10, 1000], [20, 600], [80, 100]), 1, 0),
      unit: 'holder',
      name: 'top',
    };
    const [length, width] = turned ? (['y', 'x'] as const) : (['x', 'y'] as const);
    const corner = { x: 10, y: 20 };
    const along = (axis: 'x' | 'y') =>
      opening![axis].map((mm) => (mm - corner[axis]) * MM) as unknown as readonly [number, number];
    const cutOuts =
      opening === null ? [] : [{ name: 'hob', place, alongLength: along(length), alongWidth: along(width) }];
    const panel = {
      ...plain,
      id: 'holder/top',
      lengthAxis: length,
      widthAxis: width,
      thicknessAxis: 'z' as const,
      cutOuts,
      box: box([10, 1000], [20, 600], [80, 100]),
      placeBox: box([0, 1], [0, 1], [790, 800]),
    };
    const unit = { ...holder({ through: ['holder/top'] }), panels: [panel as never] };
    return found(asks, [unit]);
  };

  it.each([
    ['is as large as its entry asks for', { x: [320, 680], y: [120, 380] }, []],
    ['is just covered', { x: [300.001, 699.999], y: [100.001, 399.999] }, []],
    [
      'is too narrow',
      { x: [320, 679], y: [120, 380] },
      [
        'the opening of the top of the holder for the stove of the holder is 359 × 260 mm; its entry asks for 360 × 260 mm',
      ],
    ],
    [
      'is not deep enough',
      { x: [320, 680], y: [121, 380] },
      [
        'the opening of the top of the holder for the stove of the holder is 360 × 259 mm; its entry asks for 360 × 260 mm',
      ],
    ],
    [
      'is as wide as the rim',
      { x: [300, 699], y: [120, 380] },
      [
        'the opening of the top of the holder for the stove of the holder is 399 × 260 mm; its rim of 400 × 300 mm does not cover it all round',
      ],
    ],
    [
      'reaches out behind the rim',
      { x: [320, 680], y: [140, 400] },
      [
        'the opening of the top of the holder for the stove of the holder is 360 × 260 mm; its rim of 400 × 300 mm does not cover it all round',
      ],
    ],
    [
      'lies elsewhere',
      { x: [700, 980], y: [120, 380] },
      ['the top of the holder has no opening for the stove of the holder; its entry asks for 360 × 260 mm'],
    ],
  ] as const)('is told where its opening %s, however the board is turned', (_what, opening, expected) => {
    expect(told(opening)).toEqual(expected);
    expect(told(opening, true)).toEqual(expected);
  });

  it('needs an opening, and is not looked at where its entry states none', () => {
    expect(told(null)).toEqual([
      'the top of the holder has no opening for the stove of the holder; its entry asks for 360 × 260 mm',
    ]);
    expect(told(null, false, {})).toEqual([]);
  });

  it('has an opening smaller than its rim in its entry', () => {
    const wrong = demoFiles();
    const path = `${demoRoot}/appliances.yaml`;
    wrong.set(path, wrong.get(path)!.replace('opening: { width: 240,', 'opening: { width: 260,'));
    const read = readLibrary(wrong, demoRoot);
    expect(read.findings.map(({ code, place: at }) => [code, at?.file])).toEqual([['bad-opening', path]]);
  });

  it('hangs in the worktop of the demonstration, which refuses an opening that is too large or too small', () => {
    const library = demoLibrary();
    const asked = (set: Record<string, string | number>) =>
      messages(
        alone('worktop', { hob: 'gas-hob-two', ...set }, library, demoOrder(library)).findings.filter(
          ({ severity }) => severity === 'error',
        ),
      );
    expect(asked({})).toEqual([]);
    expect(asked({ hob_width: 360, hob_depth: 379 })).toEqual([]);
    expect(asked({ hob_width: 359 }).join()).toContain('the opening would be smaller than the hob asks for');
    expect(asked({ hob_width: 380 }).join()).toContain('as large as the rim of the hob, which would fall');
  });
});
