import type { PatternColumn } from '../basics/patternMaster.ts';
import { countsOf } from '../basics/patternTree.ts';
import type { Prices } from '../basics/steadyPrices.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import type { PricingTables } from './pricingTables.ts';

/** Prices are whole multiples of this part of the dearest sheet. */
export const PRICE_DENOMINATOR = 1_000_000_000;
/** A pattern must be worth this much more than its sheet to be added. */
const LEAST_GAIN = 1e-7;
/** A pricing gives so many patterns at most for each kind of sheet. */
const PATTERNS_A_PRICING = 12;

export interface PricedSheets {
  /** In whole numbers, rounded down. */
  readonly prices: readonly number[];
  /** The most that a sheet of each kind can hold at them. */
  readonly worth: readonly number[];
  /** Patterns that are worth more than their sheets. */
  readonly found: readonly PatternColumn[];
}

/** Prices every kind of sheet at the programme's prices; `costs` by kind, in the programme's money. */
export function priceSheets(
  problem: RectangleProblem,
  tables: PricingTables,
  answer: Prices,
  costs: Float64Array,
): PricedSheets {
  const prices = answer.prices.map((price) => Math.floor(price * PRICE_DENOMINATOR));
  const worth = new Array<number>(problem.sheets.length).fill(0);
  const found: PatternColumn[] = [];
  for (const s of tables.distinct) {
    const table = tables.bySheet[s]!;
    const value = table.evaluate(prices);
    for (let twin = s; twin < worth.length; twin++) {
      if (tables.bySheet[twin] !== table) continue;
      worth[twin] = value;
      const cost = costs[twin]! + answer.rents[twin]!;
      const least = (cost + LEAST_GAIN) * PRICE_DENOMINATOR;
      for (const tree of table.patterns(prices, least, PATTERNS_A_PRICING)) {
        found.push({ sheet: twin, counts: countsOf(tree), tree });
      }
    }
  }
  return { prices: Array.from(prices), worth, found };
}
