import { userInfo } from 'node:os';
import type { Finding } from '../../src/model/finding.ts';
import type { Booking, BookingLine, Ledger, OnOrder, StockEntry } from '../../src/model/store.ts';
import {
  amountInWords,
  amountOf,
  goodsOnOrder,
  itemInWords,
  itemKey,
  itemOf,
  markInWords,
  reservedAmount,
  sheetsInWords,
} from '../../src/pipeline/keepStore.ts';
import type { BookOptions } from '../commands/stock.ts';
import { exitCodes } from '../exitCodes.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';
import { type Booked, readStore } from './ledgerFile.ts';

/** Today by the computer's calendar, such as 2026-03-02. */
export function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function login(): string {
  try {
    return userInfo().username || 'unknown';
  } catch {
    return 'unknown';
  }
}

/** Day, name and reason of a booking, with what is usual where a person says nothing. */
export function aboutBooking({ date, who, why }: BookOptions): { date: string; who: string; why: string } {
  return { date: date ?? today(), who: who ?? login(), why: why ?? '' };
}

/**
 * A day that has not come yet would keep every earlier one from being booked. It may be booked on where the store has it
 * already: then the clock of the computer was wrong, or is.
 */
export async function futureDay({ date, store }: Pick<BookOptions, 'date' | 'store'>): Promise<Finding[]> {
  if (date === undefined || date <= today()) return [];
  const stored = await readStore(store);
  const last = stored.ok ? stored.value.ledger.bookings.at(-1) : undefined;
  if (last !== undefined && date === last.date) return [];
  const message = 'This day has not come yet.';
  return [
    { code: 'day-to-come', severity: 'error', message, found: date, expected: `${today()} or earlier` },
  ];
}

function moveInWords(line: BookingLine): string {
  const { reservedFor: order, onOrder } = line;
  const reserved = order === undefined ? '' : `, reserved for ${order}`;
  const mark = onOrder === undefined ? '' : markInWords(onOrder);
  switch (line.move) {
    case 'in':
      return `in${mark === '' ? '' : ` (was on order: ${mark})`}${reserved}`;
    case 'out':
      return `out${mark === '' ? '' : ` (on order again: ${mark})`}${order === undefined ? '' : `, was reserved for ${order}`}`;
    case 'reserve':
      return `${mark === '' ? '' : `on order (${mark}), `}reserved for ${order}`;
    case 'release':
      return `${mark === '' ? '' : `on order (${mark}), `}no longer reserved for ${order}`;
    case 'expect':
      return `on order: ${mark}${reserved}`;
    case 'withdraw':
      return `no longer on order: ${mark}${reserved}`;
  }
}

/** A line of a booking for people: `4 × sheet poplar-15 … in`. */
export function lineInWords(line: BookingLine): string {
  const item = itemOf(line);
  const amount = item.item === 'offcut' ? '' : `${amountInWords(item, amountOf(line))} × `;
  return `${amount}${itemInWords(item)}: ${moveInWords(line)}`;
}

/** A booking for people, its lines indented. */
export function bookingInWords(booking: Booking, reversedBy?: number): string {
  const { number, date, kind, who, why, order, reverses, sheets, recut, lines } = booking;
  const about = [
    `${number} ${date} ${kind}${reverses === undefined ? '' : ` ${reverses}`}`,
    who,
    order === undefined ? '' : `for ${order}`,
    why,
    reversedBy === undefined ? '' : `REVERSED by ${reversedBy}`,
  ].filter((part) => part !== '');
  const indented = (text: string) => `    ${wrap(printable(text), TERMINAL_WIDTH - 4, '      ')}`;
  return [
    wrap(about.map(printable).join(' · '), TERMINAL_WIDTH, '   '),
    ...(recut === undefined ? [] : [indented(`spoiled, cut anew: ${recut.spoiled.join(', ')}`)]),
    ...(sheets === undefined ? [] : [indented(`sawn: ${sheetsInWords(sheets).join(', ')}`)]),
    ...lines.map((line) => indented(lineInWords(line))),
  ].join('\n');
}

