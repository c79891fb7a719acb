import type { Ledger, StockEntry } from '../../src/model/store.ts';
import {
  amountInWords,
  goodsOnOrder,
  itemInWords,
  itemKey,
  ledgerAfter,
  ledgerOnDay,
  markInWords,
  reservedAmount,
} from '../../src/pipeline/keepStore.ts';
import type { ShowOptions, StockOptions } from '../commands/stock.ts';
import { exitCodes } from '../exitCodes.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';
import { readStore } from './ledgerFile.ts';
import { amountAndForWhom, bookingInWords, entryAsData, onOrderAsData, today, together } from './tell.ts';

function shorten(text: string, most: number): string {
  const plain = printable(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1)}…`;
}

/** There, reserved and free. */
function amounts(entry: StockEntry): string[] {
  const kept = reservedAmount(entry);
  return [entry.amount, kept, entry.amount - kept].map((amount) => amountInWords(entry.item, amount));
}

function sheetsTable(entries: readonly StockEntry[]): string {
  const rows = entries.flatMap((entry) => {
    const { item } = entry;
    if (item.item !== 'sheet') return [];
    const { board, finish, thickness, length, width, grain } = item;
    const material = shorten(`${board} ${finish}`.trim() || '–', 28);
    return [[material, String(thickness), String(length), String(width), grain, ...amounts(entry)]];
  });
  const head = ['sheets', 'thick', 'length', 'width', 'grain', 'there', 'reserved', 'free'];
  return rows.length === 0 ? '' : plainTable(head, rows, 'lrrrlrrr');
}

function namedTable(kind: 'edging' | 'fitting', title: string, entries: readonly StockEntry[]): string {
  const rows = entries.flatMap((entry) => {
    const { item } = entry;
    if (item.item !== kind) return [];
    return [[shorten(item.item === 'edging' ? item.edging : item.fitting, 46), ...amounts(entry)]];
  });
  return rows.length === 0 ? '' : plainTable([title, 'there', 'reserved', 'free'], rows, 'lrrr');
}

function offcutsList(entries: readonly StockEntry[]): string {
  const blocks = entries.flatMap(({ item, reserved }) => {
    if (item.item !== 'offcut') return [];
    const { label, board, finish, thickness, length, width, grain, place } = item;
    const parts = [
      `${board} ${finish}`.trim(),
      `${length} × ${width}${thickness === 0 ? '' : ` × ${thickness}`} mm`,
      grain === 'none' ? '' : `grain along ${grain}`,
      place,
      ...[...reserved.keys()].map((order) => `for ${order}`),
    ];
    const about = parts.filter((part) => part !== '').map(printable);
    return [`${shorten(label, TERMINAL_WIDTH)}\n  ${wrap(about.join(', '), TERMINAL_WIDTH - 2, '    ')}`];
  });
  return blocks.length === 0 ? '' : `offcuts\n${blocks.join('\n')}`;
}

function reservations(entries: readonly StockEntry[]): string {
  const orders = [...new Set(entries.flatMap(({ reserved }) => [...reserved.keys()]))].sort();
  if (orders.length === 0) return '';
  return wrap(`reserved for: ${orders.map(printable).join(', ')}`, TERMINAL_WIDTH, '  ');
}

/** What is on order, purchase by purchase and supplier by supplier, with the day on which it is expected. */
function onOrderList(ledger: Ledger, day: string): string {
  const deliveries = together(goodsOnOrder(ledger, {}), markInWords);
  const blocks = [...deliveries].map(([mark, goods]) => {
    const { expected } = goods[0]!;
    const when = expected === undefined ? ', no day is known' : expected < day ? ' (that day is over)' : '';
    const items = together(goods, ({ item }) => itemKey(item));
    const rows = [...items.values()].map((own) => {
      const text = amountAndForWhom(own, ` × ${itemInWords(own[0]!.item)}`);
      return `    ${wrap(printable(text), TERMINAL_WIDTH - 4, '      ')}`;
    });
    return [`  ${wrap(printable(`${mark}${when}`), TERMINAL_WIDTH - 2, '    ')}`, ...rows].join('\n');
  });
  return blocks.length === 0 ? '' : `on order, not there yet\n${blocks.join('\n')}`;
}

function sorted(ledger: Ledger): StockEntry[] {
  return [...ledger.stock].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry);
}

function asText(ledger: Ledger, when: string, day: string): string {
  const entries = sorted(ledger);
  const last = ledger.bookings.at(-1);
  const state =
    last === undefined ? 'nothing is booked' : `the last booking is ${last.number} of ${last.date}`;
  const parts = [
    `The store ${when}${entries.length === 0 ? ' is empty' : ''}; ${state}`,
    sheetsTable(entries),
    offcutsList(entries),
    namedTable('edging', 'edging', entries),
    namedTable('fitting', 'fittings', entries),
    reservations(entries),
    onOrderList(ledger, day),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** Runs `plywright stock show`. */
export async function show(options: ShowOptions): Promise<void> {
  const read = await readStore(options.store);
  if (!read.ok) return reportFindings(read.findings, options);
  const { on, after } = options;
  const { ledger: now } = read.value;
  if (after !== undefined && after > now.bookings.length) {
    const message = `There is no booking ${after}.`;
    const place = { file: options.store };
    const expected = `0 to ${now.bookings.length}`;
    return reportFindings(
      [{ code: 'booking-unknown', severity: 'error', message, place, expected }],
      options,
    );
  }
  const ledger =
    on !== undefined ? ledgerOnDay(now, on) : after !== undefined ? ledgerAfter(now, after) : now;
  const when = on !== undefined ? `on ${on}` : after !== undefined ? `after booking ${after}` : 'now';
  if (options.json) {
    const document = {
      ok: true,
      exitCode: exitCodes.done,
      bookings: ledger.bookings.length,
      ...(on === undefined ? {} : { on }),
      stock: sorted(ledger).map(entryAsData),
      onOrder: goodsOnOrder(ledger, {}).map(onOrderAsData),
      findings: read.findings,
    };
    await print(jsonText(document));
  } else
    await print(
      asText(ledger, when, on ?? (after === undefined ? today() : (ledger.bookings.at(-1)?.date ?? ''))),
    );
  await printError(describeFindings(read.findings, coloursFor(process.stderr)));
  endWith(exitCodes.done);
}

/** Runs `plywright stock history`. */
export async function history(options: StockOptions): Promise<void> {
  const read = await readStore(options.store);
  if (!read.ok) return reportFindings(read.findings, options);
  const { bookings, reversedBy } = read.value.ledger;
  if (options.json) {
    const document = {
      ok: true,
      exitCode: exitCodes.done,
      bookings: bookings.map((booking) => ({
        ...booking,
        reversedBy: reversedBy.get(booking.number) ?? null,
      })),
      findings: read.findings,
    };
    await print(jsonText(document));
  } else {
    const text = bookings.map((booking) => bookingInWords(booking, reversedBy.get(booking.number)));
    await print(text.length === 0 ? 'Nothing is booked yet.\n' : `${text.join('\n')}\n`);
  }
  await printError(describeFindings(read.findings, coloursFor(process.stderr)));
  endWith(exitCodes.done);
}
