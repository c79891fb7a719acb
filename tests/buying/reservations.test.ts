import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePurchase } from '../../src/buying/index.ts';
import type { BookingLine, Draft, Ledger, StoreItem } from '../../src/model/store.ts';
import { expectedLines, type PurchaseOfWay, reservationLines } from '../../src/pipeline/makePurchase.ts';
import { leftAfter, onHandFor, suppliesOnHand } from '../../src/pipeline/onHand.ts';
import { needsOf, type Use } from '../../src/pipeline/purchaseNeeds.ts';
import { book, emptyLedger } from '../../src/store/book.ts';
import { itemKey, lineOf } from '../../src/store/items.ts';
import { demoLibrary, must } from '../helpers/demoVan.ts';

const about = { date: '2026-03-02', who: 'test', why: '' };
const grey = { board: 'poplar-15', finish: 'pale-grey', thickness: 16.2, grain: 'none' as const };
const sheet: StoreItem = { item: 'sheet', ...grey, length: 2500, width: 1220 };
const odd: StoreItem = { item: 'sheet', ...grey, length: 2000, width: 1000 };
const offcut = (label: string): StoreItem => ({
  item: 'offcut',
  label,
  place: '',
  ...grey,
  length: 900,
  width: 600,
});
const edging: StoreItem = { item: 'edging', edging: 'pale-grey-19' };
const hinge: StoreItem = { item: 'fitting', fitting: 'hinge' };
const items = [sheet, odd, offcut('A1'), offcut('A2'), edging, hinge];

function booked(ledger: Ledger, kind: Draft['kind'], lines: BookingLine[]): Ledger {
  return lines.length === 0 ? ledger : must(book(ledger, { ...about, kind, lines }));
}

/** A store with amounts of the items, and as much of them as there is kept for others and for the orders. */
const anyStore = fc
  .array(
    fc.record({
      amount: fc.integer({ min: 1, max: 9 }),
      keep: fc.array(fc.tuple(fc.constantFrom('one', 'two', 'other'), fc.integer({ min: 1, max: 4 })), {
        maxLength: 3,
      }),
    }),
    { minLength: items.length, maxLength: items.length },
  )
  .map((entries) => {
    let ledger = emptyLedger;
    entries.forEach(({ amount: most, keep }, index) => {
      const item = items[index]!;
      const amount = item.item === 'offcut' ? 1 : most;
      ledger = booked(ledger, 'receive', [lineOf(item, amount, 'in')]);
      let left = amount;
      for (const [order, wanted] of keep) {
        const kept = Math.min(left, wanted);
        if (kept > 0) ledger = booked(ledger, 'reserve', [lineOf(item, kept, 'reserve', order)]);
        left -= kept;
      }
    });
    return ledger;
  });

const anyUses: fc.Arbitrary<Use[]> = fc.array(
  fc
    .record({
      name: fc.constantFrom('one', 'two'),
      item: fc.constantFrom(...items),
      amount: fc.integer({ min: 1, max: 9 }),
    })
    .map((use) => ({
      ...use,
      // Of edging µm, up to a mm less than what is in the store as whole mm.
      amount:
        use.item.item === 'edging' ? use.amount * 1000 - 1 : use.item.item === 'offcut' ? 1 : use.amount,
    })),
  { maxLength: 8 },
);

describe('what is reserved', () => {
  it('is there, free, used and not kept before; the same again reserves nothing', () => {
    fc.assert(
      fc.property(anyStore, anyUses, (ledger, uses) => {
        const lines = reservationLines(uses, ledger);
        const after = booked(ledger, 'reserve', lines);
        expect(reservationLines(uses, after)).toEqual([]);
        for (const [key, entry] of after.stock) {
          const before = ledger.stock.get(key)!;
          expect(entry.amount).toBe(before.amount);
          for (const name of ['one', 'two']) {
            const used = uses
              .filter((use) => use.name === name && itemKey(use.item) === key)
              .reduce(
                (sum, use) => sum + (use.item.item === 'edging' ? Math.ceil(use.amount / 1000) : use.amount),
                0,
              );
            const was = before.reserved.get(name) ?? 0;
            expect(entry.reserved.get(name) ?? 0).toBeLessThanOrEqual(Math.max(was, used));
            expect(entry.reserved.get(name) ?? 0).toBeGreaterThanOrEqual(was);
          }
          expect(entry.reserved.get('other')).toBe(before.reserved.get('other'));
        }
      }),
    );
  });
});

