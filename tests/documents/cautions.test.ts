import { describe, expect, it } from 'vitest';
import { type CautionedOrder, cautionsOf } from '../../src/basics/orderCautions.ts';
import { type CautionsSubject, cautionsSheet } from '../../src/documents/cautionsSheet.ts';
import { payloadLines } from '../../src/documents/payloadLines.ts';
import { toldCautions } from '../../src/documents/toldCautions.ts';
import { wordsOf } from '../../src/documents/words/index.ts';
import { CAUTIONS } from '../../src/model/cautions.ts';
import type { Furniture } from '../../src/model/furniture.ts';
import type { Library, Vehicle } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { boxVan, weighedFurniture, weighedLibrary } from '../helpers/weighedFurniture.ts';

const en = wordsOf('en');
const de = wordsOf('de');

function subject(
  more: {
    furniture?: Partial<Furniture>;
    vehicle?: Partial<Vehicle>;
    library?: Partial<Library>;
    order?: Partial<Order>;
  } = {},
): CautionsSubject & CautionedOrder {
  const vehicle = { ...boxVan, ...more.vehicle };
  const library = { ...weighedLibrary, vehicles: new Map([[vehicle.id, vehicle]]), ...more.library };
  const order = { id: 'weighed', title: 'A weighed order', vehicle: vehicle.id, ...more.order };
  return {
    order: order as Order,
    library: library as unknown as Library,
    furniture: weighedFurniture(more.furniture),
  };
}

/** The cupboard has a gas hob, the bed a hinge that asks for care with `latches`. */
function cautioned(): Furniture['units'] {
  const [cupboard, bed] = weighedFurniture().units;
  return [
    { ...cupboard!, cautions: ['heat', 'gas'] },
    { ...bed!, cautions: ['gas', 'own'] },
  ];
}

const own = new Map([
  ['own', { title: 'Own', points: ['A sentence of the library.'] }],
  ['gas', { title: 'Another title', points: ['One more point.'] }],
]);

describe('the cautions of a job', () => {
  it('are those of the saw for a plain list', () => {
    expect(cautionsOf(undefined)).toEqual(
      ['saw', 'dust', 'edges'].map((caution) => ({ caution, units: [] })),
    );
  });

  it('are those of every vehicle for an order, and not for a room', () => {
    const names = (vehicle: Partial<Vehicle>) =>
      cautionsOf(subject({ vehicle })).map(({ caution }) => caution);
    expect(names({})).toEqual(['saw', 'dust', 'edges', 'fixing', 'latches', 'overloading']);
    expect(names({ payloadKg: null })).toEqual(['saw', 'dust', 'edges']);
  });

  it('are brought by units, their fittings and the layout, each told once with its units', () => {
    const hinge = { ...weighedLibrary.fittings.get('hinge')!, cautions: ['gas-stays'] };
    const fittings = new Map([...weighedLibrary.fittings, ['hinge', hinge]]);
    const found = cautionsOf(
      subject({
        furniture: { units: cautioned(), cautions: ['seats'] },
        library: { fittings, cautions: own },
      }),
    );
    expect(found.slice(6)).toEqual([
      { caution: 'seats', units: [] },
      { caution: 'gas', units: ['cupboard', 'bed'] },
      { caution: 'heat', units: ['cupboard'] },
      { caution: 'gas-stays', units: ['cupboard'] },
      { caution: 'own', units: ['bed'] },
    ]);
  });

  it('have words in every language, each caution with a title and its points', () => {
    for (const words of [en, de]) {
      expect(Object.keys(words.cautions.texts).sort()).toEqual([...CAUTIONS].sort());
      for (const { title, points } of Object.values(words.cautions.texts)) {
        expect(title.length).toBeGreaterThan(2);
        expect(points.length).toBeGreaterThan(0);
      }
    }
    for (const caution of CAUTIONS) {
      expect(de.cautions.texts[caution].points, caution).toHaveLength(
        en.cautions.texts[caution].points.length,
      );
    }
  });

  it.each([...CAUTIONS])('%s defers to manuals, local rules or those who may approve', (caution) => {
    const said = `${en.cautions.intro} ${en.cautions.texts[caution].points.join(' ')}`;
    expect(said).toMatch(/manual/);
    const technical = [
      'gas',
      'ventilation',
      'heat',
      'electrics',
      'water',
      'wall-fixing',
      'seats',
      'ways-out',
    ];
    if (!technical.includes(caution)) return;
    expect(en.cautions.texts[caution].points.join(' ')).toMatch(
      /local (building )?(codes|rules)|rules of your country|may approve/i,
    );
  });

  it('add what the library says to the words of the program, and never take those away', () => {
    const told = toldCautions(
      subject({ furniture: { units: cautioned() }, library: { cautions: own } }),
      en.cautions,
    );
    const gas = told.find(({ caution }) => caution === 'gas')!;
    expect(gas.title).toBe('Gas');
    expect(gas.points).toEqual([...en.cautions.texts.gas.points, 'One more point.']);
    expect(told.at(-1)).toEqual({
      caution: 'own',
      title: 'Own',
      points: ['A sentence of the library.'],
      units: ['bed'],
    });
  });

  it('say of the saw what goes for what guides it, and for both where that is not known', () => {
    for (const { cautions: words } of [en, de]) {
      const points = (guides?: readonly ('fence' | 'rail')[]) =>
        toldCautions(undefined, words, guides).find(({ caution }) => caution === 'saw')!.points;
      const [first, ...others] = words.texts.saw.points;
      const { fence, rail } = words.guided;
      expect(points(['fence'])).toEqual([first, ...fence, ...others]);
      expect(points(['rail'])).toEqual([first, ...rail, ...others]);
      expect(points()).toEqual([first, ...fence, ...rail, ...others]);
      expect(points(['rail']).join(' ')).not.toMatch(/push|Schieb/i);
      expect(points(['fence']).join(' ')).not.toMatch(/rail|Schiene/i);
    }
  });

  it('throw for a caution without words', () => {
    expect(() => toldCautions(subject({ furniture: { cautions: ['nonsense'] } }), en.cautions)).toThrow(
      'nonsense',
    );
  });
});

