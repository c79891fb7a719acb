import { EverySplit } from '../basics/everySplit.ts';
import { makeRectangleProblem } from '../basics/rectangleProblem.ts';
import { areaBound, everySplitBound, type LowerBound, lowerBound } from '../bounds/index.ts';
import { PatternRounding } from '../covering/index.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound, Nest, NestOptions, NestOutcome } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import type { StockGroup } from '../model/stock.ts';
import { nest } from '../nesting/index.ts';
import { longestCutOf } from '../nesting/longestCut.ts';
import { betterOf, MANY_COPIES, partsOfSearch, withBound } from './partsOfSearch.ts';
import { patternsOfNest } from './patternsOfNest.ts';
import { aimOf, type RoundingRequest, roundAndNest } from './roundAndNest.ts';

/** Steps that the quick bound of one group may take, by areas and dual feasible functions only: some milliseconds. */
const QUICK_BOUND_EFFORT = 30_000_000;
/** Steps that the bound by patterns may take: for each move allowed, at least, and at most at first and later. */
const BOUND_STEPS_A_MOVE = 1500;
const LEAST_BOUND_EFFORT = 50_000_000;
const MOST_BOUND_EFFORT = 1_000_000_000;
const LATER_EFFORT = 10;
/** The same over several sizes of sheet, once a rounding has patterns at whose prices few pricings are needed. */
const EFFORT_FROM_ROUNDING = 4;
const MOST_LATER_EFFORT = 5_000_000_000;
/** Moves after which the bound is worked on again, when so many times more are allowed. */
const MOVES_TO_LATER_BOUND = 300_000;
const TIMES_MORE = 4;
/** Moves of the first search, which most small groups end in. */
const FIRST_MOVES = 1000;
/** Moves that find most plans there are for few pieces, before every way to part them is tried with more work than at first. */
const MOVES_BEFORE_SPLITS = 10_000;
/** So many times the effort for the bound by patterns is that work. */
const TIMES_FOR_SPLITS = 4;
/** Plans of no more sheets are left to the search alone: a rounding would leave it all of them. */
const FEW_SHEETS = 5;
/** With more sizes the programme takes longer to solve than searching pays. */
const MOST_SIZES = 150;
/** Where patterns are used often, sheets of several kinds are rounded with more sizes, and blocks left out sooner. */
const MOST_SIZES_OF_MANY_COPIES = 200;
const SIZES_FOR_FOUR_STAGES = 110;
/** With fewer pieces a size than this, roundings take their time and serve plans of few sheets least. */
const SOME_COPIES = 1.5;
const SHEETS_FOR_SOME_COPIES = 20;
/** Searches, later bounds and roundings in turn, before the last search has the rest of the moves. */
const PHASES = {
  'many copies': [
    { moves: 20_000, from: 'known patterns', boundAgain: false, rounds: 16 },
    { moves: 200_000, from: 'known patterns', boundAgain: false, rounds: 24 },
  ],
  // What a rounding leaves is searched for longer there.
  'many copies on several sizes': [
    { moves: 20_000, from: 'known patterns', boundAgain: false, rounds: 6 },
    { moves: 200_000, from: 'known patterns', boundAgain: false, rounds: 24 },
  ],
  'some copies': [
    { moves: 200_000, from: 'known patterns', boundAgain: false, rounds: 8 },
    { moves: 300_000, from: 'nothing', boundAgain: true, rounds: 16 },
  ],
  'few copies': [
    { moves: 200_000, from: 'known patterns', boundAgain: true, rounds: 0 },
    // Another start finds what lies far from the patterns.
    { moves: 300_000, from: 'nothing', boundAgain: true, rounds: 16 },
  ],
} as const;
/** Roundings before patterns of any number of stages are looked for, where those of the programme do not do. */
const FIRST_ROUNDS = 2;
/** A search for many pieces needs more moves than that: so many for each. */
const MOVES_A_PIECE = 1000;
/** With more pieces and sheets than this, and several sizes of sheet, the best value among them is searched alone first. */
const MANY_PIECES = 400;
const MANY_SHEETS = 12;
/** Part of the moves that this may take, and how many for each piece. */
const PART_FOR_BEST_VALUE = 2;
const BEST_VALUE_MOVES_A_PIECE = 200;
/** Part of the moves that one search between roundings, and one for the rest of a rounding, may have. */
const PART_OF_MOVES = 4;
const PART_OF_ROUND = 16;
const MOVES_A_ROUND = 20_000;
/** Steps of a rounding that count as one move. */
const STEPS_A_MOVE = 20_000;
/** Steps that all roundings may take for one move allowed, and at most. */
const MOST_ROUNDING_EFFORT = 30_000_000_000;

