import { sumOfBoards } from '../../basics/sumOfBoards.ts';
import { wasteOf } from '../../basics/waste.ts';
import type {
  BoughtItem,
  PurchaseLine,
  PurchaseReport,
  Quantity,
  SupplierOrder,
  WayGroup,
  WayResult,
} from '../../model/purchase.ts';
import { metresUp } from '../figures.ts';
import { type Table, tableColumns, tableOf } from '../table.ts';

/** Columns of the lists of a purchase; `src/documents/LISTS.md` says what each holds. */
const ORDERED = {
  supplier: 'text',
  'price each': 'money',
  price: 'money',
  currency: 'text',
  'order by': 'text',
  expected: 'text',
  orders: 'text',
} as const;

/** What is needed of an item, and where it is had of. */
function amountColumns<Kind extends 'whole' | 'metres'>(kind: Kind) {
  return {
    needed: kind,
    spare: kind,
    'from store': kind,
    'kept for others': kind,
    'on order': kind,
    'on order expected': 'text',
    'on order for others': kind,
    'to buy': kind,
  } as const;
}

export const PURCHASE_SHEETS_COLUMNS = tableColumns({
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  length: 'mm',
  width: 'mm',
  grain: 'text',
  description: 'text',
  ...amountColumns('whole'),
  sheet: 'text',
  pack: 'whole',
  count: 'whole',
  missing: 'whole',
  ...ORDERED,
});

export const PURCHASE_EDGING_COLUMNS = tableColumns({
  edging: 'text',
  description: 'text',
  ...amountColumns('metres'),
  roll: 'number',
  rolls: 'whole',
  metres: 'metres',
  ...ORDERED,
});

export const PURCHASE_FITTINGS_COLUMNS = tableColumns({
  fitting: 'text',
  description: 'text',
  ...amountColumns('whole'),
  pack: 'whole',
  packs: 'whole',
  count: 'whole',
  ...ORDERED,
});

export const PURCHASE_SUPPLIERS_COLUMNS = tableColumns({
  supplier: 'text',
  description: 'text',
  goods: 'money',
  delivery: 'money',
  total: 'money',
  currency: 'text',
  'below least order': 'money',
  'order by': 'text',
  'first start': 'text',
  'too late for': 'text',
  'can begin': 'text',
});

export const PURCHASE_WAYS_COLUMNS = tableColumns({
  cut: 'text',
  ordered: 'text',
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  panels: 'whole',
  sheets: 'whole',
  offcuts: 'whole',
  least: 'whole',
  'within percent': 'percent',
  'waste of sheets': 'percent',
  'waste of panels': 'percent',
  goods: 'money',
  delivery: 'money',
  total: 'money',
  currency: 'text',
});

export const PURCHASE_ORDERS_COLUMNS = tableColumns({
  order: 'text',
  title: 'text',
  start: 'text',
  panels: 'whole',
});

const separator = '; ';

/** What is the same for each kind of line: of whom, at which price, by when, for whom. */
function ordered(
  report: PurchaseReport,
  line: PurchaseLine,
  quantity: Quantity | undefined,
): Record<keyof typeof ORDERED, string | number | null> {
  const supplier = quantity?.offer.supplier ?? null;
  const asked = report.chosen.purchase.suppliers.find((each) => (each.supplier?.id ?? null) === supplier);
  const own = asked?.lines.find((each) => each.line === line && each.quantity === quantity);
  return {
    supplier,
    'price each': quantity === undefined ? null : quantity.priceEachMinor / 100,
    price: (quantity?.priceMinor ?? 0) / 100,
    currency: report.currency,
    'order by': own?.orderBy ?? null,
    expected: quantity === undefined ? null : (asked?.expected ?? null),
    orders: line.need.orders.join(separator),
  };
}

/** The amounts of a line, in units of `unit`; nothing on rows after its first, so that columns can be added up. */
function amounts(line: PurchaseLine, first: boolean, unit: (amount: number) => number) {
  const { need, spare, fromStore, fromOnOrder, expected, toBuy } = line;
  const say = (amount: number) => (first ? unit(amount) : null);
  return {
    needed: say(need.amount),
    spare: say(spare),
    'from store': say(fromStore),
    'kept for others': say(need.keptForOthers),
    'on order': say(fromOnOrder),
    'on order expected': first ? expected : null,
    'on order for others': say(need.comingForOthers),
    'to buy': say(toBuy),
  };
}

type Cells = Readonly<Record<string, string | number | null>>;

/** A row of a list as it is made; `first` says whether it is the first of its line. */
interface ListedLine<Kind extends BoughtItem['item']> {
  readonly line: PurchaseLine;
  readonly item: Extract<BoughtItem, { item: Kind }>;
  /** Absent where nothing of it is ordered. */
  readonly quantity: Quantity | undefined;
  readonly first: boolean;
}

/**
 * The rows of one kind of item: one for each quantity of a line, one where nothing is ordered. What the line says stands on its
 * first row; `own` gives the cells that only this kind has.
 */
