import { errorFinding, shownText } from '../basics/findings.ts';
import type { Finding } from '../model/finding.ts';
import type { BookingLine, Ledger, Stock, StockEntry } from '../model/store.ts';
import { amountInWords, amountOf, itemInWords, itemKey, itemOf, sameItem } from './items.ts';
import { changeOnOrder, type OpenOnOrder, sameOnOrder } from './onOrder.ts';

/** How much of an entry is kept for orders, all together. */
export function reservedAmount(entry: StockEntry): number {
  let sum = 0;
  for (const amount of entry.reserved.values()) sum += amount;
  return sum;
}

/** How much of an entry orders of some names may take: what is free, and what is kept for them. */
export function amountFor(entry: StockEntry, names: readonly string[]): number {
  let left = entry.amount;
  for (const [name, amount] of entry.reserved) if (!names.includes(name)) left -= amount;
  return left;
}

/** For whom an entry is kept, for a sentence: `2 for demo-long, 1 for demo-short`. */
export function reservationsInWords(entry: StockEntry): string {
  return [...entry.reserved]
    .map(([order, amount]) => `${amountInWords(entry.item, amount)} for ${shownText(order)}`)
    .join(', ');
}

function withReserved(entry: StockEntry, order: string, amount: number): StockEntry {
  const reserved = new Map(entry.reserved);
  if (amount === 0) reserved.delete(order);
  else reserved.set(order, amount);
  return { ...entry, reserved };
}

function short(line: BookingLine, entry: StockEntry | undefined, wanted: number): Finding {
  const item = itemOf(line);
  const there = entry?.amount ?? 0;
  const kept = entry === undefined ? 0 : reservedAmount(entry);
  const say = (amount: number) => amountInWords(item, amount);
  const what = shownText(itemInWords(item));
  if (item.item === 'offcut' && entry === undefined) {
    return errorFinding('not-in-store', `The store has no offcut labelled ${shownText(item.label)}.`);
  }
  if (wanted <= there) {
    return errorFinding('reserved-for-others', `Too little of ${what} is free.`, undefined, {
      found: `${say(there)} there, of them reserved: ${reservationsInWords(entry!)}`,
      expected: `${say(wanted)} free`,
      advice: `name the order it was reserved for, or release ${say(wanted - (there - kept))} of it first`,
    });
  }
  return errorFinding('not-in-store', `The store has too little of ${what}.`, undefined, {
    found: `${say(there)} there`,
    expected: say(wanted),
    advice: 'count what is there; if it is more, correct the stock first',
  });
}

function notReserved(line: BookingLine, entry: StockEntry | undefined, order: string): Finding {
  const item = itemOf(line);
  const found = entry?.reserved.get(order) ?? 0;
  return errorFinding(
    'not-reserved',
    `Less of ${shownText(itemInWords(item))} is reserved for ${shownText(order)}.`,
    undefined,
    { found: amountInWords(item, found), expected: amountInWords(item, amountOf(line)) },
  );
}

function comeIn(line: BookingLine, entry: StockEntry | undefined): StockEntry | Finding {
  const item = itemOf(line);
  const amount = amountOf(line);
  if (entry !== undefined && item.item === 'offcut') {
    return errorFinding(
      'offcut-twice',
      `An offcut labelled ${shownText(item.label)} is in the store already.`,
      undefined,
      {
        found: itemInWords(entry.item),
        advice: 'give the new one another label, or take the old one out first',
      },
    );
  }
  const there = entry ?? { item, amount: 0, reserved: new Map<string, number>() };
  const more = { ...there, amount: there.amount + amount };
  if (line.reservedFor === undefined) return more;
  return withReserved(more, line.reservedFor, (more.reserved.get(line.reservedFor) ?? 0) + amount);
}

function goOut(line: BookingLine, entry: StockEntry | undefined): StockEntry | Finding {
  const amount = amountOf(line);
  if (entry === undefined || entry.amount < amount) return short(line, entry, amount);
  if (!sameItem(entry.item, itemOf(line))) {
    return errorFinding(
      'offcut-differs',
      'The offcut in the store is another than the booking says.',
      undefined,
      {
        found: itemInWords(entry.item),
        expected: itemInWords(itemOf(line)),
      },
    );
  }
  const less = { ...entry, amount: entry.amount - amount };
  if (line.reservedFor === undefined) {
    return less.amount < reservedAmount(entry) ? short(line, entry, amount) : less;
  }
  const kept = entry.reserved.get(line.reservedFor) ?? 0;
  if (kept < amount) return notReserved(line, entry, line.reservedFor);
  return withReserved(less, line.reservedFor, kept - amount);
}

