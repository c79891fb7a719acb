import type { Ledger, StockEntry } from '../../src/model/store.ts';
import { amountInWords, ledgerAfter, ledgerOnDay, reservedAmount } from '../../src/pipeline/keepStore.ts';
import type { ShowOptions, StockOptions } from '../commands/stock.ts';
import { exitCodes } from '../exitCodes.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';
import { readStore } from './ledgerFile.ts';
import { bookingInWords, entryAsData } from './tell.ts';

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

function sorted(ledger: Ledger): StockEntry[] {
  return [...ledger.stock].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry);
}

function asText(ledger: Ledger, when: string): string {
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
      findings: read.findings,
    };
    await print(jsonText(document));
  } else await print(asText(ledger, when));
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
