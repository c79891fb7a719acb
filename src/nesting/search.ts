import type { SheetPattern } from '../model/patterns.ts';
import { construct, isBetter } from './construct.ts';
import type { Facts } from './facts.ts';
import { gatheringMoves, gatherWaste } from './gatherWaste.ts';
import { startFromPatterns } from './patternStart.ts';
import { layOutPlan, type Plan, takePlan } from './plan.ts';
import { RuinAndRecreate } from './ruinAndRecreate.ts';
import { SearchRandom } from './searchRandom.ts';
import { SheetMixes } from './sheetMixes.ts';
import type { SheetTrees } from './sheetTrees.ts';

/** Moves between two questions whether to stop. */
const MOVES_PER_LOOK = 256;
/** Moves before the waste of an unproved plan is gathered for the first time; doubled each time. */
const FIRST_GATHERING = 30_000;

/** Plans with more pieces and more sheets than this are searched window by window. */
const MANY_PIECES = 400;
const MANY_SHEETS = 12;
/** Sheets in a window, moves before the next one is chosen, and moves that late acceptance looks back in it. */
const WINDOW_SHEETS = 6;
const WINDOW_MOVES = 500;
const WINDOW_HISTORY = 60;

export interface SearchLimits {
  readonly seed: number;
  readonly workLimit: number;
  readonly stop: () => boolean;
  /** Ways to cut a sheet to start from; none is fine. */
  readonly patterns: readonly SheetPattern[];
  /** Whether waste is gathered into large offcuts. */
  readonly gathers: boolean;
  /** Whether it is gathered at the end too; absent: of every plan. */
  readonly gathersLast?: (plan: Plan) => boolean;
  /** Whether a plan cannot be cheaper. */
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
 * until it is kept, and ruin and recreate looks for a plan that places everything again. Now and then, and at the end,
 * the waste of the best plan is gathered into large offcuts.
 */
export function search(facts: Facts, limits: SearchLimits): SearchResult {
  const run = new SearchRun(facts, limits);
  run.lowerCost();
  return run.finish();
}

class SearchRun {
  private readonly facts: Facts;
  private readonly limits: SearchLimits;
  /** The best plan that places all, or the first one that does not. */
  private plan: Plan;
  private unplaced: readonly number[];
  private moves = 0;
  private gathered = false;
  private nextGathering = FIRST_GATHERING;
  private stopped = false;
  private readonly mixRandom: SearchRandom;

  constructor(facts: Facts, limits: SearchLimits) {
    this.facts = facts;
    this.limits = limits;
    this.mixRandom = new SearchRandom(limits.seed + 1);
    const byPatterns = startFromPatterns(facts, limits.patterns);
    const byItems = construct(facts);
    const start = byPatterns && !isBetter(facts, byItems, byPatterns) ? byPatterns : byItems;
    this.plan = start.plan;
    this.unplaced = start.unplaced;
    if (this.isWhole()) limits.improved(this.plan, 0);
  }

  private isWhole(): boolean {
    return this.unplaced.length === 0;
  }

  private shouldStop(workLimit: number): boolean {
    if (this.moves >= workLimit) return true;
    if (this.moves % MOVES_PER_LOOK === 0 && this.limits.stop()) this.stopped = true;
    return this.stopped;
  }

  lowerCost(): void {
    const { facts, limits } = this;
    if (this.isWhole() && limits.isBest(this.plan)) return;
    const places = placesFor(facts, this.plan);
    const trees = layOutPlan(facts, this.plan, places);
    const state = new RuinAndRecreate(trees, new SearchRandom(limits.seed));
    state.setUnplaced(this.unplaced);
    state.budget = Number.POSITIVE_INFINITY;
    for (;;) {
      if (this.isWhole()) state.lowerBudget(this.plan.cost - facts.costStep);
      state.active.includeAll();
      state.restart();
      if (!this.reachGoal(state, trees)) return;
      this.plan = takePlan(trees);
      this.unplaced = [];
      this.gathered = false;
      limits.improved(this.plan, this.moves);
      if (limits.isBest(this.plan)) return;
    }
  }

  /** Moves until everything is placed; false when the work is used up before. */
  private reachGoal(state: RuinAndRecreate, trees: SheetTrees): boolean {
    const { facts } = this;
    const mixes = new SheetMixes(facts, this.mixRandom);
    const windows = this.facts.total > MANY_PIECES && trees.openSheets > MANY_SHEETS;
    let whole = state.unplacedCount === 0;
    const { workLimit } = this.limits;
    const forWaste = this.limits.gathers ? Math.min(workLimit / 2, gatheringMoves(this.facts)) : 0;
    const limitForCost = workLimit - forWaste;
    for (let tried = 0; !whole; tried++) {
      if (this.shouldStop(limitForCost)) return false;
      if (windows && tried % WINDOW_MOVES === 0) {
        state.chooseWindow(WINDOW_SHEETS);
        state.restart(WINDOW_HISTORY);
      }
      if (facts.sheetKinds > 1 && !windows) mixes.watch(state, trees);
      else if (!windows) state.reheatWhenStuck();
      if (this.limits.gathers && this.moves >= this.nextGathering && this.isWhole()) this.gather();
      whole = state.move();
      this.moves++;
    }
    return true;
  }

  private gather(): void {
    const { facts, limits } = this;
    if (!this.gathered) {
      const result = gatherWaste(facts, this.plan, limits.seed, () => {
        this.moves++;
        return this.shouldStop(limits.workLimit);
      });
      this.plan = result;
      this.gathered = true;
    }
    this.nextGathering = 2 * Math.max(this.moves, this.nextGathering);
  }

  finish(): SearchResult {
    const { gathers, gathersLast } = this.limits;
    if (gathers && this.isWhole() && (gathersLast?.(this.plan) ?? true)) this.gather();
    return { plan: this.plan, unplaced: this.unplaced, moves: this.moves };
  }
}
