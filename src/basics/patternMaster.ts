import type { LinearModel, LinearSolver } from '../model/linearSolver.ts';
import type { SheetPattern } from '../model/patterns.ts';

/** A pattern as a column of the linear programme: how many of each item one sheet of this kind gives. */
export type PatternColumn = Omit<SheetPattern, 'use'>;

export interface MasterAnswer {
  readonly cost: number;
  /** Price of one piece of each item, at least 0. */
  readonly prices: Float64Array;
  /** What one more sheet of each kind would save; 0 where there is no limit. */
  readonly rents: Float64Array;
}

const SOLVED = 7;
/** What HiGHS calls its primal simplex method. */
const PRIMAL_SIMPLEX = 4;

/** Slack so dear that no piece is left out that can be cut. */
export function dearSlack(items: number): Float64Array {
  return new Float64Array(items).fill(2);
}

/**
 * The linear programme over sheet patterns (P. C. Gilmore and R. E. Gomory, A linear programming approach to the
 * cutting-stock problem, Operations Research 9 (1961) 849–859), on one live model to which columns are added:
 *
 *     least Σ cost(s)·x(p)   with   Σ pieces(i, p)·x(p) ≥ count(i),   Σ x(p of kind s) ≤ sheets(s)
 *
 * Every row has a dear slack, so that it has an answer from the start. Dispose of it after use.
 */
export class PatternMaster {
  private readonly model: LinearModel;
  private readonly columns: PatternColumn[] = [];
  private readonly seen = new Set<string>();
  private readonly costs: Float64Array;
  private readonly items: number;
  private readonly rowOfSheet: Int32Array;
  private readonly rows: number;
  private lastUse: Float64Array = new Float64Array(0);

  /**
   * `costs` and `limits` per kind of sheet (limit −1: none); `slackCosts`: what a piece of each item costs that is not cut.
   * `method`: by which the programme is solved. The primal one goes on from where it was when patterns have come in, which
   * takes it two thirds of the time where there are hundreds of items; both give prices of the same programme, not the same.
   */
  constructor(
    solver: LinearSolver,
    counts: Int32Array,
    costs: Float64Array,
    limits: readonly number[],
    slackCosts: Float64Array,
    method: 'dual simplex' | 'primal simplex' = 'dual simplex',
  ) {
    this.items = counts.length;
    this.costs = costs;
    let rows = this.items;
    this.rowOfSheet = Int32Array.from(limits, (limit) => (limit < 0 ? -1 : rows++));
    this.rows = rows;
    const lower = new Float64Array(rows).fill(Number.NEGATIVE_INFINITY);
    const upper = new Float64Array(rows).fill(Number.POSITIVE_INFINITY);
    for (let i = 0; i < this.items; i++) lower[i] = counts[i]!;
    for (const [s, limit] of limits.entries()) if (limit >= 0) upper[this.rowOfSheet[s]!] = limit;
    this.model = solver.createModel({
      numCols: this.items,
      numRows: rows,
      colCost: slackCosts,
      colLower: new Float64Array(this.items),
      colUpper: new Float64Array(this.items).fill(Number.POSITIVE_INFINITY),
      rowLower: lower,
      rowUpper: upper,
      matrix: {
        format: 'csc',
        numRows: rows,
        numCols: this.items,
        starts: Int32Array.from({ length: this.items + 1 }, (_, i) => i),
        indices: Int32Array.from({ length: this.items }, (_, i) => i),
        values: new Float64Array(this.items).fill(1),
      },
    });
    this.model.options.set({
      output_flag: false,
      presolve: 'off',
      solver: 'simplex',
      ...(method === 'primal simplex' && { simplex_strategy: PRIMAL_SIMPLEX }),
    });
  }

  /** How many patterns there are. */
  get size(): number {
    return this.columns.length;
  }

  /** Adds the patterns that are new; says how many. */
  add(patterns: readonly PatternColumn[]): number {
    const fresh = patterns.filter((pattern) => {
      const key = `${pattern.sheet}:${pattern.counts.map(({ item, count }) => `${item}x${count}`).join()}`;
      return !this.seen.has(key) && this.seen.add(key);
    });
    if (fresh.length === 0) return 0;
    const starts = [0];
    const indices: number[] = [];
    const values: number[] = [];
    for (const pattern of fresh) {
      for (const { item, count } of pattern.counts) {
        indices.push(item);
        values.push(count);
      }
      const row = this.rowOfSheet[pattern.sheet]!;
      if (row >= 0) {
        indices.push(row);
        values.push(1);
      }
      starts.push(indices.length);
    }
    this.model.addCols({
      cost: Float64Array.from(fresh, (pattern) => this.costs[pattern.sheet]!),
      lower: new Float64Array(fresh.length),
      upper: new Float64Array(fresh.length).fill(Number.POSITIVE_INFINITY),
      matrix: {
        format: 'csc',
        numRows: this.rows,
        numCols: fresh.length,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(indices),
        values: Float64Array.from(values),
      },
    });
    this.columns.push(...fresh);
    return fresh.length;
  }

  /** Solves the programme as it stands; null when the solver gives up. */
  solve(): MasterAnswer | null {
    this.model.run();
    if (this.model.getModelStatus() !== SOLVED) return null;
    const { rowDual, colValue } = this.model.getSolution();
    this.lastUse = colValue;
    return {
      cost: this.model.getObjectiveValue(),
      prices: Float64Array.from({ length: this.items }, (_, i) => Math.max(0, rowDual[i]!)),
      rents: Float64Array.from(this.rowOfSheet, (row) => (row < 0 ? 0 : Math.max(0, -rowDual[row]!))),
    };
  }

  /** All patterns so far, with how much of each the last answer used. */
  patterns(): SheetPattern[] {
    return this.columns.map((column, index) => ({ ...column, use: this.lastUse[this.items + index] ?? 0 }));
  }

  dispose(): void {
    this.model.dispose();
  }
}
