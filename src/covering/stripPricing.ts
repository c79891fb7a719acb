import type { PatternColumn } from '../basics/patternMaster.ts';
import { countsOf, stackOfNodes } from '../basics/patternTree.ts';
import { mayTurn } from '../basics/pricesFromFunctions.ts';
import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { allowAsWell, Choices, fillKnapsack, LEAST_DIFFERENCE, laidOn } from './knapsack.ts';

/** Most positions along a side of a sheet; sizes are rounded, safely, where there would be more. */
const MOST_POSITIONS = 4000;
/** With several kinds of sheet no last tight pattern decides about a sheet: positions times sizes, and least positions. */
const POSITIONS_TIMES_SIZES = 150_000;
const LEAST_POSITIONS = 1000;

/** Sizes of an item as it may lie on the sheet: `along` a strip and `across` it. */
interface Lay {
  readonly item: number;
  readonly turned: boolean;
  readonly along: number;
  readonly across: number;
}

/**
 * The best pattern of three stages on one kind of sheet at given prices: strips over the whole sheet, columns side by
 * side in a strip, pieces one behind another in a column, each as often as it fits. Three nested knapsacks (P. C.
 * Gilmore and R. E. Gomory, Multistage cutting stock problems of two and more dimensions, Operations Research 13 (1965)
 * 94–120). It is exact for such patterns, fast, and what it gives always fits; a pattern of more stages may be better.
 */
export class StripPricing {
  readonly sheet: number;
  /** Steps taken so far. */
  work = 0;
  /** Strips are laid one behind another along this axis. */
  readonly axis: 'w' | 'h';
  /** In steps of the grid: of a strip, and of the sheet across the strips. */
  readonly length: number;
  private readonly breadth: number;
  private readonly lays: readonly Lay[];
  /** By width, those that just fit a column of it, the least `across` first. */
  private readonly laysOfWidth: readonly (readonly Lay[])[];
  private readonly laysOfDepth: readonly (readonly Lay[])[];
  /** 1 for the depths of strips that the pricing before looked at. */
  private readonly priced: Uint8Array;
  /** Different sizes along and across, in rising order. */
  private readonly widths: readonly number[];
  private readonly depths: readonly number[];
  /** What a column of each width is worth in a strip of each depth; a row a width. */
  private readonly columnWorth: Float64Array;
  /** What a column of each width is worth at each depth of the grid; a row a width. Those outdone have none. */
  private readonly columnRows: Float64Array;
  /** What a strip of each depth is worth at each length; a row a depth. */
  private readonly stripWorth: Float64Array;
  private readonly strips: Choices;
  private readonly shortStrips: Choices;
  private readonly best: Float64Array;
  private readonly last: Int32Array;
  private readonly sheetBest: Float64Array;
  private readonly sheetLast: Int32Array;

  /** `axis`: along which the strips are laid one behind another. */
  constructor(problem: RectangleProblem, sheet: number, axis: 'w' | 'h') {
    this.sheet = sheet;
    this.axis = axis;
    const { w, h } = problem.sheets[sheet]!;
    const grid = Math.max(1, Math.ceil(Math.max(w, h) / mostPositions(problem)));
    this.length = Math.floor((axis === 'h' ? w : h) / grid);
    this.breadth = Math.floor((axis === 'h' ? h : w) / grid);
    this.lays = laysOf(problem, sheet, axis, grid).filter(
      (lay) => lay.along <= this.length && lay.across <= this.breadth,
    );
    this.widths = sortedSizes(this.lays.map((lay) => lay.along));
    this.depths = sortedSizes(this.lays.map((lay) => lay.across));
    this.laysOfDepth = this.depths.map((depth) => this.lays.filter(({ across }) => across === depth));
    this.priced = new Uint8Array(this.depths.length);
    this.laysOfWidth = this.widths.map((width) => this.lays.filter(({ along }) => along === width));
    this.columnWorth = new Float64Array(this.widths.length * this.depths.length);
    this.columnRows = new Float64Array(this.widths.length * (this.breadth + 1));
    this.stripWorth = new Float64Array(this.depths.length * (this.length + 1));
    this.strips = new Choices(this.depths.length);
    this.shortStrips = new Choices(this.depths.length);
    const most = Math.max(this.length, this.breadth) + 1;
    this.best = new Float64Array(most);
    this.last = new Int32Array(most);
    this.sheetBest = new Float64Array(this.breadth + 1);
    this.sheetLast = new Int32Array(this.breadth + 1);
  }

