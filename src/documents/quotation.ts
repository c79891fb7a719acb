import type { Library } from '../model/library.ts';
import type { PlanFile } from '../model/plan.ts';
import type { Quotation, QuoteLine, QuoteSource } from '../model/quotation.ts';
import { listMoney } from './figures.ts';
import { type RowOf, type Table, tableColumns, tableOf } from './table.ts';
import type { QuoteWords } from './words/quoteWords.ts';

/** What an estimate is told with: the plan it was worked out from and the library that it is priced by. */
export interface QuotedOrder {
  readonly plan: PlanFile;
  readonly library: Library;
  readonly quotation: Quotation;
}

/**
 * Columns of the estimate, one line a line of it, and after them its sums. Every amount follows from its own line, and
 * `quantity from` and `price from` say where its figures stand.
 *
 * | column | holds |
 * |---|---|
 * | line | running number, from 1; empty for sums |
 * | section | material, sawing, edging, drilling, hand work, assembly, extras, added (mark-up and VAT) or sum |
 * | item | id of the sheet, edging, fitting, unit or extra; of work its unit; of sums material, work, extras, mark-up, net, VAT or total |
 * | description | in words |
 * | quantity, unit | how much, at most three decimals; empty for mark-up, VAT and sums |
 * | seconds | of work: what one takes |
 * | price | of one, or of an hour of work, in the currency |
 * | percent | of mark-up and VAT |
 * | base, base lines | what that is a percentage of, and the lines that this is the sum of |
 * | amount | in the currency; quantity × price, quantity × seconds × price ÷ 3600, or base × percent ÷ 100, rounded to a hundredth, halves up; of sums the sum of their lines |
 * | quantity from, price from | list or file, and what stands there in the row |
 * | currency | ISO 4217 |
 */
export const QUOTATION_COLUMNS = tableColumns({
  line: 'whole',
  section: 'text',
  item: 'text',
  description: 'text',
  quantity: 'number',
  unit: 'text',
  seconds: 'number',
  price: 'money',
  percent: 'number',
  base: 'money',
  'base lines': 'text',
  amount: 'money',
  'quantity from': 'text',
  'price from': 'text',
  currency: 'text',
});

/** A quantity in thousandths as it is printed: metres and parts of a sheet with three decimals, all else whole. */
export function printQuantity(line: Exclude<QuoteLine, { kind: 'added' }>): string {
  const figure = line.quantityMilli / 1000;
  return line.unit === 'metre' || line.unit === 'share' || !Number.isInteger(figure)
    ? figure.toFixed(3)
    : String(figure);
}

/** A time in the largest of hours, minutes and seconds in which it is whole, else in seconds. */
export function printTime(ms: number): string {
  if (ms > 0 && ms % 3_600_000 === 0) return `${ms / 3_600_000} h`;
  return ms >= 60_000 && ms % 60_000 === 0 ? `${ms / 60_000} min` : `${ms / 1000} s`;
}

/** Hundredths of a percent as they are printed. */
export function printPercent(hundredths: number): string {
  return `${hundredths / 100} %`;
}

/** `sheets-to-buy.csv: large`. */
export function sourceText({ list, row }: QuoteSource): string {
  return row === '' ? list : `${list}: ${row}`;
}

/** What a line charges, in words; titles come from the library. */
export function describeQuoteLine(
  line: QuoteLine,
  { plan, library }: QuotedOrder,
  words: QuoteWords,
): string {
  if (line.kind === 'added') return words.added(line.item, ...line.of);
  if (line.kind === 'work') {
    const unit =
      line.section === 'assembly' && line.unit === 'unit' ? library.units.get(line.item) : undefined;
    return unit === undefined ? words.work[line.section][line.unit]! : words.assembled(unit.title);
  }
  const { item } = line;
  switch (line.material) {
    case 'edging':
      return library.edgings.get(item)?.title ?? item;
    case 'fitting':
      return library.fittings.get(item)?.title ?? item;
    case 'extra':
      return library.rates?.extras.find(({ id }) => id === item)?.title ?? item;
    case 'sheet':
    case 'offcut': {
      const group = plan.groups.find(({ id }) => id === line.group);
      const stock = group?.stock.find(({ id }) => id === item);
      const titles = [
        library.boards.get(group?.board ?? '')?.title,
        library.finishes.get(group?.finish ?? '')?.title,
      ];
      const name = titles.filter((title) => title !== undefined).join(', ') || item;
      return words[line.material](name, `${stock?.length} × ${stock?.width}`);
    }
  }
}

