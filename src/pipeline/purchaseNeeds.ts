import { mmToUm } from '../basics/lengths.ts';
import { edgingNeeds, fittingNeeds } from '../documents/index.ts';
import type { Library, Purchasing } from '../model/library.ts';
import type { PlanFile, PlanSheet } from '../model/plan.ts';
import type { BoughtItem, Coming, Need, Offer } from '../model/purchase.ts';
import type { Ledger, OffcutItem, StoreItem } from '../model/store.ts';
import { amountFor } from '../store/applyLine.ts';
import { itemKey } from '../store/items.ts';
import { comesFor, goodsOnOrder } from '../store/onOrder.ts';
import type { OrderedFurniture } from './job.ts';
import { sheetItemOf, sheetKey, takenBy } from './onHand.ts';

/** An amount of an item that is used under a name: that of an order, or of the purchase for what is cut together. */
export interface Use {
  readonly name: string;
  readonly item: StoreItem;
  /** Pieces; of edging µm. */
  readonly amount: number;
}

function ordersOn(plan: PlanFile, sheets: readonly PlanSheet[]): string[] {
  const orderOf = new Map(
    plan.groups.flatMap(({ panels }) => panels.map((panel) => [panel.id, panel.order])),
  );
  const ids = sheets.flatMap(({ pieces }) =>
    pieces.flatMap((piece) => (piece.is === 'panel' ? [piece.panel] : [])),
  );
  return [...new Set(ids.map((id) => orderOf.get(id) ?? ''))].filter((order) => order !== '');
}

/** Sheets and offcuts of a plan; `name` is for whom they are. */
export function sheetUses(plan: PlanFile, name: string, offcut: (label: string) => OffcutItem | undefined) {
  return takenBy(plan).flatMap(({ group, stock, sheets, count }) => {
    const item = stock.kind === 'sheet' ? sheetItemOf(group, stock) : offcut(stock.id);
    return item === undefined ? [] : [{ name, item, amount: count, orders: ordersOn(plan, sheets) }];
  });
}

/** Edging and fittings of one order; `plan` may hold panels of others too. */
export function otherUses(plan: PlanFile, { order, library, furniture }: OrderedFurniture) {
  const groups = plan.groups.map((group) => ({
    ...group,
    panels: group.panels.filter((panel) => panel.order === order.id),
  }));
  const edging = edgingNeeds({ ...plan, groups }, library.edgings).map((need) => ({
    name: order.id,
    item: { item: 'edging', edging: need.edging } as const,
    amount: need.toBuyUm ?? need.netUm,
    orders: [order.id],
  }));
  const fittings = fittingNeeds(furniture, library).map((need) => ({
    name: order.id,
    item: { item: 'fitting', fitting: need.fitting } as const,
    amount: need.count,
    orders: [order.id],
  }));
  return [...edging, ...fittings];
}

function offerOf(
  id: string,
  bought: Purchasing & { readonly pack?: number },
  more: Pick<Offer, 'priceMinor' | 'unit'> & Partial<Pick<Offer, 'most'>>,
): Offer {
  return {
    id,
    supplier: bought.supplier ?? null,
    breaks: bought.breaks ?? [],
    pack: bought.pack ?? 1,
    least: bought.least ?? 1,
    most: null,
    ...more,
  };
}

/** Every way in which a library sells an item. */
export function offersFor(item: BoughtItem, library: Library): Offer[] {
  switch (item.item) {
    case 'sheet':
      return library.sheets
        .filter((sheet) => {
          const thickness = (library.boards.get(sheet.board)?.thicknessUm ?? 0) / 1000;
          const size = { length: sheet.lengthUm / 1000, width: sheet.widthUm / 1000 };
          return sheetKey({ ...sheet, ...size, thickness }) === sheetKey(item);
        })
        .map((sheet) =>
          offerOf(sheet.id, sheet, { priceMinor: sheet.priceMinor, unit: 1, most: sheet.count }),
        );
    case 'edging': {
      const edging = library.edgings.get(item.edging);
      if (edging === undefined) return [];
      // A roll is all the pack that edging comes in.
      const unit = Math.round(edging.rollM * 1_000_000);
      return [offerOf(edging.id, edging, { priceMinor: edging.priceMinorPerM, unit })];
    }
    case 'fitting': {
      const fitting = library.fittings.get(item.fitting);
      return fitting === undefined
        ? []
        : [offerOf(fitting.id, fitting, { priceMinor: fitting.priceMinor, unit: 1 })];
    }
  }
}