  /** The most that a pattern is worth, with `prices` a piece of each item. */
  price(prices: Float64Array, breadth = this.breadth): number {
    const { strips, depths } = this;
    this.priceColumns(prices, breadth);
    strips.count = 0;
    this.priced.fill(0);
    let shallower = -1;
    for (let d = 0; d < depths.length && depths[d]! <= breadth; d++) {
      // Nothing needs a strip that deep: a shallower one holds as much.
      this.priced[d] = this.laysOfDepth[d]!.some(({ item }) => prices[item]! > 0) ? 1 : 0;
      if (this.priced[d] === 0) continue;
      const worth = this.priceStrip(d, shallower);
      shallower = d;
      if (!strips.isOutdone(depths[d]!, worth)) strips.offer(depths[d]!, worth, d);
    }
    this.work += fillKnapsack(strips, breadth, this.sheetBest, this.sheetLast);
    return this.sheetBest[breadth]!;
  }

  /**
   * Patterns of the pricing before, which must have had the same prices, that are worth more than `least`: the best
   * with each kind of strip on it, the most valuable first, `most` at most.
   */
  patterns(prices: Float64Array, least: number, most: number): PatternColumn[] {
    const unlimited = new Int32Array(prices.length).fill(this.length * this.breadth);
    const { lengths, worths, marks } = this.strips;
    const firsts = Array.from({ length: this.strips.count }, (_, i) => ({
      depth: marks[i]!,
      rest: this.breadth - lengths[i]!,
      worth: worths[i]! + this.sheetBest[this.breadth - lengths[i]!]!,
    }));
    return firsts
      .filter(({ worth }) => worth > least)
      .sort((x, y) => y.worth - x.worth)
      .slice(0, most)
      .map(({ depth, rest }) => {
        const others = laidOn(this.strips, this.sheetLast, rest).map((i) => marks[i]!);
        return this.columnOf([depth, ...others].map((strip) => this.strip(prices, strip, unlimited)));
      })
      .filter((pattern) => pattern !== null);
  }

  /** Strips over the whole sheet at the pricing before: how deep each is, and what it is worth. */
  wholeStrips(): { readonly depth: number; readonly worth: number }[] {
    const { lengths, worths } = this.strips;
    return Array.from({ length: this.strips.count }, (_, i) => ({ depth: lengths[i]!, worth: worths[i]! }));
  }

  /** At least what `worthOfBlock` gives, at once: as if the strip worth most for its depth filled the sheet. */
  mostOfBlock(length: number): number {
    const { depths, stripWorth, priced } = this;
    let most = 0;
    for (let d = 0; d < depths.length; d++) {
      if (priced[d] === 0) continue;
      most = Math.max(most, stripWorth[d * (this.length + 1) + length]! / depths[d]!);
    }
    this.work += depths.length;
    return most * this.breadth;
  }

  /**
   * The most that strips of this length, one behind another over the sheet, are worth at the pricing before; `atLeast` when
   * they are worth no more than that, so that strips of which such a block cannot be made need not be tried.
   */
  worthOfBlock(length: number, atLeast = 0): number {
    const { shortStrips, depths, breadth, best } = this;
    const worthForDepth = this.mostOfBlock(length) / breadth;
    shortStrips.count = 0;
    for (let d = 0; d < depths.length; d++) {
      if (this.priced[d] === 0) continue;
      const worth = this.stripWorth[d * (this.length + 1) + length]!;
      const most = worth + worthForDepth * (breadth - depths[d]!);
      if (most > atLeast - LEAST_DIFFERENCE) shortStrips.offer(depths[d]!, worth, d);
    }
    this.work += fillKnapsack(shortStrips, breadth, best, this.last);
    return Math.max(atLeast, best[breadth]!);
  }