/** The sums that an estimate has, in order; zero ones that nobody asked for are left out. */
export function quoteSums({ lines, sums }: Quotation) {
  const linesOf = (own: (line: QuoteLine) => boolean) => {
    const numbers = lines.filter(own).map(({ number }) => number);
    const [first, last] = [numbers[0], numbers.at(-1)];
    if (first === undefined || last === undefined) return '';
    return first === last ? String(first) : `${first}–${last}`;
  };
  const isVat = (line: QuoteLine) => line.item === 'VAT' && line.kind === 'added';
  const parts = [
    { key: 'materialMinor', lines: linesOf(({ section }) => section === 'material') },
    { key: 'workMinor', lines: linesOf(({ kind }) => kind === 'work') },
    { key: 'extrasMinor', lines: linesOf(({ section }) => section === 'extras') },
    { key: 'markUpMinor', lines: linesOf((line) => line.kind === 'added' && !isVat(line)) },
  ] as const;
  return {
    parts: parts
      .filter((part) => part.lines !== '')
      .map((part) => ({ ...part, amountMinor: sums[part.key] })),
    net: { lines: linesOf((line) => !isVat(line)), amountMinor: sums.netMinor },
    vat: sums.vatMinor === null ? null : { lines: linesOf(isVat), amountMinor: sums.vatMinor },
    total: { lines: linesOf(() => true), amountMinor: sums.totalMinor },
  };
}

type Cells = RowOf<typeof QUOTATION_COLUMNS>;

const NOTHING = {
  line: null,
  description: null,
  quantity: null,
  unit: null,
  seconds: null,
  price: null,
  percent: null,
  base: null,
  'base lines': null,
  'quantity from': null,
  'price from': null,
} as const;

function cellsOf(line: QuoteLine, order: QuotedOrder, words: QuoteWords): Cells {
  const common = {
    ...NOTHING,
    line: line.number,
    section: line.section,
    item: line.item,
    description: describeQuoteLine(line, order, words),
    amount: line.amountMinor / 100,
    'price from': sourceText(line.priceSource),
    currency: order.library.currency,
  };
  if (line.kind === 'added') {
    const [first, last] = line.of;
    return {
      ...common,
      percent: line.percent / 100,
      base: line.baseMinor / 100,
      'base lines': `${first}–${last}`,
    };
  }
  return {
    ...common,
    quantity: line.quantityMilli / 1000,
    unit: line.unit,
    seconds: line.kind === 'work' ? line.timeMs / 1000 : null,
    price: (line.kind === 'work' ? line.hourMinor : line.priceMinor) / 100,
    'quantity from': sourceText(line.source),
  };
}

const SUM_ITEMS = {
  materialMinor: 'material',
  workMinor: 'work',
  extrasMinor: 'extras',
  markUpMinor: 'mark-up',
} as const;

/** The estimate as a list for other programs. */
export function quotationTable(order: QuotedOrder, words: QuoteWords): Table {
  const { quotation, library } = order;
  const sumCells = (item: string, of: string, amountMinor: number): Cells => ({
    ...NOTHING,
    section: 'sum',
    item,
    'base lines': of,
    amount: amountMinor / 100,
    currency: library.currency,
  });
  const sums = quoteSums(quotation);
  return tableOf('quotation', QUOTATION_COLUMNS, [
    ...quotation.lines.map((line) => cellsOf(line, order, words)),
    ...sums.parts.map(({ key, lines, amountMinor }) => sumCells(SUM_ITEMS[key], lines, amountMinor)),
    sumCells('net', sums.net.lines, sums.net.amountMinor),
    ...(sums.vat === null ? [] : [sumCells('VAT', sums.vat.lines, sums.vat.amountMinor)]),
    sumCells('total', sums.total.lines, sums.total.amountMinor),
  ]);
}

/** An amount with its currency. */
export function printMoney(minor: number, currency: string): string {
  return `${listMoney(minor)} ${currency}`;
}
