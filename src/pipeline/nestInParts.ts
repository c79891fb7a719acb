import type { LinearSolver } from '../model/linearSolver.ts';
import type { NestOptions, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import { nestGroup } from './nestGroup.ts';
import { betterOf, partsOfSearch } from './partsOfSearch.ts';

/** `nestGroup` as the threads of `plywright cut` do it together, one part after the other. */
export function nestInParts(
  group: StockGroup,
  solver: LinearSolver | null,
  options: NestOptions,
): NestOutcome {
  const parts = partsOfSearch(group, options.workLimit);
  if (parts.length === 0) return nestGroup(group, solver, options);
  return parts.map((emphasis) => nestGroup(group, solver, { ...options, emphasis })).reduce(betterOf);
}
