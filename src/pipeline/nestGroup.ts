import { lowerBound } from '../bounds/index.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { NestOptions, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import { nest } from '../nesting/index.ts';

/** Steps that the quick bound of one group may take, by areas and dual feasible functions only: some milliseconds. */
const QUICK_BOUND_EFFORT = 30_000_000;
/** Steps that the bound by patterns may take. */
const BOUND_EFFORT = 100_000_000;
/** Moves of the first search, which most small groups end in. */
const FIRST_MOVES = 1000;

/**
 * One stock group through the middle of the line. A quick bound and a short search prove most small groups best; for
 * the others the bound by patterns, which is told the cost of the plan so far, comes before the long search. The
 * outcome depends on the group, the seed and the work limit only, unless `stop` ends it earlier.
 */
export function nestGroup(group: StockGroup, solver: LinearSolver | null, options: NestOptions): NestOutcome {
  const quick = lowerBound(group, { solver: null, effort: QUICK_BOUND_EFFORT }).bound;
  const first = nest(group, quick, { ...options, workLimit: Math.min(options.workLimit, FIRST_MOVES) });
  if (!first.ok || first.nest.proved || options.stop?.()) return first;
  const planCost = first.nest.costMinor;
  const asked = { solver, effort: BOUND_EFFORT, planCost };
  const { bound, patterns } = lowerBound(group, asked);
  const outcome = nest(group, bound, options, patterns);
  // A search that was stopped at once may know less than the first one did.
  if (outcome.ok && outcome.nest.costMinor <= planCost) return outcome;
  return { ok: true, nest: { ...first.nest, bound, proved: planCost === bound.costMinor } };
}