function keepFor(line: BookingLine, entry: StockEntry | undefined): StockEntry | Finding {
  const amount = amountOf(line);
  const order = line.reservedFor;
  if (order === undefined) return noOrder(line);
  if (entry === undefined || entry.amount - reservedAmount(entry) < amount) return short(line, entry, amount);
  return withReserved(entry, order, (entry.reserved.get(order) ?? 0) + amount);
}

function letGo(line: BookingLine, entry: StockEntry | undefined): StockEntry | Finding {
  const amount = amountOf(line);
  const order = line.reservedFor;
  if (order === undefined) return noOrder(line);
  const kept = entry?.reserved.get(order) ?? 0;
  if (entry === undefined || kept < amount) return notReserved(line, entry, order);
  return withReserved(entry, order, kept - amount);
}

function noOrder(line: BookingLine): Finding {
  return errorFinding(
    'order-missing',
    `It is not said for which order ${shownText(itemInWords(itemOf(line)))} is reserved.`,
  );
}

function changed(line: BookingLine, entry: StockEntry | undefined): StockEntry | Finding {
  switch (line.move) {
    case 'in':
      return comeIn(line, entry);
    case 'out':
      return goOut(line, entry);
    case 'reserve':
      return keepFor(line, entry);
    case 'release':
      return letGo(line, entry);
    case 'expect':
    case 'withdraw':
      throw new Error(`${line.move} changes nothing that is there`);
  }
}

/** What a line changes: what is there, and what is on order. */
export interface OpenStock {
  readonly stock: Map<string, StockEntry>;
  readonly onOrder: OpenOnOrder;
}

/** Whether a line changes what is there, and not only what is on order. */
function isOfStock({ move, onOrder }: BookingLine): boolean {
  return (
    move === 'in' || move === 'out' || ((move === 'reserve' || move === 'release') && onOrder === undefined)
  );
}

/**
 * Does what a line says to a stock that may be changed. Gives what stands in the way, the stock as it was, or null: less
 * than nothing of an item, an offcut that is there already, what is reserved for an order and not taken as such, more than is
 * on order.
 */
export function applyLine({ stock, onOrder }: OpenStock, line: BookingLine): Finding | null {
  const key = itemKey(itemOf(line));
  const after = isOfStock(line) ? changed(line, stock.get(key)) : null;
  if (after !== null && 'code' in after) return after;
  if (line.onOrder !== undefined || line.move === 'expect' || line.move === 'withdraw') {
    const wrong = changeOnOrder(onOrder, line);
    if (wrong !== null) return wrong;
  }
  if (after === null) return null;
  if (after.amount === 0) stock.delete(key);
  else stock.set(key, after);
  return null;
}

/** The lines that undo a booking's lines, last first. */
export function inverseLines(lines: readonly BookingLine[]): BookingLine[] {
  const opposite = {
    in: 'out',
    out: 'in',
    reserve: 'release',
    release: 'reserve',
    expect: 'withdraw',
    withdraw: 'expect',
  } as const;
  return lines.map((line): BookingLine => ({ ...line, move: opposite[line.move] })).reverse();
}

/** Whether the stock is the same item by item, reservations included. */
export function sameStock(a: Stock, b: Stock): boolean {
  if (a.size !== b.size) return false;
  return [...a].every(([key, entry]) => {
    const other = b.get(key);
    return (
      other !== undefined &&
      other.amount === entry.amount &&
      sameItem(other.item, entry.item) &&
      other.reserved.size === entry.reserved.size &&
      [...entry.reserved].every(([order, amount]) => other.reserved.get(order) === amount)
    );
  });
}

/** Whether two ledgers come to the same: item by item what is there, for whom, and what is on order. */
export function sameState(
  a: Omit<Ledger, 'bookings' | 'reversedBy'>,
  b: Omit<Ledger, 'bookings' | 'reversedBy'>,
): boolean {
  return sameStock(a.stock, b.stock) && sameOnOrder(a.onOrder, b.onOrder);
}
