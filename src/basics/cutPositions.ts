import type { RectangleProblem } from '../model/rectangles.ts';
import { mayTurn } from './pricesFromFunctions.ts';

/** A side of an item that may lie along an axis, with the other side across it. */
export interface LaidItem {
  readonly item: number;
  readonly w: number;
  readonly h: number;
  readonly turned: boolean;
}

/** A sheet and the ways in which items lie on it, in cells of a grid. */
export interface SheetInCells {
  readonly w: number;
  readonly h: number;
  readonly laid: readonly LaidItem[];
}

/**
 * A sheet and its items with all sizes rounded down to a grid of `grid` tenths of a millimetre, sheets and items alike.
 * Rounding down is superadditive (⌊a⌋ + ⌊b⌋ ≤ ⌊a + b⌋), so what fits before fits after. Nothing is rounded when the
 * grid divides the problem's unit. Returns null when an item would vanish.
 */
export function sheetInCells(
  problem: RectangleProblem,
  sheetIndex: number,
  grid: number,
): SheetInCells | null {
  const sheet = problem.sheets[sheetIndex]!;
  const unit = Math.round(problem.unitUm / 100);
  const exact = unit % grid === 0;
  const cells = (size: number): number => (exact ? size : Math.floor((size * unit) / grid));
  const laid: LaidItem[] = [];
  for (let item = 0; item < problem.items.kinds; item++) {
    if (problem.items.count[item]! < 1) continue;
    const w = problem.items.w[item]!;
    const h = problem.items.h[item]!;
    const lay = (x: number, y: number, turned: boolean): boolean => {
      if (x > sheet.w || y > sheet.h) return true;
      laid.push({ item, w: cells(x), h: cells(y), turned });
      return cells(x) > 0 && cells(y) > 0;
    };
    if (!lay(w, h, false)) return null;
    if (w !== h && mayTurn(problem, item, sheet) && !lay(h, w, true)) return null;
  }
  return { w: cells(sheet.w), h: cells(sheet.h), laid };
}

/**
 * Where a cut can be needed along one axis of a sheet: 0 and every sum of item sides up to the sheet's, no item used
 * more often than it is wanted (normal patterns; J. C. Herz, IBM Journal of Research and Development 16 (1972) 462–469;
 * N. Christofides and C. Whitlock, Operations Research 25 (1977) 30–44). In rising order.
 */
export function cutPositions(
  laid: readonly LaidItem[],
  counts: Int32Array,
  axis: 'w' | 'h',
  whole: number,
): Int32Array {
  const sides = new Map<number, number[]>();
  for (const way of laid) {
    const list = sides.get(way.item) ?? [];
    list.push(way[axis]);
    sides.set(way.item, list);
  }
  const reached = new Uint8Array(whole + 1);
  reached[0] = 1;
  for (const [item, choices] of sides) {
    const smallest = Math.min(...choices);
    const copies = Math.min(counts[item]!, Math.floor(whole / smallest));
    for (let copy = 0; copy < copies; copy++) {
      if (!extend(reached, choices, whole)) break;
    }
  }
  const positions: number[] = [];
  for (let x = 0; x <= whole; x++) if (reached[x]) positions.push(x);
  return Int32Array.from(positions);
}

/** Adds one more piece, of any of the given sides, to every sum; false when that reaches nothing new. */
function extend(reached: Uint8Array, choices: readonly number[], whole: number): boolean {
  let news = false;
  for (let x = whole; x >= 0; x--) {
    if (reached[x]) continue;
    for (const side of choices) {
      if (x >= side && reached[x - side] === 1) {
        reached[x] = 1;
        news = true;
        break;
      }
    }
  }
  return news;
}
