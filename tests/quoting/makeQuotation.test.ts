import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { QuoteFacts, QuoteLine } from '../../src/model/quotation.ts';
import { type Rates, type WorkKind, workKinds, workUnits } from '../../src/model/rates.ts';
import { makeQuotation } from '../../src/quoting/index.ts';

const none: QuoteFacts = {
  sheets: [],
  edgings: [],
  fittings: [],
  sawing: [],
  drilledPanels: 0,
  holes: 0,
  openings: 0,
  outlines: 0,
  units: [],
  panels: 0,
  alike: 1,
};

const noRates: Rates = {
  work: new Map(),
  charges: { sheets: 'whole', edging: 'metres', fittings: 'pieces' },
  markUp: { material: 0, work: 0 },
  vat: null,
  validDays: null,
  extras: [],
};

function sheet(count: number, priceMinor: number, keptUm2 = 0n): QuoteFacts['sheets'][number] {
  return {
    group: 'birch-raw',
    stock: 'large',
    board: 'birch',
    finish: 'raw',
    kind: 'sheet',
    count,
    priceMinor,
    areaUm2: 2_500_000n * 1_250_000n * BigInt(count),
    keptUm2,
  };
}

function work(kind: WorkKind, hourMinor: number, times: Readonly<Record<string, number>>): Rates['work'] {
  return new Map([[kind, { hourMinor, timesMs: new Map(Object.entries(times)) }]]);
}

function amounts(facts: Partial<QuoteFacts>, rates: Partial<Rates>) {
  return makeQuotation({ ...none, ...facts }, { ...noRates, ...rates }).lines.map((line) => line.amountMinor);
}

describe('material in an estimate', () => {
  it('has whole sheets at their price, and offcuts on hand at none', () => {
    const offcut = { ...sheet(2, 4000), kind: 'offcut' as const };
    expect(amounts({ sheets: [sheet(3, 11_150), offcut] }, {})).toEqual([33_450, 0]);
  });

  it('has sheets without their kept offcuts where they are charged by share, rounded up to a thousandth', () => {
    // Half a sheet of 3.125 m² is kept of two: 1.5 sheets; a third of one is left: 0.667.
    const charges = { ...noRates.charges, sheets: 'share' } as const;
    const half = sheet(2, 10_000, (2_500_000n * 1_250_000n) / 2n);
    const third = sheet(1, 10_000, (2n * 2_500_000n * 1_250_000n) / 3n);
    const { lines } = makeQuotation({ ...none, sheets: [half, third] }, { ...noRates, charges });
    expect(lines).toMatchObject([
      { quantityMilli: 1500, amountMinor: 15_000, unit: 'share' },
      { quantityMilli: 334, amountMinor: 3340 },
    ]);
  });

  it('has edging by metres or rolls and fittings by pieces or packs', () => {
    const edgings = [
      {
        edging: 'grey',
        strips: 4,
        lengthUm: 41_237_400,
        rolls: 1,
        rollM: 75,
        priceMinorPerM: 55,
        setUps: 2,
      },
    ];
    const fittings = [{ fitting: 'hinge', count: 13, pack: 10, packs: 2, priceMinor: 240 }];
    // 41.238 m × 0.55 = 22.6809; 75 m × 0.55 = 41.25.
    expect(amounts({ edgings, fittings }, {})).toEqual([2268, 3120]);
    const charges = { sheets: 'whole', edging: 'rolls', fittings: 'packs' } as const;
    expect(amounts({ edgings, fittings }, { charges })).toEqual([4125, 4800]);
  });
});

