import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { cutPositions, type LaidItem, type SheetInCells, sheetInCells } from './cutPositions.ts';
import { LimitedCopies } from './limitedCopies.ts';
import { type UsefulCuts, usefulCuts } from './usefulCuts.ts';

/** Cuts of one axis for one state of the copies left: places in the table, counted from the row or cell in hand. */
interface Places {
  readonly starts: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
}

/** The cuts of every length with every way to deal out the copies of a state; `step`: places between two positions. */
function placesOf(
  splits: UsefulCuts,
  room: Int32Array,
  copies: LimitedCopies,
  state: number,
  plane: number,
  step: number,
): Places {
  const starts = new Int32Array(splits.starts.length);
  const first: number[] = [];
  const second: number[] = [];
  for (let p = 0; p + 1 < splits.starts.length; p++) {
    for (let s = splits.starts[p]!; s < splits.starts[p + 1]!; s++) {
      const a = splits.first[s]!;
      const b = splits.second[s]!;
      for (const [stateA, stateB] of copies.shares(state, room[a]!, room[b]!)) {
        first.push(stateA * plane + a * step);
        second.push(stateB * plane + b * step);
      }
    }
    starts[p + 1] = first.length;
  }
  return { starts, first: Int32Array.from(first), second: Int32Array.from(second) };
}

/** For each position how many copies of each counted item a strip of that length can hold, as a state. */
function roomAlong(
  positions: Int32Array,
  laid: readonly LaidItem[],
  axis: 'w' | 'h',
  acrossLength: number,
  counted: readonly CountedItem[],
  copies: LimitedCopies,
): Int32Array {
  const across = axis === 'w' ? 'h' : 'w';
  return positions.map((length) =>
    copies.stateOf(
      counted.map(({ item, limit }) => {
        let most = 0;
        for (const way of laid) {
          if (way.item !== item || way[axis] > length || way[across] > acrossLength) continue;
          most = Math.min(limit, Math.floor((length * acrossLength) / (way.w * way.h)));
        }
        return most;
      }),
    ),
  );
}

/**
 * Fewer steps than an evaluation takes with so many positions, even when most prove needless (they were seen to save
 * three quarters to nine tenths), to turn away hopeless tables before that is worked out.
 */
function leastWork(columns: number, rows: number): number {
  return (columns * rows * (columns + rows)) / 8 / 30;
}

/** What all tables of a sheet on one grid have in common; `cuts` (along w, along h) once they were asked for. */
interface Ground {
  readonly cells: SheetInCells;
  readonly positionsW: Int32Array;
  readonly positionsH: Int32Array;
  cuts: readonly [UsefulCuts, UsefulCuts] | null;
}

/**
 * Grounds that were worked out, by problem, then by sheet and grid: a bound asks for the same ones again and again, with
 * more work allowed or more copies counted, and they take as long as several evaluations.
 */
const grounds = new WeakMap<RectangleProblem, Map<string, Ground | null>>();

/** Null when an item would vanish on the grid. */
function groundOf(problem: RectangleProblem, sheet: number, grid: number): Ground | null {
  let known = grounds.get(problem);
  if (known === undefined) {
    known = new Map();
    grounds.set(problem, known);
  }
  const key = `${sheet} ${grid}`;
  let ground = known.get(key);
  if (ground === undefined) {
    ground = workOutGround(problem, sheet, grid);
    known.set(key, ground);
  }
  return ground;
}

function workOutGround(problem: RectangleProblem, sheet: number, grid: number): Ground | null {
  const cells = sheetInCells(problem, sheet, grid);
  if (!cells) return null;
  const { count } = problem.items;
  const positionsW = cutPositions(cells.laid, count, 'w', cells.w);
  const positionsH = cutPositions(cells.laid, count, 'h', cells.h);
  return { cells, positionsW, positionsH, cuts: null };
}

interface CountedItem {
  readonly item: number;
  readonly limit: number;
}

/** What a table is made for. */
export interface TableRequest {
  /** Index into the problem's sheets. */
  readonly sheet: number;
  /** Sizes are rounded down to so many tenths of a millimetre; 1 for no rounding. */
  readonly grid: number;
  /** Items of which a sheet may hold no more than are wanted; of all others it may hold any number. */
  readonly limited: readonly number[];
  /** An evaluation may take so many steps. */
  readonly mostWork: number;
}