/**
 * One stock group through the middle of the line. A rough plan comes at once. A quick bound and a short search prove
 * most small groups best; for the others the bound by patterns comes next, which is told the cost of the plan so far. Then searches take turns with
 * roundings of the patterns where there are many sheets, and a last search has the rest of the moves. The outcome
 * depends on the group, the seed and the work limit only, unless `stop` ends it earlier. `boundEffort`: steps that the
 * bound by patterns may take at first.
 */
export function nestGroup(
  group: StockGroup,
  solver: LinearSolver | null,
  options: NestOptions,
  boundEffort = usualBoundEffort(options.workLimit),
): NestOutcome {
  const begun = beginNest(group, options);
  return begun.isDone ? begun.outcome : goOnNesting(group, solver, options, begun, boundEffort);
}

/** Whether going on from there takes a solver. */
export function needsSolver({ emphasis }: NestOptions): boolean {
  return emphasis !== 'plan alone';
}

/** The rest of `nestGroup` after `beginNest`, which most small groups end in, so that a solver may be loaded in between. */
export function goOnNesting(
  group: StockGroup,
  solver: LinearSolver | null,
  options: NestOptions,
  begun: Open,
  boundEffort = usualBoundEffort(options.workLimit),
): NestOutcome {
  if (!needsSolver(options)) return planAlone(group, options, begun, boundEffort);
  const byPatterns = boundByPatterns(group, solver, options, begun, boundEffort);
  const known = withBound(begun.first, byPatterns.bound);
  // Its plan is only taken where another search has a dearer one, which none has that was not stopped.
  if (options.emphasis === 'bound alone') {
    return { ok: true, nest: options.stop?.() ? tidied(group, options, known) : known };
  }
  return { ok: true, nest: new LongSearch(group, solver, options, byPatterns, boundEffort, known).run() };
}

/**
 * What threads find that share a group as `partsOfSearch` says, the parts one after the other; else as `nestGroup`. In goes
 * and out comes what does there.
 */
export function nestInParts(
  group: StockGroup,
  solver: LinearSolver | null,
  options: NestOptions,
): NestOutcome {
  if (partsOfSearch(group, options.workLimit).length === 0) return nestGroup(group, solver, options);
  const begun = beginNest(group, options);
  if (begun.isDone) return begun.outcome;
  const boundEffort = usualBoundEffort(options.workLimit);
  const { bound } = boundByPatterns(group, solver, options, begun, boundEffort);
  const alone = { ok: true, nest: withBound(begun.first, bound) } as const;
  return betterOf(planAlone(group, options, begun, boundEffort), alone);
}

/** What every search begins with: the end of it, or a first plan with the quick bound. */
type Begun =
  | { readonly isDone: true; readonly outcome: NestOutcome }
  | { readonly isDone: false; readonly first: Nest; readonly quick: LowerBound };

