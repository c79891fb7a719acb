import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cheapestOffers,
  cheapestQuantity,
  costOf,
  fewestUnits,
  unitsFor,
} from '../../src/buying/cheapestQuantity.ts';
import type { Offer } from '../../src/model/purchase.ts';
import { anyOffer, offer } from './offers.ts';

const breaks = [
  { from: 10, priceMinor: 90 },
  { from: 20, priceMinor: 70 },
];

describe('how many are ordered', () => {
  it.each([
    ['as many as are needed', offer(), 7, { units: 7, packs: 7, priceMinor: 700, beyond: 0 }],
    ['whole packs', offer({ pack: 4 }), 7, { units: 8, packs: 2, priceMinor: 800 }],
    ['no fewer than are sold', offer({ least: 10, pack: 4 }), 7, { units: 12, packs: 3, beyond: 0 }],
    ['at the price of their number', offer({ breaks }), 12, { units: 12, priceEachMinor: 90, breakFrom: 10 }],
    // 9 cost 900, 10 cost 900: the fewer are better.
    ['the fewer of two at one price', offer({ breaks }), 9, { units: 9, priceMinor: 900, savedMinor: 0 }],
    // 16 cost 1440, 20 cost 1400.
    [
      'more where that is cheaper',
      offer({ breaks }),
      16,
      { units: 20, beyond: 4, priceMinor: 1400, savedMinor: 40 },
    ],
    ['no more than there are', offer({ breaks, most: 19 }), 16, { units: 16, priceMinor: 1440 }],
    // 60 m need two rolls of 50 m; 100 m at 0.55.
    ['whole rolls', offer({ unit: 50_000_000, priceMinor: 55 }), 60_000_000, { units: 2, priceMinor: 5500 }],
    ['a roll that is just full', offer({ unit: 50_000_000, priceMinor: 55 }), 50_000_000, { units: 1 }],
    ['a micrometre more', offer({ unit: 50_000_000, priceMinor: 55 }), 50_000_001, { units: 2 }],
    // 3 rolls of 12.5 m at 0.55: 20.625, which is 20.63; a roll alone would be 6.875, three of these rounded 20.64.
    [
      'money rounded once',
      offer({ unit: 12_500_000, priceMinor: 55 }),
      30_000_000,
      { units: 3, priceMinor: 2063 },
    ],
  ])('%s', (_, sold, amount, expected) => {
    expect(cheapestQuantity(sold, amount)).toMatchObject(expected);
  });

  it('is nothing where there are too few', () => {
    expect(cheapestQuantity(offer({ most: 6 }), 7)).toBeNull();
    expect(cheapestQuantity(offer({ most: 7, pack: 4 }), 7)).toBeNull();
  });

  it('holds what is needed, in whole packs, and is the cheapest of all numbers that do', () => {
    fc.assert(
      fc.property(
        anyOffer,
        fc.integer({ min: 1, max: 70 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (sold, units, part) => {
          const amount = sold.unit === 1 ? units : Math.max(1, Math.round((units - part) * sold.unit));
          const found = cheapestQuantity(sold, amount);
          // Every number that can be ordered, one by one.
          let best: { units: number; cost: number } | null = null;
          for (let each = sold.pack; each <= Math.min(sold.most ?? 400, 400); each += sold.pack) {
            if (each < sold.least || each * sold.unit < amount) continue;
            const price = sold.breaks.reduce((p, b) => (b.from <= each ? b.priceMinor : p), sold.priceMinor);
            const cost =
              sold.unit === 1 ? each * price : Math.round((each * (sold.unit / 1000) * price) / 1000);
            if (best === null || cost < best.cost) best = { units: each, cost };
          }
          if (best === null) {
            expect(found).toBeNull();
            return;
          }
          expect(found).toMatchObject({
            units: best.units,
            priceMinor: best.cost,
            packs: best.units / sold.pack,
          });
          // No more packs than needed, unless more cost less.
          const fewest = fewestUnits(sold, unitsFor(sold, amount));
          if (found!.beyond > 0) expect(found!.priceMinor).toBeLessThan(costOf(sold, fewest));
          expect(fewest - sold.pack < sold.least || (fewest - sold.pack) * sold.unit < amount).toBe(true);
        },
      ),
    );
  });
});

describe('of whom', () => {
  const from = (id: string, more: Partial<Offer>) => offer({ id, ...more });
  const bought = (offers: Offer[], amount: number) => {
    const { quantities, missing } = cheapestOffers(offers, amount);
    return { from: quantities.map(({ offer: { id }, units }) => `${units} ${id}`), missing };
  };

  it('of the cheapest for that number, the first of equals', () => {
    const small = from('small', { priceMinor: 95 });
    const large = from('large', { breaks });
    expect(bought([small, large], 9)).toEqual({ from: ['9 small'], missing: 0 });
    expect(bought([small, large], 20)).toEqual({ from: ['20 large'], missing: 0 });
    expect(bought([from('a', {}), from('b', {})], 3)).toEqual({ from: ['3 a'], missing: 0 });
  });

  it('of several where none has enough, and what nobody has is missing', () => {
    const few = from('few', { priceMinor: 50, most: 4 });
    const more = from('more', { most: 5 });
    expect(bought([more, few], 8)).toEqual({ from: ['4 few', '4 more'], missing: 0 });
    expect(bought([more, few], 12)).toEqual({ from: ['4 few', '5 more'], missing: 3 });
    expect(bought([], 2)).toEqual({ from: [], missing: 2 });
  });

  it('of nobody where nothing is needed', () => {
    expect(bought([offer()], 0)).toEqual({ from: [], missing: 0 });
  });

  it('together as much as is needed or all that there is', () => {
    fc.assert(
      fc.property(
        fc.array(anyOffer, { maxLength: 4 }),
        fc.integer({ min: 1, max: 200 }),
        (offers, amount) => {
          const pieces = offers.map((sold) => ({ ...sold, unit: 1 }));
          const { quantities, missing } = cheapestOffers(pieces, amount);
          const units = quantities.reduce((sum, each) => sum + each.units, 0);
          expect(units + missing).toBeGreaterThanOrEqual(amount);
          if (missing > 0) expect(units + missing).toBe(amount);
          for (const { offer: sold, units: ordered } of quantities) {
            expect(ordered % sold.pack).toBe(0);
            expect(ordered).toBeGreaterThanOrEqual(sold.least);
            expect(ordered).toBeLessThanOrEqual(sold.most ?? ordered);
          }
        },
      ),
    );
  });
});