/** More states than this are never tried. */
const MOST_STATES = 4096;
/** Positions along one axis at most, so that finding the useful ones stays quick. */
const MOST_POSITIONS = 8000;
/** Cells of a table at most, 8 bytes each. */
const MOST_CELLS = 30_000_000;

/**
 * The best value that guillotine cuts can take out of one kind of sheet, for given prices of items, by dynamic
 * programming over the sizes that can be reached (P. C. Gilmore and R. E. Gomory, Multistage cutting stock problems of
 * two and more dimensions, Operations Research 13 (1965) 94–120; J. E. Beasley, Algorithms for unconstrained
 * two-dimensional guillotine cutting, Journal of the Operational Research Society 36 (1985) 297–306).
 *
 *     F(x, y) = max { best item that fits, F(a, y) + F(x − a, y), F(x, b) + F(x, y − b) }
 *
 * A sheet may hold any number of each item, but for the `limited` ones: their copies are counted, and dealt out to the
 * two parts at every cut, F(x, y, k) with k ≤ the numbers wanted. Letting only some constraints back in is the
 * decremental state space of G. Righini and M. Salani, New dynamic programming algorithms for the resource constrained
 * elementary shortest path problem, Networks 51 (2008) 155–170; N. Christofides and E. Hadjiconstantinou, European
 * Journal of Operational Research 83 (1995) 21–38, relax the counts of this problem.
 *
 * Exact as long as the prices are whole numbers and no value passes 2^53.
 */
export class GuillotineTable {
  /** Steps of one evaluation: a measure of its time, the same everywhere. */
  readonly work: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly laid: readonly LaidItem[];
  /** Least cell that holds each way of laying, within a plane. */
  private readonly cellOf: Int32Array;
  /** The ways of laying with the same least cell, by that cell. */
  private readonly waysAt: ReadonlyMap<number, readonly number[]>;
  /** For each way of laying: which counted item it is, or −1. */
  private readonly countedOf: Int32Array;
  private readonly copies: LimitedCopies;
  /** By state: the cuts along w, which join rows of the table, and along h, which join cells of a row. */
  private readonly alongW: readonly Places[];
  private readonly alongH: readonly Places[];
  private readonly roomW: Int32Array;
  private readonly values: Float64Array;
  /** Patterns of places that were traced since the last evaluation: the same parts come up in one pattern after another. */
  private readonly traced = new Map<number, PatternNode | null>();

  private constructor(
    cells: SheetInCells,
    cutsW: UsefulCuts,
    cutsH: UsefulCuts,
    counted: readonly CountedItem[],
    mostWork: number,
  ) {
    const { laid } = cells;
    const [xs, ys] = [cutsW.lengths, cutsH.lengths];
    this.rows = xs.length;
    this.columns = ys.length;
    this.laid = laid;
    const [holdsX, holdsY] = [shortestHolding(xs, cells.w), shortestHolding(ys, cells.h)];
    this.cellOf = Int32Array.from(laid, (way) => holdsX[way.w]! * ys.length + holdsY[way.h]!);
    this.waysAt = waysByCell(this.cellOf);
    this.countedOf = Int32Array.from(laid, (way) => counted.findIndex(({ item }) => item === way.item));
    this.copies = new LimitedCopies(counted.map(({ limit }) => limit));
    const plane = xs.length * ys.length;
    this.roomW = roomAlong(xs, laid, 'w', cells.h, counted, this.copies);
    const roomH = roomAlong(ys, laid, 'h', cells.w, counted, this.copies);
    const alongW: Places[] = [];
    const alongH: Places[] = [];
    let work = 0;
    for (let state = 0; state < this.copies.states && work <= mostWork; state++) {
      alongW.push(placesOf(cutsW, this.roomW, this.copies, state, plane, ys.length));
      alongH.push(placesOf(cutsH, roomH, this.copies, state, plane, 1));
      work += plane + alongW[state]!.first.length * ys.length + alongH[state]!.first.length * xs.length;
    }
    this.work = work;
    this.alongW = alongW;
    this.alongH = alongH;
    this.values = new Float64Array(work <= mostWork ? plane * this.copies.states : 0);
  }

