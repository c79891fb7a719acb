import { describe, expect, it } from 'vitest';
import { GuillotineTable } from '../../src/basics/guillotineTable.ts';
import { countsOf, leastSize } from '../../src/basics/patternTree.ts';
import { SeededRandom } from '../../src/basics/random.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { setsThatFit } from '../helpers/exactNest.ts';
import { smallGroup } from '../helpers/smallGroups.ts';

const MOST_WORK = 1e9;

/** The most valuable set of pieces that one sheet holds, by looking at every set. */
function bestSet(group: StockGroup, sheet: number, prices: Float64Array): number {
  const kinds = group.demands.flatMap((demand, d) => Array.from({ length: demand.count }, () => d));
  let best = 0;
  for (const [set, fits] of setsThatFit(group)[sheet]!.entries()) {
    if (!fits) continue;
    const value = kinds.reduce((sum, d, bit) => sum + ((set >> bit) & 1) * prices[d]!, 0);
    if (value > best) best = value;
  }
  return best;
}

describe('GuillotineTable', () => {
  it('finds the most valuable pattern when all copies are counted, and no less when some are', () => {
    const random = new SeededRandom(5);
    for (let seed = 1; seed <= 300; seed++) {
      const group = smallGroup(seed, { kinds: 4, pieces: 7, sheetKinds: 2, longest: 7, kerfUm: 500 });
      const problem = makeRectangleProblem(group);
      const prices = Float64Array.from(group.demands, () => random.below(50));
      const every = group.demands.map((_, d) => d);
      for (const sheet of problem.sheets.keys()) {
        const truth = bestSet(group, sheet, prices);
        let before = Number.POSITIVE_INFINITY;
        for (let n = 0; n <= every.length; n++) {
          const request = { sheet, grid: 1, limited: every.slice(0, n), mostWork: MOST_WORK };
          const table = GuillotineTable.make(problem, request)!;
          const value = table.evaluate(prices);
          expect(value).toBeGreaterThanOrEqual(truth);
          expect(value).toBeLessThanOrEqual(before);
          before = value;
          const tree = table.pattern(prices);
          const worth = tree ? countsOf(tree).reduce((sum, c) => sum + c.count * prices[c.item]!, 0) : 0;
          expect(worth).toBe(value);
          if (!tree) continue;
          const size = leastSize(problem, tree);
          expect(size.w).toBeLessThanOrEqual(problem.sheets[sheet]!.w);
          expect(size.h).toBeLessThanOrEqual(problem.sheets[sheet]!.h);
          for (const c of countsOf(tree)) {
            if (request.limited.includes(c.item))
              expect(c.count).toBeLessThanOrEqual(group.demands[c.item]!.count);
          }
        }
        expect(before).toBe(truth);
      }
    }
  });

  it('never gives less on a grid', () => {
    const random = new SeededRandom(6);
    for (let seed = 1; seed <= 100; seed++) {
      const group = smallGroup(seed, { kinds: 5, pieces: 8, sheetKinds: 1, longest: 30, kerfUm: 300 });
      const problem = makeRectangleProblem(group);
      const prices = Float64Array.from(group.demands, () => random.below(1000));
      const value = (grid: number): number | undefined =>
        GuillotineTable.make(problem, { sheet: 0, grid, limited: [], mostWork: MOST_WORK })?.evaluate(prices);
      const exact = value(1)!;
      for (const grid of [2, 3, 7, 10, 25]) {
        expect(value(grid) ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(exact);
      }
    }
  });

  it('is not made when it would be too much work', () => {
    const group = smallGroup(3, { kinds: 4, pieces: 7, sheetKinds: 1, longest: 9, kerfUm: 0 });
    const problem = makeRectangleProblem(group);
    expect(GuillotineTable.make(problem, { sheet: 0, grid: 1, limited: [], mostWork: 10 })).toBeNull();
    expect(
      GuillotineTable.make(problem, { sheet: 0, grid: 1000, limited: [], mostWork: MOST_WORK }),
    ).toBeNull();
  });
});
