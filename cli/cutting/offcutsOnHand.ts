import type { Checked } from '../../src/model/finding.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { SheetSupply, StockGroup } from '../../src/model/stock.ts';
import { offcutsFor, sheetsOnHand } from '../../src/pipeline/keepStore.ts';
import { readStore } from '../store/ledgerFile.ts';
import { money } from '../terminal/money.ts';
import { counted } from '../terminal/text.ts';
import type { NestedGroup } from '../threads/nestPool.ts';

/** What a store has for an order, by the order's id. */
export interface StoreOffers {
  /** Offcuts that are free or reserved for it. */
  readonly offcuts: (order: string) => readonly SheetSupply[];
  /** Sheets that it may take, from those that a library offers. */
  readonly sheets: (order: string, offered: readonly SheetSupply[]) => readonly SheetSupply[];
}

/** What is offered from a store; without one no offcuts, and every sheet of the library. */
export async function offersOfStore(
  store: string | undefined,
  sheets: 'as can be bought' | 'on hand',
): Promise<Checked<StoreOffers>> {
  const bought: StoreOffers['sheets'] = (_, offered) => offered;
  if (store === undefined) return { ok: true, value: { offcuts: () => [], sheets: bought }, findings: [] };
  const read = await readStore(store);
  if (!read.ok) return read;
  const { ledger } = read.value;
  const value: StoreOffers = {
    offcuts: (order) => offcutsFor(ledger, order),
    sheets: sheets === 'on hand' ? (order, offered) => sheetsOnHand(ledger, order, offered) : bought,
  };
  return { ok: true, value, findings: read.findings };
}

/** What cutting from offcuts came to, against the same search without them. */
export interface OffcutSaving {
  readonly offered: number;
  readonly used: number;
  /** Whole sheets fewer; null where without offcuts there is no plan to compare with. */
  readonly sheets: number | null;
  /** Minor units; null where sheets have no prices or there is no plan to compare with. */
  readonly costMinor: number | null;
}

function nestOf({ outcome }: NestedGroup): Nest | null {
  return outcome.ok ? outcome.nest : null;
}

function countOf(group: StockGroup, nest: Nest, kind: 'sheet' | 'offcut'): number {
  return nest.sheets.reduce(
    (sum, { sheet, copies }) => (group.sheets[sheet]?.kind === kind ? sum + copies : sum),
    0,
  );
}

/** The groups whose nest takes offcuts, without those offcuts: what the search is done again with, to compare. */
export function groupsWithoutOffcuts(
  groups: readonly StockGroup[],
  nested: readonly NestedGroup[],
): { readonly index: number; readonly group: StockGroup }[] {
  return groups.flatMap((group, index) => {
    const nest = nestOf(nested[index]!);
    if (nest === null || countOf(group, nest, 'offcut') === 0) return [];
    return [{ index, group: { ...group, sheets: group.sheets.filter(({ kind }) => kind === 'sheet') } }];
  });
}

/** Compares the nests with those of the same groups without offcuts, in the order of `groupsWithoutOffcuts`. */
export function savingOf(
  groups: readonly StockGroup[],
  nested: readonly NestedGroup[],
  without: readonly NestedGroup[],
): OffcutSaving {
  const offered = groups.reduce(
    (sum, { sheets }) => sum + sheets.filter(({ kind }) => kind === 'offcut').length,
    0,
  );
  let [used, sheets, costMinor] = [0, 0, 0];
  let [comparable, priced] = [true, true];
  for (const [at, { index, group }] of groupsWithoutOffcuts(groups, nested).entries()) {
    const nest = nestOf(nested[index]!)!;
    const other = nestOf(without[at]!);
    used += countOf(groups[index]!, nest, 'offcut');
    if (other === null) comparable = false;
    else {
      sheets += countOf(group, other, 'sheet') - countOf(groups[index]!, nest, 'sheet');
      costMinor += other.costMinor - nest.costMinor;
    }
    if (group.pricedBy === 'area') priced = false;
  }
  return {
    offered,
    used,
    sheets: comparable ? sheets : null,
    costMinor: comparable && priced ? costMinor : null,
  };
}

/** What offcuts have saved, in a sentence. */
export function savingInWords({ offered, used, sheets, costMinor }: OffcutSaving, currency: string): string {
  if (offered === 0) return 'The store has no offcut that fits a board and finish of this order.';
  const of = `of ${counted(offered, 'offcut')} on hand ${used === 0 ? 'none is' : `${used} are`} used`;
  if (used === 0) return of;
  if (sheets === null) return `${of}; without them there is no plan to compare with`;
  if (sheets <= 0 && (costMinor ?? 0) <= 0)
    return `${of}; they save no sheet against the same search without them`;
  // With several sizes on offer offcuts can save money and no sheet: smaller ones are bought.
  const saved = [
    sheets > 0 ? counted(sheets, 'sheet') : '',
    costMinor !== null && costMinor > 0 ? money(costMinor, currency) : '',
  ];
  const words = saved.filter((word) => word !== '').join(', ');
  return `${of}; they save ${words} against the same search without them`;
}