  /** Returns null when an item would vanish on the grid or when the table would be too much work or too large. */
  static make(problem: RectangleProblem, request: TableRequest): GuillotineTable | null {
    const ground = groundOf(problem, request.sheet, request.grid);
    if (!ground) return null;
    const { cells, positionsW, positionsH } = ground;
    const counts = problem.items.count;
    const counted = request.limited
      .filter((item) => cells.laid.some((way) => way.item === item))
      .map((item) => ({ item, limit: counts[item]! }));
    const states = counted.reduce((product, { limit }) => product * (limit + 1), 1);
    if (positionsW.length > MOST_POSITIONS || positionsH.length > MOST_POSITIONS) return null;
    if (leastWork(positionsW.length, positionsH.length) * states > request.mostWork) return null;
    ground.cuts ??= [usefulCuts(positionsW), usefulCuts(positionsH)];
    const [cutsW, cutsH] = ground.cuts;
    const [columns, rows] = [cutsH.lengths.length, cutsW.lengths.length];
    const least = columns * rows + cutsW.first.length * columns + cutsH.first.length * rows;
    if (states > MOST_STATES || columns * rows * states > MOST_CELLS) return null;
    if (least * states > request.mostWork) return null;
    const table = new GuillotineTable(cells, cutsW, cutsH, counted, request.mostWork);
    return table.work <= request.mostWork ? table : null;
  }

  /** Best value of the whole sheet. `prices`: a whole number from 0 per item. Keeps the table for `pattern`. */
  evaluate(prices: Float64Array): number {
    this.values.fill(0);
    this.traced.clear();
    for (let state = 0; state < this.copies.states; state++) this.fillPlane(state, prices);
    return this.values[this.values.length - 1]!;
  }

  private fillPlane(state: number, prices: Float64Array): void {
    const { values, columns } = this;
    const plane = state * this.rows * columns;
    for (let way = 0; way < this.laid.length; way++) {
      const counted = this.countedOf[way]!;
      if (counted >= 0 && this.copies.copies(state, counted) === 0) continue;
      const cell = plane + this.cellOf[way]!;
      const price = prices[this.laid[way]!.item]!;
      if (price > values[cell]!) values[cell] = price;
    }
    const alongW = this.alongW[state]!;
    const alongH = this.alongH[state]!;
    for (let i = 1; i < this.rows; i++) {
      const row = plane + i * columns;
      const held = this.copies.least(state, this.roomW[i]!);
      if (held !== state) {
        const same = held * this.rows * columns + i * columns;
        values.copyWithin(row, same, same + columns);
        continue;
      }
      raiseTo(values, row, row - columns, columns);
      for (let s = alongW.starts[i]!; s < alongW.starts[i + 1]!; s++) {
        raiseToSum(values, row, alongW.first[s]!, alongW.second[s]!, columns);
      }
      cutAcross(values, row, row - plane, columns, alongH);
    }
  }

  /**
   * Patterns worth more than `least`, the best first, at most `most`: one for each way to make the first cut. For the
   * last `evaluate`, called with the same prices.
   */
  patterns(prices: Float64Array, least: number, most: number): PatternNode[] {
    const { values, columns } = this;
    const plane = (this.copies.states - 1) * this.rows * columns;
    const [i, j] = [this.rows - 1, columns - 1];
    const found: { value: number; axis: 'w' | 'h'; a: number; b: number }[] = [];
    const look = (axis: 'w' | 'h', places: Places | undefined, p: number, base: number): void => {
      if (!places) return;
      for (let s = places.starts[p]!; s < places.starts[p + 1]!; s++) {
        const [a, b] = [base + places.first[s]!, base + places.second[s]!];
        const value = values[a]! + values[b]!;
        if (value > least) found.push({ value, axis, a, b });
      }
    };
    if (this.copies.least(this.copies.states - 1, this.roomW[i]!) === this.copies.states - 1) {
      look('w', this.alongW[this.copies.states - 1], i, j);
      look('h', this.alongH[this.copies.states - 1], j, i * columns);
    }
    found.sort((x, y) => y.value - x.value);
    const best = values[plane + i * columns + j]! > least ? this.pattern(prices) : null;
    const trees = best ? [best] : [];
    for (const { axis, a, b } of found.slice(0, most - trees.length)) {
      const tree = joined(axis, this.trace(a, prices), this.trace(b, prices));
      if (tree) trees.push(tree);
    }
    return trees;
  }

