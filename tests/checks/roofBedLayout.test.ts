import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import type { Order } from '../../src/model/order.ts';
import { readOrder } from '../../src/order/index.ts';
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

const library = demoLibrary();
const MM = 1000;

type Choices = Readonly<Record<string, string | number>>;

function chosen(layout: string, vehicle: string, choices: Choices) {
  const values = new Map(Object.entries(choices).map(([choice, value]) => [choice, formula(value)]));
  const order: Order = { ...demoOrder(library), layout, vehicle, choices: values, changes: [] };
  return furnish(order, library);
}

const van = (vehicle: string, choices: Choices) => chosen('roof-bed-and-galley', vehicle, choices);

function errors(findings: readonly Finding[]): string[] {
  return messages(findings.filter(({ severity }) => severity === 'error'));
}

function built(choices: Choices, vehicle = 'van-short') {
  const { findings, furniture } = van(vehicle, choices);
  expect(errors(findings)).toEqual([]);
  return furniture!.units;
}

const unitOf = (units: ReturnType<typeof built>, name: string) => units.find((unit) => unit.name === name);

describe.each(['roof-bed-long', 'roof-bed-short'])('the order %s', (name) => {
  it('has neither errors nor warnings', () => {
    const path = `${demoRoot}/orders/${name}.yaml`;
    const { findings } = furnish(must(readOrder(demoFiles().get(path)!, path, library)), library);
    expect(messages(findings.filter(({ severity }) => severity !== 'caution'))).toEqual([]);
  });
});

describe('the cooker', () => {
  const panelNames = (choices: Choices) =>
    unitOf(built(choices), 'cooker cupboard')!.panels.map((panel) => panel.name);

  it.each(['gas-one-burner', 'gas-two-burner'])('%s has its gas locker, and a drawer under it', (cooker) => {
    const locker = unitOf(built({ cooker }), 'gas locker')!;
    // Its door looks out of the rear doors, in the right corner, or in the left one beside a low bed.
    expect(locker.facing).toBe('rear');
    expect(locker.placeOutside.x[1]).toBe(3450 * MM);
    expect(locker.placeOutside.y[1]).toBe(1760 * MM);
    const beside = unitOf(built({ cooker, right_side: 'low-bed' }), 'gas locker')!;
    expect(beside.placeOutside.y[0]).toBe(0);
    expect(panelNames({ cooker })).toContain('drawer front');
  });

  it.each(['spirit', 'electric'])(
    '%s is deeper, takes the drawer and frees the corner of the boot',
    (cooker) => {
      const units = built({ cooker });
      expect(unitOf(units, 'gas locker')).toBeUndefined();
      expect(panelNames({ cooker }).filter((name) => name.includes('drawer'))).toEqual([]);
      const corner = { x: 3050 * MM, y: 1360 * MM, z: 800 * MM };
      const there = units.flatMap(({ panels }) =>
        panels.filter(({ placeBox: { x, y, z } }) => x[1] > corner.x && y[1] > corner.y && z[0] < corner.z),
      );
      expect(there.map((panel) => panel.id)).toEqual([]);
      const guard = (choices: Choices) =>
        unitOf(built(choices), 'cooker cupboard')!.panels.find(({ name }) => name === 'guard shelf')!.box
          .z[0];
      expect(guard({ cooker })).toBeLessThan(guard({ cooker: 'gas-two-burner' }));
    },
  );

  it('lets a locker hang above it only where its manual allows', () => {
    const from = (cooker: string) => unitOf(built({ cooker }), 'galley locker')!.placeOutside.x[0];
    expect(from('gas-two-burner') - from('electric')).toBe(500 * MM);
    expect(from('none')).toBe(from('electric'));
  });

  it('takes a large bottle where it is asked for', () => {
    const height = (bottle: string) => unitOf(built({ bottle }), 'gas locker')!.placeOutside.z[1];
    expect(height('large')).toBeGreaterThan(height('small') + 100 * MM);
  });
});

