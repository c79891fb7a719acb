import { mmToUm } from '../basics/lengths.ts';
import { takeInOrder } from '../basics/takeInOrder.ts';
import { makePurchase, type Terms } from '../buying/index.ts';
import type { GroupSummary } from '../documents/index.ts';
import type { Library } from '../model/library.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import type { BoughtItem, Quantity, Way, WayGroup, WayResult } from '../model/purchase.ts';
import type { BookingLine, Ledger, OffcutItem, OnOrder } from '../model/store.ts';
import { amountFor } from '../store/applyLine.ts';
import { itemKey, lineOf, markOf } from '../store/items.ts';
import { goodsOnOrder } from '../store/onOrder.ts';
import type { OrderedFurniture } from './job.ts';
import type { ProvenPlan } from './makePapers.ts';
import { isOf, needsOf, otherUses, sheetUses, type Use } from './purchaseNeeds.ts';

/** Plans of one way to cut: the one of all orders together, or one for each order. */
export interface PlansOfWay {
  readonly way: Way;
  readonly plans: readonly ProvenPlan[];
}

/** What a purchase is made for. */
export interface PurchaseSubject {
  readonly name: string;
  readonly orders: readonly OrderedFurniture[];
  readonly library: Library;
  /** Null without a store. */
  readonly ledger: Ledger | null;
  /** What of the terms is not in the library or the orders. */
  readonly terms: Pick<Terms, 'today' | 'spare'>;
}

/** A way to cut with all that it uses, for reservations. */
export interface PurchaseOfWay {
  readonly result: WayResult;
  readonly uses: readonly Use[];
}

function areaUm2(lengthMm: number, widthMm: number): number {
  return mmToUm(lengthMm) * mmToUm(widthMm);
}

function sheetArea(group: PlanGroup): number {
  const areas = new Map(group.stock.map((stock) => [stock.id, areaUm2(stock.length, stock.width)]));
  return group.sheets.reduce((sum, { stock, copies }) => sum + copies * (areas.get(stock) ?? 0), 0);
}

interface Sums {
  group: WayGroup;
  cost: number;
  boundCost: number;
}

function addUp(before: Sums | undefined, plan: PlanGroup, summary: GroupSummary): Sums {
  const offcuts = summary.sheets.reduce((sum, { kind, count }) => (kind === 'offcut' ? sum + count : sum), 0);
  const panelArea = plan.panels.reduce(
    (sum, { length, width, count }) => sum + count * areaUm2(length, width),
    0,
  );
  const prices = new Map(plan.stock.map(({ id, price }) => [id, price]));
  const cost =
    (before?.cost ?? 0) +
    plan.sheets.reduce((sum, { stock, copies }) => sum + copies * (prices.get(stock) ?? 0), 0);
  const boundCost = (before?.boundCost ?? 0) + plan.bound.cost;
  const was = before?.group;
  return {
    cost,
    boundCost,
    group: {
      board: plan.board,
      finish: plan.finish,
      thickness: plan.thickness,
      panels: (was?.panels ?? 0) + summary.panels,
      sheets: (was?.sheets ?? 0) + summary.sheetCount - offcuts,
      offcuts: (was?.offcuts ?? 0) + offcuts,
      least: (was?.least ?? 0) + summary.bound,
      proved: (was?.proved ?? true) && summary.proved,
      withinPercent:
        cost <= boundCost
          ? 0
          : boundCost === 0
            ? 100
            : Math.ceil((1000 * (cost - boundCost)) / boundCost) / 10,
      sheetAreaUm2: (was?.sheetAreaUm2 ?? 0) + sheetArea(plan),
      panelAreaUm2: (was?.panelAreaUm2 ?? 0) + panelArea,
    },
  };
}

/** Groups of one board, finish and thickness of all plans added up. */
function groupsOf(plans: readonly ProvenPlan[]): WayGroup[] {
  const found = new Map<string, Sums>();
  for (const { plan, groups } of plans) {
    plan.groups.forEach((group, index) => {
      const key = JSON.stringify([group.board, group.finish, group.thickness]);
      found.set(key, addUp(found.get(key), group, groups[index]!));
    });
  }
  return [...found.values()].map(({ group }) => group);
}

function offcutsOf(ledger: Ledger | null): (label: string) => OffcutItem | undefined {
  const found = new Map<string, OffcutItem>();
  for (const { item } of ledger?.stock.values() ?? []) {
    if (item.item === 'offcut') found.set(item.label.toUpperCase(), item);
  }
  return (label) => found.get(label.toUpperCase());
}

function usesOf({ way, plans }: PlansOfWay, subject: PurchaseSubject) {
  const offcut = offcutsOf(subject.ledger);
  const planFor = (index: number): PlanFile => plans[way === 'together' ? 0 : index]!.plan;
  const sheets =
    way === 'together'
      ? sheetUses(planFor(0), subject.name, offcut)
      : subject.orders.flatMap(({ order }, index) => sheetUses(planFor(index), order.id, offcut));
  const others = subject.orders.flatMap((ordered, index) => otherUses(planFor(index), ordered));
  return [...sheets, ...others];
}

