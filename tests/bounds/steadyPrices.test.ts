import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Prices, SteadyPrices } from '../../src/bounds/steadyPrices.ts';

const at = (prices: number[], rents: number[]): Prices => ({
  prices: Float64Array.from(prices),
  rents: Float64Array.from(rents),
});
/** What one sheet of each kind holds. */
const PATTERNS = [
  [
    [2, 0],
    [1, 1],
  ],
  [[0, 1]],
];
const COSTS = Float64Array.from([1, 0.5]);
const LIMITS = [-1, 3];
const worthAt = ({ prices }: Prices) =>
  PATTERNS.map((held) => Math.max(...held.map(([a, b]) => a! * prices[0]! + b! * prices[1]!)));
const steadied = () => new SteadyPrices(Int32Array.from([10, 6]), COSTS, LIMITS);
const price = fc.double({ min: 0, max: 4, noNaN: true });
const anyPrices = fc.tuple(price, price, price).map(([a, b, rent]) => at([a, b], [0, rent]));

describe('SteadyPrices', () => {
  it('knows no other prices than the programme until some were priced', () => {
    const answer = at([1, 2], [0, 0.5]);
    const steady = steadied();
    expect([...steady.towards(answer)]).toEqual([answer]);
    steady.learn(at([0, 0], [0, 0]), [0, 0]);
    expect([...steady.towards(answer)]).toEqual([answer]);
  });

  it('goes from near the best prices to those of the programme', () => {
    const steady = steadied();
    // Scaled by the half, as a sheet of the first kind is worth twice its cost.
    const prices = at([1, 0.5], [0, 0]);
    steady.learn(prices, worthAt(prices));
    const tried = [...steady.towards(at([1.5, 1.25], [0, 1]))].map((tried) =>
      [...tried.prices, ...tried.rents].map((value) => Number(value.toFixed(9))),
    );
    expect(tried).toEqual([
      [0.8, 0.55, 0, 0.3],
      [1.1, 0.85, 0, 0.6],
      [1.5, 1.25, 0, 1],
    ]);
  });

  it('keeps prices at which no pattern gains, and of them those that are worth most', () => {
    fc.assert(
      fc.property(fc.array(anyPrices, { minLength: 1, maxLength: 8 }), anyPrices, (learned, answer) => {
        const steady = steadied();
        let most = 0;
        for (const prices of learned) {
          steady.learn(prices, worthAt(prices));
          const [first] = steady.towards(answer);
          const tried = [...steady.towards(answer)];
          expect(tried.at(-1)).toEqual(answer);
          if (tried.length === 1) continue;
          // The weights are 0.7 and 0.3: what stands for the best so far is found again.
          const best = (one: Float64Array, other: Float64Array) =>
            one.map((v, i) => (v - 0.3 * other[i]!) / 0.7);
          const fair = {
            prices: best(first!.prices, answer.prices),
            rents: best(first!.rents, answer.rents),
          };
          for (const [s, worth] of worthAt(fair).entries()) {
            expect(worth).toBeLessThanOrEqual(COSTS[s]! + fair.rents[s]! + 1e-9);
          }
          const value = 10 * fair.prices[0]! + 6 * fair.prices[1]! - 3 * fair.rents[1]!;
          expect(value).toBeGreaterThanOrEqual(most - 1e-9);
          most = Math.max(most, value);
        }
      }),
    );
  });
});