  /** The block of `worthOfBlock`, as a tree. */
  block(prices: Float64Array, length: number): PatternNode | null {
    this.worthOfBlock(length);
    const depths = laidOn(this.shortStrips, this.last, this.breadth).map((i) => this.shortStrips.marks[i]!);
    const unlimited = new Int32Array(prices.length).fill(this.length * this.breadth);
    return stackOfNodes(
      this.axis,
      depths.map((depth) => this.strip(prices, depth, unlimited, length)),
    );
  }

  /** The strip of a depth over the whole sheet, as a tree; the depth is one of `wholeStrips`. */
  wholeStrip(prices: Float64Array, depth: number): PatternNode | null {
    const unlimited = new Int32Array(prices.length).fill(this.length * this.breadth);
    return this.strip(prices, this.depths.indexOf(depth), unlimited);
  }

  /**
   * A good pattern with at most `counts` pieces of each item: strip by strip, the one worth most for its depth first,
   * priced again for the rest of the sheet. Null when nothing is worth anything.
   */
  patternWithin(prices: Float64Array, counts: Int32Array): PatternColumn | null {
    const left = Int32Array.from(counts);
    const wanted = Float64Array.from(prices, (price, item) => (left[item]! > 0 ? price : 0));
    const strips: (PatternNode | null)[] = [];
    for (let free = this.breadth; free > 0; ) {
      if (this.price(wanted, free) <= LEAST_DIFFERENCE) break;
      const laid = laidOn(this.strips, this.sheetLast, free);
      const worthFor = (i: number) => this.strips.worths[i]! / this.strips.lengths[i]!;
      const strip = laid.reduce((a, b) => (worthFor(b) > worthFor(a) ? b : a));
      const depth = this.strips.marks[strip]!;
      free -= this.depths[depth]!;
      strips.push(this.strip(wanted, depth, left));
      for (let item = 0; item < left.length; item++) if (left[item] === 0) wanted[item] = 0;
    }
    return this.columnOf(strips);
  }

  /** Fills `columnWorth` for strips of at most this breadth; 0 where a column is no better than a narrower one. */
  private priceColumns(prices: Float64Array, breadth: number): void {
    const { widths, depths, columnWorth, best } = this;
    columnWorth.fill(0);
    best.fill(0, 0, breadth + 1);
    for (let k = 0; k < widths.length; k++) {
      let steps = 0;
      // What a narrower column holds a wider one holds as well.
      for (const { item, across } of this.laysOfWidth[k]!) {
        steps += allowAsWell(best, breadth, across, prices[item]!);
      }
      this.work += steps;
      if (steps === 0) continue;
      for (let d = 0; d < depths.length && depths[d]! <= breadth; d++) {
        columnWorth[k * depths.length + d] = best[depths[d]!]!;
      }
      const row = k * (this.breadth + 1);
      this.columnRows.set(best.subarray(0, breadth + 1), row);
    }
  }

  /**
   * Fills the row of `stripWorth` of a depth and gives what a strip over the whole sheet is worth. A deeper strip holds what
   * the next shallower one holds (−1 for none), so only columns that are worth more than in that are laid as well.
   */
  private priceStrip(depth: number, shallower: number): number {
    const { widths, columnWorth, length } = this;
    const row = length + 1;
    const worths = this.stripWorth.subarray(depth * row, (depth + 1) * row);
    if (shallower < 0) worths.fill(0);
    else worths.set(this.stripWorth.subarray(shallower * row, (shallower + 1) * row));
    this.work += length;
    for (let k = 0; k < widths.length; k++) {
      const at = k * this.depths.length;
      const worth = columnWorth[at + depth]!;
      if (worth <= (shallower < 0 ? LEAST_DIFFERENCE : columnWorth[at + shallower]!)) continue;
      this.work += allowAsWell(worths, length, widths[k]!, worth);
    }
    return worths[length]!;
  }

