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

/** What is added to each need, in their order. */
export function sparesOf(needs: readonly Need[], spare: Spare): number[] {
  if (spare.kind === 'none') return needs.map(() => 0);
  if (spare.kind !== 'sheets') {
    return needs.map(({ amount }) => percentToAdd(amount, spare.kind, spare.hundredths));
  }
  const most = new Map<string, number>();
  needs.forEach((need, index) => {
    const group = groupOf(need);
    if (group === null || need.amount === 0) return;
    const before = most.get(group);
    if (before === undefined || needs[before]!.amount < need.amount) most.set(group, index);
  });
  const chosen = new Set(most.values());
  return needs.map((_, index) => (chosen.has(index) ? spare.count : 0));
}