describe('the roof bed', () => {
  it('leaves the less bench, the wider it is', () => {
    const benches = [1000, 1200, 1350].map((roof_bed_width) => {
      const { x } = unitOf(built({ roof_bed_width, fridge: 'small' }), 'bench')!.placeOutside;
      return (x[1] - x[0]) / MM;
    });
    expect(benches).toEqual([1100, 1100, 950]);
    const four = [1000, 1200, 1350].map((roof_bed_width) =>
      errors(van('van-short', { roof_bed_width, sitting: 4 }).findings).join(),
    );
    expect(four.slice(0, 2)).toEqual(['', '']);
    expect(four[2]).toContain('there are fewer places to sit');
  });

  /**
   * Two persons of 100 kg on a bed, half of them on the middle rail of two boards: 5/384 W L³ / (E I), simply supported,
   * evenly loaded (Wood Handbook, FPL-GTR-190, equation 9-2 and table 9-1), at 5000 N/mm².
   */
  it.each([
    [1400, 120, true],
    [1740, 140, true],
    [1900, 140, true],
    [1900, 130, false],
    [1740, 120, false],
    [1740, 130, true],
  ])('%i mm wide on rails of %i mm stands: %s', (width, rail, stands) => {
    const span = width - 2 * (16.2 + 2) - 2 * 16.2;
    const high = rail - 30 - 15;
    const sag = ((5 / 384) * 981 * span ** 3) / (5000 * ((2 * 16.2 * high ** 3) / 12));
    expect(sag <= span / 200).toBe(stands);
    const { findings } = alone('slatted-roof-bed', { width, rail }, library, demoOrder(library));
    expect(errors(findings).join().includes('the middle rail would sag')).toBe(!stands);
  });

  it('hinged, is narrower than the walls by what its front edge needs on its way up', () => {
    const width = (roof_bed: string) => {
      const rail = unitOf(built({ roof_bed }), 'roof bed')!.panels.find(({ name }) => name === 'front rail')!;
      return rail.box.x[1] - rail.box.x[0];
    };
    expect(width('hinged')).toBeLessThan(width('lift-out') - 20 * MM);
    // 250 mm higher the body is as wide as it is there, and the frame still passes.
    const bed = unitOf(built({ roof_bed: 'hinged' }), 'roof bed')!;
    const raised = bed.placeOutside.z[1] + 250 * MM;
    const vanWidth = 1810 * MM - ((raised - 1000 * MM) * 90) / 500;
    expect(width('hinged')).toBeLessThanOrEqual(vanWidth);
  });
});

describe('refusals', () => {
  it.each<[string, Choices, string]>([
    [
      'a large fridge behind a wide low bed',
      { right_side: 'low-bed', low_bed_width: 720, fridge: 'large' },
      'the walkway between galley and bench or low bed',
    ],
    [
      'cupboards beside a low bed',
      { right_side: 'low-bed', low_bed_width: 740, boot: 'cupboards' },
      'choose a free boot',
    ],
    [
      'a low bed right under the roof bed',
      { right_side: 'low-bed', roof_bed_height: 960 },
      'less than 450 mm above the mattress of the low bed',
    ],
    ['a tall sleeper in a hinged bed', { roof_bed: 'hinged', tallest: 1750 }, 'too short for the tallest'],
    [
      'a wide bed, a large fridge and a table store',
      { roof_bed_width: 1350, fridge: 'large', table: 'stored' },
      'the sink cupboard would be narrower than 420 mm',
    ],
    [
      'a large sink beside a large fridge and a store',
      { fridge: 'large', table: 'stored', sink: 'large' },
      'the sink is too wide for its cupboard',
    ],
    [
      'a third person without a bed',
      { persons: 3, cab_seats: 3 },
      'there are fewer sleeping places than persons',
    ],
    [
      'a third person without a belt',
      { persons: 3, right_side: 'low-bed' },
      'there are fewer seats with belts than persons',
    ],
  ])('name the reason: %s', (_what, choices, sentence) => {
    expect(errors(van('van-short', choices).findings).join('\n')).toContain(sentence);
  });
});

describe('the length of the long van', () => {
  it('is put to use on both sides', () => {
    const names = (vehicle: string) => built({}, vehicle).map((unit) => unit.name);
    const short = names('van-short');
    expect(names('van-long').filter((name) => !short.includes(name))).toEqual([
      'galley drawers',
      'side cupboard',
      'side worktop',
    ]);
  });
});

