import fc from 'fast-check';
import type {
  BookingLine,
  Draft,
  Ledger,
  PurchaseMark,
  SheetItem,
  StoreItem,
} from '../../src/model/store.ts';
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
export const marks: readonly PurchaseMark[] = [
  { purchase: 'march', supplier: 'yard', expected: '2026-03-09' },
  { purchase: 'march', supplier: 'yard', expected: '2026-03-11' },
  { purchase: 'april' },
];
const moves = {
  receive: ['in'],
  correct: ['in', 'out'],
  issue: ['out'],
  reserve: ['reserve'],
  release: ['release'],
  'put back': ['in'],
  cut: ['in', 'out'],
  expect: ['expect', 'expect', 'reserve'],
  withdraw: ['withdraw'],
  postpone: ['withdraw', 'expect'],
} as const;
const orderable = items.filter(({ item }) => item !== 'offcut');
const ofGoodsOnOrder = ['receive', 'reserve', 'release', 'expect', 'withdraw', 'postpone'];

/** What is kept for orders is of few kinds, so that some of it can be released. */
function usualItems(kind: keyof typeof moves): readonly StoreItem[] {
  if (kind === 'put back') return offcuts;
  return kind === 'reserve' || kind === 'release' ? items.slice(0, 3) : items;
}

function linesOf(kind: keyof typeof moves): fc.Arbitrary<BookingLine[]> {
  const line = fc
    .record({
      item: fc.constantFrom(...usualItems(kind)),
      amount: fc.integer({ min: 1, max: 6 }),
      move: fc.constantFrom(...moves[kind]),
      order: fc.option(orders, { nil: undefined, freq: 1 }),
      forOrder: orders,
      mark: fc.constantFrom(...marks),
      chance: fc.integer({ min: 0, max: 3 }),
    })
    .map(({ item, amount, move, order, forOrder, mark, chance }) => {
      const ordered =
        move === 'expect' ||
        move === 'withdraw' ||
        (chance < (kind === 'receive' ? 2 : 1) && ofGoodsOnOrder.includes(kind));
      // Few things are on order, so that what comes in meets what was ordered.
      const what = ordered && item.item === 'offcut' ? orderable[amount % orderable.length]! : item;
      // What is kept and given back is little, so that much of it can be.
      const some = ['reserve', 'release', 'withdraw'].includes(move) ? 1 + (amount % 2) : amount;
      const reservedFor = move === 'reserve' || move === 'release' ? forOrder : order;
      return lineOf(what, some, move, reservedFor, ordered ? mark : undefined);
    });
  return fc.array(line, { minLength: 1, maxLength: kind === 'release' ? 1 : 2 });
}

const asked: fc.Arbitrary<Asked> = fc.oneof(
  ...(
    [
      ...Object.keys(moves),
      'receive',
      'receive',
      'reserve',
      'reserve',
      'expect',
      'release',
      'release',
    ] as (keyof typeof moves)[]
  ).map((kind) =>
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

/** The ledger after these bookings, each of which must be taken. */
export function ledgerAfterAll(...drafts: readonly Draft[]): Ledger {
  return drafts.reduce((ledger, one) => {
    const after = book(ledger, one);
    if (!after.ok) throw new Error(after.findings[0]!.message);
    return after.value;
  }, emptyLedger);
}

export function amountIn(ledger: Ledger, item: StoreItem): number {
  return ledger.stock.get(itemKey(item))?.amount ?? 0;
}

/** All of an item that is on order. */
export function onOrderOf(ledger: Ledger, item: StoreItem): number {
  const key = itemKey(item);
  return [...ledger.onOrder.values()]
    .filter((goods) => itemKey(goods.item) === key)
    .reduce((sum, { amount }) => sum + amount, 0);
}
