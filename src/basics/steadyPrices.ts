import type { RectangleProblem } from '../model/rectangles.ts';
import type { MasterAnswer } from './patternMaster.ts';

/** What a sheet counts as that costs nothing. */
const FREE = 1e-6;

/** The prices of one pricing: of a piece of each item, and of one more sheet of each kind. */
export type Prices = Pick<MasterAnswer, 'prices' | 'rents'>;

/**
 * Prices that do not leap about as those of the programme do: the best met so far, by the bound that they prove.
 * Patterns are priced between them and the programme's own, which takes fewer rounds (smoothing: P. Wentges, Weighted
 * Dantzig–Wolfe decomposition for linear mixed-integer programming, International Transactions in Operational Research
 * 4 (1997) 151–162). A pattern worth more than its sheet there is so at the programme's prices too; where there is none,
 * the prices between prove more than the best so far did.
 */
export class SteadyPrices {
  private readonly problem: RectangleProblem;
  private readonly counts: Int32Array;
  private readonly costs: Float64Array;
  private centre: Prices | null;
  /** What all pieces are worth at the centre, less the rents; 0 as long as none was priced. */
  bound = 0;

  /**
   * `counts`: pieces of each item; `costs`: of each kind of sheet, as the programme has them; `first`: the prices to try
   * before any others, null for the programme's.
   */
  constructor(problem: RectangleProblem, counts: Int32Array, costs: Float64Array, first: Prices | null) {
    this.problem = problem;
    this.counts = counts;
    this.costs = costs;
    this.centre = first;
  }

  /** Prices between the best so far, at weight 1, and those given, at 0. */
  between(given: Prices, weight: number): Prices {
    const { centre } = this;
    if (centre === null) return given;
    if (this.bound === 0) return centre;
    const mix = (one: Float64Array, other: Float64Array) =>
      other.map((value, index) => weight * one[index]! + (1 - weight) * value);
    return {
      prices: mix(centre.prices, given.prices),
      rents: mix(centre.rents, given.rents),
    };
  }

  /** Keeps prices at which one sheet of each kind can hold no more than `worth`, if they prove more than those so far. */
  learn({ prices, rents }: Prices, worth: ArrayLike<number>): void {
    let worthPerCost = 0;
    for (let s = 0; s < worth.length; s++) {
      worthPerCost = Math.max(worthPerCost, worth[s]! / (this.costs[s]! + rents[s]! || FREE));
    }
    if (worthPerCost <= 0) return;
    let bound = prices.reduce((sum, price, item) => sum + price * this.counts[item]!, 0) / worthPerCost;
    for (const [s, { count }] of this.problem.sheets.entries()) if (count >= 0) bound -= rents[s]! * count;
    if (bound <= this.bound) return;
    this.bound = bound;
    this.centre = { prices: prices.map((price) => price / worthPerCost), rents };
  }
}

/** Areas as prices: parts of the largest sheet, for the items that are wanted. */
export function areaPrices({ items, sheets }: RectangleProblem, counts: Int32Array): Prices {
  const { w, h } = items;
  const largest = sheets.reduce((most, sheet) => Math.max(most, sheet.w * sheet.h), 1);
  return {
    prices: Float64Array.from(w, (side, i) => (counts[i]! > 0 ? (side * h[i]!) / largest : 0)),
    rents: new Float64Array(sheets.length),
  };
}
