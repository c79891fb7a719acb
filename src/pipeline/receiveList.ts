import { errorFinding } from '../basics/findings.ts';
import { readReceivedList } from '../lists/receivedList.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { BookingLine, Ledger } from '../model/store.ts';
import { itemComingIn } from '../store/findItem.ts';
import { itemKey, lineOf } from '../store/items.ts';

/**
 * The lines that receive a whole list into a store as one booking, equal things together. What a row does not say of a size
 * that the store had before is filled in from there. Findings name the line of the list.
 */
export function receiveListLines(
  text: string,
  file: string,
  ledger: Ledger,
  more: { readonly supplier?: string; readonly place?: string } = {},
): Checked<BookingLine[]> {
  const rows = readReceivedList(text, file, more.supplier);
  if (!rows.ok) return rows;
  const findings: Finding[] = [...rows.findings];
  const found = new Map<string, { readonly item: Parameters<typeof lineOf>[0]; amount: number }>();
  for (const { line, amount, ...wish } of rows.value) {
    const place = wish.item === 'offcut' && wish.place === undefined ? more.place : wish.place;
    const item = itemComingIn(ledger, place === undefined ? wish : { ...wish, place });
    if (!item.ok) {
      // Options of the command line are columns here.
      const columns = item.findings.map((finding) => ({
        ...finding,
        message: finding.message.replace(/^--(\w+) is missing/, 'Column `$1` is empty'),
        place: { file, line },
      }));
      findings.push(...columns);
      continue;
    }
    const key = itemKey(item.value);
    const before = found.get(key);
    if (before === undefined) found.set(key, { item: item.value, amount });
    else if (wish.item === 'offcut') {
      const message = `Two offcuts of this list have the label ${wish.label}.`;
      findings.push(
        errorFinding('offcut-twice', message, { file, line }, { advice: 'give each its own label' }),
      );
    } else before.amount += amount;
  }
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  return {
    ok: true,
    value: [...found.values()].map(({ item, amount }) => lineOf(item, amount, 'in')),
    findings,
  };
}
