import type { Facts } from './facts.ts';
import { layOutPlan, type Plan, takePlan } from './plan.ts';
import { RuinAndRecreate } from './ruinAndRecreate.ts';
import { SearchRandom } from './searchRandom.ts';

const LEAST_MOVES = 1000;
const MOVES_PER_PIECE = 30;
const MOST_MOVES = 12_000;
const HISTORY = 200;
/** With more sheets than this, a few at a time are worked on, always with the emptiest. */
const MANY_SHEETS = 8;
const WINDOW_MOVES = 500;

/** Moves of one gathering. */
export function gatheringMoves(facts: Facts): number {
  return Math.min(MOST_MOVES, LEAST_MOVES + MOVES_PER_PIECE * facts.total);
}

/**
 * Moves pieces about without a dearer plan, so that the free area comes together: the sum of the squared areas of the
 * largest free corner of each sheet is made as large as a short search can. `spent` is asked before each move and
 * tells when to stop. Gives the best plan found, all placed, at most as dear as the one given.
 */
export function gatherWaste(facts: Facts, plan: Plan, seed: number, spent: () => boolean): Plan {
  const places = plan.sheets.length;
  const trees = layOutPlan(facts, plan, places);
  const state = new RuinAndRecreate(trees, new SearchRandom(seed));
  state.aim = 'gather waste';
  state.budget = plan.cost;
  const windows = places > MANY_SHEETS;
  const moves = gatheringMoves(facts);
  let best = plan;
  let bestWorth = worthOfAll(state);
  let activeWorth = 0;
  state.restart(HISTORY);
  for (let i = 0; i < moves && !spent(); i++) {
    if (windows && i % WINDOW_MOVES === 0 && state.unplacedCount === 0) {
      state.chooseWindow(MANY_SHEETS - 2);
      state.restart(HISTORY);
      activeWorth = state.cornerWorth();
    }
    if (!state.move()) continue;
    if (state.cornerWorth() <= activeWorth) continue;
    activeWorth = state.cornerWorth();
    const worth = worthOfAll(state);
    if (worth <= bestWorth) continue;
    best = takePlan(trees);
    bestWorth = worth;
  }
  return best;
}

function worthOfAll(state: RuinAndRecreate): number {
  return state.cornerWorth('all sheets');
}
