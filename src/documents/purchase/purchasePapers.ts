import { mmToUm } from '../../basics/lengths.ts';
import { sumOfBoards } from '../../basics/sumOfBoards.ts';
import { wasteOf } from '../../basics/waste.ts';
import { printLength, printSize, type Units } from '../../drawing/lengthsInWords.ts';
import { plainText } from '../../drawing/lettering.ts';
import type { TitleField } from '../../drawing/page.ts';
import type {
  PurchaseLine,
  PurchaseReport,
  Quantity,
  Spare,
  SupplierOrder,
  WayGroup,
  WayResult,
} from '../../model/purchase.ts';
import type { Row, TextBlock } from '../book/book.ts';
import { columnsOf } from '../book/columns.ts';
import { listMoney } from '../figures.ts';
import type { PurchaseWords } from '../words/purchaseWords.ts';
import type { Words } from '../words/words.ts';
import type { TitledPaper } from './paperPages.ts';

/** Language and how lengths are printed. */
export interface PurchasePaperWishes {
  readonly words: Words;
  readonly units: Units;
}

type Tabled = Extract<TextBlock, { kind: 'table' }>;

/** What is cut together first. */
function inOrder({ chosen, other }: PurchaseReport): readonly WayResult[] {
  if (other === undefined) return [chosen];
  return chosen.way === 'together' ? [chosen, other] : [other, chosen];
}

/** Writes the papers of one purchase. */
class PurchaseWriter {
  private readonly report: PurchaseReport;
  private readonly words: Words;
  private readonly units: Units;
  private readonly says: PurchaseWords;

  constructor(report: PurchaseReport, { words, units }: PurchasePaperWishes) {
    this.report = report;
    this.words = words;
    this.units = units;
    this.says = words.purchase;
  }

  private money(minor: number): string {
    return `${listMoney(minor)} ${this.report.currency}`.trim();
  }

  private what({ need }: PurchaseLine): string {
    const { item, title } = need;
    if (item.item !== 'sheet') return title;
    const size = printSize(mmToUm(item.length), mmToUm(item.width), this.units);
    if (item.grain === 'none') return `${title}, ${size}`;
    const side = printLength(mmToUm(item[item.grain]), this.units);
    return `${title}, ${size}, ${this.says.grainAlong(side)}`;
  }

  /** An amount of a line's item: pieces, or metres. */
  private amount({ need }: PurchaseLine, amount: number): string {
    if (amount === 0) return '–';
    if (need.item.item !== 'edging') return String(amount);
    return this.words.title.metres((Math.ceil(amount / 100_000) / 10).toFixed(1));
  }

  private ordered({ need }: PurchaseLine, { units, packs, offer }: Quantity): string {
    if (need.item.item === 'edging') return this.says.rolls(units);
    return offer.pack === 1 ? String(units) : this.says.packs(packs, offer.pack);
  }

  private titleRows(
    document: string,
    supplier: string,
    last: { readonly heading: string; readonly day: string | null },
  ): (page: number, pages: number) => TitleField[][] {
    const { page: heads } = this.words.drawings;
    return (page, pages) => [
      [
        { heading: heads.workshop, content: '', weight: 48 },
        { heading: heads.job, content: plainText(this.report.title), weight: 72 },
        { heading: heads.document, content: document, weight: 60 },
      ],
      [
        { heading: this.says.supplier, content: plainText(supplier), weight: 48 },
        { heading: this.says.number, content: this.report.name, weight: 72 },
        { heading: last.heading, content: last.day ?? '–', weight: 24, strong: true },
        { heading: heads.date, content: this.report.chosen.purchase.today, weight: 20 },
        { heading: heads.page, content: heads.of(page, pages), weight: 16 },
      ],
    ];
  }

  private orders(): Tabled {
    return {
      kind: 'table',
      caption: this.says.orders,
      columns: columnsOf(this.says.ordersColumns, [4, 7, -1.6, -2.4]),
      rows: this.report.orders.map(({ id, title, panels, start }) => ({
        cells: [id, title, String(panels), start ?? '–'],
      })),
    };
  }

  private sheetsOf({ sheets, offcuts }: Pick<WayGroup, 'sheets' | 'offcuts'>): string {
    return offcuts === 0 ? String(sheets) : this.says.offcuts(sheets, offcuts);
  }

