import type { SheetPattern } from '../model/patterns.ts';

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
