import fc from 'fast-check';
import type { BookingLine, Draft, Ledger, SheetItem, StoreItem } from '../../src/model/store.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { itemKey, lineOf } from '../../src/store/items.ts';

const about = { date: '2026-03-02', who: 'M. Beck', why: 'test' };

export const sheet: SheetItem = {
  item: 'sheet',
  board: 'poplar-15',
  finish: 'pale-grey',
  thickness: 16.2,
  length: 2500,
  width: 1250,
  grain: 'length',
};
export const otherSheet: StoreItem = { ...sheet, width: 1220 };
export const edging: StoreItem = { item: 'edging', edging: 'grey-1' };
export const fitting: StoreItem = { item: 'fitting', fitting: 'hinge' };

export function offcut(label: string, place = 'rack 1'): StoreItem {
  return { ...sheet, item: 'offcut', label, place, length: 700, width: 400 };
}

const offcuts = [offcut('A1'), offcut('A2'), offcut('A3')];

export const items: readonly StoreItem[] = [sheet, otherSheet, edging, fitting, ...offcuts];

/** A booking that is asked for, with whatever sense: many break a rule. */
export function draft(kind: Draft['kind'], lines: readonly BookingLine[], more: Partial<Draft> = {}): Draft {
  return { ...about, kind, lines: [...lines], ...more };
}

type Asked =
  | {
      readonly kind: Exclude<Draft['kind'], 'reverse'>;
      readonly lines: readonly BookingLine[];
      readonly days: number;
    }
  | { readonly kind: 'reverse'; readonly back: number; readonly days: number };

const orders = fc.constantFrom('van-1', 'van-2');
const moves = {
  receive: ['in'],
  correct: ['in', 'out'],
  issue: ['out'],
  reserve: ['reserve'],
  release: ['release'],
  'put back': ['in'],
  cut: ['in', 'out'],
} as const;

function linesOf(kind: keyof typeof moves): fc.Arbitrary<BookingLine[]> {
  const line = fc
    .record({
      item: fc.constantFrom(...(kind === 'put back' ? offcuts : items)),
      amount: fc.integer({ min: 1, max: 6 }),
      move: fc.constantFrom(...moves[kind]),
      order: fc.option(orders, { nil: undefined, freq: 1 }),
      forOrder: orders,
    })
    .map(({ item, amount, move, order, forOrder }) =>
      lineOf(item, amount, move, move === 'reserve' || move === 'release' ? forOrder : order),
    );
  return fc.array(line, { minLength: 1, maxLength: 2 });
}

const asked: fc.Arbitrary<Asked> = fc.oneof(
  ...([...Object.keys(moves), 'receive', 'receive'] as (keyof typeof moves)[]).map((kind) =>
    fc.record({ kind: fc.constant(kind), lines: linesOf(kind), days: fc.integer({ min: 0, max: 2 }) }),
  ),
  fc.record({
    kind: fc.constant('reverse' as const),
    back: fc.integer({ min: 0, max: 12 }),
    days: fc.integer({ min: 0, max: 1 }),
  }),
);

export const wishes = fc.array(asked, { minLength: 1, maxLength: 40, size: 'max' });

export function dayOf(days: number): string {
  return new Date(Date.UTC(2026, 1, 20 + days)).toISOString().slice(0, 10);
}

/** Books what can be booked; gives the ledger after each booking that was taken, the empty one first. */
export function bookAll(all: readonly Asked[]): Ledger[] {
  const ledgers: Ledger[] = [emptyLedger];
  let day = 0;
  for (const one of all) {
    const ledger = ledgers.at(-1)!;
    const on = { ...about, date: dayOf(day + one.days) };
    const wanted: Draft =
      one.kind === 'reverse'
        ? reversal(ledger, Math.max(1, ledger.bookings.length - one.back), on)
        : { ...on, kind: one.kind, lines: [...one.lines] };
    const after = book(ledger, wanted);
    if (!after.ok) continue;
    day += one.days;
    ledgers.push(after.value);
  }
  return ledgers;
}

export function amountIn(ledger: Ledger, item: StoreItem): number {
  return ledger.stock.get(itemKey(item))?.amount ?? 0;
}
