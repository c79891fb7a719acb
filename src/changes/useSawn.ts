import { fitsAsSawn, type MatchablePanel, type PanelMatch } from './matchPanels.ts';

/** Sawn pieces of one panel of the old order, and what of the new order they become; null: they serve nothing. */
export interface SawnUse<Old, New = Old> {
  readonly before: Old;
  readonly after: New | null;
  readonly count: number;
}

/**
 * What sawn pieces of an old order are good for in the new one. A piece first serves the panel that it was sawn as, where
 * that is still as the saw left it; what is over then serves any other panel of the new order of the same board, finish, cut
 * size and grain that is not covered yet, in the order of the new panels. `sawn` tells how many pieces of an old panel are
 * there, `matches` come from `matchPanels`. Every sawn piece is in one use, and no new panel gets more than it needs.
 */
export function useSawn<Old extends MatchablePanel, New extends MatchablePanel>(
  sawn: ReadonlyMap<Old, number>,
  matches: readonly PanelMatch<Old, New>[],
): SawnUse<Old, New>[] {
  const left = new Map(sawn);
  const needed = new Map<New, number>();
  for (const { after, count } of matches) {
    if (after !== null) needed.set(after, (needed.get(after) ?? 0) + count);
  }
  const uses: SawnUse<Old, New>[] = [];
  const take = (before: Old, after: New, most: number): void => {
    const count = Math.min(most, left.get(before) ?? 0, needed.get(after) ?? 0);
    if (count <= 0 || !fitsAsSawn(before, after)) return;
    left.set(before, left.get(before)! - count);
    needed.set(after, needed.get(after)! - count);
    uses.push({ before, after, count });
  };
  for (const kind of ['same', 'changed'] as const) {
    for (const { before, after, count, kind: own } of matches) {
      if (own === kind && before !== null && after !== null) take(before, after, count);
    }
  }
  for (const before of sawn.keys()) {
    for (const after of needed.keys()) take(before, after, Number.MAX_SAFE_INTEGER);
  }
  for (const [before, count] of left) if (count > 0) uses.push({ before, after: null, count });
  return uses;
}

/** How many pieces of each new panel are still to be sawn. */
export function stillToSaw<Old, New extends MatchablePanel>(
  panels: readonly New[],
  uses: readonly SawnUse<Old, New>[],
): Map<New, number> {
  const left = new Map(panels.map((panel) => [panel, panel.count]));
  for (const { after, count } of uses) if (after !== null) left.set(after, (left.get(after) ?? 0) - count);
  return left;
}
