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
  orders: 'text',
} as const;

export const PURCHASE_SHEETS_COLUMNS = tableColumns({
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  length: 'mm',
  width: 'mm',
  grain: 'text',
  description: 'text',
  needed: 'whole',
  spare: 'whole',
  'from store': 'whole',
  'kept for others': 'whole',
  'to buy': 'whole',
  sheet: 'text',
  pack: 'whole',
  count: 'whole',
  missing: 'whole',
  ...ORDERED,
});

export const PURCHASE_EDGING_COLUMNS = tableColumns({
  edging: 'text',
  description: 'text',
  needed: 'metres',
  spare: 'metres',
  'from store': 'metres',
  'kept for others': 'metres',
  'to buy': 'metres',
  roll: 'number',
  rolls: 'whole',
  metres: 'metres',
  ...ORDERED,
});

export const PURCHASE_FITTINGS_COLUMNS = tableColumns({
  fitting: 'text',
  description: 'text',
  needed: 'whole',
  spare: 'whole',
  'from store': 'whole',
  'kept for others': 'whole',
  'to buy': 'whole',
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
    orders: line.need.orders.join(separator),
  };
}

/** A row for each quantity of a line; one without where nothing is ordered. What the line says stands on its first row. */
function rowsOf<Row>(
  report: PurchaseReport,
  kind: BoughtItem['item'],
  row: (line: PurchaseLine, quantity: Quantity | undefined, first: boolean) => Row,
): Row[] {
  return report.chosen.purchase.lines
    .filter((line) => line.need.item.item === kind)
    .flatMap((line) =>
      line.quantities.length === 0
        ? [row(line, undefined, true)]
        : line.quantities.map((quantity, index) => row(line, quantity, index === 0)),
    );
}

/** The amounts of a line, in units of `unit`; nothing on rows after its first, so that columns can be added up. */
function amounts(line: PurchaseLine, first: boolean, unit: (amount: number) => number) {
  const say = (amount: number) => (first ? unit(amount) : null);
  return {
    needed: say(line.need.amount),
    spare: say(line.spare),
    'from store': say(line.fromStore),
    'kept for others': say(line.need.keptForOthers),
    'to buy': say(line.toBuy),
  };
}

const pieces = (amount: number) => amount;

function sheetsTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'sheet', (line, quantity, first) => {
    const { item, title } = line.need;
    if (item.item !== 'sheet') throw new Error('a sheet was sought');
    return {
      board: item.board,
      finish: item.finish,
      thickness: item.thickness,
      length: item.length,
      width: item.width,
      grain: item.grain,
      description: title,
      ...amounts(line, first, pieces),
      sheet: quantity?.offer.id ?? null,
      pack: quantity?.offer.pack ?? null,
      count: quantity?.units ?? 0,
      missing: first ? line.missing : null,
      ...ordered(report, line, quantity),
    };
  });
  return tableOf('purchase-sheets', PURCHASE_SHEETS_COLUMNS, rows);
}

function edgingTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'edging', (line, quantity, first) => {
    const { item, title } = line.need;
    if (item.item !== 'edging') throw new Error('an edging was sought');
    return {
      edging: item.edging,
      description: title,
      ...amounts(line, first, metresUp),
      roll: quantity === undefined ? null : quantity.offer.unit / 1_000_000,
      rolls: quantity?.units ?? 0,
      metres: quantity === undefined ? 0 : (quantity.units * quantity.offer.unit) / 1_000_000,
      ...ordered(report, line, quantity),
    };
  });
  return tableOf('purchase-edging', PURCHASE_EDGING_COLUMNS, rows);
}

function fittingsTable(report: PurchaseReport): Table {
  const rows = rowsOf(report, 'fitting', (line, quantity, first) => {
    const { item, title } = line.need;
    if (item.item !== 'fitting') throw new Error('a fitting was sought');
    return {
      fitting: item.fitting,
      description: title,
      ...amounts(line, first, pieces),
      pack: quantity?.offer.pack ?? null,
      packs: quantity?.packs ?? 0,
      count: quantity?.units ?? 0,
      ...ordered(report, line, quantity),
    };
  });
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

/** Both shares are named with their base, since both are called waste. */
function wasteCells(area: Pick<WayGroup, 'sheetAreaUm2' | 'panelAreaUm2'>) {
  const { ofSheets, ofPanels } = wasteOf(area.sheetAreaUm2, area.panelAreaUm2);
  return { 'waste of sheets': 100 * ofSheets, 'waste of panels': 100 * ofPanels };
}

function waysTable({ chosen, other, currency }: PurchaseReport): Table {
  const rowsOfWay = ({ way, groups, purchase }: WayResult) => {
    const about = { cut: way, ordered: way === chosen.way ? 'yes' : 'no', currency };
    const rows = groups.map((group) => ({
      ...about,
      board: group.board,
      finish: group.finish,
      thickness: group.thickness,
      panels: group.panels,
      sheets: group.sheets,
      offcuts: group.offcuts,
      least: group.least,
      'within percent': group.withinPercent,
      ...wasteCells(group),
      goods: null,
      delivery: null,
      total: null,
      currency: null,
    }));
    const sum = {
      ...about,
      board: 'all',
      finish: null,
      thickness: null,
      panels: groups.reduce((all, { panels }) => all + panels, 0),
      sheets: groups.reduce((all, { sheets }) => all + sheets, 0),
      offcuts: groups.reduce((all, { offcuts }) => all + offcuts, 0),
      least: groups.reduce((all, { least }) => all + least, 0),
      'within percent': null,
      ...wasteCells({
        sheetAreaUm2: groups.reduce((all, { sheetAreaUm2 }) => all + sheetAreaUm2, 0),
        panelAreaUm2: groups.reduce((all, { panelAreaUm2 }) => all + panelAreaUm2, 0),
      }),
      goods: purchase.goodsMinor / 100,
      delivery: purchase.deliveryMinor / 100,
      total: (purchase.goodsMinor + purchase.deliveryMinor) / 100,
    };
    return [...rows, sum];
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
