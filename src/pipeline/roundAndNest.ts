import { makeRectangleProblem } from '../basics/rectangleProblem.ts';
import { trimPattern } from '../basics/trimPattern.ts';
import { lowerBoundOfProblem } from '../bounds/index.ts';
import { coverFromPool, type PatternRounding, type RoundedPatterns } from '../covering/index.ts';
import type { PoolSheet } from '../model/covering.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound, NestOptions } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import type { StockGroup } from '../model/stock.ts';
import { nest } from '../nesting/index.ts';
import { patternsOfNest } from './patternsOfNest.ts';

/** Steps for the bound by areas that tells whether it is worth while to search what a rounding leaves. */
const AREA_EFFORT = 1_000_000;
/** Nodes of the branch and bound over the pool. */
const COVERING_NODES = 30;

/** Moves for each piece that is left, at least, where several kinds of sheet leave more of them. */
const MOVES_A_PIECE = 1000;

/** A plan as patterns with how often each is cut. */
export interface PatternPlan {
  readonly patterns: readonly SheetPattern[];
  readonly costMinor: number;
}

export interface RoundingRequest {
  readonly group: StockGroup;
  readonly problem: RectangleProblem;
  readonly solver: LinearSolver;
  readonly rounding: PatternRounding;
  readonly bound: Bound;
  /** Only a plan that costs less is wanted, in minor units. */
  readonly below: number;
  /** Seed of the first rounding; the others follow. */
  readonly firstSeed: number;
  readonly rounds: number;
  /** Sheets that came up in roundings before; those of these are added. */
  readonly pool: SheetPattern[];
  /** Whether the pool is covered from in the end, which takes as long as some roundings. */
  readonly covers: boolean;
  /** Moves of the search for what a rounding leaves. */
  readonly movesARound: number;
  readonly options: NestOptions;
}

/** What the roundings came to: a cheaper plan, or null; and the moves that were made. */
export interface RoundingOutcome {
  readonly plan: PatternPlan | null;
  readonly moves: number;
}

/**
 * Roundings of the linear programme over patterns, each with a short search for the few sheets that it leaves; then, with
 * one kind of sheet, the sheets that came up are covered from as a pool. Ends early with a plan that reaches the bound.
 */
export function roundAndNest(request: RoundingRequest): RoundingOutcome {
  const { pool } = request;
  let plan: PatternPlan | null = null;
  let moves = 0;
  const below = () => plan?.costMinor ?? request.below;
  for (let round = 0; round < request.rounds; round++) {
    if (below() <= request.bound.costMinor || request.rounding.isSpent()) break;
    const rounded = request.rounding.round(request.firstSeed + round, below(), aimOf(request, below()));
    if (!rounded) continue;
    const finished = nestTheRest(request, rounded, below(), request.firstSeed + round);
    if (!finished) continue;
    moves += finished.moves;
    pool.push(...finished.plan.patterns);
    if (finished.plan.costMinor < below()) plan = finished.plan;
  }
  // Over several kinds of sheet none of 15 covers of pooled orders was a cheaper plan, and each took 2 to 14 s.
  const covers = request.covers && request.problem.sheets.length === 1;
  if (covers && below() > request.bound.costMinor && pool.length > 0 && !request.rounding.isSpent()) {
    plan = coverFrom(request, [...request.rounding.patterns(), ...pool], below()) ?? plan;
  }
  return { plan, moves };
}

/** What a rounding aims at: one sheet less where there is one kind of sheet, for that is soon solved; else the bound. */
export function aimOf({ bound, problem }: Pick<RoundingRequest, 'bound' | 'problem'>, below: number): number {
  const [only, second] = problem.sheets;
  return second ? bound.costMinor : Math.max(bound.costMinor, below - only!.costMinor);
}

/** Searches for the sheets that a rounding left; null when the area alone shows that it cannot cost less than `below`. */
function nestTheRest(
  { group, problem, options, movesARound, bound: wholeBound }: RoundingRequest,
  rounded: RoundedPatterns,
  below: number,
  seed: number,
): { plan: PatternPlan; moves: number } | null {
  const { left, costMinor } = rounded;
  const items = [...left.keys()].filter((item) => left[item]! > 0);
  if (items.length === 0) return { plan: rounded, moves: 0 };
  const rest: StockGroup = {
    ...group,
    demands: items.map((item) => ({ ...group.demands[item]!, count: left[item]! })),
    sheets: group.sheets.map((sheet, index) => {
      if (sheet.count === null) return sheet;
      const gone = rounded.patterns.filter((pattern) => problem.sheets[pattern.sheet]!.sheet === index);
      return { ...sheet, count: sheet.count - gone.reduce((sum, { use }) => sum + use, 0) };
    }),
  };
  const goal = below - costMinor - 1;
  const { bound } = lowerBoundOfProblem(makeRectangleProblem(rest), { solver: null, effort: AREA_EFFORT });
  if (bound.costMinor > goal) return null;
  // With one kind of sheet a cheaper plan is cheaper by a sheet; with several it may be far from the best there is.
  const least = Math.max(bound.costMinor, wholeBound.costMinor - costMinor);
  const enough = problem.sheets.length === 1 ? goal : least;
  const pieces = left.reduce((sum, count) => sum + count, 0);
  const workLimit = problem.sheets.length === 1 ? movesARound : Math.max(movesARound, MOVES_A_PIECE * pieces);
  const cheapest = Math.min(...problem.sheets.map((sheet) => sheet.costMinor));
  const sheets = cheapest > 0 ? Math.floor(enough / cheapest) : bound.sheets;
  const outcome = nest(
    rest,
    { ...bound, costMinor: enough, sheets },
    { seed, workLimit, finish: 'as found', ...(options.stop && { stop: options.stop }) },
  );
  if (!outcome.ok) return null;
  const patterns = patternsOfNest(problem, outcome.nest, (demand) => items[demand]!);
  return {
    plan: {
      patterns: [...rounded.patterns, ...patterns],
      costMinor: costMinor + outcome.nest.costMinor,
    },
    moves: outcome.nest.moves,
  };
}

/** A cheaper plan from sheets that are known how to cut; null when there is none. */
function coverFrom(
  { problem, solver }: RoundingRequest,
  sheets: readonly SheetPattern[],
  below: number,
): PatternPlan | null {
  const pool: PoolSheet[] = sheets.map(({ sheet, counts }, id) => ({ id, sheet, counts }));
  const choice = coverFromPool({ solver, problem, pool, below, nodes: COVERING_NODES });
  if (!choice) return null;
  // A choice may cut pieces too often; a plan may not.
  const left = Int32Array.from(problem.items.count);
  const patterns: SheetPattern[] = [];
  for (const { id, copies } of choice.chosen) {
    for (let copy = 0; copy < copies; copy++) {
      const wanted = trimPattern(sheets[id]!, left);
      if (!wanted) continue;
      for (const { item, count } of wanted.counts) left[item]! -= count;
      patterns.push({ ...wanted, use: 1 });
    }
  }
  return { patterns, costMinor: choice.costMinor };
}
