import type { RectangleProblem, RectangleSheet } from '../model/rectangles.ts';
import {
  type AxisItem,
  type DualFeasibleFunction,
  type ScaledFunction,
  scaledFunction,
} from './dualFeasible.ts';
import { reachableSide } from './reachableSide.ts';

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

/** The sides that items may lay along an axis of a sheet: w along the grain, h across it. */
export function axisItems(problem: RectangleProblem, sheet: RectangleSheet, axis: 'w' | 'h'): AxisItem[] {
  const { kinds, w, h, count } = problem.items;
  return Array.from({ length: kinds }, (_, item) => {
    const sides: number[] = [];
    const lay = (x: number, y: number): void => {
      if (x <= sheet.w && y <= sheet.h) sides.push(axis === 'w' ? x : y);
    };
    lay(w[item]!, h[item]!);
    if (mayTurn(problem, item, sheet)) lay(h[item]!, w[item]!);
    return { sides, count: count[item]! };
  });
}

/** Both functions of a pair on one kind of sheet. */
interface PairOnSheet {
  readonly along: ScaledFunction;
  readonly across: ScaledFunction;
  readonly full: bigint;
}

function pairOnSheet(
  problem: RectangleProblem,
  sheet: RectangleSheet,
  along: DualFeasibleFunction,
  across: DualFeasibleFunction,
): PairOnSheet | null {
  const u = scaledFunction(along, sheet.w, axisItems(problem, sheet, 'w'));
  const v = scaledFunction(across, sheet.h, axisItems(problem, sheet, 'h'));
  return u && v && { along: u, across: v, full: BigInt(u.full) * BigInt(v.full) };
}

/** Least value over the ways an item may lie on a sheet; null when it fits in none. */
function leastOnSheet(
  problem: RectangleProblem,
  item: number,
  sheet: RectangleSheet,
  pair: PairOnSheet,
): bigint | null {
  const w = problem.items.w[item]!;
  const h = problem.items.h[item]!;
  let least: bigint | null = null;
  const lay = (x: number, y: number): void => {
    if (x > sheet.w || y > sheet.h) return;
    const value = BigInt(pair.along.value(x)) * BigInt(pair.across.value(y));
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
  const pair = pairOnSheet(problem, sheet, along, across);
  if (!pair) return null;
  let worth = 0n;
  for (const [item, price] of prices.entries()) {
    if (price === 0n) continue;
    const value = leastOnSheet(problem, item, sheet, pair);
    if (value === null) continue;
    if (value === 0n) return null;
    const asked = (price * pair.full) / value;
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
  const onSheet = scaled && pairOnSheet(problem, scaled, pair.along, pair.across);
  if (!onSheet) return null;
  const { full } = onSheet;
  const prices = Array.from({ length: problem.items.kinds }, (_, item) => {
    const value = leastOnSheet(problem, item, scaled, onSheet);
    if (value !== null) return value;
    const area = BigInt(problem.items.w[item]!) * BigInt(problem.items.h[item]!);
    return (full * area) / (BigInt(scaled.w) * BigInt(scaled.h));
  });
  const worth = problem.sheets.map((sheet, s) => {
    if (s === pair.sheet) return full;
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

/** Areas as prices: what a sheet holds is at most the area that pieces can reach when pushed into its corner. */
export function pricesFromAreas(problem: RectangleProblem): PricesAndWorth {
  const reach = (sheet: RectangleSheet, axis: 'w' | 'h') =>
    reachableSide(
      axisItems(problem, sheet, axis).flatMap(({ sides }) => sides),
      sheet[axis],
    );
  return {
    prices: Array.from(problem.items.w, (w, item) => w * problem.items.h[item]!),
    worth: problem.sheets.map((sheet) => reach(sheet, 'w') * reach(sheet, 'h')),
  };
}
