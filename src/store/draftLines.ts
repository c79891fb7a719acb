import { errorFinding } from '../basics/findings.ts';
import type { Checked } from '../model/finding.ts';
import type { BookingLine, Ledger, OffcutItem, StockEntry, StoreItem } from '../model/store.ts';
import { amountInWords, itemInWords, itemKey, lineOf } from './items.ts';

function entryOf(ledger: Ledger, item: StoreItem): StockEntry | undefined {
  return ledger.stock.get(itemKey(item));
}

/**
 * The lines that take an amount out (pieces; of edging mm): first what is reserved for these orders, one after the other, then
 * what is free. Whether there is enough is for `book` to say.
 */
export function issueLines(
  ledger: Ledger,
  item: StoreItem,
  amount: number,
  orders: readonly (string | undefined)[],
): BookingLine[] {
  const reserved = entryOf(ledger, item)?.reserved;
  const lines: BookingLine[] = [];
  let left = amount;
  for (const one of new Set(orders)) {
    if (one === undefined) continue;
    const part = Math.min(left, reserved?.get(one) ?? 0);
    if (part > 0) lines.push(lineOf(item, part, 'out', one));
    left -= part;
  }
  if (left > 0) lines.push(lineOf(item, left, 'out'));
  return lines;
}

/** The lines that bring an amount (pieces; of edging mm) to what was counted; a finding when that is what there is. */
export function correctionLines(ledger: Ledger, item: StoreItem, counted: number): Checked<BookingLine[]> {
  const entry = entryOf(ledger, item);
  const change = counted - (entry?.amount ?? 0);
  if (change === 0) {
    const message = `The store has ${amountInWords(item, counted)} of ${itemInWords(item)} already.`;
    return { ok: false, findings: [errorFinding('nothing-to-correct', message)] };
  }
  const [order] = entry?.reserved.keys() ?? [];
  // An offcut that is gone is gone for its order too; of other things a person says whose is missing.
  const reservedFor = item.item === 'offcut' ? order : undefined;
  const line = lineOf(item, Math.abs(change), change > 0 ? 'in' : 'out', reservedFor);
  return { ok: true, value: [line], findings: [] };
}

/** The lines that make an offcut what it is found to be: another place, another size. It stays reserved as it was. */
export function changeOffcutLines(ledger: Ledger, before: OffcutItem, after: OffcutItem): BookingLine[] {
  const [order] = entryOf(ledger, before)?.reserved.keys() ?? [];
  return [lineOf(before, 1, 'out', order), lineOf(after, 1, 'in', order)];
}
