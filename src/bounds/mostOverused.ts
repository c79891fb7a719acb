import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

const ANY_NUMBER = 2_147_483_647;

/** The item of which patterns in use hold most beyond what is wanted; −1 when none do. */
export function mostOverused(patterns: readonly SheetPattern[], wanted: Int32Array): number {
  const surplus = new Float64Array(wanted.length);
  for (const { counts, use } of patterns) {
    for (const { item, count } of counts) surplus[item]! += use * Math.max(0, count - wanted[item]!);
  }
  let most = -1;
  for (let item = 0; item < surplus.length; item++) {
    if (surplus[item]! > 1e-6 && (most < 0 || surplus[item]! > surplus[most]!)) most = item;
  }
  return most;
}

/** How many pieces of each item a pattern may hold where those in `limited` have their copies counted. */
export function mostPieces({ items }: RectangleProblem, limited: readonly number[]): Int32Array {
  const most = new Int32Array(items.kinds).fill(ANY_NUMBER);
  for (const item of limited) most[item] = items.count[item]!;
  return most;
}