/** An entry of the stock for other programs; edging in metres. */
export function entryAsData(entry: StockEntry) {
  const { item, amount, reserved } = entry;
  const inUnit = (value: number) => (item.item === 'edging' ? value / 1000 : value);
  const kept = Object.fromEntries([...reserved].map(([order, value]) => [order, inUnit(value)]));
  const free = amount - reservedAmount(entry);
  return { ...item, amount: inUnit(amount), free: inUnit(free), reserved: kept };
}

/** Goods on order for other programs; edging in metres. */
export function onOrderAsData({ item, amount, purchase, supplier, expected, reservedFor }: OnOrder) {
  return {
    ...item,
    amount: item.item === 'edging' ? amount / 1000 : amount,
    purchase,
    supplier: supplier ?? null,
    expected: expected ?? null,
    reservedFor: reservedFor ?? null,
  };
}

/** Goods in the order in which they stand, those with one key together. */
export function together(goods: readonly OnOrder[], keyOf: (one: OnOrder) => string): Map<string, OnOrder[]> {
  const found = new Map<string, OnOrder[]>();
  for (const one of goods) found.set(keyOf(one), [...(found.get(keyOf(one)) ?? []), one]);
  return found;
}

/** How much of one item comes, and for whom: `70 (29 for heron, 34 for curlew)`; what comes for nobody is the rest. */
export function amountAndForWhom(goods: readonly OnOrder[], what = ''): string {
  const { item } = goods[0]!;
  const all = goods.reduce((sum, { amount }) => sum + amount, 0);
  const kept = goods.flatMap(({ amount, reservedFor }) =>
    reservedFor === undefined ? [] : [`${amountInWords(item, amount)} for ${reservedFor}`],
  );
  return `${amountInWords(item, all)}${what}${kept.length === 0 ? '' : ` (${kept.join(', ')})`}`;
}

function onOrderInWords(ledger: Ledger, item: OnOrder['item']): string {
  const deliveries = together(goodsOnOrder(ledger, {}, item), markInWords);
  const each = [...deliveries].map(([mark, goods]) => `${amountAndForWhom(goods)} under ${mark}`);
  return each.length === 0 ? '' : `; on order: ${each.join('; ')}`;
}

function nowThere({ booking, ledger }: Booked): string[] {
  const keys = new Map(booking.lines.map((line) => [itemKey(itemOf(line)), itemOf(line)]));
  return [...keys].flatMap(([key, item]) => {
    if (item.item === 'offcut') return [];
    const entry = ledger.stock.get(key);
    const amount = entry?.amount ?? 0;
    const kept = [...(entry?.reserved ?? [])].map(([order, n]) => `${amountInWords(item, n)} for ${order}`);
    const reserved = kept.length === 0 ? '' : `, reserved: ${kept.join(', ')}`;
    const text = `${amountInWords(item, amount)} × ${itemInWords(item)}${reserved}${onOrderInWords(ledger, item)}`;
    return [`    ${wrap(printable(text), TERMINAL_WIDTH - 4, '      ')}`];
  });
}

/** Says what is booked and what is there of it now, and sets the exit code. */
export async function tellBooked(
  booked: Booked,
  findings: readonly Finding[],
  how: { readonly json?: true },
  more: { readonly said: string; readonly data: Readonly<Record<string, unknown>> } = { said: '', data: {} },
): Promise<void> {
  const { booking, ledger } = booked;
  if (how.json) {
    const keys = new Set(booking.lines.map((line) => itemKey(itemOf(line))));
    const stock = [...keys].flatMap((key) => {
      const entry = ledger.stock.get(key);
      return entry === undefined ? [] : [entryAsData(entry)];
    });
    const onOrder = goodsOnOrder(ledger, {})
      .filter(({ item }) => keys.has(itemKey(item)))
      .map(onOrderAsData);
    const document = { ok: true, exitCode: exitCodes.done, booking, stock, onOrder, ...more.data, findings };
    await print(jsonText(document));
  } else {
    const there = nowThere(booked);
    const text = `Booked:\n${bookingInWords(booking)}\n`;
    const said = more.said === '' ? '' : `${wrap(printable(more.said), TERMINAL_WIDTH, '  ')}\n`;
    await print(`${text}${there.length === 0 ? '' : `Now there:\n${there.join('\n')}\n`}${said}`);
  }
  await printError(describeFindings(findings, coloursFor(process.stderr)));
  endWith(exitCodes.done);
}
