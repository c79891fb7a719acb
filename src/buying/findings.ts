import { errorFinding, listWords, shownText, warningFinding } from '../basics/findings.ts';
import type { Finding } from '../model/finding.ts';
import type { Purchase, PurchaseLine, SupplierOrder } from '../model/purchase.ts';

function amountWords({ need }: PurchaseLine, amount: number): string {
  return need.item.item === 'edging' ? `${(amount / 1_000_000).toFixed(3)} m` : String(amount);
}

function itemWords({ need }: PurchaseLine): string {
  const { item, title } = need;
  return item.item === 'sheet' ? `${title}, ${item.length} × ${item.width}` : title;
}

function missing(line: PurchaseLine): Finding {
  const message =
    line.need.offers.length === 0
      ? `Nobody in the library sells ${shownText(itemWords(line))}.`
      : `Too little of ${shownText(itemWords(line))} can be had.`;
  return errorFinding('too-little-sold', message, undefined, {
    found: `${amountWords(line, line.missing)} missing`,
    expected: `${amountWords(line, line.toBuy)} to buy`,
    advice:
      'Raise the count of the sheet in sheets.yaml or leave it out, offer another size, or take less to spare.',
  });
}

function late(order: SupplierOrder): Finding[] {
  const { supplier, tooLate, orderBy } = order;
  if (supplier === null || tooLate === null || orderBy === null) return [];
  const whose = listWords(tooLate.orders, 'and');
  const message = `What ${shownText(supplier.title)} brings comes too late for ${whose}: it had to be ordered by ${orderBy}.`;
  return [
    warningFinding('ordered-too-late', message, undefined, {
      found: `${supplier.deliveryDays} working days until it is there`,
      expected: `work begun on ${tooLate.canBegin} at the earliest`,
      advice: 'Ask for a faster delivery, begin later, or buy it of somebody else.',
    }),
  ];
}

function comesLate(line: PurchaseLine): Finding[] {
  const { comesLate: late, expected, need } = line;
  if (late === null || expected === null) return [];
  const whose = listWords(need.orders, 'and');
  const message = `What is on order of ${shownText(itemWords(line))} comes too late for ${whose}.`;
  return [
    warningFinding('comes-too-late', message, undefined, {
      found: `expected on ${expected}`,
      expected: `there on ${late.thereBy}`,
      advice: 'Ask for an earlier day, begin later, or buy it of somebody else.',
    }),
  ];
}

function overdue(line: PurchaseLine): Finding[] {
  return line.overdue.map(({ amount, purchase, supplier, expected }) => {
    const message = `${amountWords(line, amount)} of ${shownText(itemWords(line))} should have come by now.`;
    return warningFinding('overdue', message, undefined, {
      found: `on order under ${shownText(purchase)}${supplier === null ? '' : ` with ${shownText(supplier)}`}, expected on ${expected}`,
      advice:
        'Book it in if it is there, ask the supplier, or book with `stock withdraw` that it will not come.',
    });
  });
}

function tooSmall({ supplier, belowLeastMinor }: SupplierOrder, currency: string): Finding[] {
  if (supplier === null || belowLeastMinor === 0) return [];
  const money = (minor: number) => `${(minor / 100).toFixed(2)} ${currency}`.trim();
  return [
    warningFinding(
      'below-least-order',
      `The order to ${shownText(supplier.title)} is ${money(belowLeastMinor)} below what they take.`,
      undefined,
      {
        expected: `at least ${money(supplier.leastOrderMinor ?? 0)}`,
        advice: 'Order for more vans together, take more to spare, or ask them.',
      },
    ),
  ];
}

/** What a buyer must know of a purchase: what cannot be had, what comes too late or should have come, which order is too small. */
export function purchaseFindings(purchase: Purchase, currency: string): Finding[] {
  return [
    ...purchase.lines.filter((line) => line.missing > 0).map(missing),
    ...purchase.suppliers.flatMap(late),
    ...purchase.lines.flatMap(comesLate),
    ...purchase.lines.flatMap(overdue),
    ...purchase.suppliers.flatMap((order) => tooSmall(order, currency)),
  ];
}
