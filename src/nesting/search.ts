import { construct } from './construct.ts';
import type { Facts } from './facts.ts';
import { type Plan, piecesPerSheet, takePlan } from './plan.ts';
import { RuinAndRecreate } from './ruinAndRecreate.ts';
import { SearchRandom } from './searchRandom.ts';
import { layOut } from './sheetCode.ts';
import { SheetTrees } from './sheetTrees.ts';

/** Moves between two questions whether to stop. */
const MOVES_PER_LOOK = 256;

export interface SearchLimits {
  readonly seed: number;
  readonly workLimit: number;
  readonly stop: () => boolean;
  /** Whether a plan of this many sheets and this cost (in the search's cost) cannot be bettered. */
  readonly isBest: (plan: Plan) => boolean;
  readonly improved: (plan: Plan, moves: number) => void;
}

export interface SearchResult {
  readonly plan: Plan;
  /** Kinds of items without a place, one entry an item; empty when the plan is whole. */
  readonly unplaced: readonly number[];
  readonly moves: number;
}

/** Places that the search needs for any plan that is cheaper than the one with these sheets. */
function placesFor(facts: Facts, plan: Plan): number {
  const sheets = plan.sheets.length;
  if (facts.sheetKinds === 1) return Math.max(1, Math.min(facts.total, facts.sheetLimit[0]!, sheets + 1));
  const allThereAre = facts.sheetLimit.reduce((sum, n) => sum + n, 0);
  return Math.max(1, Math.min(facts.total, allThereAre, 3 * sheets + 16));
}

/**
 * Goal-driven search: from a first plan on, the budget is set just below the best cost found, sheets are taken away
 * until it is kept, and ruin and recreate looks for a plan that places everything again.
 */
export function search(facts: Facts, limits: SearchLimits): SearchResult {
  const start = construct(facts);
  let best: Plan | undefined;
  let unplaced = start.unplaced;
  if (unplaced.length === 0) {
    best = start.plan;
    limits.improved(best, 0);
    if (limits.isBest(best)) return { plan: best, unplaced, moves: 0 };
  }
  const trees = new SheetTrees(
    facts,
    placesFor(facts, start.plan),
    1 + piecesPerSheet(facts, placesFor(facts, start.plan)),
  );
  const state = new RuinAndRecreate(trees, new SearchRandom(limits.seed));
  start.plan.sheets.forEach((sheet, place) => {
    layOut(trees, place, sheet);
  });
  state.setUnplaced(unplaced);
  state.budget = Number.POSITIVE_INFINITY;
  let moves = 0;
  for (;;) {
    if (best) state.lowerBudget(best.cost - facts.costStep);
    state.restart();
    let whole = state.unplacedCount === 0;
    while (!whole) {
      if (moves >= limits.workLimit || (moves % MOVES_PER_LOOK === 0 && limits.stop())) {
        return { plan: best ?? start.plan, unplaced, moves };
      }
      whole = state.move();
      moves++;
    }
    best = takePlan(trees);
    unplaced = [];
    limits.improved(best, moves);
    if (limits.isBest(best)) return { plan: best, unplaced, moves };
  }
}
