import { errorFinding } from '../basics/findings.ts';
import { type ReceivedRow, readReceivedList } from '../lists/receivedList.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { BookingLine, Ledger, StoreItem } from '../model/store.ts';
import { itemComingIn } from '../store/findItem.ts';
import { itemKey, lineOf, markOf } from '../store/items.ts';
import { type OnOrderWish, receivedLines } from '../store/onOrder.ts';

interface ListedItem {
  readonly item: StoreItem;
  amount: number;
  readonly row: ReceivedRow;
}

/** Items of a list, those of one key together. Findings name the line of the list. */
function listedItems(
  text: string,
  file: string,
  ledger: Ledger,
  { supplier, place: usualPlace }: { readonly supplier?: string; readonly place?: string },
  keyOf: (item: StoreItem, row: ReceivedRow) => string,
): Checked<ListedItem[]> {
  const rows = readReceivedList(text, file, supplier);
  if (!rows.ok) return rows;
  const findings: Finding[] = [...rows.findings];
  const found = new Map<string, ListedItem>();
  for (const row of rows.value) {
    const { line, amount, supplier: _of, expected: _on, ...wish } = row;
    const place = wish.item === 'offcut' && wish.place === undefined ? usualPlace : wish.place;
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
    const key = keyOf(item.value, row);
    const before = found.get(key);
    if (before === undefined) found.set(key, { item: item.value, amount, row });
    else if (wish.item === 'offcut') {
      const message = `Two offcuts of this list have the label ${wish.label}.`;
      findings.push(
        errorFinding('offcut-twice', message, { file, line }, { advice: 'give each its own label' }),
      );
    } else before.amount += amount;
  }
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  return { ok: true, value: [...found.values()], findings };
}

/**
 * The lines that receive a whole list into a store as one booking, equal things together. What a row does not say of a size
 * that the store had before is filled in from there. Findings name the line of the list. What is on order comes in as that,
 * as far as it is meant by `onOrder`; null: none of it is meant.
 */
export function receiveListLines(
  text: string,
  file: string,
  ledger: Ledger,
  more: { readonly supplier?: string; readonly place?: string } = {},
  onOrder: OnOrderWish | null = {},
): Checked<BookingLine[]> {
  const listed = listedItems(text, file, ledger, more, itemKey);
  if (!listed.ok) return listed;
  const received = listed.value.map(({ item, amount }) =>
    onOrder === null
      ? { lines: [lineOf(item, amount, 'in')], findings: [] }
      : receivedLines(ledger, item, amount, onOrder),
  );
  return {
    ok: true,
    value: received.flatMap(({ lines }) => lines),
    findings: [...listed.findings, ...received.flatMap(({ findings }) => findings)],
  };
}

/** Under which purchase a list is on order, and what of it the list does not say itself. */
export interface ListOnOrder {
  readonly purchase: string;
  /** Only what this supplier delivers, where a list names suppliers. */
  readonly supplier?: string | undefined;
  readonly expected?: string | undefined;
  /** For whom it is kept once it has come. */
  readonly order?: string;
}

/**
 * The lines that book a whole list as on order with its suppliers, each row for the day on which it says that it is expected.
 * Findings name the line of the list.
 */
export function expectListLines(
  text: string,
  file: string,
  ledger: Ledger,
  { purchase, supplier, expected, order }: ListOnOrder,
): Checked<BookingLine[]> {
  const markOfRow = (row: ReceivedRow) =>
    markOf({ purchase, supplier: row.supplier ?? supplier, expected: expected ?? row.expected });
  const listed = listedItems(text, file, ledger, supplier === undefined ? {} : { supplier }, (item, row) =>
    JSON.stringify([itemKey(item), markOfRow(row)]),
  );
  if (!listed.ok) return listed;
  const offcuts = listed.value.filter(({ item }) => item.item === 'offcut');
  if (offcuts.length > 0) {
    const findings = offcuts.map(({ row: { line } }) =>
      errorFinding('wrong-line', 'An offcut cannot be on order.', { file, line }),
    );
    return { ok: false, findings };
  }
  const lines = listed.value.map(({ item, amount, row }) =>
    lineOf(item, amount, 'expect', order, markOfRow(row)),
  );
  return { ...listed, value: lines };
}
