import {
  type AxisItem,
  type DualFeasibleFunction,
  dualFeasibleFamilies,
  scaledFunction,
} from '../basics/dualFeasible.ts';
import { axisItems, type FunctionPair, mayTurn } from '../basics/pricesFromFunctions.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

/** A function with its values, as shares of the whole, at each item's w and h; -1 where the side is too long. */
interface Scaled {
  readonly rule: DualFeasibleFunction;
  readonly atW: Float64Array;
  readonly atH: Float64Array;
}

/** Parameters at which a family's values change for the sides given, at most `most` of them, in rising order. */
function parametersOf(
  family: DualFeasibleFunction['family'],
  sides: readonly number[],
  whole: number,
  most: number,
): number[] {
  switch (family) {
    case 'size':
      return [0];
    case 'large and small':
    case 'counting':
      return thinned(
        sides.filter((side) => 2 * side <= whole),
        most,
      );
    case 'steps':
      return Array.from({ length: Math.min(most, 60, whole) }, (_, k) => k + 1);
    case 'halves':
    case 'rounding': {
      const last = family === 'halves' ? Math.floor(whole / 2) : whole;
      if (last <= most) return Array.from({ length: last }, (_, k) => k + 1);
      const found = new Set<number>();
      for (const side of [...sides, whole, ...sides.map((s) => whole - s)]) {
        for (let parts = 1; parts <= 4; parts++) {
          const size = Math.floor(side / parts);
          if (size >= 1 && size <= last) found.add(size);
          if (size + 1 <= last) found.add(size + 1);
        }
      }
      return thinned(
        [...found].sort((a, b) => a - b),
        most,
      );
    }
  }
}

/** At most `most` of the values, evenly picked. */
function thinned(values: readonly number[], most: number): number[] {
  if (values.length <= most) return [...values];
  return Array.from({ length: most }, (_, k) => values[Math.floor((k * values.length) / most)]!);
}

/** The functions worth trying along one axis of a sheet, without those that give the same values. */
function functionsAlong(
  problem: RectangleProblem,
  items: readonly AxisItem[],
  whole: number,
  most: number,
): Scaled[] {
  const { kinds, w, h } = problem.items;
  const sides = [...new Set([...w, ...h])].filter((side) => side <= whole).sort((a, b) => a - b);
  const found = new Map<string, Scaled>();
  for (const family of dualFeasibleFamilies) {
    for (const parameter of parametersOf(family, sides, whole, most)) {
      const rule = { family, parameter };
      const scaled = scaledFunction(rule, whole, items);
      if (!scaled) continue;
      const share = (side: number): number => (side > whole ? -1 : scaled.value(side) / scaled.full);
      const atW = new Float64Array(kinds).map((_, i) => share(w[i]!));
      const atH = new Float64Array(kinds).map((_, i) => share(h[i]!));
      const key = `${atW.join()} ${atH.join()}`;
      if (!found.has(key)) found.set(key, { rule, atW, atH });
    }
  }
  return [...found.values()];
}

/** Steps that the search for a pair of functions may take, and so how finely functions are tried. */
function mostPerFamily(effort: number, items: number, sheets: number): number {
  const pairs = effort / Math.max(1, items * sheets);
  return Math.max(4, Math.min(150, Math.floor(Math.sqrt(pairs) / 3)));
}

/**
 * For each kind of sheet, the pair of dual feasible functions (one along the grain, one across) under which the items
 * fill the most sheets of that kind. A turnable item counts by the lesser of its two ways, which is valid whichever way
 * it is laid. `effort` limits the work, in steps. What the pairs prove is for `recheckBound` to say.
 */
export function functionPairs(problem: RectangleProblem, effort: number): FunctionPair[] {
  const { kinds, w, h, count } = problem.items;
  const most = mostPerFamily(effort, kinds, problem.sheets.length);
  const pairs: FunctionPair[] = [];
  for (const [s, sheet] of problem.sheets.entries()) {
    const turnable = Uint8Array.from(w, (side, i) => (side !== h[i]! && mayTurn(problem, i, sheet) ? 1 : 0));
    const along = functionsAlong(problem, axisItems(problem, sheet, 'w'), sheet.w, most);
    const across = functionsAlong(problem, axisItems(problem, sheet, 'h'), sheet.h, most);
    let best: { total: number; pair: FunctionPair } | null = null;
    for (const u of along) {
      for (const v of across) {
        const total = filled(u, v, turnable, count);
        // Plainer functions come first and are kept unless another gives more than the last bits of a sum.
        if (!best || total > best.total * (1 + 1e-12)) {
          best = { total, pair: { along: u.rule, across: v.rule, sheet: s } };
        }
      }
    }
    if (best) pairs.push(best.pair);
  }
  return pairs;
}

/** How many sheets the items fill under a pair of functions; items that do not fit the sheet are left out. */
function filled(u: Scaled, v: Scaled, turnable: Uint8Array, count: Int32Array): number {
  let total = 0;
  for (let i = 0; i < count.length; i++) {
    const straight = u.atW[i]! >= 0 && v.atH[i]! >= 0 ? u.atW[i]! * v.atH[i]! : -1;
    let value = straight;
    if (turnable[i] === 1 && u.atH[i]! >= 0 && v.atW[i]! >= 0) {
      const turned = u.atH[i]! * v.atW[i]!;
      if (straight < 0 || turned < straight) value = turned;
    }
    if (value > 0) total += value * count[i]!;
  }
  return total;
}
