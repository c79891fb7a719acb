import { sumOfBoards } from '../../src/basics/sumOfBoards.ts';
import type {
  PurchaseLine,
  PurchaseReport,
  Quantity,
  Spare,
  SupplierOrder,
  WayGroup,
  WayResult,
} from '../../src/model/purchase.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

type Colours = ReturnType<typeof coloursFor>;

function shorten(text: string, most: number): string {
  const plain = printable(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1)}…`;
}

function within({ proved, withinPercent }: WayGroup): string {
  return proved ? 'best' : `${withinPercent} %`;
}

function sheetWords({ sheets, offcuts }: Pick<WayGroup, 'sheets' | 'offcuts'>): string {
  return offcuts === 0 ? String(sheets) : `${sheets} + ${offcuts}`;
}

/** Both ways to cut beside each other, board by board. */
function waysTable({ chosen, other }: PurchaseReport): string {
  const ways = other === undefined ? [chosen] : chosen.way === 'together' ? [chosen, other] : [other, chosen];
  const head = ways.flatMap(({ way }) => [other === undefined ? 'sheets' : way, 'least', 'within']);
  const rows = chosen.groups.map((group, index) => [
    shorten(`${group.board} ${group.finish}`, 20),
    String(group.panels),
    ...ways.flatMap(({ groups }) => {
      // Both ways name the same boards, in the order in which the orders first name them.
      const same =
        groups.find(
          (each) =>
            each.board === group.board && each.finish === group.finish && each.thickness === group.thickness,
        ) ?? groups[index]!;
      return [sheetWords(same), String(same.least), within(same)];
    }),
  ]);
  const all = ways.map(({ groups }) => sumOfBoards(groups));
  rows.push([
    'all',
    String(all[0]!.panels),
    ...all.flatMap((sum) => [sheetWords(sum), String(sum.least), '']),
  ]);
  return plainTable(['board and finish', 'panels', ...head], rows, `lr${'rrr'.repeat(ways.length)}`);
}

function totalOf({ purchase }: WayResult): number {
  return purchase.goodsMinor + purchase.deliveryMinor;
}

function waysLines(report: PurchaseReport): string[] {
  const { chosen, other, currency } = report;
  const note = 'sheets: whole sheets, + pieces from the rack; least: no plans cut in this way take fewer';
  const line = (way: WayResult) => {
    const { sheetAreaUm2, panelAreaUm2 } = sumOfBoards(way.groups);
    const used = ((panelAreaUm2 / Math.max(1, sheetAreaUm2)) * 100).toFixed(1);
    return `cut ${way.way}: to order for ${money(totalOf(way), currency)}, of it delivery ${money(
      way.purchase.deliveryMinor,
      currency,
    )}; panels are ${used} % of the sheets`;
  };
  const lines = [wrap(note, TERMINAL_WIDTH, '  ')];
  if (other === undefined)
    return [...lines, wrap(line(chosen).replace(`cut ${chosen.way}: t`, 'T'), TERMINAL_WIDTH, '  ')];
  lines.push(...[chosen, other].map((way) => wrap(line(way), TERMINAL_WIDTH, '  ')));
  const less = totalOf(other) - totalOf(chosen);
  const compared =
    less === 0
      ? 'costs as much as'
      : `costs ${money(Math.abs(less), currency)} ${less > 0 ? 'less' : 'more'} than`;
  lines.push(`ordered is what is cut ${chosen.way}, which ${compared} cut ${other.way}`);
  return lines;
}

function amountWords({ need }: PurchaseLine, amount: number): string {
  if (amount === 0) return '–';
  return need.item.item === 'edging' ? `${(Math.ceil(amount / 100_000) / 10).toFixed(1)} m` : String(amount);
}

/** Of a sheet its board, finish and size, which tell sheets apart where titles would be cut short. */
function itemWords({ need }: PurchaseLine, most: number): string {
  const { item, title } = need;
  if (item.item !== 'sheet') return shorten(title, most);
  const size = ` ${item.length} × ${item.width}`;
  return shorten(`${item.board} ${item.finish}`, most - size.length) + size;
}

function orderedWords({ need }: PurchaseLine, { units, packs, offer }: Quantity): string {
  if (need.item.item === 'edging') return counted(units, 'roll');
  return offer.pack === 1 ? String(units) : `${packs} × ${offer.pack}`;
}

const ITEM_WIDTH = 34;

function supplierTable({ lines }: SupplierOrder): string {
  const isComing = lines.some(({ line }) => line.fromOnOrder > 0);
  const rows = lines.map(({ line, quantity }) => [
    `  ${itemWords(line, ITEM_WIDTH - (isComing ? 8 : 0))}`,
    amountWords(line, line.need.amount + line.spare),
    amountWords(line, line.fromStore),
    ...(isComing ? [amountWords(line, line.fromOnOrder)] : []),
    orderedWords(line, quantity),
    money(quantity.priceEachMinor, ''),
    money(quantity.priceMinor, ''),
  ]);
  const coming = isComing ? ['coming'] : [];
  const head = ['  what', 'need', 'store', ...coming, 'order', 'each', 'price'];
  return plainTable(head, rows, `l${'r'.repeat(head.length - 1)}`);
}

function breakLines({ lines }: SupplierOrder, currency: string): string[] {
  return lines.flatMap(({ line, quantity }) => {
    const { beyond, savedMinor, units, breakFrom } = quantity;
    if (beyond === 0) return [];
    const says = `${units} in place of ${units - beyond} of ${itemWords(line, 60)}: at the price from ${breakFrom} on that is ${money(savedMinor, currency)} less`;
    return [wrap(`  ${says}`, TERMINAL_WIDTH, '    ')];
  });
}

function supplierBlock(order: SupplierOrder, currency: string, colours: Colours): string {
  const { supplier, orderBy, goodsMinor, deliveryMinor } = order;
  const name = supplier === null ? 'No supplier named' : `${shorten(supplier.title, 34)} (${supplier.id})`;
  const sums = `  goods ${money(goodsMinor, currency)}${deliveryMinor === 0 ? '' : `, delivery ${money(deliveryMinor, currency)}`}`;
  return [
    `${colours.bold(name)}${orderBy === null ? '' : `: order by ${orderBy}`}`,
    supplierTable(order),
    ...breakLines(order, currency),
    sums,
  ].join('\n');
}

/** What is there or on order already, so that nothing of it is bought. */
function nothingToBuy({ chosen }: PurchaseReport, colours: Colours): string[] {
  const whole = chosen.purchase.lines.filter((line) => line.need.amount + line.spare > 0 && line.toBuy === 0);
  if (whole.length === 0) return [];
  if (whole.every((line) => line.fromOnOrder === 0)) {
    const rows = whole.map((line) => [`  ${itemWords(line, 50)}`, amountWords(line, line.fromStore)]);
    return [`${colours.bold('All there in the store')}\n${plainTable(['  what', 'taken'], rows, 'lr')}`];
  }
  const rows = whole.map((line) => [
    `  ${itemWords(line, 40)}`,
    amountWords(line, line.fromStore),
    amountWords(line, line.fromOnOrder),
    line.fromOnOrder === 0 ? '' : (line.expected ?? 'no day known'),
  ]);
  const table = plainTable(['  what', 'store', 'coming', 'expected'], rows, 'lrrl');
  return [`${colours.bold('All there, or on order already')}\n${table}`];
}

/** What a column of the tables means, where something is on order already. */
function comingNote({ chosen }: PurchaseReport): string[] {
  return chosen.purchase.lines.some((line) => line.fromOnOrder > 0)
    ? [wrap('coming: on order already, for these orders or for none, and not here yet', TERMINAL_WIDTH, '  ')]
    : [];
}

/** What is added to what the plans take, in words. */
export function spareInWords(spare: Spare): string {
  switch (spare.kind) {
    case 'none':
      return '';
    case 'sheets':
      return `to spare: ${counted(spare.count, 'sheet')} of each board and finish (${printable(spare.why)})`;
    case 'percent of need':
    case 'percent of bought': {
      const of = spare.kind === 'percent of need' ? 'of what is needed' : 'of what is bought';
      return `to spare: ${spare.hundredths / 100} % ${of} (${printable(spare.why)})`;
    }
  }
}

/** What the terminal says of a purchase. */
export function describePurchase(report: PurchaseReport, colours: Colours): string {
  const { orders, chosen, currency, title } = report;
  const panels = orders.reduce((sum, order) => sum + order.panels, 0);
  const ordersTable = plainTable(
    ['order', 'panels', 'begun', ''],
    orders.map(({ id, title: name, start, panels: count }) => [
      shorten(id, 24),
      String(count),
      start ?? '–',
      shorten(name, 34),
    ]),
    'lrll',
  );
  const spare = spareInWords(chosen.purchase.spare);
  const blocks = [
    `${colours.bold(shorten(`Purchase ${title}`, TERMINAL_WIDTH))}\n${counted(orders.length, 'order')}, ${counted(panels, 'panel')}; bought on ${chosen.purchase.today}`,
    ordersTable,
    waysTable(report),
    [...waysLines(report), ...(spare === '' ? [] : [wrap(spare, TERMINAL_WIDTH, '  ')])].join('\n'),
    ...chosen.purchase.suppliers.map((order) => supplierBlock(order, currency, colours)),
    ...nothingToBuy(report, colours),
    ...comingNote(report),
  ];
  return `${blocks.join('\n\n')}\n`;
}
