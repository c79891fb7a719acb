import { takeInOrder } from '../../src/basics/takeInOrder.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type {
  BookingKind,
  BookingLine,
  Draft,
  Ledger,
  PurchaseMark,
  StoreItem,
} from '../../src/model/store.ts';
import {
  amountInWords,
  changedOffcut,
  changeOffcutLines,
  correctionLines,
  goodsOnOrder,
  type ItemWish,
  issueLines,
  itemComingIn,
  itemInStore,
  itemInWords,
  itemOnOrder,
  lineOf,
  markOf,
  type OnOrderWish,
  onOrderLine,
  receivedLines,
  reversal,
} from '../../src/pipeline/keepStore.ts';
import type { BookOptions, ItemCommand, ItemOptions, StockItemWord } from '../commands/stock.ts';
import { reportFindings } from '../terminal/report.ts';
import { bookInStore } from './ledgerFile.ts';
import { aboutBooking, futureDay, tellBooked } from './tell.ts';

const kinds: Readonly<Record<ItemCommand, BookingKind>> = {
  receive: 'receive',
  correct: 'correct',
  issue: 'issue',
  reserve: 'reserve',
  release: 'release',
  'put-back': 'put back',
  expect: 'expect',
  withdraw: 'withdraw',
};

const wishFields = [
  'name',
  'label',
  'place',
  'board',
  'finish',
  'thickness',
  'length',
  'width',
  'grain',
] as const;

function wishOf(item: StockItemWord, options: ItemOptions): ItemWish {
  const given = wishFields.filter((field) => options[field] !== undefined);
  return { item, ...Object.fromEntries(given.map((field) => [field, options[field]])) };
}

function good<T>(value: T): Checked<T> {
  return { ok: true, value, findings: [] };
}

/** Pieces; of edging millimetres. */
function amountAsked(item: StockItemWord, { count, metres }: ItemOptions): number {
  if (item === 'edging') return Math.round((metres ?? 0) * 1000);
  return count ?? 1;
}

function correcting(ledger: Ledger, item: StockItemWord, options: ItemOptions): Checked<BookingLine[]> {
  const wish = wishOf(item, options);
  if (item !== 'offcut') {
    const counted = amountAsked(item, options);
    // What was counted may never have been booked in.
    const meant = counted > 0 ? itemComingIn(ledger, wish) : itemInStore(ledger, wish);
    return meant.ok ? correctionLines(ledger, meant.value, counted) : meant;
  }
  const { label } = options;
  const there = itemInStore(ledger, label === undefined ? { item } : { item, label });
  if (!there.ok) return there;
  if (options.count === 0) return correctionLines(ledger, there.value, 0);
  if (there.value.item !== 'offcut') throw new Error(`an offcut was sought, found ${there.value.item}`);
  const after = changedOffcut(there.value, wish);
  if (JSON.stringify(after) !== JSON.stringify(changedOffcut(there.value, { item }))) {
    return good(changeOffcutLines(ledger, there.value, after));
  }
  const finding: Finding = {
    code: 'nothing-to-correct',
    severity: 'error',
    message: 'The offcut is just so in the store already.',
    advice: 'say what is different (--place, --length, --width, …), or --count 0 if it is gone',
  };
  return { ok: false, findings: [finding] };
}

/** Which goods on order the options mean. */
export function onOrderWish({ purchase, supplier }: Pick<ItemOptions, 'purchase' | 'supplier'>): OnOrderWish {
  return { purchase, supplier };
}

/** Under which purchase, with whom and for when the options say that goods are on order. */
export function markAsked({ purchase, supplier, expected }: ItemOptions): PurchaseMark {
  if (purchase === undefined) throw new Error('the purchase is missing');
  return markOf({ purchase, supplier, expected });
}

function withdrawing(
  ledger: Ledger,
  meant: Checked<StoreItem>,
  amount: number,
  options: ItemOptions,
): Checked<BookingLine[]> {
  if (!meant.ok) return meant;
  const goods = goodsOnOrder(ledger, onOrderWish(options), meant.value);
  // What is free goes first: what is kept for an order is still wanted.
  const freeFirst = [...goods].sort(
    (a, b) => Number(a.reservedFor !== undefined) - Number(b.reservedFor !== undefined),
  );
  const { taken, missing } = takeInOrder(freeFirst, amount);
  if (missing === 0) return good(taken.map((one) => onOrderLine(one, 'withdraw')));
  const finding: Finding = {
    code: 'not-on-order',
    severity: 'error',
    message: `Less of ${itemInWords(meant.value)} is on order.`,
    found: `${amountInWords(meant.value, amount - missing)} on order under ${options.purchase}`,
    expected: amountInWords(meant.value, amount),
    advice: 'what is on order stands in `plywright stock show`',
  };
  return { ok: false, findings: [finding] };
}

function linesFor(
  command: ItemCommand,
  ledger: Ledger,
  item: StockItemWord,
  options: ItemOptions,
): Checked<BookingLine[]> {
  const amount = amountAsked(item, options);
  const wish = wishOf(item, options);
  switch (command) {
    case 'receive': {
      const meant = itemComingIn(ledger, wish);
      if (!meant.ok || options.notOrdered) {
        return meant.ok ? good([lineOf(meant.value, amount, 'in')]) : meant;
      }
      const { lines, findings } = receivedLines(ledger, meant.value, amount, onOrderWish(options));
      return { ok: true, value: lines, findings };
    }
    case 'expect': {
      const meant = itemComingIn(ledger, wish);
      return meant.ok
        ? good([lineOf(meant.value, amount, 'expect', options.order, markAsked(options))])
        : meant;
    }
    case 'withdraw':
      return withdrawing(ledger, itemOnOrder(ledger, wish), amount, options);
    case 'put-back': {
      const meant = itemComingIn(ledger, wish);
      return meant.ok ? good([lineOf(meant.value, amount, 'in')]) : meant;
    }
    case 'issue': {
      const meant = itemInStore(ledger, wish);
      return meant.ok
        ? good(issueLines(ledger, meant.value, amount, [options.order, options.fromReserved]))
        : meant;
    }
    case 'reserve':
    case 'release': {
      const meant = itemInStore(ledger, wish);
      return meant.ok ? good([lineOf(meant.value, amount, command, options.order)]) : meant;
    }
    case 'correct':
      return correcting(ledger, item, options);
  }
}

/** Books what is made of the ledger as it is, and tells it. */
export async function bookAndTell(
  options: BookOptions,
  make: (ledger: Ledger) => Checked<Draft>,
): Promise<void> {
  const tooEarly = await futureDay(options);
  if (tooEarly.length > 0) return reportFindings(tooEarly, options);
  const booked = await bookInStore(options.store, make);
  if (!booked.ok) return reportFindings(booked.findings, options);
  await tellBooked(booked.value, booked.findings, options);
}

/** Runs `plywright stock receive`, `correct`, `issue`, `reserve`, `release` and `put-back`. */
export async function bookItem(
  command: ItemCommand,
  item: StockItemWord,
  options: ItemOptions,
): Promise<void> {
  await bookAndTell(options, (ledger) => {
    const lines = linesFor(command, ledger, item, options);
    if (!lines.ok) return lines;
    const { order } = options;
    const about = { ...aboutBooking(options), ...(order === undefined ? {} : { order }) };
    return { ...lines, value: { ...about, kind: kinds[command], lines: lines.value } };
  });
}

/** Runs `plywright stock reverse`. */
export async function reverse(number: number, options: BookOptions): Promise<void> {
  await bookAndTell(options, (ledger) => good(reversal(ledger, number, aboutBooking(options))));
}