  /** A pattern of the best value found by the last `evaluate`, called with the same prices; null when it is 0. */
  pattern(prices: Float64Array): PatternNode | null {
    return this.trace(this.values.length - 1, prices);
  }

  private trace(place: number, prices: Float64Array): PatternNode | null {
    const known = this.traced.get(place);
    if (known !== undefined) return known;
    const found = this.traceAfresh(place, prices);
    this.traced.set(place, found);
    return found;
  }

  private traceAfresh(place: number, prices: Float64Array): PatternNode | null {
    const { values, columns } = this;
    const planeSize = this.rows * columns;
    const value = values[place]!;
    if (value === 0) return null;
    const state = Math.floor(place / planeSize);
    const plane = state * planeSize;
    let i = Math.floor((place - plane) / columns);
    let j = place - plane - i * columns;
    while (i > 0 && values[plane + (i - 1) * columns + j] === value) i--;
    while (j > 0 && values[plane + i * columns + j - 1] === value) j--;
    const held = this.copies.least(state, this.roomW[i]!);
    if (held !== state) return this.trace(held * planeSize + i * columns + j, prices);
    for (const way of this.waysAt.get(i * columns + j) ?? NO_WAYS) {
      const { item, turned } = this.laid[way]!;
      if (prices[item] !== value) continue;
      const counted = this.countedOf[way]!;
      if (counted < 0 || this.copies.copies(state, counted) > 0) return { kind: 'item', item, turned };
    }
    const alongW = this.alongW[state]!;
    const atW = firstCutWorth(values, alongW, i, j, value);
    if (atW >= 0) return this.traceBoth('w', j, alongW, atW, prices);
    const alongH = this.alongH[state]!;
    const atH = firstCutWorth(values, alongH, j, i * columns, value);
    if (atH >= 0) return this.traceBoth('h', i * columns, alongH, atH, prices);
    throw new Error(`no pattern has the value ${value} that the table gives`);
  }

  private traceBoth(
    axis: 'w' | 'h',
    base: number,
    { first, second }: Places,
    cut: number,
    prices: Float64Array,
  ): PatternNode | null {
    return joined(axis, this.trace(base + first[cut]!, prices), this.trace(base + second[cut]!, prices));
  }
}

const NO_WAYS: readonly number[] = [];

function waysByCell(cellOf: Int32Array): Map<number, number[]> {
  const ways = new Map<number, number[]>();
  for (let way = 0; way < cellOf.length; way++) {
    const alike = ways.get(cellOf[way]!);
    if (alike) alike.push(way);
    else ways.set(cellOf[way]!, [way]);
  }
  return ways;
}

/** The first cut of position `p` whose two parts are worth `value` together; −1 when there is none. `base`: as in `cutAcross`. */
function firstCutWorth(
  values: Float64Array,
  { starts, first, second }: Places,
  p: number,
  base: number,
  value: number,
): number {
  const end = starts[p + 1]!;
  for (let cut = starts[p]!; cut < end; cut++) {
    if (values[base + first[cut]!]! + values[base + second[cut]!]! === value) return cut;
  }
  return -1;
}

/** For every size up to `whole` the index of the shortest length that is not less. */
function shortestHolding(lengths: Int32Array, whole: number): Int32Array {
  const index = new Int32Array(whole + 1);
  for (let x = 0, p = 0; x <= whole; x++) {
    if (p + 1 < lengths.length && x > lengths[p]!) p++;
    index[x] = p;
  }
  return index;
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

/**
 * Finishes one row of the table: no cell is worth less than the one before, nor than two that it can be cut into.
 * `base`: place of the row within its plane, from which the cuts' places count.
 */
function cutAcross(values: Float64Array, row: number, base: number, columns: number, cuts: Places): void {
  for (let j = 1; j < columns; j++) {
    let best = Math.max(values[row + j]!, values[row + j - 1]!);
    const end = cuts.starts[j + 1]!;
    for (let s = cuts.starts[j]!; s < end; s++) {
      const value = values[base + cuts.first[s]!]! + values[base + cuts.second[s]!]!;
      if (value > best) best = value;
    }
    values[row + j] = best;
  }
}