describe('what is on order', () => {
  const library = demoLibrary();
  const orders = ['one', 'two'].map((id) => ({ order: { id } })) as never;
  const marks = [
    { purchase: 'april', supplier: 'board-yard', expected: '2026-03-04' },
    { purchase: 'april' },
  ];

  /** A store in which something is on order too, for somebody or nobody. */
  const anyStoreWithGoods = fc
    .tuple(
      anyStore,
      fc.array(
        fc.record({
          item: fc.constantFrom(sheet, edging, hinge),
          amount: fc.integer({ min: 1, max: 9 }),
          reservedFor: fc.constantFrom('one', 'two', 'other', undefined),
          mark: fc.constantFrom(...marks),
        }),
        { maxLength: 6 },
      ),
    )
    .map(([ledger, goods]) =>
      booked(
        ledger,
        'expect',
        goods.map(({ item, amount, reservedFor, mark }) => lineOf(item, amount, 'expect', reservedFor, mark)),
      ),
    );

  function purchaseFor(uses: readonly Use[], ledger: Ledger, name: string): PurchaseOfWay {
    const taking = uses.map((use) => ({ ...use, orders: [use.name] }));
    const purchase = makePurchase(needsOf(taking, orders, library, ledger, ['one', 'two', name]), {
      today: '2026-03-02',
      spare: { kind: 'none' },
      suppliers: library.suppliers,
      freeDays: library.freeDays,
      starts: new Map(),
    });
    return { result: { way: 'apart', groups: [], purchase }, uses };
  }

  const onOrder = (ledger: Ledger, item: StoreItem, of: (purchase: string) => boolean) =>
    [...ledger.onOrder.values()]
      .filter((goods) => itemKey(goods.item) === itemKey(item) && of(goods.purchase))
      .reduce((sum, { amount }) => sum + amount, 0);

  it('is taken off what is to be bought: the same purchase again orders nothing', () => {
    fc.assert(
      fc.property(anyStoreWithGoods, anyUses, fc.boolean(), (ledger, all, alsoReserve) => {
        const uses = all.filter(({ item }) => item !== odd && item.item !== 'offcut');
        const first = purchaseFor(uses, ledger, 'purchase-may');
        const expected = expectedLines(first, ledger, 'purchase-may');
        const kept = alsoReserve ? reservationLines(uses, ledger) : [];
        const after = booked(ledger, 'expect', [...kept, ...expected]);
        // All that is ordered is on order, and nothing else.
        for (const { need, quantities } of first.result.purchase.lines) {
          const units = quantities.reduce((sum, { units: many, offer }) => sum + many * offer.unit, 0);
          const ordered = need.item.item === 'edging' ? units / 1000 : units;
          expect(onOrder(after, need.item, (name) => name === 'purchase-may')).toBe(ordered);
        }
        const again = purchaseFor(uses, after, 'purchase-may');
        expect(again.result.purchase.lines.map(({ toBuy }) => toBuy)).toEqual(
          uses.length === 0 ? [] : again.result.purchase.lines.map(() => 0),
        );
        expect(expectedLines(again, after, 'purchase-may')).toEqual([]);
        if (alsoReserve) expect(reservationLines(uses, after)).toEqual([]);
        // What others wait for is left to them.
        for (const item of [sheet, edging, hinge]) {
          const others = (of: Ledger) =>
            [...of.onOrder.values()]
              .filter((goods) => itemKey(goods.item) === itemKey(item) && goods.reservedFor === 'other')
              .reduce((sum, { amount }) => sum + amount, 0);
          expect(others(after)).toBe(others(ledger));
        }
      }),
    );
  });

  it('is cut like what is there, and called what it is', () => {
    const ledger = booked(booked(emptyLedger, 'receive', [lineOf(odd, 1, 'in')]), 'expect', [
      lineOf(sheet, 3, 'expect', 'one', marks[0]),
      lineOf(sheet, 2, 'expect', 'other', marks[0]),
      lineOf(odd, 1, 'expect', undefined, marks[0]),
    ]);
    const supplies = suppliesOnHand(onHandFor(ledger, ['one']), ['one'], library);
    expect(supplies.map(({ id, count }) => [id, count])).toEqual([
      ['in the store or on order 2000 × 1000', 2],
      ['on order 2500 × 1220', 3],
    ]);
  });
});