/** The rough plan, the quick bound and the first moves. */
export function beginNest(group: StockGroup, options: NestOptions): Begun {
  const area = areaBound(group);
  // A plan is there to be seen before bounds and searches take their time.
  const rough = nest(group, area, { ...options, workLimit: 0, finish: 'as found' });
  if (!rough.ok) return { isDone: true, outcome: rough };
  const quick = rough.nest.proved
    ? { bound: area, patterns: [] }
    : lowerBound(group, { solver: null, effort: QUICK_BOUND_EFFORT, planCost: rough.nest.costMinor });
  const firstMoves = Math.min(options.workLimit, FIRST_MOVES);
  const first = nest(
    group,
    quick.bound,
    { ...options, workLimit: firstMoves, finish: 'tidy if proved' },
    quick.patterns,
  );
  if (!first.ok || first.nest.proved) return { isDone: true, outcome: first };
  // What goes on is tidied in the end: it takes as long as the first moves themselves.
  if (options.stop?.())
    return { isDone: true, outcome: { ok: true, nest: tidied(group, options, first.nest) } };
  return { isDone: false, first: first.nest, quick };
}

/** A plan that was left as found, tidied after all; at no greater cost, as the search begins from it. */
function tidied(group: StockGroup, options: NestOptions, found: Nest): Nest {
  const start = patternsOfNest(makeRectangleProblem(group), found, (demand) => demand);
  const workLimit = Math.min(options.workLimit, FIRST_MOVES);
  const outcome = nest(group, found.bound, { ...options, workLimit, finish: 'tidy' }, start);
  return outcome.ok && outcome.nest.costMinor <= found.costMinor ? outcome.nest : found;
}

type Open = Extract<Begun, { readonly isDone: false }>;

function planAlone(group: StockGroup, options: NestOptions, open: Open, boundEffort: number): NestOutcome {
  const search = new LongSearch(group, null, options, open.quick, boundEffort, open.first);
  return { ok: true, nest: search.run() };
}

function boundByPatterns(
  group: StockGroup,
  solver: LinearSolver | null,
  options: NestOptions,
  { first, quick }: Open,
  boundEffort: number,
): LowerBound {
  const effort = firstEffort(group, boundEffort);
  return lowerBound(group, {
    solver,
    effort,
    planCost: first.costMinor,
    // With more effort more functions are tried.
    ...(effort <= LEAST_BOUND_EFFORT && { known: quick.bound }),
    ...(options.stop && { stop: options.stop }),
  });
}

function hasFewSizes(group: StockGroup): boolean {
  return group.demands.length <= MOST_SIZES;
}

/** The kind of sheet with most area for its price, trims off, of those of which there are any number; −1 for none. */
function bestValue({ sheets }: StockGroup): number {
  const area = ({ lengthUm, widthUm, trim }: StockGroup['sheets'][number]) =>
    (lengthUm - trim.left - trim.right) * (widthUm - trim.near - trim.far);
  let best = -1;
  for (const [index, sheet] of sheets.entries()) {
    const value = (at: number) => sheets[at]!.priceMinor / area(sheets[at]!);
    if (sheet.count === null && (best < 0 || value(index) < value(best))) best = index;
  }
  return best;
}

function firstEffort(group: StockGroup, boundEffort: number): number {
  return hasFewSizes(group) ? boundEffort : LEAST_BOUND_EFFORT;
}

function usualBoundEffort(workLimit: number): number {
  return Math.max(LEAST_BOUND_EFFORT, Math.min(MOST_BOUND_EFFORT, workLimit * BOUND_STEPS_A_MOVE));
}

/** Moves that so many steps of a rounding count as. */
function movesFor(steps: number): number {
  return Math.ceil(steps / STEPS_A_MOVE);
}

/** What follows the bound by patterns. */
class LongSearch {
  private readonly group: StockGroup;
  private readonly problem: RectangleProblem;
  private readonly pieces: number;
  private readonly solver: LinearSolver | null;
  private readonly options: NestOptions;
  private bound: Bound;
  private readonly boundEffort: number;
  /** Patterns that the next search starts from. */
  private start: readonly SheetPattern[];
  private boundPatterns: readonly SheetPattern[];
  private best: Nest;
  private movesLeft: number;
  private boundedAgain = false;
  private splitsTried = false;
  /** Whether the best plan is tidied already. */
  private isTidy = false;