  private ways(): TextBlock[] {
    const { chosen, other } = this.report;
    const ways = inOrder(this.report);
    const heads = ways.flatMap(({ way }) => this.says.wayColumns(other === undefined ? null : way));
    const title = (group: WayGroup) =>
      chosen.purchase.lines.find(
        ({ need: { item } }) =>
          item.item === 'sheet' &&
          item.board === group.board &&
          item.finish === group.finish &&
          item.thickness === group.thickness,
      )?.need.title ?? `${group.board} ${group.finish}`;
    const rows: Row[] = chosen.groups.map((group) => ({
      cells: [
        title(group),
        String(group.panels),
        ...ways.flatMap(({ groups }) => {
          const same = groups.find(
            ({ board, finish, thickness }) =>
              board === group.board && finish === group.finish && thickness === group.thickness,
          );
          if (same === undefined) return ['–', '–', '–'];
          const within = same.proved ? this.says.best : this.says.within(same.withinPercent.toFixed(1));
          return [this.sheetsOf(same), String(same.least), within];
        }),
      ],
    }));
    const sums = ways.map(({ groups }) => sumOfBoards(groups));
    rows.push({
      cells: [
        this.says.all,
        String(sumOfBoards(chosen.groups).panels),
        ...sums.flatMap((sum) => [this.sheetsOf(sum), String(sum.least), '']),
      ],
    });
    const columns = columnsOf(
      [...this.says.waysColumns, ...heads],
      [6, -1.5, ...ways.flatMap(() => [-2, -2, -2.1])],
    );
    return [
      { kind: 'table', caption: this.says.ways, columns, rows, sum: true },
      { kind: 'paragraph', text: this.says.waysIntro },
      { kind: 'list', items: ways.flatMap((way) => this.wayLines(way)) },
      ...this.comparison(),
    ];
  }

  private wayLines({ way, groups, purchase }: WayResult): string[] {
    const { sheetAreaUm2, panelAreaUm2 } = sumOfBoards(groups);
    const waste = wasteOf(sheetAreaUm2, panelAreaUm2);
    const { goodsMinor, deliveryMinor } = purchase;
    return [
      this.says.cost(
        way,
        this.money(goodsMinor),
        this.money(deliveryMinor),
        this.money(goodsMinor + deliveryMinor),
      ),
      this.says.waste(way, (100 * waste.ofSheets).toFixed(1), (100 * waste.ofPanels).toFixed(1)),
    ];
  }

  private comparison(): TextBlock[] {
    const { chosen, other } = this.report;
    if (other === undefined) return [];
    const total = ({ purchase }: WayResult) => purchase.goodsMinor + purchase.deliveryMinor;
    const less = total(other) - total(chosen);
    const than = less === 0 ? 'same' : less > 0 ? 'less' : 'more';
    const text = this.says.chosen(chosen.way, other.way, this.money(Math.abs(less)), than);
    return [{ kind: 'paragraph', text, strong: true }];
  }

  private spare(spare: Spare): TextBlock {
    switch (spare.kind) {
      case 'none':
        return { kind: 'paragraph', text: this.says.spareNone };
      case 'sheets':
        return { kind: 'paragraph', text: this.says.spare(this.says.spareSheets(spare.count), spare.why) };
      case 'percent of need':
      case 'percent of bought': {
        const of = spare.kind === 'percent of need' ? 'need' : 'bought';
        const amount = this.says.sparePercent(String(spare.hundredths / 100), of);
        return { kind: 'paragraph', text: this.says.spare(amount, spare.why) };
      }
    }
  }

  private supplierTitle({ supplier }: SupplierOrder): string {
    return supplier?.title ?? this.says.noSupplier;
  }

  /** What is to be known of an order beside its lines: days, what is missing, more for less. */
  private notes(order: SupplierOrder): string[] {
    const { supplier, orderBy, thereBy, tooLate, belowLeastMinor, lines } = order;
    const notes: string[] = [];
    if (orderBy === null || thereBy === null) notes.push(this.says.noDay);
    else if (tooLate === null) notes.push(this.says.lastDay(orderBy, thereBy));
    else notes.push(this.says.tooLate(orderBy, tooLate.orders.join(', '), tooLate.canBegin));
    if (belowLeastMinor > 0)
      notes.push(
        this.says.belowLeast(this.money(belowLeastMinor), this.money(supplier?.leastOrderMinor ?? 0)),
      );
    for (const { line, quantity } of lines) {
      const { beyond, units, breakFrom, savedMinor } = quantity;
      if (beyond === 0 || breakFrom === null) continue;
      notes.push(this.says.beyond(units, units - beyond, this.what(line), breakFrom, this.money(savedMinor)));
    }
    return notes;
  }

  private sums({ goodsMinor, deliveryMinor }: SupplierOrder, before: number): Row[] {
    const row = (word: string, minor: number): Row => ({
      cells: [...Array.from({ length: before }, () => ''), word, listMoney(minor)],
    });
    return [
      ...(deliveryMinor === 0
        ? []
        : [row(this.says.sum, goodsMinor), row(this.says.delivery, deliveryMinor)]),
      row(`${this.says.total} ${this.report.currency}`.trim(), goodsMinor + deliveryMinor),
    ];
  }