describe('what is on hand', () => {
  const library = demoLibrary();

  it('is what is free and what is kept for those who ask, and nothing of others', () => {
    fc.assert(
      fc.property(anyStore, (ledger) => {
        const onHand = onHandFor(ledger, ['one', 'two']);
        for (const entry of ledger.stock.values()) {
          if (!('board' in entry.item)) continue;
          const own = onHand
            .filter(({ item }) => item === entry.item)
            .reduce((sum, { count }) => sum + count, 0);
          expect(own).toBe(entry.amount - (entry.reserved.get('other') ?? 0));
        }
        const one = suppliesOnHand(onHand, ['one'], library);
        const counted = one.reduce((sum, { count }) => sum + (count ?? 0), 0);
        const ofTwo = onHand
          .filter(({ keptFor }) => keptFor === 'two')
          .reduce((sum, { count }) => sum + count, 0);
        expect(counted).toBe(onHand.reduce((sum, { count }) => sum + count, 0) - ofTwo);
      }),
    );
  });

  it('is cut before anything is bought, but not for nothing', () => {
    const ledger = booked(
      emptyLedger,
      'receive',
      [sheet, odd, offcut('A1')].map((item) => lineOf(item, 1, 'in')),
    );
    const supplies = suppliesOnHand(onHandFor(ledger, []), [], library);
    // A tenth of 111.50; of the odd size as much by its area, rounded up: 111.50 × 2 / 3.05 / 10 = 7.312.
    expect(supplies.map(({ id, kind, priceMinor, count }) => [id, kind, priceMinor, count])).toEqual([
      ['in the store 2500 × 1220', 'sheet', 1115, 1],
      ['in the store 2000 × 1000', 'sheet', expect.any(Number), 1],
      ['A1', 'offcut', null, 1],
    ]);
    expect(supplies[1]!.priceMinor).toBeLessThanOrEqual(732);
    expect(supplies[1]!.priceMinor).toBeGreaterThan(600);
  });

  it('is less by what a plan takes, first of what was kept for it', () => {
    let ledger = booked(emptyLedger, 'receive', [lineOf(sheet, 5, 'in'), lineOf(offcut('A1'), 1, 'in')]);
    ledger = booked(ledger, 'reserve', [
      lineOf(sheet, 2, 'reserve', 'one'),
      lineOf(sheet, 1, 'reserve', 'two'),
    ]);
    const onHand = onHandFor(ledger, ['one', 'two']);
    const stock = (id: string, kind: 'sheet' | 'offcut', length: number, width: number) => ({
      id,
      kind,
      length,
      width,
      grain: 'none' as const,
      price: 0,
      count: null,
      trim: { left: 0, right: 0, near: 0, far: 0 },
    });
    const plan = {
      groups: [
        {
          board: 'poplar-15',
          finish: 'pale-grey',
          thickness: 16.2,
          stock: [stock('s', 'sheet', 2500, 1220), stock('a1', 'offcut', 900, 600)],
          sheets: [
            { stock: 's', copies: 3 },
            { stock: 'a1', copies: 1 },
          ],
        },
      ],
    } as never;
    const left = leftAfter(onHand, plan, ['one']);
    expect(left.map(({ keptFor, count }) => [keptFor, count])).toEqual([
      ['one', 0],
      ['two', 1],
      [null, 1],
      [null, 0],
    ]);
  });
});
