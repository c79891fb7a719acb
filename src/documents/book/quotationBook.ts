import type { Order } from '../../model/order.ts';
import type { QuoteFacts } from '../../model/quotation.ts';
import { listMoney } from '../figures.ts';
import {
  describeQuoteLine,
  printMoney,
  printPercent,
  printQuantity,
  printTime,
  type QuotedOrder,
  quoteSums,
  sourceText,
} from '../quotation.ts';
import type { Words } from '../words/words.ts';
import type { Block, Book, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';

/** What the pages of an estimate are made of. Dates are days such as 2026-03-02. */
export interface QuotationSubject extends QuotedOrder {
  readonly order: Order;
  readonly facts: QuoteFacts;
  readonly words: Words;
  readonly date: string;
  /** Null where the library does not say how long an estimate holds. */
  readonly validUntil: string | null;
}

function sumRows({ quotation, library, words: { quote: says } }: QuotationSubject): Row[] {
  const sums = quoteSums(quotation);
  const vatLine = quotation.lines.find((line) => line.kind === 'added' && line.item === 'VAT');
  const row = (what: string, lines: string, minor: number): Row => ({
    cells: [what, lines, printMoney(minor, library.currency)],
  });
  const vat = sums.vat;
  return [
    ...sums.parts.map((part) => row(says.sum[part.key], part.lines, part.amountMinor)),
    row(says.net(vat !== null), sums.net.lines, sums.net.amountMinor),
    ...(vat === null
      ? []
      : [
          row(
            says.vat(printPercent(vatLine?.kind === 'added' ? vatLine.percent : 0)),
            vat.lines,
            vat.amountMinor,
          ),
        ]),
    row(says.total, sums.total.lines, sums.total.amountMinor),
  ];
}

function frontSection(subject: QuotationSubject): Section {
  const { order, library, words, date, validUntil, quotation } = subject;
  const says = words.quote;
  const vehicle = library.vehicles.get(order.vehicle)?.title ?? order.vehicle;
  return {
    id: 'price',
    heading: says.sums,
    level: 2,
    startsPage: false,
    blocks: [
      { kind: 'paragraph', text: says.notInvoice, strong: true },
      {
        kind: 'list',
        items: [
          `${says.order}: ${order.title} (${order.id})`,
          `${words.title.vehicle}: ${vehicle}`,
          says.alike(order.count),
          `${says.date}: ${date}`,
          ...(validUntil === null ? [] : [`${says.validUntil}: ${validUntil}`]),
        ],
      },
      {
        kind: 'table',
        caption: says.sums,
        columns: columnsOf(says.sumColumns, [8, 2, -3]),
        rows: sumRows(subject),
        sum: true,
      },
      ...(quotation.notCharged.length === 0
        ? []
        : [
            {
              kind: 'paragraph',
              text: says.notCharged(quotation.notCharged.map((kind) => says.section[kind]).join(', ')),
              strong: true,
            } as const,
          ]),
    ],
  };
}

function lineRows(subject: QuotationSubject, section: string): Row[] {
  const { quotation, words } = subject;
  const says = words.quote;
  return quotation.lines
    .filter((line) => line.section === section)
    .map((line) => {
      const what = describeQuoteLine(line, subject, says);
      const amount = listMoney(line.amountMinor);
      if (line.kind === 'added') {
        const from = sourceText(line.priceSource);
        const base = listMoney(line.baseMinor);
        return { cells: [String(line.number), what, printPercent(line.percent), '', base, amount, from] };
      }
      const isOne = line.quantityMilli === 1000;
      const price =
        line.kind === 'work' ? says.anHour(listMoney(line.hourMinor)) : listMoney(line.priceMinor);
      return {
        cells: [
          String(line.number),
          what,
          says.quantity(printQuantity(line), line.unit, isOne),
          line.kind === 'work' ? printTime(line.timeMs) : '',
          price,
          amount,
          [...new Set([sourceText(line.source), sourceText(line.priceSource)])].join('; '),
        ],
      };
    });
}

function linesSection(subject: QuotationSubject): Section {
  const { quotation, words } = subject;
  const says = words.quote;
  const sections = [...new Set(quotation.lines.map(({ section }) => section))];
  return {
    id: 'lines',
    heading: says.lines,
    level: 2,
    startsPage: true,
    blocks: sections.map(
      (section): Block => ({
        kind: 'table',
        caption: says.section[section],
        columns: columnsOf(says.columns, [0.9, 6, -2.7, -1.9, -2.3, -2, 5.2]),
        rows: lineRows(subject, section),
      }),
    ),
  };
}

function sawingTable({ facts, plan, library, words: { quote: says, title } }: QuotationSubject): Block {
  const total = { sheets: 0, metresMilli: 0, cuts: 0, settings: 0, turns: 0 };
  const rows = facts.sawing.map((row) => {
    const metresMilli = Math.round(row.sawnUm / 1000);
    total.sheets += row.sheets;
    total.metresMilli += metresMilli;
    total.cuts += row.cuts;
    total.settings += row.settings;
    total.turns += row.turns;
    const group = plan.groups.find(({ id }) => id === row.group);
    const name = [
      library.boards.get(group?.board ?? '')?.title,
      library.finishes.get(group?.finish ?? '')?.title,
    ];
    return cells(name.filter((word) => word !== undefined).join(', ') || row.group, { ...row, metresMilli });
  });
  function cells(name: string, of: typeof total): Row {
    const { sheets, metresMilli, cuts, settings, turns } = of;
    const metres = title.metres((metresMilli / 1000).toFixed(3));
    return { cells: [name, String(sheets), metres, String(cuts), String(settings), String(turns)] };
  }
  return {
    kind: 'table',
    caption: says.sawing,
    columns: columnsOf(says.sawingColumns, [7, -1.6, -2.2, -1.6, -2, -1.8]),
    rows: [...rows, cells(says.all, total)],
    sum: true,
  };
}

function rulesSection(subject: QuotationSubject): Section {
  const { quotation, words } = subject;
  const says = words.quote;
  const { charges } = quotation;
  const hours = (Math.round(quotation.workMs / 36_000) / 100).toFixed(2);
  return {
    id: 'rules',
    heading: says.rules,
    level: 2,
    startsPage: false,
    blocks: [
      {
        kind: 'list',
        items: [
          says.charged.sheets[charges.sheets],
          says.charged.edging[charges.edging],
          says.charged.fittings[charges.fittings],
          says.listPrices,
          says.rounding,
          says.stacked,
          says.hours(hours),
          says.sources,
        ],
      },
      sawingTable(subject),
    ],
  };
}

/** The pages of an estimate, as a book of its own: the price with its sums, every line of it, and how it comes about. */
export function quotationBook(subject: QuotationSubject): Book {
  const { plan, words } = subject;
  return {
    title: plan.job,
    words: { ...words, book: words.quote.heading },
    sections: [frontSection(subject), linesSection(subject), rulesSection(subject)],
  };
}