describe('the sheet of cautions', () => {
  const sheet = cautionsSheet(
    subject({ furniture: { units: cautioned(), seats: 4 }, library: { cautions: own } }),
    en.cautions,
    en.mass,
  );

  it('has only what applies, with the units that bring it', () => {
    expect(sheet).toContain('\nGas\n  Here: cupboard, bed.\n  - Gas is work for licensed people only');
    expect(sheet).toContain('\nOwn\n  Here: bed.\n  - A sentence of the library.\n');
    for (const absent of ['Gas stays', 'Seats and belts', 'Electrics', 'Fixing to a wall']) {
      expect(sheet).not.toContain(`\n${absent}\n`);
    }
  });

  it('has the sum of the payload line by line, and it adds up as printed', () => {
    // 400 − 40.8 − 3 · 75 = 134.2, of which 10 · (4 + 5.99) = 99.9 must be kept.
    const figures = [...sheet.matchAll(/ {2}(−?\d+\.\d)$/gm)].map((match) => match[1]);
    expect(figures).toEqual(['400.0', '−40.8', '−225.0', '134.2', '99.9', '34.3']);
    expect(sheet.replace(/\s+/g, ' ')).toContain('10 kg × (4 persons + 5.99 m of length) 99.9');
    expect(sheet).not.toContain('leaves less than must be kept');
  });

  it('says where too little is left', () => {
    const little = subject({ vehicle: { payloadKg: 250 }, order: { persons: 3 } });
    const text = cautionsSheet(little, en.cautions, en.mass).replace(/\s+/g, ' ');
    expect(text).toContain('The order says that 3 persons ride');
    expect(text).toContain('The furniture leaves less than must be kept.');
    expect(text).toContain('cushions, other appliances, all else −30.7');
  });

  it('has no payload for a room', () => {
    const room = cautionsSheet(subject({ vehicle: { payloadKg: null } }), en.cautions, en.mass);
    expect(room).not.toMatch(/payload|vehicle|passenger/i);
  });

  it('fits 80 letters on a line in both languages, and ends in a line feed', () => {
    for (const words of [en, de]) {
      const text = cautionsSheet(
        subject({ furniture: { cautions: [...CAUTIONS] } }),
        words.cautions,
        words.mass,
      );
      expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
      expect(text.endsWith('\n')).toBe(true);
      expect(text).not.toMatch(/[ \t]$/m);
    }
  });
});

describe('the lines of the payload', () => {
  const account = {
    vehicle: 'the van',
    payloadKg: 500.04,
    furnitureKg: 123.41,
    appliancesKg: 0,
    persons: 1,
    personsFrom: 'driver alone' as const,
    passengersKg: 0,
    leftKg: 0,
    overallLengthUm: 5_413_000,
    leastKg: 64.13,
    restKg: 0,
  };

  it('round to the safe side, so that they add up', () => {
    const lines = payloadLines(account, en.mass);
    expect(lines.map(({ kg }) => kg)).toEqual(['500.0', '−123.5', '0.0', '376.5', '64.2', '312.3']);
    expect(lines[4]!.what).toContain('10 kg × (1 person + 5.413 m of length)');
  });

  it('have one for appliances, where their mass is known', () => {
    const lines = payloadLines({ ...account, appliancesKg: 24.02 }, en.mass);
    expect(lines.map(({ kg }) => kg)).toEqual(['500.0', '−123.5', '−24.1', '0.0', '352.4', '64.2', '288.2']);
    expect(lines[2]!.what).toBe('less appliances, as far as the library says what they weigh');
  });

  it('say in words what is taken off, in every language', () => {
    const full = { ...account, appliancesKg: 24.02, persons: 3, passengersKg: 150 };
    for (const [words, less] of [
      [en.mass, /^less /],
      [de.mass, /^abzüglich /],
    ] as const) {
      const taken = payloadLines(full, words).filter(({ kg }) => kg.startsWith('−'));
      expect(taken.map(({ what }) => less.test(what))).toEqual([true, true, true]);
    }
  });
});