  constructor(
    group: StockGroup,
    solver: LinearSolver | null,
    options: NestOptions,
    { bound, patterns }: LowerBound,
    boundEffort: number,
    known: Nest,
  ) {
    this.group = group;
    this.problem = makeRectangleProblem(group);
    this.pieces = this.problem.items.count.reduce((sum, count) => sum + count, 0);
    this.solver = solver;
    this.options = options;
    this.bound = bound;
    this.boundEffort = boundEffort;
    // A plan that the bound has just proved best is only to be tidied.
    this.start = known.proved ? this.asPatterns(known) : patterns;
    this.boundPatterns = patterns;
    this.best = known;
    this.movesLeft = options.workLimit;
  }

  run(): Nest {
    this.tryEverySplit();
    if (this.solver && this.options.emphasis === 'bound' && this.wantsLaterBound())
      this.boundAgain(this.solver);
    this.searchBestValue();
    if (this.solver && !this.isDone() && this.canBeRounded()) this.takeTurns(this.solver);
    if (this.solver && this.wantsLaterBound()) {
      this.search(MOVES_TO_LATER_BOUND, this.options.seed, 'as found');
      this.boundAgain(this.solver);
    }
    this.search(this.movesLeft, this.options.seed, 'tidy');
    // The last search may have begun elsewhere and found nothing as cheap as what is known.
    return this.isTidy ? this.best : tidied(this.group, this.options, this.best);
  }

  /** Few pieces: whether a cheaper mix of sheets holds them, with every way to part them. */
  private tryEverySplit(): void {
    const { problem, options, boundEffort } = this;
    if (!this.solver || options.emphasis === 'plan' || !EverySplit.suits(problem) || this.isDone()) return;
    this.splitsTried = true;
    this.search(Math.min(MOVES_BEFORE_SPLITS, this.movesLeft), options.seed, 'as found');
    if (this.isDone()) return;
    const effort = TIMES_FOR_SPLITS * boundEffort;
    const settled = everySplitBound(problem, this.bound, this.best.costMinor, effort, options.stop);
    if (!settled) return;
    this.bound = settled.bound;
    this.best = withBound(this.best, settled.bound);
    if (settled.patterns.length > 0) {
      this.start = settled.patterns;
      this.search(0, options.seed, 'as found');
    }
  }

  /**
   * Long lists: a plan from the sheets alone that have most area for their price. In a search over all sizes smaller
   * sheets come in wherever the money left is too little for a larger one, and seldom go out again.
   */
  private searchBestValue(): void {
    const { group, pieces } = this;
    const { sheets } = group;
    if (sheets.length === 1 || pieces <= MANY_PIECES || this.isDone()) return;
    if (this.sheetsOfPlan() <= MANY_SHEETS) return;
    const index = bestValue(group);
    if (index < 0) return;
    const alone = { ...group, sheets: [sheets[index]!] };
    const half = Math.floor(this.movesLeft / PART_FOR_BEST_VALUE);
    const workLimit = Math.min(half, BEST_VALUE_MOVES_A_PIECE * pieces);
    const outcome = nest(alone, this.bound, { ...this.options, workLimit, finish: 'as found' });
    if (!outcome.ok) return;
    this.movesLeft -= outcome.nest.moves;
    if (outcome.nest.costMinor >= this.best.costMinor) return;
    const found = outcome.nest.sheets.map((sheet) => ({ ...sheet, sheet: index }));
    this.best = withBound({ ...outcome.nest, sheets: found }, this.bound);
    this.start = this.asPatterns(this.best);
  }

  private wantsLaterBound(): boolean {
    if (this.options.emphasis === 'plan') return false;
    const allowed = this.movesLeft >= TIMES_MORE * MOVES_TO_LATER_BOUND && hasFewSizes(this.group);
    return allowed && !this.boundedAgain && !this.isDone();
  }

