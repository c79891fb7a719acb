import type { MasterAnswer } from '../basics/patternMaster.ts';

/** The prices of one pricing: of a piece of each item, and of one more sheet of each kind. */
export type Prices = Pick<MasterAnswer, 'prices' | 'rents'>;

/** How far towards the best prices so far a pricing goes at first, and from one try to the next where nothing gained. */
const WEIGHT = 0.7;
const STEP = 0.3;

/**
 * Prices between those of the programme, which leap about from round to round, and the best ones so far at which no
 * pattern is worth more than its sheet. Fewer rounds are needed so (P. Wentges, Weighted Dantzig–Wolfe decomposition for
 * linear mixed-integer programming, International Transactions in Operational Research 4 (1997) 151–162). A pattern
 * worth more than its sheet there is so at the programme's prices too; where there is none, both the prices and the bound
 * have come nearer.
 */
export class SteadyPrices {
  private readonly counts: Int32Array;
  private readonly costs: Float64Array;
  private readonly limits: readonly number[];
  private best: Prices | null = null;
  private bestValue = 0;

  /** `costs` and `limits` per kind of sheet (limit −1: none), as the programme has them. */
  constructor(counts: Int32Array, costs: Float64Array, limits: readonly number[]) {
    this.counts = counts;
    this.costs = costs;
    this.limits = limits;
  }

  /** The prices to try one after the other for an answer of the programme, until patterns gain; its own are the last. */
  *towards(answer: Prices): Generator<Prices> {
    for (let weight = WEIGHT; weight > STEP / 2 && this.best !== null; weight -= STEP) {
      yield between(this.best, answer, weight);
    }
    yield answer;
  }

  /** What was found of prices: `worth`, the most that a sheet of each kind can hold at them. */
  learn({ prices, rents }: Prices, worth: readonly number[]): void {
    let scale = Number.POSITIVE_INFINITY;
    for (const [s, most] of worth.entries()) {
      if (most > 0) scale = Math.min(scale, (this.costs[s]! + rents[s]!) / most);
    }
    if (!Number.isFinite(scale)) return;
    const fair = { prices: prices.map((price) => price * scale), rents };
    const value = this.valueOf(fair);
    if (value <= this.bestValue) return;
    this.best = fair;
    this.bestValue = value;
  }

  private valueOf({ prices, rents }: Prices): number {
    let value = 0;
    for (let i = 0; i < prices.length; i++) value += prices[i]! * this.counts[i]!;
    for (const [s, limit] of this.limits.entries()) if (limit >= 0) value -= rents[s]! * limit;
    return value;
  }
}

function between(a: Prices, b: Prices, weight: number): Prices {
  const mix = (one: Float64Array, other: Float64Array) =>
    one.map((value, index) => weight * value + (1 - weight) * other[index]!);
  return { prices: mix(a.prices, b.prices), rents: mix(a.rents, b.rents) };
}