  /** The best strip of a depth, less what there are no pieces left for; takes its pieces off `left`. */
  private strip(
    prices: Float64Array,
    depth: number,
    left: Int32Array,
    length = this.length,
  ): PatternNode | null {
    const row = depth * (this.length + 1);
    const worths = this.stripWorth.subarray(row, row + length + 1);
    const columns: (PatternNode | null)[] = [];
    for (let end = usedOf(worths, length); end > 0; ) {
      const width = this.lastColumn(worths, end, depth);
      if (width < 0) break;
      columns.push(this.column(prices, width, this.depths[depth]!, left));
      end = usedOf(worths, end - this.widths[width]!);
    }
    return stackOfNodes(this.axis === 'w' ? 'h' : 'w', columns);
  }

  /** The column that ends at `end` in a best strip of a depth, given by its width; −1 for none. */
  private lastColumn(worths: Float64Array, end: number, depth: number): number {
    const { widths, depths, columnWorth } = this;
    let column = -1;
    let most = worths[end - 1]! + LEAST_DIFFERENCE;
    for (let k = 0; k < widths.length && widths[k]! <= end; k++) {
      const worth = worths[end - widths[k]!]! + columnWorth[k * depths.length + depth]!;
      if (worth <= most) continue;
      most = worth;
      column = k;
    }
    return column;
  }

  /** The best column of a width and a depth, as `strip` says. */
  private column(prices: Float64Array, width: number, depth: number, left: Int32Array): PatternNode | null {
    const row = width * (this.breadth + 1);
    const worths = this.columnRows.subarray(row, row + depth + 1);
    const pieces: PatternNode[] = [];
    for (let end = usedOf(worths, depth); end > 0; ) {
      const lay = this.lastPiece(prices, worths, end, this.widths[width]!);
      if (!lay) break;
      end = usedOf(worths, end - lay.across);
      if (left[lay.item]! <= 0) continue;
      left[lay.item]!--;
      pieces.push({ kind: 'item', item: lay.item, turned: lay.turned });
    }
    return stackOfNodes(this.axis, pieces);
  }

  /** The piece that ends at `end` in a best column that is `width` wide. */
  private lastPiece(prices: Float64Array, worths: Float64Array, end: number, width: number): Lay | null {
    let piece: Lay | null = null;
    let most = worths[end - 1]! + LEAST_DIFFERENCE;
    for (const lay of this.lays) {
      if (lay.across > end) break;
      if (lay.along > width) continue;
      const worth = worths[end - lay.across]! + prices[lay.item]!;
      if (worth <= most) continue;
      most = worth;
      piece = lay;
    }
    return piece;
  }

  private columnOf(strips: readonly (PatternNode | null)[]): PatternColumn | null {
    const tree = stackOfNodes(this.axis, strips);
    return tree && { sheet: this.sheet, counts: countsOf(tree), tree };
  }
}

/** How the items may lie on a sheet, sizes rounded up to whole steps of the grid, the least `across` first. */
function laysOf(problem: RectangleProblem, sheet: number, axis: 'w' | 'h', grid: number): Lay[] {
  const { kinds, w, h } = problem.items;
  const lays: Lay[] = [];
  for (let item = 0; item < kinds; item++) {
    const lay = (x: number, y: number, turned: boolean) => {
      const [along, across] = axis === 'h' ? [x, y] : [y, x];
      lays.push({ item, turned, along: Math.ceil(along / grid), across: Math.ceil(across / grid) });
    };
    lay(w[item]!, h[item]!, false);
    if (w[item] !== h[item] && mayTurn(problem, item, problem.sheets[sheet]!)) lay(h[item]!, w[item]!, true);
  }
  return lays.sort((a, b) => a.across - b.across);
}

function mostPositions({ sheets, items }: RectangleProblem): number {
  if (sheets.length === 1) return MOST_POSITIONS;
  return Math.min(MOST_POSITIONS, Math.max(LEAST_POSITIONS, Math.floor(POSITIONS_TIMES_SIZES / items.kinds)));
}

/** How much of `length` is used where `worths` says what can be had on each. */
function usedOf(worths: Float64Array, length: number): number {
  let used = length;
  while (used > 0 && worths[used]! <= worths[used - 1]! + LEAST_DIFFERENCE) used--;
  return used;
}

function sortedSizes(sizes: readonly number[]): number[] {
  return [...new Set(sizes)].sort((a, b) => a - b);
}