  /** Over several sizes of sheet the bound's own patterns lead it nowhere where there are many sheets; a rounding's do. */
  private wantsBoundFrom(rounding: PatternRounding): boolean {
    const { emphasis } = this.options;
    const isNew = !this.boundedAgain && emphasis !== 'plan' && rounding.patterns().length > 0;
    return isNew && this.group.sheets.length > 1 && hasFewSizes(this.group);
  }

  /**
   * The bound once more from the patterns of the programme that is to be rounded: it is solved in a part of the time that
   * one rounding takes, and the bound needs few pricings from there. Where the programme does not reach the bound so far,
   * patterns are wanted that it does not know, which the bound finds from its own.
   */
  private boundFromProgramme(solver: LinearSolver, rounding: PatternRounding): void {
    const workBefore = rounding.work;
    // As far as the first rounding needs it.
    rounding.costMinor(aimOf({ bound: this.bound, problem: this.problem }, this.best.costMinor));
    this.movesLeft -= movesFor(rounding.work - workBefore);
    if (rounding.reaches(this.bound.costMinor)) this.boundAgain(solver, LATER_EFFORT, rounding.patterns());
  }

  /** The bound by patterns once more, with the cost of the better plan, more effort and more patterns. */
  private boundAgain(
    solver: LinearSolver,
    timesEffort = LATER_EFFORT,
    patterns: readonly SheetPattern[] = [],
  ): void {
    if (this.isDone()) return;
    this.boundedAgain = true;
    const { bound, patterns: used } = lowerBound(this.group, {
      solver,
      effort: Math.min(MOST_LATER_EFFORT, timesEffort * this.boundEffort),
      planCost: this.best.costMinor,
      withoutSplits: this.splitsTried,
      patterns: [...patterns, ...this.boundPatterns],
      ...(this.options.stop && { stop: this.options.stop }),
    });
    this.boundPatterns = used;
    if (bound.costMinor <= this.bound.costMinor) return;
    this.bound = bound;
    this.best = withBound(this.best, bound);
  }

  /** Roundings have three stages of cuts or four, and know of no longest cut; one that no sheet reaches is none. */
  private canBeRounded(): boolean {
    const { turns } = this.group.saw;
    const most =
      this.isOfManyCopies() && this.group.sheets.length > 1 ? MOST_SIZES_OF_MANY_COPIES : MOST_SIZES;
    if (this.problem.items.kinds > most || this.sheetsOfPlan() <= FEW_SHEETS) return false;
    return (turns === null || turns >= 2) && longestCutOf(this.group, this.problem.unitUm) === null;
  }

  private takeTurns(solver: LinearSolver): void {
    const kind = this.kindOfList();
    // With few copies the programme takes its time: the search alone does more with few moves.
    if (!this.isOfManyCopies() && this.movesLeft < TIMES_MORE * MOVES_TO_LATER_BOUND) return;
    let rounding: PatternRounding | null = null;
    let seed = 0;
    for (const { moves, from, boundAgain, rounds } of PHASES[kind]) {
      const part = Math.floor(this.options.workLimit / PART_OF_MOVES);
      const start = from === 'nothing' ? [] : this.start;
      const enough = this.isOfManyCopies() ? moves : Math.max(moves, MOVES_A_PIECE * this.pieces);
      this.search(Math.min(enough, part, this.movesLeft), this.options.seed + seed, 'as found', start);
      if (boundAgain && this.wantsLaterBound()) this.boundAgain(solver);
      if (rounds > 0 && !this.isDone()) {
        rounding ??= this.newRounding(solver);
        if (kind === 'some copies' && this.wantsLaterBound()) this.boundFromProgramme(solver, rounding);
        this.takeRounds(solver, rounding, seed, rounds);
        seed += rounds;
      }
      if (this.isDone()) return;
    }
  }

  private sheetsOfPlan(): number {
    return this.best.sheets.reduce((sum, { copies }) => sum + copies, 0);
  }

