import type { Need, Spare } from '../model/purchase.ts';

/** Hundredths of a percent in the whole. */
const WHOLE = 10_000;

/**
 * What is added to an amount for a percentage, rounded up. Two percentages are in use, and they differ: of a need of 100,
 * 30 % of the need make 130 to buy; 30 % of what is bought make 143, of which 43 may be lost.
 */
export function percentToAdd(
  amount: number,
  kind: 'percent of need' | 'percent of bought',
  hundredths: number,
): number {
  const [parts, of] = kind === 'percent of need' ? [hundredths, WHOLE] : [hundredths, WHOLE - hundredths];
  const exact = BigInt(amount) * BigInt(parts);
  return Number((exact + BigInt(of) - 1n) / BigInt(of));
}

function groupOf({ item }: Need): string | null {
  return item.item === 'sheet' ? JSON.stringify([item.board, item.finish, item.thickness]) : null;
}

/**
 * For each board and finish the index of the size taken most, the first of equals, and how many are taken of all sizes. A
 * size that is sold comes before one that only the store has.
 */
function sheetGroups(needs: readonly Need[]): { readonly most: number; readonly amount: number }[] {
  const groups = new Map<string, { most: number; amount: number }>();
  needs.forEach((need, index) => {
    const key = groupOf(need);
    if (key === null || need.amount === 0) return;
    const group = groups.get(key) ?? { most: index, amount: 0 };
    if (isBetter(need, needs[group.most]!)) group.most = index;
    group.amount += need.amount;
    groups.set(key, group);
  });
  return [...groups.values()];
}

function isBetter(need: Need, than: Need): boolean {
  const [isSold, wasSold] = [need.offers.length > 0, than.offers.length > 0];
  return isSold === wasSold ? need.amount > than.amount : isSold;
}

/** What is added to each need, in their order. */
export function sparesOf(needs: readonly Need[], spare: Spare): number[] {
  if (spare.kind === 'none') return needs.map(() => 0);
  const spares = needs.map((need) =>
    spare.kind === 'sheets' || groupOf(need) !== null
      ? 0
      : percentToAdd(need.amount, spare.kind, spare.hundredths),
  );
  for (const { most, amount } of sheetGroups(needs)) {
    spares[most] = spare.kind === 'sheets' ? spare.count : percentToAdd(amount, spare.kind, spare.hundredths);
  }
  return spares;
}