describe('work in an estimate', () => {
  const sawing = [
    { group: 'a', sheets: 5, sawnUm: 100_000_000, cuts: 120, settings: 60, turns: 40 },
    { group: 'b', sheets: 1, sawnUm: 20_000_400, cuts: 30, settings: 20, turns: 10 },
  ];

  it('is quantity × time of one × price of an hour', () => {
    const times = { sheet: 150_000, metre: 7000, cut: 6000, setting: 12_000, turn: 8000 };
    // 6 × 150 s, 120 m × 7 s, 150 × 6 s, 80 × 12 s and 50 × 8 s at 56.00 an hour.
    expect(amounts({ sawing }, { work: work('sawing', 5600, times) })).toEqual([1400, 1307, 1400, 1493, 622]);
  });

  it('is told where there is work of a kind and no rate for it', () => {
    const quotation = makeQuotation({ ...none, sawing, holes: 3, drilledPanels: 1 }, noRates);
    expect(quotation.notCharged).toEqual(['sawing', 'drilling']);
    expect(quotation.lines).toEqual([]);
  });

  it('takes the time of a unit of its own before that of every unit', () => {
    const assembly = {
      hourMinor: 6000,
      timesMs: new Map([['unit', 600_000]]),
      byUnitMs: new Map([['wardrobe', 1_800_000]]),
    };
    const units = [
      { unit: 'wardrobe', count: 1 },
      { unit: 'seat-box', count: 2 },
    ];
    expect(amounts({ units }, { work: new Map([['assembly', assembly]]) })).toEqual([3000, 2000]);
  });
});

it('adds mark-up to what it is of, extras for each, and VAT to all of it', () => {
  const rates: Partial<Rates> = {
    work: work('drilling', 3600, { hole: 10_000 }),
    markUp: { material: 1500, work: 1000 },
    vat: 1900,
    extras: [
      { id: 'carriage', title: 'Carriage', priceMinor: 4500, for: 'order' },
      { id: 'glue', title: 'Glue', priceMinor: 333, for: 'each' },
    ],
  };
  const facts = { ...none, sheets: [sheet(1, 10_003)], holes: 100, alike: 3 };
  const { lines, sums } = makeQuotation(facts, { ...noRates, ...rates });
  // 100.03; 100 × 10 s at 36 an hour; 45; 3 × 3.33; 15 % of 100.03; 10 % of 10.00; 19 % of 181.02.
  expect(lines.map((line) => line.amountMinor)).toEqual([10_003, 1000, 4500, 999, 1500, 100, 3439]);
  expect(lines.at(-1)).toMatchObject({ of: [1, 6], baseMinor: 18_102, percent: 1900 });
  expect(sums).toEqual({
    materialMinor: 10_003,
    workMinor: 1000,
    extrasMinor: 5499,
    markUpMinor: 1600,
    netMinor: 18_102,
    vatMinor: 3439,
    totalMinor: 21_541,
  });
});

const some = (most: number) => fc.integer({ min: 0, max: most });

const anyFacts: fc.Arbitrary<QuoteFacts> = fc.record({
  sheets: fc.array(
    fc
      .record({ count: fc.integer({ min: 1, max: 40 }), price: some(90_000), kept: some(1000) })
      .map(({ count, price, kept }) => sheet(count, price, (sheet(count, 0).areaUm2 * BigInt(kept)) / 1000n)),
    { maxLength: 4 },
  ),
  edgings: fc.array(
    fc.record({
      edging: fc.constant('grey'),
      strips: some(300),
      lengthUm: some(900_000_000),
      rolls: some(20),
      rollM: fc.constantFrom(25, 50, 75.5),
      priceMinorPerM: some(900),
      setUps: some(6),
    }),
    { maxLength: 3 },
  ),
  fittings: fc.array(
    fc.record({
      fitting: fc.constant('hinge'),
      count: some(500),
      pack: fc.integer({ min: 1, max: 100 }),
      packs: some(50),
      priceMinor: some(5000),
    }),
    { maxLength: 3 },
  ),
  sawing: fc.array(
    fc.record({
      group: fc.constant('a'),
      sheets: some(60),
      sawnUm: some(2_000_000_000),
      cuts: some(2000),
      settings: some(900),
      turns: some(900),
    }),
    { maxLength: 4 },
  ),
  drilledPanels: some(300),
  holes: some(3000),
  openings: some(20),
  outlines: some(20),
  units: fc.array(
    fc.record({ unit: fc.constantFrom('wardrobe', 'worktop'), count: fc.integer({ min: 1, max: 9 }) }),
    { maxLength: 3 },
  ),
  panels: some(900),
  alike: fc.integer({ min: 1, max: 9 }),
});

