import { takeInOrder } from '../basics/takeInOrder.ts';
import type { Supplier } from '../model/library.ts';
import type { Need, Purchase, PurchaseLine, Spare, SupplierOrder } from '../model/purchase.ts';
import { cheapestOffers } from './cheapestQuantity.ts';
import { arrivalDay, dayBeforeWork, firstWorkDay, lastOrderDay } from './orderDays.ts';
import { sparesOf } from './spare.ts';

/** What holds for a purchase as a whole. */
export interface Terms {
  /** Day on which it is ordered, such as 2026-03-02. */
  readonly today: string;
  readonly spare: Spare;
  readonly suppliers: ReadonlyMap<string, Supplier>;
  readonly freeDays: ReadonlySet<string>;
  /** Day on which each order is begun, by its id; null where it is not known. */
  readonly starts: ReadonlyMap<string, string | null>;
}

function lineOf(need: Need, spare: number, { today, freeDays }: Terms): PurchaseLine {
  const wanted = need.amount + spare;
  const fromStore = Math.min(need.available, wanted);
  const { taken: parts, missing: toBuy } = takeInOrder(need.coming, wanted - fromStore);
  const expected =
    parts
      .flatMap((part) => part.expected ?? [])
      .sort()
      .at(-1) ?? null;
  const thereBy = need.start === null ? null : dayBeforeWork(need.start, freeDays);
  return {
    need,
    spare,
    fromStore,
    fromOnOrder: wanted - fromStore - toBuy,
    expected,
    comesLate: expected !== null && thereBy !== null && expected > thereBy ? { thereBy } : null,
    overdue: parts.filter((part) => part.expected !== null && part.expected < today),
    toBuy,
    ...cheapestOffers(need.offers, toBuy),
  };
}

function deliveryOf(supplier: Supplier | null, goodsMinor: number): number {
  if (supplier === null) return 0;
  const { freeDeliveryFromMinor: from } = supplier;
  return from !== null && goodsMinor >= from ? 0 : supplier.deliveryMinor;
}

function earliest(days: readonly (string | null)[]): string | null {
  const known = days.filter((day) => day !== null).sort();
  return known[0] ?? null;
}

function orderOf(
  supplier: Supplier | null,
  lines: readonly PurchaseLine[],
  { today, freeDays, starts }: Terms,
): SupplierOrder {
  const orderBy = (line: PurchaseLine) =>
    supplier === null || line.need.start === null
      ? null
      : lastOrderDay(line.need.start, supplier.deliveryDays, freeDays);
  const own = lines.flatMap((line) =>
    line.quantities
      .filter(({ offer }) => offer.supplier === (supplier?.id ?? null))
      .map((quantity) => ({ line, quantity, orderBy: orderBy(line) })),
  );
  const goodsMinor = own.reduce((sum, { quantity }) => sum + quantity.priceMinor, 0);
  const last = earliest(own.map((each) => each.orderBy));
  const start = earliest(own.map(({ line }) => line.need.start));
  const orders = [...new Set(own.flatMap(({ line }) => line.need.orders))];
  const canBegin =
    supplier === null || last === null || last >= today
      ? null
      : firstWorkDay(today, supplier.deliveryDays, freeDays);
  const late = orders.filter((order) => {
    const start = starts.get(order) ?? null;
    return canBegin !== null && start !== null && start < canBegin;
  });
  return {
    supplier,
    lines: own,
    goodsMinor,
    deliveryMinor: deliveryOf(supplier, goodsMinor),
    belowLeastMinor: Math.max(0, (supplier?.leastOrderMinor ?? 0) - goodsMinor),
    orderBy: last,
    thereBy: start === null ? null : dayBeforeWork(start, freeDays),
    expected: supplier === null ? null : arrivalDay(today, supplier.deliveryDays, freeDays),
    start,
    // Ordered on a free day after the last working day that does, goods come just as early.
    tooLate: canBegin === null || late.length === 0 ? null : { canBegin, orders: late },
  };
}

/**
 * What is to be ordered of whom: each need and its spare less what the store has and what is on order, in whole packs and rolls at the cheapest
 * number, sorted by supplier with what bringing it costs and the last day to order. Amounts are whole, money is in whole
 * minor units; nothing is bought less than is needed.
 */
export function makePurchase(needs: readonly Need[], terms: Terms): Purchase {
  const spares = sparesOf(needs, terms.spare);
  const lines = needs.map((need, index) => lineOf(need, spares[index]!, terms));
  const suppliers = [...terms.suppliers.values(), null]
    .map((supplier) => orderOf(supplier, lines, terms))
    .filter((order) => order.lines.length > 0);
  return {
    today: terms.today,
    spare: terms.spare,
    lines,
    suppliers,
    goodsMinor: suppliers.reduce((sum, { goodsMinor }) => sum + goodsMinor, 0),
    deliveryMinor: suppliers.reduce((sum, { deliveryMinor }) => sum + deliveryMinor, 0),
  };
}
