import type { PurchaseLine, PurchaseReport, Quantity, WayResult } from '../../src/model/purchase.ts';

function quantityAsData({
  offer,
  units,
  packs,
  priceEachMinor,
  priceMinor,
  breakFrom,
  beyond,
  savedMinor,
}: Quantity) {
  return {
    offer: offer.id,
    supplier: offer.supplier,
    units,
    packs,
    priceEach: priceEachMinor,
    price: priceMinor,
    breakFrom,
    beyond,
    saved: savedMinor,
  };
}

/** Amounts in pieces, of edging in mm rounded up. */
function lineAsData(line: PurchaseLine) {
  const { need, spare, fromStore, fromOnOrder, expected, toBuy, quantities, missing } = line;
  const amount =
    need.item.item === 'edging' ? (um: number) => Math.ceil(um / 1000) : (pieces: number) => pieces;
  return {
    ...need.item,
    title: need.title,
    needed: amount(need.amount),
    spare: amount(spare),
    fromStore: amount(fromStore),
    keptForOthers: amount(need.keptForOthers),
    onOrder: amount(fromOnOrder),
    onOrderExpected: expected,
    onOrderForOthers: amount(need.comingForOthers),
    toBuy: amount(toBuy),
    missing: amount(missing),
    orders: need.orders,
    start: need.start,
    quantities: quantities.map(quantityAsData),
  };
}

function wayAsData({ way, groups, purchase }: WayResult) {
  return {
    cut: way,
    groups: groups.map(({ sheetAreaUm2, panelAreaUm2, ...group }) => ({
      ...group,
      yield: sheetAreaUm2 === 0 ? 0 : panelAreaUm2 / sheetAreaUm2,
    })),
    goods: purchase.goodsMinor,
    delivery: purchase.deliveryMinor,
    total: purchase.goodsMinor + purchase.deliveryMinor,
  };
}

/** A purchase for other programs: prices in minor units, days as 2026-03-02, lengths of items in mm. */
export function purchaseAsData({ title, currency, orders, chosen, other }: PurchaseReport) {
  const { purchase } = chosen;
  return {
    title,
    currency,
    cut: chosen.way,
    date: purchase.today,
    spare: purchase.spare,
    orders,
    ways: [chosen, ...(other === undefined ? [] : [other])].map(wayAsData),
    lines: purchase.lines.map(lineAsData),
    suppliers: purchase.suppliers.map((order) => ({
      supplier: order.supplier?.id ?? null,
      title: order.supplier?.title ?? null,
      goods: order.goodsMinor,
      delivery: order.deliveryMinor,
      belowLeastOrder: order.belowLeastMinor,
      orderBy: order.orderBy,
      expected: order.expected,
      start: order.start,
      tooLate: order.tooLate,
      lines: order.lines.map(({ line, quantity, orderBy }) => ({
        ...line.need.item,
        ...quantityAsData(quantity),
        orderBy,
      })),
    })),
  };
}
