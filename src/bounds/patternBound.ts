import { GuillotineTable } from '../basics/guillotineTable.ts';
import { needFromPrices, sameSheetBefore } from '../basics/recheckBound.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { type MasterAnswer, type PatternColumn, PatternMaster } from './patternMaster.ts';
import { countsOf, fitsSheet } from './patternTree.ts';

/** Prices are whole multiples of this part of the dearest sheet. */
const DENOMINATOR = 1_000_000_000;
/** A pattern must be worth this much more than its sheet to be added. */
const LEAST_GAIN = 1e-7;
/** Grids to which sizes are rounded when exact positions are too many, in 0.1 mm. */
const GRIDS = [1, 2, 5, 10, 20, 30, 40, 50, 70, 100, 150, 200, 300, 400, 500, 700, 1000];
/** One pricing may take this part of the effort. */
const ROUNDS_HOPED_FOR = 60;

/** Tables for the kinds of sheets, one for all that are alike, on one grid. */
interface Tables {
  readonly grid: number;
  readonly bySheet: readonly GuillotineTable[];
  readonly distinct: readonly number[];
  readonly work: number;
}

function makeTables(problem: RectangleProblem, effort: number): Tables | null {
  for (const grid of GRIDS) {
    const bySheet: GuillotineTable[] = [];
    const distinct: number[] = [];
    let left = effort / ROUNDS_HOPED_FOR;
    for (let s = 0; s < problem.sheets.length && left >= 0; s++) {
      const twin = sameSheetBefore(problem, s);
      const table =
        twin >= 0
          ? bySheet[twin]!
          : GuillotineTable.make(problem, { sheet: s, grid, limited: [], mostWork: left });
      if (!table) break;
      bySheet.push(table);
      if (twin >= 0) continue;
      distinct.push(s);
      left -= table.work;
    }
    if (bySheet.length === problem.sheets.length) {
      return { grid, bySheet, distinct, work: distinct.reduce((sum, s) => sum + bySheet[s]!.work, 0) };
    }
  }
  return null;
}

export interface PatternBound {
  readonly bound: Bound;
  readonly patterns: readonly SheetPattern[];
  readonly work: number;
}

/**
 * The bound by patterns: the linear programme over guillotine patterns, priced exactly by dynamic programming, each
 * round's prices rounded to whole numbers and turned into a bound that stands by itself (A. A. Farley, A note on
 * bounding a class of linear programming problems, including cutting stock problems, Operations Research 38 (1990)
 * 922–923), so that it may stop at any round. Stops when no pattern gains, when the programme's own value shows that
 * `known` cannot be bettered, or when `effort` steps are spent. Returns null when there is nothing to gain or no grid
 * is coarse enough.
 */
export function patternBound(
  problem: RectangleProblem,
  solver: LinearSolver,
  known: Bound,
  effort: number,
): PatternBound | null {
  const tables = makeTables(problem, effort);
  if (!tables || tables.bySheet.length === 0) return null;
  const dearest = Math.max(...problem.sheets.map((sheet) => sheet.costMinor));
  const costs = Float64Array.from(problem.sheets, (sheet) => (dearest === 0 ? 1 : sheet.costMinor / dearest));
  const master = new PatternMaster(
    solver,
    problem.items.count,
    costs,
    problem.sheets.map((sheet) => sheet.count),
    2,
  );
  try {
    return new ColumnGeneration(problem, tables, master, costs, dearest, known).run(effort);
  } finally {
    master.dispose();
  }
}

class ColumnGeneration {
  private best: Bound;
  private work = 0;
  private readonly problem: RectangleProblem;
  private readonly tables: Tables;
  private readonly master: PatternMaster;
  private readonly costs: Float64Array;
  private readonly dearest: number;

  constructor(
    problem: RectangleProblem,
    tables: Tables,
    master: PatternMaster,
    costs: Float64Array,
    dearest: number,
    known: Bound,
  ) {
    this.problem = problem;
    this.tables = tables;
    this.master = master;
    this.costs = costs;
    this.dearest = dearest;
    this.best = known;
  }

  run(effort: number): PatternBound {
    this.master.add(this.startingPatterns());
    while (this.work < effort) {
      const answer = this.master.solve();
      if (!answer || this.cannotGain(answer)) break;
      if (this.master.add(this.priced(answer)) === 0) break;
    }
    const patterns = this.master.patterns().filter((pattern) => fitsSheet(this.problem, pattern));
    return { bound: this.best, patterns, work: this.work };
  }

  /** True when even the programme's present value, which only falls, rounds up to no more than the bound so far. */
  private cannotGain(answer: MasterAnswer): boolean {
    if (this.dearest === 0) return Math.ceil(answer.cost - 1e-6) <= this.best.sheets;
    const step = this.problem.sheets.reduce((g, sheet) => greatestCommonDivisor(g, sheet.costMinor), 0);
    const possible = Math.ceil((answer.cost * this.dearest) / step - 1e-6) * step;
    return possible <= this.best.costMinor;
  }

  /** Prices every kind of sheet, keeps the bound that this proves, and gives the patterns that gain. */
  private priced(answer: MasterAnswer): PatternColumn[] {
    const prices = answer.prices.map((price) => Math.floor(price * DENOMINATOR));
    const worth = new Array<number>(this.problem.sheets.length).fill(0);
    const found: PatternColumn[] = [];
    for (const s of this.tables.distinct) {
      const table = this.tables.bySheet[s]!;
      const value = table.evaluate(prices);
      this.work += table.work;
      for (let twin = s; twin < worth.length; twin++) {
        if (this.tables.bySheet[twin] !== table) continue;
        worth[twin] = value;
        const gain = value / DENOMINATOR - this.costs[twin]! - answer.rents[twin]!;
        if (gain <= LEAST_GAIN) continue;
        const tree = table.pattern(prices);
        if (tree) found.push({ sheet: twin, counts: countsOf(tree), tree });
      }
    }
    this.keep(Array.from(prices), worth);
    return found;
  }

  private keep(prices: readonly number[], worth: readonly number[]): void {
    const { sheets, costMinor } = needFromPrices(this.problem, { prices, worth });
    if (costMinor < this.best.costMinor) return;
    if (costMinor === this.best.costMinor && sheets <= this.best.sheets) return;
    const certificate = {
      method: 'pattern prices',
      denominator: DENOMINATOR,
      prices,
      sheetValues: worth,
      limited: [],
      grid: this.tables.grid,
    } as const;
    this.best = { sheets, costMinor, certificate };
  }

  /** Sheets filled one after another with what is left, by area: a rough plan as the first columns. */
  private startingPatterns(): PatternColumn[] {
    const { w, h, count } = this.problem.items;
    const found: PatternColumn[] = [];
    const left = Int32Array.from(count);
    const s = this.tables.distinct.reduce((a, b) =>
      this.problem.sheets[b]!.w * this.problem.sheets[b]!.h >
      this.problem.sheets[a]!.w * this.problem.sheets[a]!.h
        ? b
        : a,
    );
    const table = this.tables.bySheet[s]!;
    for (let sheets = 0; sheets < 2 * this.best.sheets + 10; sheets++) {
      const prices = Float64Array.from(left, (n, i) => (n > 0 ? w[i]! * h[i]! : 0));
      table.evaluate(prices);
      this.work += table.work;
      const tree = table.pattern(prices);
      if (!tree) break;
      const counts = countsOf(tree);
      found.push({ sheet: s, counts, tree });
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
