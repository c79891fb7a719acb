import type { RectangleProblem, RectangleSheet } from '../model/rectangles.ts';
import { type DualFeasibleFunction, dualFeasibleValue, isDualFeasible } from './dualFeasible.ts';

/** A dual feasible function along the grain and one across it, scaled to a sheet. */
export interface FunctionPair {
  readonly along: DualFeasibleFunction;
  readonly across: DualFeasibleFunction;
  /** Index into the problem's sheets: whose size the functions are scaled to. */
  readonly sheet: number;
}

/** A price per item, and for each kind of sheet the most that pieces on it can be worth; whole numbers. */
export interface PricesAndWorth {
  readonly prices: readonly number[];
  readonly worth: readonly number[];
}

const SIZE: DualFeasibleFunction = { family: 'size', parameter: 0 };

/** True when item i may lie on the sheet with its w across the grain. */
export function mayTurn(problem: RectangleProblem, item: number, sheet: RectangleSheet): boolean {
  return sheet.noGrain || problem.items.grained[item] === 0;
}

/** Least value over the ways an item may lie on a sheet; null when it fits in none. */
function leastOnSheet(
  problem: RectangleProblem,
  item: number,
  sheet: RectangleSheet,
  along: DualFeasibleFunction,
  across: DualFeasibleFunction,
): bigint | null {
  const w = problem.items.w[item]!;
  const h = problem.items.h[item]!;
  let least: bigint | null = null;
  const lay = (x: number, y: number): void => {
    if (x > sheet.w || y > sheet.h) return;
    const value =
      BigInt(dualFeasibleValue(along, x, sheet.w)) * BigInt(dualFeasibleValue(across, y, sheet.h));
    if (least === null || value < least) least = value;
  };
  lay(w, h);
  if (mayTurn(problem, item, sheet)) lay(h, w);
  return least;
}

/** The most that pieces at the given prices can be worth on a sheet, as the functions tell; null when they cannot. */
function worthByFunctions(
  problem: RectangleProblem,
  prices: readonly bigint[],
  sheet: RectangleSheet,
  along: DualFeasibleFunction,
  across: DualFeasibleFunction,
): bigint | null {
  if (!isDualFeasible(along, sheet.w) || !isDualFeasible(across, sheet.h)) return null;
  const whole =
    BigInt(dualFeasibleValue(along, sheet.w, sheet.w)) * BigInt(dualFeasibleValue(across, sheet.h, sheet.h));
  let worth = 0n;
  for (const [item, price] of prices.entries()) {
    if (price === 0n) continue;
    const value = leastOnSheet(problem, item, sheet, along, across);
    if (value === null) continue;
    if (value === 0n) return null;
    const asked = (price * whole) / value;
    if (asked > worth) worth = asked;
  }
  return worth;
}

/**
 * Prices and worth of sheets that a pair of dual feasible functions proves. On the sheet that the functions are scaled
 * to, an item is priced by the least value over the ways it may lie; on every other sheet the worth is the least that
 * the same functions, or the areas, prove for these prices. An item that does not fit that sheet is priced by area.
 * Returns null when the functions do not suit the sheet or a number would pass 2^53.
 */
export function pricesFromFunctions(problem: RectangleProblem, pair: FunctionPair): PricesAndWorth | null {
  const scaled = problem.sheets[pair.sheet];
  if (!scaled || !isDualFeasible(pair.along, scaled.w) || !isDualFeasible(pair.across, scaled.h)) return null;
  const whole =
    BigInt(dualFeasibleValue(pair.along, scaled.w, scaled.w)) *
    BigInt(dualFeasibleValue(pair.across, scaled.h, scaled.h));
  const prices = Array.from({ length: problem.items.kinds }, (_, item) => {
    const value = leastOnSheet(problem, item, scaled, pair.along, pair.across);
    if (value !== null) return value;
    const area = BigInt(problem.items.w[item]!) * BigInt(problem.items.h[item]!);
    return (whole * area) / (BigInt(scaled.w) * BigInt(scaled.h));
  });
  const worth = problem.sheets.map((sheet, s) => {
    if (s === pair.sheet) return whole;
    const byFunctions = worthByFunctions(problem, prices, sheet, pair.along, pair.across);
    const byArea = worthByFunctions(problem, prices, sheet, SIZE, SIZE);
    if (byFunctions === null) return byArea;
    return byArea === null || byFunctions < byArea ? byFunctions : byArea;
  });
  const limit = BigInt(Number.MAX_SAFE_INTEGER);
  if (worth.some((value) => value === null || value > limit) || prices.some((price) => price > limit)) {
    return null;
  }
  return { prices: prices.map(Number), worth: worth.map(Number) };
}

/** Areas as prices: what a sheet holds is at most its own area. */
export function pricesFromAreas(problem: RectangleProblem): PricesAndWorth {
  return {
    prices: Array.from(problem.items.w, (w, item) => w * problem.items.h[item]!),
    worth: problem.sheets.map((sheet) => sheet.w * sheet.h),
  };
}
