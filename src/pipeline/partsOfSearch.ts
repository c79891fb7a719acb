import type { Bound, Emphasis, Nest, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';

/** From so many pieces a size on, patterns are used often. */
export const MANY_COPIES = 8;
/** A short search for a group of so many sizes, each wanted less often than that, can leave its bound to another thread. */
const LEAST_SIZES = 25;
/** From so many moves on the patterns of the bound are worth waiting for, and a group is worth two seeds. */
export const MANY_MOVES = 400_000;

/**
 * What may be done side by side for one group: where the bound by patterns takes as long as a short search, and the search
 * can do without its patterns, one part for each; empty where one search does all. The outcome is `betterOf` of both. It
 * depends on the group and the moves alone, so that commands that nest the same group find the same plan.
 */
export function partsOfSearch({ demands }: StockGroup, workLimit: number): readonly Emphasis[] {
  const pieces = demands.reduce((sum, { count }) => sum + count, 0);
  const isLong = demands.length >= LEAST_SIZES && pieces < MANY_COPIES * demands.length;
  return isLong && workLimit < MANY_MOVES ? ['plan alone', 'bound alone'] : [];
}

/** The cheaper plan, the first where both cost the same, beside the greater bound. */
export function betterOf(a: NestOutcome, b: NestOutcome): NestOutcome {
  if (!a.ok) return b;
  if (!b.ok) return a;
  const plan = b.nest.costMinor < a.nest.costMinor ? b.nest : a.nest;
  const { bound } = b.nest.bound.costMinor > a.nest.bound.costMinor ? b.nest : a.nest;
  return { ok: true, nest: withBound(plan, bound) };
}

/** The plan beside another bound. */
export function withBound(plan: Nest, bound: Bound): Nest {
  return { ...plan, bound, proved: plan.costMinor === bound.costMinor };
}