/** What one way to cut comes to: what it takes of each board, and what is to be ordered for it. */
export function purchaseOfWay(plans: PlansOfWay, subject: PurchaseSubject): PurchaseOfWay {
  const { orders, library, ledger, name, terms } = subject;
  const uses = usesOf(plans, subject);
  const names = [...orders.map(({ order }) => order.id), name];
  const purchase = makePurchase(needsOf(uses, orders, library, ledger, names), {
    ...terms,
    suppliers: library.suppliers,
    freeDays: library.freeDays,
    starts: new Map(orders.map(({ order }) => [order.id, order.start ?? null])),
  });
  return { result: { way: plans.way, groups: groupsOf(plans.plans), purchase }, uses };
}

/** Edging lies in the store in whole mm. */
function storedAmount({ item, amount }: Use): number {
  return item.item === 'edging' ? Math.ceil(amount / 1000) : amount;
}

/** What a name takes of an item, and where it comes from; amounts as they lie in the store. */
interface Covered {
  readonly use: Use;
  /** Lines that keep for it what is free in the store, and what is on order for nobody. */
  readonly kept: readonly BookingLine[];
  /** Neither there nor on order for it. */
  readonly missing: number;
}

/** Deals what is there and on order out to the uses, in their order; what is kept for them already counts. */
function coverUses(uses: readonly Use[], ledger: Ledger): Covered[] {
  const wanted = new Map<string, { use: Use; amount: number }>();
  for (const use of uses) {
    const key = JSON.stringify([use.name, itemKey(use.item)]);
    wanted.set(key, { use, amount: (wanted.get(key)?.amount ?? 0) + storedAmount(use) });
  }
  const free = new Map<string, number>();
  const coming = new Map<string, readonly OnOrder[]>();
  return [...wanted.values()].map(({ use, amount }) => {
    const key = itemKey(use.item);
    const entry = ledger.stock.get(key);
    const left = free.get(key) ?? (entry === undefined ? 0 : amountFor(entry, []));
    const own = entry?.reserved.get(use.name) ?? 0;
    const fromStore = Math.max(0, Math.min(left, amount - own));
    free.set(key, left - fromStore);
    const goods = goodsOnOrder(ledger, {}, use.item);
    const ownComing = goods
      .filter(({ reservedFor }) => reservedFor === use.name)
      .reduce((sum, one) => sum + one.amount, 0);
    const still = Math.max(0, amount - own - fromStore - ownComing);
    const unkept = coming.get(key) ?? goods.filter(({ reservedFor }) => reservedFor === undefined);
    const { taken, rest, missing } = takeInOrder(unkept, still);
    coming.set(key, rest);
    const fromOnOrder = taken.map((one) => lineOf(one.item, one.amount, 'reserve', use.name, one));
    const fromStock =
      entry === undefined || fromStore === 0 ? [] : [lineOf(entry.item, fromStore, 'reserve', use.name)];
    return { use, kept: [...fromStock, ...fromOnOrder], missing };
  });
}

/**
 * The lines that keep what the store has for those who use it, and what is on order for nobody, as far as it reaches and in the
 * order of the uses; what is kept for them already counts. None where there is nothing for them that is not kept.
 */
export function reservationLines(uses: readonly Use[], ledger: Ledger): BookingLine[] {
  return coverUses(uses, ledger).flatMap(({ kept }) => kept);
}

/** A quantity of an offer in amounts of the store: pieces; of edging whole mm. */
function storedQuantity({ units, offer }: Quantity, item: BoughtItem): number {
  return item.item === 'edging' ? Math.floor((units * offer.unit) / 1000) : units * offer.unit;
}

/**
 * The lines that book all that a purchase orders as on order: of whom, for the day on which it is there if it is ordered on the
 * day of the purchase, and for those who use it; what is bought beyond that is for nobody.
 */
export function expectedLines(
  { uses, result: { purchase } }: PurchaseOfWay,
  ledger: Ledger,
  name: string,
): BookingLine[] {
  const covered = coverUses(uses, ledger).filter(({ missing }) => missing > 0);
  return purchase.lines.flatMap((line) => {
    const { item } = line.need;
    let wanted: readonly { name: string; amount: number }[] = covered.flatMap(({ use, missing }) =>
      isOf(use.item, item) ? [{ name: use.name, amount: missing }] : [],
    );
    return line.quantities.flatMap((quantity) => {
      const order = purchase.suppliers.find((each) => each.lines.some((own) => own.quantity === quantity));
      const mark = markOf({
        purchase: name,
        supplier: quantity.offer.supplier ?? undefined,
        expected: order?.expected ?? undefined,
      });
      const { taken, rest, missing: beyond } = takeInOrder(wanted, storedQuantity(quantity, item));
      wanted = rest;
      const lines = taken.map((one) => lineOf(item, one.amount, 'expect', one.name, mark));
      return beyond > 0 ? [...lines, lineOf(item, beyond, 'expect', undefined, mark)] : lines;
    });
  });
}
