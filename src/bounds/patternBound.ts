import { fittedPattern } from '../basics/fittedPattern.ts';
import { dearSlack, type MasterAnswer, type PatternColumn, PatternMaster } from '../basics/patternMaster.ts';
import { countsOf, fitsSheet } from '../basics/patternTree.ts';
import { needFromPrices } from '../basics/recheckBound.ts';
import { type Prices, SteadyPrices } from '../basics/steadyPrices.ts';
import { trimPattern } from '../basics/trimPattern.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound } from '../model/nest.ts';
import type { PatternNode, SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { cutMixes, hasMixes } from './mixCuts.ts';
import { mostOverused, mostPieces } from './mostOverused.ts';
import { PRICE_DENOMINATOR, priceSheets } from './priceSheets.ts';
import { makePricingTables, type PricingTables } from './pricingTables.ts';

/** One pricing may take this part of the effort at first. */
const ROUNDS_HOPED_FOR = 160;
/** The same on the finer grids that follow. */
const FINER_ROUNDS_HOPED_FOR = [50, 16] as const;
/** A pricing with counted copies may take this part of the effort. */
const COUNTED_ROUNDS_HOPED_FOR = 15;
/**
 * How much steady prices count for beside the programme's own, in one attempt after another. With the weights of the
 * roundings the work is the same, but two furniture orders (a11, a18) end a sheet dearer from the patterns met.
 */
const CENTRE_WEIGHTS = [0.7, 0.4, 0] as const;
/**
 * Part of the effort that is kept for ruling out mixes of several kinds of sheet: most of it where a plan has few sheets,
 * and a bound mostly rises by this alone.
 */
const PART_FOR_MIXES = 0.6;
const PART_FOR_MIXES_OF_FEW = 0.8;
const FEW_SHEETS = 12;

export interface PatternBound {
  readonly bound: Bound;
  readonly patterns: readonly SheetPattern[];
}

export interface PatternBoundRequest {
  readonly solver: LinearSolver;
  /** A bound that holds already; what is found is never less. */
  readonly known: Bound;
  /** The cost of a plan: when given, copies are counted to reach it; null for the plain bound by patterns. */
  readonly planCost: number | null;
  readonly effort: number;
  /** Patterns to start from; none is fine. */
  readonly patterns: readonly SheetPattern[];
  readonly stop: () => boolean;
}

/**
 * The bound by patterns: the linear programme over guillotine patterns, priced exactly by dynamic programming, each
 * round's prices rounded to whole numbers and turned into a bound that stands by itself (A. A. Farley, A note on
 * bounding a class of linear programming problems, including cutting stock problems, Operations Research 38 (1990)
 * 922–923), so that it may stop at any round. Stops when no pattern gains, when the programme's own value shows that
 * the bound cannot be bettered, or when the effort is spent. When a plan's cost is given and the bound is below it,
 * the items of which the programme uses too many on one sheet are counted, one after another, and it is solved again.
 * Returns null when no grid is coarse enough.
 */
export function patternBound(problem: RectangleProblem, request: PatternBoundRequest): PatternBound | null {
  const tables = makePricingTables(problem, [], request.effort / ROUNDS_HOPED_FOR, null);
  if (!tables || tables.bySheet.length === 0) return null;
  const generation = new ColumnGeneration(problem, request, tables);
  try {
    return generation.run();
  } finally {
    generation.dispose();
  }
}

class ColumnGeneration {
  private best: Bound;
  private work = 0;
  private tables: PricingTables;
  private master: PatternMaster;
  private readonly centre: SteadyPrices;
  /** Trees of patterns that lost pieces on the way to a finer grid. */
  private readonly repaired = new WeakSet<PatternNode>();
  private readonly problem: RectangleProblem;
  private readonly request: PatternBoundRequest;
  /** Price of each kind of sheet as a part of the dearest. */
  private readonly costs: Float64Array;
  private readonly dearest: number;
  private readonly priceStep: number;
  private readonly effort: number;

  constructor(problem: RectangleProblem, request: PatternBoundRequest, tables: PricingTables) {
    this.problem = problem;
    this.request = request;
    this.tables = tables;
    this.best = request.known;
    this.dearest = problem.sheets.reduce((most, sheet) => Math.max(most, sheet.costMinor), 0);
    this.costs = Float64Array.from(problem.sheets, (sheet) =>
      this.dearest === 0 ? 1 : sheet.costMinor / this.dearest,
    );
    this.priceStep = problem.sheets.reduce((g, sheet) => greatestCommonDivisor(g, sheet.costMinor), 0);
    const forMixes = request.known.sheets <= FEW_SHEETS ? PART_FOR_MIXES_OF_FEW : PART_FOR_MIXES;
    this.effort = request.effort * (hasMixes(problem) ? 1 - forMixes : 1);
    this.master = this.newMaster([]);
    this.centre = new SteadyPrices(problem, problem.items.count, this.costs, null);
  }

  dispose(): void {
    this.master.dispose();
  }

  run(): PatternBound {
    this.master.add(this.request.patterns);
    if (this.request.patterns.length === 0) this.master.add(this.startingPatterns());
    let answer = this.generate();
    for (const rounds of FINER_ROUNDS_HOPED_FOR) answer = this.refine(rounds, answer) ?? answer;
    const limited: number[] = [];
    while (answer && this.planIsDearer() && !this.isSpent()) {
      const item = mostOverused(this.master.patterns(), this.problem.items.count);
      if (item < 0) break;
      limited.push(item);
      const mostWork = this.request.effort / COUNTED_ROUNDS_HOPED_FOR;
      const tables = makePricingTables(
        this.problem,
        limited.toSorted((a, b) => a - b),
        mostWork,
        this.tables.grid,
      );
      if (!tables) break;
      this.tables = tables;
      const most = mostPieces(this.problem, limited);
      this.replaceMaster((pattern) => trimPattern(pattern, most));
      answer = this.generate();
    }
    if (this.planIsDearer()) {
      const { problem, request, tables, best } = this;
      const known = { bound: best, patterns: this.master.patterns() };
      const effort = request.effort - this.work;
      this.best = cutMixes(problem, tables, known, { ...request, effort, planCost: request.planCost! });
    }
    return {
      bound: this.best,
      patterns: this.fittingPatterns(),
    };
  }

  /** Patterns of the programme that fit their sheets; of those that lost pieces the ones that it uses. */
  private fittingPatterns(): SheetPattern[] {
    const good = this.master.patterns().filter(({ tree, use }) => use > 0 || !this.repaired.has(tree));
    return good.filter((pattern) => fitsSheet(this.problem, pattern));
  }

  private isSpent(): boolean {
    return this.work >= this.effort || this.request.stop();
  }

  private planIsDearer(): boolean {
    return this.request.planCost !== null && !this.planIsReached();
  }

  private planIsReached(): boolean {
    return this.request.planCost !== null && this.best.costMinor >= this.request.planCost;
  }

  private newMaster(patterns: readonly PatternColumn[]): PatternMaster {
    const { items, sheets } = this.problem;
    const limits = sheets.map((sheet) => sheet.count);
    const master = new PatternMaster(
      this.request.solver,
      items.count,
      this.costs,
      limits,
      dearSlack(items.kinds),
    );
    master.add(patterns);
    return master;
  }

  /**
   * Goes on with a finer grid, if one is to be had for so much of the effort, from the patterns so far without the pieces
   * that were too many: the coarse grid found most of what is needed, so that few of the dearer rounds are left. Null if
   * not. `before`: the answer on the grid so far.
   */
  private refine(rounds: number, before: MasterAnswer | null): MasterAnswer | null {
    if (!before || this.isSpent() || this.planIsReached()) return null;
    if (Math.round(this.problem.unitUm / 100) % this.tables.grid === 0) return null;
    const tables = makePricingTables(this.problem, [], this.request.effort / rounds, null);
    if (!tables || tables.grid >= this.tables.grid) return null;
    this.tables = tables;
    const { prices } = before;
    this.replaceMaster((pattern) => {
      const fitted = fittedPattern(this.problem, pattern, prices);
      if (fitted && fitted.tree !== pattern.tree) this.repaired.add(fitted.tree);
      return fitted;
    });
    return this.generate();
  }

  /** The same programme with other patterns in place of its own, where there are any. */
  private replaceMaster(other: (pattern: PatternColumn) => PatternColumn | null): void {
    const patterns = this.master
      .patterns()
      .map(other)
      .filter((pattern) => pattern !== null);
    this.master.dispose();
    this.master = this.newMaster(patterns);
  }

  /** Solves and prices in turn until nothing is to be gained; the last answer, or null when the solver gave up. */
  private generate(): MasterAnswer | null {
    let answer = this.master.solve();
    while (answer && !this.isSpent() && !this.cannotGain(answer)) {
      if (this.addGaining(answer) === 0 || this.planIsReached()) break;
      answer = this.master.solve();
    }
    return answer;
  }

  /** Adds patterns that gain at the programme's prices; says how many. */
  private addGaining(answer: MasterAnswer): number {
    for (const weight of CENTRE_WEIGHTS) {
      const added = this.master.add(this.priced(this.centre.between(answer, weight)));
      if (added > 0) return added;
      if (this.planIsReached() || this.isSpent() || this.cannotGain(answer)) return 0;
    }
    return 0;
  }

  /** True when even the programme's present value, which only falls, rounds up to no more than the bound so far. */
  private cannotGain(answer: MasterAnswer): boolean {
    if (this.dearest === 0) return Math.ceil(answer.cost - 1e-6) <= this.best.sheets;
    const steps = Math.ceil((answer.cost * this.dearest) / this.priceStep - 1e-6);
    return steps * this.priceStep <= this.best.costMinor;
  }

  /** Prices every kind of sheet, keeps the bound that this proves, and gives the patterns that gain. */
  private priced(at: Prices): readonly PatternColumn[] {
    const { prices, worth, found } = priceSheets(this.problem, this.tables, at, this.costs);
    this.work += this.tables.work;
    this.centre.learn(
      at,
      worth.map((value) => value / PRICE_DENOMINATOR),
    );
    this.keep(prices, worth);
    return found;
  }

  private keep(prices: readonly number[], worth: readonly number[]): void {
    const { sheets, costMinor } = needFromPrices(this.problem, { prices, worth });
    if (costMinor < this.best.costMinor) return;
    if (costMinor === this.best.costMinor && sheets <= this.best.sheets) return;
    const certificate = {
      method: 'pattern prices',
      denominator: PRICE_DENOMINATOR,
      prices,
      sheetValues: worth,
      limited: this.tables.limited,
      grid: this.tables.grid,
    } as const;
    this.best = { sheets, costMinor, certificate };
  }

  /** Sheets filled one after another with what is left, by area: a rough plan as the first columns. */
  private startingPatterns(): PatternColumn[] {
    const { w, h, count } = this.problem.items;
    const found: PatternColumn[] = [];
    const left = Int32Array.from(count);
    const area = (s: number): number => this.problem.sheets[s]!.w * this.problem.sheets[s]!.h;
    const largest = this.tables.distinct.reduce((a, b) => (area(b) > area(a) ? b : a));
    const table = this.tables.bySheet[largest]!;
    for (let sheets = 0; sheets < 2 * this.best.sheets + 10; sheets++) {
      const prices = Float64Array.from(left, (n, i) => (n > 0 ? w[i]! * h[i]! : 0));
      table.evaluate(prices);
      this.work += table.work;
      const tree = table.pattern(prices);
      if (!tree || this.work > this.request.effort / 4) break;
      const counts = countsOf(tree);
      found.push({ sheet: largest, counts, tree });
      const copies = Math.max(1, Math.min(...counts.map((c) => Math.floor(left[c.item]! / c.count))));
      for (const c of counts) left[c.item] = Math.max(0, left[c.item]! - copies * c.count);
    }
    return found;
  }
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
