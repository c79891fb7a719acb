import {
  describeQuoteLine,
  printPercent,
  printQuantity,
  printTime,
  type Quoted,
  type QuoteLine,
  quoteSums,
  wordsOf,
} from '../../src/pipeline/makeQuote.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

const MOST_WORDS = 33;

function shorten(text: string): string {
  const plain = printable(text);
  return plain.length <= MOST_WORDS ? plain : `${plain.slice(0, MOST_WORDS - 1)}…`;
}

/** Boards by their ids: titles of several would begin alike and be cut short alike. */
function nameOf(line: QuoteLine, { ordered, plan, quotation }: Quoted): string {
  if (line.kind === 'priced' && line.group !== null) {
    const group = plan.groups.find(({ id }) => id === line.group);
    const stock = group?.stock.find(({ id }) => id === line.item);
    const size = `${stock?.length}×${stock?.width}`;
    const board = `${group?.board} ${group?.finish}`;
    const room = MOST_WORDS - size.length - 1;
    return `${board.length <= room ? board : `${board.slice(0, room - 1)}…`} ${size}`;
  }
  const { library } = ordered;
  return shorten(describeQuoteLine(line, { library, plan, quotation }, wordsOf('en').quote));
}

/** Edging and saw cuts are metres, all else is counted. */
function quantityOf(line: Exclude<QuoteLine, { kind: 'added' }>): string {
  return `${printQuantity(line)}${line.unit === 'metre' ? ' m' : ''}`;
}

function cellsOf(line: QuoteLine, what: string): string[] {
  const number = String(line.number);
  const amount = money(line.amountMinor, '');
  if (line.kind === 'added') {
    return [number, what, printPercent(line.percent), '', money(line.baseMinor, ''), amount];
  }
  if (line.kind === 'priced') {
    return [number, what, quantityOf(line), '', money(line.priceMinor, ''), amount];
  }
  return [number, what, quantityOf(line), printTime(line.timeMs), money(line.hourMinor, ''), amount];
}

/** What the terminal says of an estimate: a line each, the sums, and how the figures come about. */
export function describeQuote(quoted: Quoted, colours: ReturnType<typeof coloursFor>): string {
  const { ordered, quotation } = quoted;
  const { library, order } = ordered;
  const words = wordsOf('en').quote;
  const table = plainTable(
    ['', 'what', 'quantity', 'one', 'price', 'amount'],
    quotation.lines.map((line) => cellsOf(line, nameOf(line, quoted))),
    'rlrrrr',
  );
  const sums = quoteSums(quotation);
  const { currency } = library;
  const sumRows = [
    ...sums.parts.map((part) => [words.sum[part.key], part.lines, money(part.amountMinor, currency)]),
    [words.net(sums.vat !== null), sums.net.lines, money(sums.net.amountMinor, currency)],
    ...(sums.vat === null ? [] : [['VAT', sums.vat.lines, money(sums.vat.amountMinor, currency)]]),
    [words.total, sums.total.lines, money(sums.total.amountMinor, currency)],
  ];
  const { charges, notCharged } = quotation;
  const notes = [
    words.charged.sheets[charges.sheets],
    words.charged.edging[charges.edging],
    words.charged.fittings[charges.fittings],
    words.listPrices,
    'one: time of one, where the price is that of an hour',
    ...(notCharged.length === 0 ? [] : [words.notCharged(notCharged.join(', '))]),
    words.notInvoice,
  ];
  return [
    colours.bold(printable(order.title)),
    '',
    table,
    '',
    plainTable(['', 'lines', ''], sumRows, 'llr'),
    '',
    ...notes.map((note) => wrap(note, TERMINAL_WIDTH)),
    '',
  ].join('\n');
}
