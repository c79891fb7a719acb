import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { cutPositions, type LaidItem, sheetInCells } from './cutPositions.ts';

/** Pairs of positions into which a length can be cut, for every length: pairs of position p at `starts[p]` and on. */
interface Splits {
  readonly starts: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
}

/** For each position the cuts worth trying: the smaller part a, and the largest position that fits beside it. */
function splitsOf(positions: Int32Array): Splits {
  const count = positions.length;
  const below = new Int32Array(positions[count - 1]! + 1);
  for (let x = 0, p = 0; x < below.length; x++) {
    if (p + 1 < count && positions[p + 1] === x) p++;
    below[x] = p;
  }
  const starts = new Int32Array(count + 1);
  const first: number[] = [];
  const second: number[] = [];
  for (let p = 0; p < count; p++) {
    const whole = positions[p]!;
    for (let a = 1; 2 * positions[a]! <= whole; a++) {
      const b = below[whole - positions[a]!]!;
      // A larger first part with the same rest beside it is never worse.
      if (a + 1 < count && 2 * positions[a + 1]! <= whole && below[whole - positions[a + 1]!] === b) continue;
      first.push(a);
      second.push(b);
    }
    starts[p + 1] = first.length;
  }
  return { starts, first: Int32Array.from(first), second: Int32Array.from(second) };
}

/**
 * The best value that guillotine cuts can take out of one kind of sheet, for given prices of items and any number of
 * each, by dynamic programming over the sizes that can be reached (P. C. Gilmore and R. E. Gomory, Multistage cutting
 * stock problems of two and more dimensions, Operations Research 13 (1965) 94–120; J. E. Beasley, Algorithms for
 * unconstrained two-dimensional guillotine cutting, Journal of the Operational Research Society 36 (1985) 297–306).
 *
 *     F(x, y) = max { best item that fits, F(a, y) + F(x − a, y), F(x, b) + F(x, y − b) }
 *
 * Exact as long as the prices are whole numbers and no value passes 2^53.
 */
export class GuillotineTable {
  /** Steps of one evaluation: a measure of its time, the same everywhere. */
  readonly work: number;
  private readonly xs: Int32Array;
  private readonly ys: Int32Array;
  private readonly alongW: Splits;
  private readonly alongH: Splits;
  private readonly laid: readonly LaidItem[];
  private readonly cellOf: Int32Array;
  private readonly values: Float64Array;

  private constructor(
    xs: Int32Array,
    ys: Int32Array,
    alongW: Splits,
    alongH: Splits,
    laid: readonly LaidItem[],
  ) {
    this.xs = xs;
    this.ys = ys;
    this.alongW = alongW;
    this.alongH = alongH;
    this.laid = laid;
    this.work = alongW.first.length * ys.length + alongH.first.length * xs.length + xs.length * ys.length;
    this.values = new Float64Array(xs.length * ys.length);
    const indexX = new Map(Array.from(xs, (x, i) => [x, i]));
    const indexY = new Map(Array.from(ys, (y, j) => [y, j]));
    this.cellOf = Int32Array.from(laid, (way) => indexX.get(way.w)! * ys.length + indexY.get(way.h)!);
  }

  /**
   * A table for one kind of sheet, sizes rounded down to `grid` tenths of a millimetre (1 for none). Returns null when
   * an item would vanish, or when an evaluation would take more than `mostWork` steps; no large memory is taken then.
   */
  static make(
    problem: RectangleProblem,
    sheet: number,
    grid: number,
    mostWork: number,
  ): GuillotineTable | null {
    const cells = sheetInCells(problem, sheet, grid);
    if (!cells) return null;
    const xs = cutPositions(cells.laid, problem.items.count, 'w', cells.w);
    const ys = cutPositions(cells.laid, problem.items.count, 'h', cells.h);
    if (xs.length * ys.length > mostWork || xs.length > 20_000 || ys.length > 20_000) return null;
    if (estimate(xs.length, ys.length) > 8 * mostWork) return null;
    const table = { alongW: splitsOf(xs), alongH: splitsOf(ys) };
    const work = table.alongW.first.length * ys.length + table.alongH.first.length * xs.length;
    if (work > mostWork) return null;
    return new GuillotineTable(xs, ys, table.alongW, table.alongH, cells.laid);
  }