  private isOfManyCopies(): boolean {
    return this.pieces >= MANY_COPIES * this.problem.items.kinds;
  }

  private kindOfList(): keyof typeof PHASES {
    const copies = this.pieces / this.problem.items.kinds;
    const areSeveral = this.group.sheets.length > 1;
    if (this.isOfManyCopies()) return areSeveral ? 'many copies on several sizes' : 'many copies';
    if (areSeveral || copies < SOME_COPIES) return 'few copies';
    return this.sheetsOfPlan() >= SHEETS_FOR_SOME_COPIES ? 'some copies' : 'few copies';
  }

  /** Roundings; where no patterns of few stages can reach the bound, those of the bound are made use of on the way. */
  private takeRounds(
    solver: LinearSolver,
    rounding: PatternRounding,
    firstSeed: number,
    rounds: number,
  ): void {
    const first = Math.min(FIRST_ROUNDS, rounds);
    const pool: SheetPattern[] = [];
    this.round(solver, rounding, { firstSeed, rounds: first, pool, covers: false });
    if (this.isDone()) return;
    if (this.wantsBoundFrom(rounding)) {
      this.boundAgain(solver, EFFORT_FROM_ROUNDING, rounding.patterns());
      rounding.learn(this.boundPatterns);
    } else if (this.wantsLaterBound() && !rounding.reaches(this.bound.costMinor)) {
      this.boundAgain(solver);
      rounding.learn(this.boundPatterns);
    }
    if (this.isDone()) return;
    const later = { firstSeed: firstSeed + first, rounds: rounds - first, pool, covers: true };
    this.round(solver, rounding, later);
  }

  private newRounding(solver: LinearSolver): PatternRounding {
    // The sheets of the plan so far give the programme sensible prices from the start.
    return new PatternRounding(this.problem, solver, [...this.boundPatterns, ...this.start], {
      effort: Math.min(MOST_ROUNDING_EFFORT, this.movesLeft * STEPS_A_MOVE),
      stages: (this.group.saw.turns ?? 3) >= 3 && this.problem.items.kinds <= SIZES_FOR_FOUR_STAGES ? 4 : 3,
      stop: () => this.options.stop?.() ?? false,
    });
  }

  private round(
    solver: LinearSolver,
    rounding: PatternRounding,
    turn: Pick<RoundingRequest, 'firstSeed' | 'rounds' | 'pool' | 'covers'>,
  ): void {
    const workBefore = rounding.work;
    const outcome = roundAndNest({
      group: this.group,
      problem: this.problem,
      solver,
      rounding,
      bound: this.bound,
      below: this.best.costMinor,
      ...turn,
      movesARound: Math.min(MOVES_A_ROUND, Math.floor(this.options.workLimit / PART_OF_ROUND)),
      options: this.options,
    });
    this.movesLeft -= outcome.moves + movesFor(rounding.work - workBefore);
    if (!outcome.plan) return;
    this.start = outcome.plan.patterns;
    this.search(0, this.options.seed, 'as found');
  }

  private isDone(): boolean {
    return this.best.proved || this.movesLeft <= 0 || (this.options.stop?.() ?? false);
  }

  /** Searches on from `start`, which becomes the best plan when the search finds a better one. */
  private search(moves: number, seed: number, finish: 'tidy' | 'as found', start = this.start): void {
    const workLimit = Math.max(0, moves);
    const outcome = nest(this.group, this.bound, { ...this.options, workLimit, seed, finish }, start);
    if (!outcome.ok) return;
    this.movesLeft -= outcome.nest.moves;
    // A search that was stopped at once may know less than an earlier one did.
    if (outcome.nest.costMinor > this.best.costMinor) return;
    this.best = outcome.nest;
    this.isTidy = finish === 'tidy';
    if (finish === 'as found') {
      this.start = this.asPatterns(outcome.nest);
    }
  }

  private asPatterns(nest: Nest): SheetPattern[] {
    return patternsOfNest(this.problem, nest, (demand) => demand);
  }
}
