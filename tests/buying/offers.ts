import fc from 'fast-check';
import type { Supplier } from '../../src/model/library.ts';
import type { Need, Offer } from '../../src/model/purchase.ts';

/** One piece a unit at 1.00, any number, from nobody in particular. */
export function offer(more: Partial<Offer> = {}): Offer {
  return {
    id: 'o',
    supplier: null,
    priceMinor: 100,
    breaks: [],
    unit: 1,
    pack: 1,
    least: 1,
    most: null,
    ...more,
  };
}

/** A sheet that is wanted so often. */
export function sheetNeed(amount: number, more: Partial<Need> = {}): Need {
  return {
    item: {
      item: 'sheet',
      board: 'ply',
      finish: 'grey',
      thickness: 15,
      length: 2500,
      width: 1250,
      grain: 'none',
    },
    title: 'Grey ply',
    amount,
    orders: ['one'],
    start: null,
    available: 0,
    keptForOthers: 0,
    coming: [],
    comingForOthers: 0,
    offers: [offer()],
    ...more,
  };
}

export function supplier(id: string, more: Partial<Supplier> = {}): Supplier {
  return {
    id,
    title: id,
    contact: [],
    deliveryDays: 3,
    leastOrderMinor: null,
    deliveryMinor: 0,
    freeDeliveryFromMinor: null,
    ...more,
  };
}

/** Offers of pieces with breaks at any prices, also dearer ones, with packs and limits. */
export const anyOffer: fc.Arbitrary<Offer> = fc
  .record({
    priceMinor: fc.integer({ min: 0, max: 500 }),
    breaks: fc.uniqueArray(
      fc.record({ from: fc.integer({ min: 1, max: 60 }), priceMinor: fc.integer({ min: 0, max: 500 }) }),
      { maxLength: 4, selector: ({ from }) => from },
    ),
    unit: fc.constantFrom(1, 12_500_000, 50_000_000),
    pack: fc.integer({ min: 1, max: 12 }),
    least: fc.integer({ min: 1, max: 30 }),
    most: fc.option(fc.integer({ min: 1, max: 90 }), { nil: null }),
  })
  .map((fields) => offer({ ...fields, breaks: [...fields.breaks].sort((a, b) => a.from - b.from) }));
