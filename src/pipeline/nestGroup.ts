import { lowerBound } from '../bounds/index.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { NestOptions, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import { nest } from '../nesting/index.ts';

/** Steps that the bound of one group may take: a second or less on a slow machine. */
const BOUND_EFFORT = 300_000_000;

/** One stock group through the middle of the line: its lower bound, then its nest. */
export function nestGroup(group: StockGroup, solver: LinearSolver | null, options: NestOptions): NestOutcome {
  const { bound } = lowerBound(group, { solver, effort: BOUND_EFFORT });
  return nest(group, bound, options);
}
