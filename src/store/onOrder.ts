import { errorFinding, shownText, warningFinding } from '../basics/findings.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import { takeInOrder } from '../basics/takeInOrder.ts';
import type { Finding } from '../model/finding.ts';
import type { BookingLine, Ledger, OnOrder, PurchaseMark, StoreItem } from '../model/store.ts';
import {
  amountInWords,
  amountOf,
  itemInWords,
  itemKey,
  itemOf,
  lineOf,
  markInWords,
  onOrderKey,
  onOrderLine,
} from './items.ts';

/** What is on order, while it is changed. */
export type OpenOnOrder = Map<string, OnOrder>;

function add(onOrder: OpenOnOrder, line: BookingLine, mark: PurchaseMark, order: string | undefined): void {
  const item = itemOf(line);
  if (item.item === 'offcut') throw new Error('an offcut is on order');
  const key = onOrderKey(item, mark, order);
  const amount = (onOrder.get(key)?.amount ?? 0) + amountOf(line);
  onOrder.set(key, { item, amount, ...mark, ...(order === undefined ? {} : { reservedFor: order }) });
}

function forWhom(order: string | undefined): string {
  return order === undefined ? '' : ` for ${shownText(order)}`;
}

function takeAway(
  onOrder: OpenOnOrder,
  line: BookingLine,
  mark: PurchaseMark,
  order: string | undefined,
): Finding | null {
  const item = itemOf(line);
  const key = onOrderKey(item, mark, order);
  const there = onOrder.get(key);
  const left = (there?.amount ?? 0) - amountOf(line);
  if (left < 0) {
    const message = `Less of ${shownText(itemInWords(item))} is on order${forWhom(order)}: ${shownText(markInWords(mark))}.`;
    return errorFinding('not-on-order', message, undefined, {
      found: `${amountInWords(item, there?.amount ?? 0)} on order`,
      expected: amountInWords(item, amountOf(line)),
      advice: 'what is on order stands in `plywright stock show`',
    });
  }
  if (left === 0) onOrder.delete(key);
  else onOrder.set(key, { ...there!, amount: left });
  return null;
}

function refused(message: string): Finding {
  return errorFinding('wrong-line', message);
}

/**
 * Does what a line says to what is on order: `expect` adds to it, `withdraw` takes away, what comes in is on order no
 * longer, what goes out again is so once more, `reserve` and `release` change for whom it comes. Gives what stands in the way,
 * all as it was, or null.
 */
export function changeOnOrder(onOrder: OpenOnOrder, line: BookingLine): Finding | null {
  const { move, reservedFor: order, onOrder: mark } = line;
  const what = shownText(itemInWords(itemOf(line)));
  if (mark === undefined) return refused(`It is not said under which purchase ${what} is on order.`);
  if (line.item === 'offcut') return refused(`${what} cannot be on order.`);
  switch (move) {
    case 'expect':
    case 'out':
      add(onOrder, line, mark, order);
      return null;
    case 'withdraw':
    case 'in':
      return takeAway(onOrder, line, mark, order);
    case 'reserve':
    case 'release': {
      if (order === undefined) return refused(`It is not said for which order ${what} is reserved.`);
      const [from, to] = move === 'reserve' ? [undefined, order] : [order, undefined];
      const wrong = takeAway(onOrder, line, mark, from);
      if (wrong === null) add(onOrder, line, mark, to);
      return wrong;
    }
  }
}

/** Whether the same is on order. */
export function sameOnOrder(a: Ledger['onOrder'], b: Ledger['onOrder']): boolean {
  return a.size === b.size && [...a].every(([key, { amount }]) => b.get(key)?.amount === amount);
}

/** Earliest expected first; what has no day comes last. */
function byDay(a: OnOrder, b: OnOrder): number {
  const [left, right] = [a.expected ?? '~', b.expected ?? '~'];
  return left < right ? -1 : left > right ? 1 : 0;
}

/** Which goods on order are meant; what is not said does not count. */
export interface OnOrderWish {
  readonly purchase?: string | undefined;
  readonly supplier?: string | undefined;
  readonly order?: string;
}

/** What is on order of an item, or of everything, as far as it is meant; the earliest expected first. */
export function goodsOnOrder(ledger: Ledger, wish: OnOrderWish, item?: StoreItem): OnOrder[] {
  const key = item === undefined ? null : itemKey(item);
  return [...ledger.onOrder.values()]
    .filter(
      (goods) =>
        (key === null || itemKey(goods.item) === key) &&
        (wish.purchase === undefined || goods.purchase === wish.purchase) &&
        (wish.supplier === undefined || goods.supplier === wish.supplier) &&
        (wish.order === undefined || goods.reservedFor === wish.order),
    )
    .sort(byDay);
}

/** Whether goods on order come for one of some names, or for nobody. */
export function comesFor({ reservedFor }: OnOrder, names: readonly string[]): boolean {
  return reservedFor === undefined || names.includes(reservedFor);
}

/** The purchase with goods on order whose name is nearest to a word. */
export function nearestPurchase(ledger: Ledger, word: string): string | undefined {
  return nearestWord(word, [...new Set([...ledger.onOrder.values()].map(({ purchase }) => purchase))]);
}

/** Lines that put goods on order to another day. */
export function postponedLines(goods: readonly OnOrder[], expected: string): BookingLine[] {
  return goods.flatMap((one) => {
    if (one.expected === expected) return [];
    return [onOrderLine(one, 'withdraw'), onOrderLine({ ...one, expected }, 'expect')];
  });
}

/**
 * The lines by which an amount (pieces; of edging mm) of an item comes in: first what is on order, as far as it is meant, the
 * earliest expected first and kept for whom it was ordered; what is more comes in free. It is told where more has come than is
 * on order, or nothing of it is on order under the purchase that was named.
 */
export function receivedLines(
  ledger: Ledger,
  item: StoreItem,
  amount: number,
  wish: OnOrderWish,
): { readonly lines: BookingLine[]; readonly findings: Finding[] } {
  const goods = goodsOnOrder(ledger, wish, item);
  const { taken, missing } = takeInOrder(goods, amount);
  const lines = taken.map((one) => onOrderLine(one, 'in'));
  if (missing === 0) return { lines, findings: [] };
  const more = [...lines, lineOf(item, missing, 'in')];
  if (goods.length === 0 && wish.purchase === undefined) return { lines: more, findings: [] };
  const what = shownText(itemInWords(item));
  const finding = warningFinding(
    'more-than-ordered',
    `More of ${what} has come than is on order.`,
    undefined,
    {
      found: `${amountInWords(item, amount)} came in`,
      expected: `${amountInWords(item, amount - missing)} on order`,
      advice:
        'it was booked in as free: send back what you did not order, or reverse the booking if it was counted wrongly',
    },
  );
  return { lines: more, findings: [finding] };
}
