import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { areaPrices, type Prices, SteadyPrices } from '../../src/basics/steadyPrices.ts';
import { plainGroup } from '../helpers/smallGroups.ts';

const at = (prices: number[], rents: number[]): Prices => ({
  prices: Float64Array.from(prices),
  rents: Float64Array.from(rents),
});
const plain = ({ prices, rents }: Prices) => [...prices, ...rents].map((value) => Number(value.toFixed(9)));
/** Two items of 10 and 6 pieces; any number of the first kind of sheet and three of the other. */
const problem = makeRectangleProblem(
  plainGroup({
    pieces: [
      [50, 100, 10],
      [50, 40, 6],
    ],
    sheets: [
      { mm: [100, 100], priceMinor: 2 },
      { mm: [50, 40], priceMinor: 1, count: 3 },
    ],
  }),
);
const counts = problem.items.count;
const COSTS = Float64Array.from([1, 0.5]);
/** What one sheet of each kind may hold, of many ways to cut it. */
const PATTERNS = [
  [
    [2, 0],
    [1, 2],
  ],
  [[0, 1]],
];
const worthAt = ({ prices }: Prices) =>
  PATTERNS.map((held) => Math.max(...held.map(([a, b]) => a! * prices[0]! + b! * prices[1]!)));
const price = fc.double({ min: 0, max: 4, noNaN: true });
const anyPrices = fc.tuple(price, price, price).map(([a, b, rent]) => at([a, b], [0, rent]));

describe('SteadyPrices', () => {
  it('are those given until some were priced, or the first ones', () => {
    const given = at([1, 2], [0, 0.5]);
    const steady = new SteadyPrices(problem, counts, COSTS, null);
    expect(steady.between(given, 0.7)).toEqual(given);
    steady.learn(at([0, 0], [0, 0]), [0, 0]);
    expect([steady.between(given, 0.7), steady.bound]).toEqual([given, 0]);
    const areas = areaPrices(problem, counts);
    expect(plain(areas)).toEqual([0.5, 0.2, 0, 0]);
    expect(new SteadyPrices(problem, counts, COSTS, areas).between(given, 0.7)).toEqual(areas);
    // Only what is wanted has a price.
    expect(plain(areaPrices(problem, Int32Array.from([0, 6])))).toEqual([0, 0.2, 0, 0]);
  });

  it('lie between those given and the best so far, scaled so that no sheet holds more than it costs', () => {
    const steady = new SteadyPrices(problem, counts, COSTS, null);
    // A sheet of the first kind holds twice its cost, one of the other as much as it costs with its rent.
    steady.learn(at([1, 0.5], [0, 0]), [2, 0.5]);
    expect(steady.bound).toBe(0.5 * 10 + 0.25 * 6);
    const given = at([1.5, 1.25], [0, 1]);
    expect(plain(steady.between(given, 1))).toEqual([0.5, 0.25, 0, 0]);
    expect(plain(steady.between(given, 0.7))).toEqual([0.8, 0.55, 0, 0.3]);
    expect(plain(steady.between(given, 0))).toEqual([1.5, 1.25, 0, 1]);
    // Three sheets are rented: worth less than what is known.
    steady.learn(at([0.5, 0.25], [0, 0.1]), [1, 0.25]);
    expect(plain(steady.between(given, 1))).toEqual([0.5, 0.25, 0, 0]);
    steady.learn(at([0.4, 0.55], [0, 0.05]), [0.8, 0.55]);
    expect(plain(steady.between(given, 1))).toEqual([0.4, 0.55, 0, 0.05]);
    expect(steady.bound).toBeCloseTo(4 + 3.3 - 0.15);
  });

  it('prove more and more, and at the best no sheet holds more than its cost and rent', () => {
    fc.assert(
      fc.property(fc.array(anyPrices, { minLength: 1, maxLength: 8 }), anyPrices, (learned, given) => {
        const steady = new SteadyPrices(problem, counts, COSTS, null);
        for (const prices of learned) {
          const before = steady.bound;
          steady.learn(prices, worthAt(prices));
          expect(steady.bound).toBeGreaterThanOrEqual(before);
          if (steady.bound === 0) continue;
          const best = steady.between(given, 1);
          for (const [s, worth] of worthAt(best).entries()) {
            expect(worth).toBeLessThanOrEqual(COSTS[s]! + best.rents[s]! + 1e-9);
          }
          const value = 10 * best.prices[0]! + 6 * best.prices[1]! - 3 * best.rents[1]!;
          expect(value).toBeCloseTo(steady.bound);
          // What gains between gains at the prices given.
          const between = steady.between(given, 0.6);
          for (const [s, patterns] of PATTERNS.entries()) {
            for (const [a, b] of patterns) {
              const gain = (of: Prices) => a! * of.prices[0]! + b! * of.prices[1]! - COSTS[s]! - of.rents[s]!;
              if (gain(between) > 1e-9) expect(gain(given)).toBeGreaterThan(0);
            }
          }
        }
      }),
    );
  });
});