const anyRates: fc.Arbitrary<Rates> = fc.record({
  work: fc
    .array(
      fc.record({
        kind: fc.constantFrom(...workKinds),
        hour: some(20_000),
        times: fc.array(some(2_000_000)),
      }),
      { maxLength: 5 },
    )
    .map(
      (own) =>
        new Map(
          own.map(({ kind, hour, times }) => [
            kind,
            {
              hourMinor: hour,
              timesMs: new Map(
                times.slice(0, workUnits[kind].length).map((ms, index) => [workUnits[kind][index]!, ms]),
              ),
            },
          ]),
        ),
    ),
  charges: fc.record({
    sheets: fc.constantFrom('whole', 'share'),
    edging: fc.constantFrom('metres', 'rolls'),
    fittings: fc.constantFrom('pieces', 'packs'),
  }),
  markUp: fc.record({ material: some(10_000), work: some(10_000) }),
  vat: fc.option(some(3000)),
  validDays: fc.constant(null),
  extras: fc.array(
    fc.record({
      id: fc.constant('carriage'),
      title: fc.constant('Carriage'),
      priceMinor: some(50_000),
      for: fc.constantFrom('order', 'each'),
    }),
    { maxLength: 2 },
  ),
});

/** Numerator and denominator of what a line comes to before it is rounded, from its own printed figures. */
function exactly(line: QuoteLine): readonly [bigint, bigint] {
  if (line.kind === 'added') return [BigInt(line.baseMinor) * BigInt(line.percent), 10_000n];
  if (line.kind === 'priced') return [BigInt(line.quantityMilli) * BigInt(line.priceMinor), 1000n];
  return [BigInt(line.quantityMilli) * BigInt(line.timeMs) * BigInt(line.hourMinor), 3_600_000_000n];
}

describe('any estimate', () => {
  it('has lines that follow from their own figures to half a cent, and sums that are those of its lines', () => {
    fc.assert(
      fc.property(anyFacts, anyRates, (facts, rates) => {
        const { lines, sums } = makeQuotation(facts, rates);
        expect(lines.map(({ number }) => number)).toEqual(lines.map((_, index) => index + 1));
        for (const line of lines) {
          const [numerator, denominator] = exactly(line);
          const twiceOff = 2n * (BigInt(line.amountMinor) * denominator - numerator);
          expect(twiceOff <= denominator && twiceOff > -denominator).toBe(true);
          if (line.kind !== 'added') continue;
          const [first, last] = line.of;
          const base = lines.slice(first - 1, last).reduce((sum, { amountMinor }) => sum + amountMinor, 0);
          expect(line.baseMinor).toBe(base);
          expect(last).toBeLessThan(line.number);
        }
        const all = lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0);
        expect(sums.totalMinor).toBe(all);
        expect(sums.netMinor + (sums.vatMinor ?? 0)).toBe(all);
        expect(sums.materialMinor + sums.workMinor + sums.extrasMinor + sums.markUpMinor).toBe(sums.netMinor);
      }),
    );
  });

  it('never charges more by share than whole, nor less than what is not kept', () => {
    fc.assert(
      fc.property(anyFacts, anyRates, (facts, rates) => {
        const by = (sheets: 'whole' | 'share') =>
          makeQuotation(facts, { ...rates, charges: { ...rates.charges, sheets } }).lines.slice(
            0,
            facts.sheets.length,
          );
        const [whole, share] = [by('whole'), by('share')];
        facts.sheets.forEach((row, index) => {
          const line = share[index]!;
          if (line.kind !== 'priced') throw new Error('a sheet is priced');
          expect(line.amountMinor).toBeLessThanOrEqual(whole[index]!.amountMinor);
          const taken = row.areaUm2 - row.keptUm2;
          expect(BigInt(line.quantityMilli) * row.areaUm2 >= 1000n * BigInt(row.count) * taken).toBe(true);
        });
      }),
    );
  });
});