function rowsOf<Kind extends BoughtItem['item']>(
  report: PurchaseReport,
  kind: Kind,
  unit: (amount: number) => number,
  own: (row: ListedLine<Kind>) => Cells,
): Cells[] {
  return report.chosen.purchase.lines.flatMap((line) => {
    const { item, title } = line.need;
    if (item.item !== kind) return [];
    const quantities = line.quantities.length === 0 ? [undefined] : line.quantities;
    return quantities.map((quantity, index) => ({
      description: title,
      ...amounts(line, index === 0, unit),
      ...own({ line, item: item as ListedLine<Kind>['item'], quantity, first: index === 0 }),
      ...ordered(report, line, quantity),
    }));
  });
}

const pieces = (amount: number) => amount;

function sheetsTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'sheet', pieces, ({ line, item, quantity, first }) => {
    const { board, finish, thickness, length, width, grain } = item;
    return {
      ...{ board, finish, thickness, length, width, grain },
      sheet: quantity?.offer.id ?? null,
      pack: quantity?.offer.pack ?? null,
      count: quantity?.units ?? 0,
      missing: first ? line.missing : null,
    };
  });
  return tableOf('purchase-sheets', PURCHASE_SHEETS_COLUMNS, rows);
}

function edgingTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'edging', metresUp, ({ item, quantity }) => ({
    edging: item.edging,
    roll: quantity === undefined ? null : quantity.offer.unit / 1_000_000,
    rolls: quantity?.units ?? 0,
    metres: quantity === undefined ? 0 : (quantity.units * quantity.offer.unit) / 1_000_000,
  }));
  return tableOf('purchase-edging', PURCHASE_EDGING_COLUMNS, rows);
}

function fittingsTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'fitting', pieces, ({ item, quantity }) => ({
    fitting: item.fitting,
    pack: quantity?.offer.pack ?? null,
    packs: quantity?.packs ?? 0,
    count: quantity?.units ?? 0,
  }));
  return tableOf('purchase-fittings', PURCHASE_FITTINGS_COLUMNS, rows);
}

function suppliersTable({ chosen, currency }: PurchaseReport): Table {
  const rows = chosen.purchase.suppliers.map((asked: SupplierOrder) => ({
    supplier: asked.supplier?.id ?? null,
    description: asked.supplier?.title ?? null,
    goods: asked.goodsMinor / 100,
    delivery: asked.deliveryMinor / 100,
    total: (asked.goodsMinor + asked.deliveryMinor) / 100,
    currency,
    'below least order': asked.belowLeastMinor / 100,
    'order by': asked.orderBy,
    'first start': asked.start,
    'too late for': asked.tooLate?.orders.join(separator) ?? null,
    'can begin': asked.tooLate?.canBegin ?? null,
  }));
  return tableOf('purchase-suppliers', PURCHASE_SUPPLIERS_COLUMNS, rows);
}

/** What cutting some boards takes, added up. Both shares are named with their base, since both are called waste. */
function taken(groups: readonly WayGroup[]) {
  const { sheetAreaUm2, panelAreaUm2, ...counts } = sumOfBoards(groups);
  const { ofSheets, ofPanels } = wasteOf(sheetAreaUm2, panelAreaUm2);
  return { ...counts, 'waste of sheets': 100 * ofSheets, 'waste of panels': 100 * ofPanels };
}

/** A row for each board of a way to cut, and one for all of them with what is ordered for it. */
function waysTable({ chosen, other, currency }: PurchaseReport): Table {
  const rowsOfWay = ({ way, groups, purchase }: WayResult) => {
    const about = { cut: way, ordered: way === chosen.way ? 'yes' : 'no' };
    const unpriced = { goods: null, delivery: null, total: null, currency: null };
    const rows = groups.map((group) => ({
      ...about,
      board: group.board,
      finish: group.finish,
      thickness: group.thickness,
      ...taken([group]),
      'within percent': group.withinPercent,
      ...unpriced,
    }));
    const all = {
      ...about,
      ...{ board: 'all', finish: null, thickness: null, 'within percent': null },
      ...taken(groups),
      goods: purchase.goodsMinor / 100,
      delivery: purchase.deliveryMinor / 100,
      total: (purchase.goodsMinor + purchase.deliveryMinor) / 100,
      currency,
    };
    return [...rows, all];
  };
  const ways = other === undefined ? [chosen] : [chosen, other];
  return tableOf('purchase-ways', PURCHASE_WAYS_COLUMNS, ways.flatMap(rowsOfWay));
}

function ordersTable({ orders }: PurchaseReport): Table {
  const rows = orders.map(({ id, title, start, panels }) => ({ order: id, title, start, panels }));
  return tableOf('purchase-orders', PURCHASE_ORDERS_COLUMNS, rows);
}

/** The lists of a purchase: what is ordered of each kind, of whom, for which orders, and what both ways to cut take. */
export function purchaseTables(report: PurchaseReport): readonly Table[] {
  return [
    sheetsTable(report),
    edgingTable(report),
    fittingsTable(report),
    suppliersTable(report),
    waysTable(report),
    ordersTable(report),
  ];
}