function titleOf(item: BoughtItem, library: Library): string {
  switch (item.item) {
    case 'sheet':
      return [
        library.boards.get(item.board)?.title ?? item.board,
        library.finishes.get(item.finish)?.title ?? item.finish,
      ]
        .filter((word) => word !== '')
        .join(', ');
    case 'edging':
      return library.edgings.get(item.edging)?.title ?? item.edging;
    case 'fitting':
      return library.fittings.get(item.fitting)?.title ?? item.fitting;
  }
}

/** Equal for what is one need: sheets as they are nested. Those of two kinds of items are never equal. */
function needKey(item: BoughtItem): string {
  return item.item === 'sheet' ? sheetKey(item) : itemKey(item);
}

/** Whether something in the store or on order is what is needed. */
export function isOf(item: StoreItem, needed: BoughtItem): boolean {
  return item.item !== 'offcut' && needKey(item) === needKey(needed);
}

/** An amount of the store as a need has it: edging lies in the store in whole mm. */
function neededAmount(item: BoughtItem, stored: number): number {
  return item.item === 'edging' ? mmToUm(stored) : stored;
}

/** What the store has of an item in amounts of a need: for these names, and kept for others. */
function inStore(item: BoughtItem, ledger: Ledger | null, names: readonly string[]) {
  let [available, all] = [0, 0];
  for (const entry of ledger?.stock.values() ?? []) {
    if (!isOf(entry.item, item)) continue;
    available += amountFor(entry, names);
    all += entry.amount;
  }
  return {
    available: neededAmount(item, available),
    keptForOthers: neededAmount(item, all - available),
  };
}

/** What is on order of an item in amounts of a need: for these names or for nobody, and for others. */
function onItsWay(item: BoughtItem, ledger: Ledger | null, names: readonly string[]) {
  const goods = (ledger === null ? [] : goodsOnOrder(ledger, {})).filter((one) => isOf(one.item, item));
  const own = goods.filter((one) => comesFor(one, names));
  const kept = own.filter(({ reservedFor }) => reservedFor !== undefined);
  const free = own.filter(({ reservedFor }) => reservedFor === undefined);
  const coming = [...kept, ...free].map(
    ({ amount, purchase, supplier, expected }): Coming => ({
      amount: neededAmount(item, amount),
      purchase,
      supplier: supplier ?? null,
      expected: expected ?? null,
    }),
  );
  const others = goods.filter((one) => !comesFor(one, names));
  const comingForOthers = others.reduce((sum, { amount }) => sum + neededAmount(item, amount), 0);
  return { coming, comingForOthers };
}

const kinds = ['sheet', 'edging', 'fitting'] as const;

/** In the order of the library; what it does not sell comes last. */
function placeInLibrary(item: BoughtItem, library: Library): number {
  const ids = {
    sheet: library.sheets.map(({ id }) => id),
    edging: [...library.edgings.keys()],
    fitting: [...library.fittings.keys()],
  }[item.item];
  const [offer] = offersFor(item, library);
  return offer === undefined ? ids.length : ids.indexOf(offer.id);
}

/**
 * The needs of a purchase from what is used: sheets, edgings, fittings, each once. `names`: orders and purchase, whose
 * reservations in the store are their own.
 */
export function needsOf(
  uses: readonly (Use & { readonly orders: readonly string[] })[],
  orders: readonly OrderedFurniture[],
  library: Library,
  ledger: Ledger | null,
  names: readonly string[],
): Need[] {
  const found = new Map<string, { item: BoughtItem; amount: number; orders: Set<string> }>();
  for (const use of uses) {
    if (use.item.item === 'offcut') continue;
    const key = needKey(use.item);
    const before = found.get(key) ?? { item: use.item, amount: 0, orders: new Set<string>() };
    before.amount += use.amount;
    for (const order of use.orders) before.orders.add(order);
    found.set(key, before);
  }
  const needs = [...found.values()].map(({ item, amount, orders: taking }): Need => {
    const own = orders.filter(({ order }) => taking.has(order.id)).map(({ order }) => order);
    const starts = own.flatMap(({ start }) => start ?? []).sort();
    return {
      item,
      title: titleOf(item, library),
      amount,
      orders: own.map(({ id }) => id),
      start: starts[0] ?? null,
      ...inStore(item, ledger, names),
      ...onItsWay(item, ledger, names),
      offers: offersFor(item, library),
    };
  });
  return needs.sort(
    (a, b) =>
      kinds.indexOf(a.item.item) - kinds.indexOf(b.item.item) ||
      placeInLibrary(a.item, library) - placeInLibrary(b.item, library),
  );
}