  private orderedLines(order: SupplierOrder): TextBlock[] {
    const rows: Row[] = order.lines.map(({ line, quantity }) => {
      const first = line.quantities[0] === quantity;
      return {
        cells: [
          this.what(line),
          first ? this.amount(line, line.need.amount) : '',
          first ? this.amount(line, line.spare) : '',
          first ? this.amount(line, line.fromStore) : '',
          first ? this.amount(line, line.fromOnOrder) : '',
          this.ordered(line, quantity),
          listMoney(quantity.priceEachMinor),
          listMoney(quantity.priceMinor),
        ],
      };
    });
    return [
      {
        kind: 'table',
        caption: this.says.from(this.supplierTitle(order)),
        columns: columnsOf(this.says.lineColumns, [7.4, -1.8, -1.6, -1.6, -1.9, -1.9, -1.9, -1.9]),
        rows: [...rows, ...this.sums(order, 6)],
        sum: true,
      },
      { kind: 'list', items: this.notes(order) },
    ];
  }

  private fromStore(): TextBlock[] {
    const taken = this.report.chosen.purchase.lines.filter(
      ({ fromStore, fromOnOrder, need }) =>
        fromStore + fromOnOrder + need.keptForOthers + need.comingForOthers > 0,
    );
    if (taken.length === 0) return [];
    return [
      {
        kind: 'table',
        caption: this.says.store,
        columns: columnsOf(this.says.storeColumns, [6.6, -1.8, -1.6, -1.8, -1.8, 2.3, -2.2]),
        rows: taken.map((line) => ({
          cells: [
            this.what(line),
            ...[line.need.amount, line.spare, line.fromStore, line.fromOnOrder].map((amount) =>
              this.amount(line, amount),
            ),
            line.expected ?? '–',
            this.amount(line, line.need.keptForOthers + line.need.comingForOthers),
          ],
        })),
      },
      { kind: 'paragraph', text: this.says.storeIntro },
      ...this.comingLate(taken),
    ];
  }

  /** What is on order already and comes too late, or should have come. */
  private comingLate(lines: readonly PurchaseLine[]): TextBlock[] {
    const items = lines.flatMap((line) => {
      const { comesLate, expected, need } = line;
      const late =
        comesLate === null || expected === null
          ? []
          : [this.says.comesLate(this.what(line), expected, comesLate.thereBy, need.orders.join(', '))];
      const overdue = line.overdue.map((part) =>
        this.says.overdue(this.amount(line, part.amount), this.what(line), part.expected ?? '–'),
      );
      return [...late, ...overdue];
    });
    return items.length === 0 ? [] : [{ kind: 'list', items }];
  }

  /** The whole purchase, for the buyer. */
  purchase(): TitledPaper {
    const { chosen, title } = this.report;
    const { suppliers, spare, today } = chosen.purchase;
    const orderBy = suppliers.flatMap((order) => order.orderBy ?? []).sort()[0] ?? null;
    const all = suppliers.map((order) => this.supplierTitle(order)).join(', ');
    return {
      title: this.says.titled(title),
      blocks: [
        { kind: 'paragraph', text: this.says.bought(today) },
        this.orders(),
        ...this.ways(),
        this.spare(spare),
        ...suppliers.flatMap((order) => this.orderedLines(order)),
        ...this.fromStore(),
      ],
      titleRows: this.titleRows(this.says.purchase, all, { heading: this.says.orderBy, day: orderBy }),
    };
  }

  /** What one supplier is asked for. */
  request(order: SupplierOrder): TitledPaper {
    const rows: Row[] = order.lines.map(({ line, quantity }, index) => ({
      cells: [
        String(index + 1),
        quantity.offer.id,
        this.what(line),
        this.ordered(line, quantity),
        listMoney(quantity.priceEachMinor),
        listMoney(quantity.priceMinor),
      ],
    }));
    const contact = order.supplier?.contact ?? [];
    return {
      title: this.says.request,
      blocks: [
        { kind: 'paragraph', text: this.supplierTitle(order), strong: true },
        ...contact.map((text): TextBlock => ({ kind: 'paragraph', text })),
        { kind: 'paragraph', text: this.says.requestIntro(order.thereBy, order.tooLate !== null) },
        {
          kind: 'table',
          caption: this.says.titled(this.report.title),
          columns: columnsOf(this.says.requestColumns, [-0.9, 4.8, 7.6, -1.9, -1.9, -1.9]),
          rows: [...rows, ...this.sums(order, 4)],
          sum: true,
        },
        { kind: 'paragraph', text: this.says.prices },
        { kind: 'paragraph', text: this.says.confirm },
        { kind: 'paragraph', text: '' },
        { kind: 'paragraph', text: this.says.signature },
      ],
      titleRows: this.titleRows(this.says.request, this.supplierTitle(order), {
        heading: this.says.neededBy,
        day: order.thereBy,
      }),
    };
  }
}

/** The papers of a purchase by the name of their file: one for the buyer, and a request for each supplier. */
export function purchasePapers(
  report: PurchaseReport,
  wishes: PurchasePaperWishes,
): ReadonlyMap<string, TitledPaper> {
  const writer = new PurchaseWriter(report, wishes);
  return new Map([
    ['purchase', writer.purchase()],
    ...report.chosen.purchase.suppliers.map(
      (order) => [`request-${order.supplier?.id ?? 'no-supplier'}`, writer.request(order)] as const,
    ),
  ]);
}