  /** Best value of the whole sheet. `prices`: a whole number from 0 per item. Keeps the table for `pattern`. */
  evaluate(prices: Float64Array): number {
    const { values, alongW, alongH } = this;
    const columns = this.ys.length;
    values.fill(0);
    for (let way = 0; way < this.laid.length; way++) {
      const cell = this.cellOf[way]!;
      const price = prices[this.laid[way]!.item]!;
      if (price > values[cell]!) values[cell] = price;
    }
    for (let i = 1; i < this.xs.length; i++) {
      const row = i * columns;
      raiseTo(values, row, row - columns, columns);
      for (let s = alongW.starts[i]!; s < alongW.starts[i + 1]!; s++) {
        raiseToSum(values, row, alongW.first[s]! * columns, alongW.second[s]! * columns, columns);
      }
      cutAcross(values, row, columns, alongH);
    }
    return values[values.length - 1]!;
  }

  /** A pattern of the best value found by the last `evaluate`, called with the same prices; null when it is 0. */
  pattern(prices: Float64Array): PatternNode | null {
    return this.trace(this.xs.length - 1, this.ys.length - 1, prices);
  }

  private trace(column: number, row: number, prices: Float64Array): PatternNode | null {
    const columns = this.ys.length;
    let [i, j] = [column, row];
    const value = this.values[i * columns + j]!;
    if (value === 0) return null;
    while (i > 0 && this.values[(i - 1) * columns + j] === value) i--;
    while (j > 0 && this.values[i * columns + j - 1] === value) j--;
    const cell = i * columns + j;
    for (let way = 0; way < this.laid.length; way++) {
      const { item, turned } = this.laid[way]!;
      if (this.cellOf[way] === cell && prices[item] === value) return { kind: 'item', item, turned };
    }
    for (let s = this.alongW.starts[i]!; s < this.alongW.starts[i + 1]!; s++) {
      const a = this.alongW.first[s]!;
      const b = this.alongW.second[s]!;
      if (this.values[a * columns + j]! + this.values[b * columns + j]! === value) {
        return joined('w', this.trace(a, j, prices), this.trace(b, j, prices));
      }
    }
    for (let s = this.alongH.starts[j]!; s < this.alongH.starts[j + 1]!; s++) {
      const a = this.alongH.first[s]!;
      const b = this.alongH.second[s]!;
      if (this.values[i * columns + a]! + this.values[i * columns + b]! === value) {
        return joined('h', this.trace(i, a, prices), this.trace(i, b, prices));
      }
    }
    throw new Error(`no pattern has the value ${value} that the table gives`);
  }
}

/** About the steps of an evaluation when no cut is found to be needless. */
function estimate(columns: number, rows: number): number {
  return columns * rows * (columns + rows);
}

function joined(axis: 'w' | 'h', first: PatternNode | null, second: PatternNode | null): PatternNode | null {
  if (!first || !second) return first ?? second;
  const parts = (node: PatternNode): readonly PatternNode[] =>
    node.kind === 'stack' && node.axis === axis ? node.children : [node];
  return { kind: 'stack', axis, children: [...parts(first), ...parts(second)] };
}

/** Raises `length` values from `target` on to those from `source` on. */
function raiseTo(values: Float64Array, target: number, source: number, length: number): void {
  for (let j = 0; j < length; j++) {
    const value = values[source + j]!;
    if (value > values[target + j]!) values[target + j] = value;
  }
}

/** Raises `length` values from `target` on to the sums of those from `first` and from `second` on. */
function raiseToSum(
  values: Float64Array,
  target: number,
  first: number,
  second: number,
  length: number,
): void {
  for (let j = 0; j < length; j++) {
    const value = values[first + j]! + values[second + j]!;
    if (value > values[target + j]!) values[target + j] = value;
  }
}

/** Finishes one row of the table: no cell is worth less than the one before, nor than two that it can be cut into. */
function cutAcross(values: Float64Array, row: number, columns: number, splits: Splits): void {
  for (let j = 1; j < columns; j++) {
    let best = Math.max(values[row + j]!, values[row + j - 1]!);
    const end = splits.starts[j + 1]!;
    for (let s = splits.starts[j]!; s < end; s++) {
      const value = values[row + splits.first[s]!]! + values[row + splits.second[s]!]!;
      if (value > best) best = value;
    }
    values[row + j] = best;
  }
}