describe('the boot', () => {
  it('has its cupboards on the right, across from the galley, or on the left of a low bed', () => {
    const middle = 880 * MM;
    const places = (right_side: string) =>
      built({ boot: 'cupboards', right_side, low_bed_width: 600 })
        .filter(({ name }) => name.includes('boot'))
        .map(({ name, placeOutside: { y } }) => [
          name,
          y[0] > middle ? 'right' : y[1] < middle ? 'left' : '?',
        ]);
    expect(places('bench')).toEqual([
      ['boot cupboard 1', 'right'],
      ['boot cupboard 2', 'right'],
      ['boot worktop', 'right'],
    ]);
    expect(places('low-bed')).toEqual([
      ['left boot cupboard 1', 'left'],
      ['left boot cupboard 2', 'left'],
      ['left boot worktop', 'left'],
    ]);
  });
});

describe('the roof bed’s slats', () => {
  it.each([
    [1, 100],
    [2, 200],
  ])('bear 100 kg for each of %i who lie in it', (persons, loadKg) => {
    const { panels } = alone('slatted-roof-bed', { persons }, library, demoOrder(library)).unit!;
    const slats = panels.filter(({ baseName }) => baseName === 'slat');
    expect(slats.length).toBeGreaterThan(8);
    expect(slats.reduce((sum, slat) => sum + slat.loadKg!, 0)).toBeCloseTo(loadKg, 6);
  });

  it('are more on a wide bed, so that none sags by more than 1/200', () => {
    for (const depth of [1000, 1150, 1250, 1350]) {
      const { findings } = alone('slatted-roof-bed', { depth }, library, demoOrder(library));
      expect(messages(findings.filter(({ code }) => code === 'sags')), String(depth)).toEqual([]);
    }
    const few = alone('slatted-roof-bed', { depth: 1350, slats: 14 }, library, demoOrder(library));
    expect(few.findings.map(({ code }) => code)).toContain('sags');
  });
});

describe('the worktop', () => {
  it('lies in one piece over the cupboards of the galley, with an opening for each appliance', () => {
    const units = built({ table: 'stored', sink: 'small' }, 'van-long');
    const top = unitOf(units, 'galley worktop')!;
    const under = ['table store', 'galley drawers', 'cooker cupboard', 'sink cupboard'].map(
      (name) => unitOf(units, name)!.placeOutside.x,
    );
    expect(top.panels).toHaveLength(1);
    expect(top.placeOutside.x).toEqual([
      Math.min(...under.map(([from]) => from)),
      Math.max(...under.map(([, to]) => to)),
    ]);
    expect(top.panels[0]!.cutOuts.map(({ name }) => name).sort()).toEqual(['hob', 'sink']);
  });

  it('may have a third one, for a bin', () => {
    const order: Order = {
      ...demoOrder(library),
      layout: 'roof-bed-and-galley',
      vehicle: 'van-long',
      choices: new Map(),
      changes: [
        {
          kind: 'set',
          unit: 'galley worktop',
          set: new Map([
            ['bin_at', formula('galley - drawers_width / 2')],
            ['bin_width', formula(200)],
          ]),
          place: { file: 'test.yaml', line: 1, column: 1 },
        },
      ],
    };
    const { findings, furniture } = furnish(order, library);
    expect(errors(findings)).toEqual([]);
    const top = unitOf(furniture!.units, 'galley worktop')!.panels[0]!;
    expect(top.cutOuts.map(({ name }) => name).sort()).toEqual(['bin', 'hob', 'sink']);
  });
});

describe('gas in the first layout', () => {
  it('stands in a locker under the bed that opens to the rear doors', () => {
    const { findings, furniture } = chosen('rear-bed', 'van-short', { gas: 'small' });
    expect(errors(findings)).toEqual([]);
    const bed = unitOf(furniture!.units, 'bed base')!;
    const door = bed.panels.find(({ name }) => name === 'gas locker door')!;
    expect(door.placeBox.x[1]).toBe(bed.placeOutside.x[1]);
    expect(bed.fittings.find(({ fitting }) => fitting === 'drop-vent')?.count).toBe(1);
  });

  it('is not there unless it is asked for, and asks for a bed that is high enough', () => {
    const without = chosen('rear-bed', 'van-short', {}).furniture!.units;
    expect(unitOf(without, 'bed base')!.panels.filter(({ name }) => name.startsWith('gas'))).toEqual([]);
    const low = chosen('rear-bed', 'van-short', { gas: 'small', bed_height: 600 });
    expect(errors(low.findings).join()).toContain('the gas locker needs a bed at least 660 mm high');
  });
});
