import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GuillotineTable } from '../../src/basics/guillotineTable.ts';
import { leastSize } from '../../src/basics/patternTree.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { trimPattern } from '../../src/basics/trimPattern.ts';
import { blockPatterns } from '../../src/covering/blockPricing.ts';
import { Choices, fillKnapsack, laidOn } from '../../src/covering/knapsack.ts';
import { StripPricing } from '../../src/covering/stripPricing.ts';
import { smallGroup } from '../helpers/smallGroups.ts';

const seeds = fc.integer({ min: 1, max: 100_000 });

function problemOf(seed: number) {
  return makeRectangleProblem(
    smallGroup(seed, { kinds: 5, pieces: 12, sheetKinds: 2, longest: 17, kerfUm: 300 }),
  );
}

/** Prices near the areas, as a programme gives them, some of them 0. */
function pricesOf(seed: number, problem: ReturnType<typeof problemOf>): Float64Array {
  const { w, h } = problem.items;
  return Float64Array.from(w, (side, i) => ((seed * (i + 7)) % 5) * side * h[i]!);
}

describe('fillKnapsack', () => {
  it('finds what trying every mix of copies finds', () => {
    const things = fc.array(
      fc.record({ length: fc.integer({ min: 1, max: 9 }), worth: fc.integer({ min: 0, max: 20 }) }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(things, fc.integer({ min: 1, max: 24 }), (list, length) => {
        const sorted = list.toSorted((a, b) => a.length - b.length);
        const most = (from: number, rest: number): number => {
          const thing = sorted[from];
          if (!thing) return 0;
          let best = 0;
          for (let n = 0; n * thing.length <= rest; n++) {
            best = Math.max(best, n * thing.worth + most(from + 1, rest - n * thing.length));
          }
          return best;
        };
        const choices = new Choices(sorted.length);
        for (const [mark, thing] of sorted.entries()) choices.offer(thing.length, thing.worth, mark);
        const best = new Float64Array(length + 1);
        const last = new Int32Array(length + 1);
        fillKnapsack(choices, length, best, last);
        expect(best[length]).toBe(most(0, length));
        const laid = laidOn(choices, last, length);
        expect(laid.reduce((sum, i) => sum + choices.lengths[i]!, 0)).toBeLessThanOrEqual(length);
        expect(laid.reduce((sum, i) => sum + choices.worths[i]!, 0)).toBe(best[length]);
      }),
    );
  });
});

describe('StripPricing', () => {
  it('gives patterns that fit, are worth what it says, and no more than the best of any number of stages', () => {
    let equal = 0;
    let all = 0;
    fc.assert(
      fc.property(seeds, fc.constantFrom('w', 'h'), (seed, axis) => {
        const few = problemOf(seed);
        // The table knows how many of each are wanted and gains by it; here it must not.
        const problem = { ...few, items: { ...few.items, count: few.items.count.map(() => 60) } };
        const prices = pricesOf(seed, problem);
        for (const [s, sheet] of problem.sheets.entries()) {
          // A saw that starts along w cuts strips that lie one behind another along h.
          if (sheet.firstBlade === axis) continue;
          const pricing = new StripPricing(problem, s, axis);
          const worth = pricing.price(prices);
          const pattern = pricing.patterns(prices, 0, 3)[0];
          const held = pattern?.counts.reduce((sum, { item, count }) => sum + count * prices[item]!, 0) ?? 0;
          expect(held).toBeCloseTo(worth, 6);
          const table = GuillotineTable.make(problem, { sheet: s, grid: 1, limited: [], mostWork: 1e9 })!;
          const best = table.evaluate(prices);
          expect(worth).toBeLessThanOrEqual(best);
          all++;
          if (worth === best) equal++;
          if (!pattern) continue;
          const size = leastSize(problem, pattern.tree);
          expect(size.w).toBeLessThanOrEqual(sheet.w);
          expect(size.h).toBeLessThanOrEqual(sheet.h);
        }
      }),
      { numRuns: 150 },
    );
    expect(equal).toBeGreaterThan(all / 2);
  });

  it('finds patterns of a strip with a block beside it that fit and are worth more than is asked', () => {
    let better = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = problemOf(seed);
        const prices = pricesOf(seed, problem);
        for (const [s, sheet] of problem.sheets.entries()) {
          const [edge, beside] = [new StripPricing(problem, s, 'w'), new StripPricing(problem, s, 'h')];
          const least = Math.max(edge.price(prices), beside.price(prices));
          for (const { tree, counts } of blockPatterns(edge, beside, prices, least)) {
            better++;
            const size = leastSize(problem, tree);
            expect(size.w).toBeLessThanOrEqual(sheet.w);
            expect(size.h).toBeLessThanOrEqual(sheet.h);
            expect(counts.reduce((sum, { item, count }) => sum + count * prices[item]!, 0)).toBeGreaterThan(
              least,
            );
          }
        }
      }),
      { numRuns: 300 },
    );
    // Four stages must at times be worth more than three.
    expect(better).toBeGreaterThan(0);
  });

  it('gives the best of all strips with blocks beside them, without filling every block', () => {
    let found = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = problemOf(seed);
        const prices = pricesOf(seed, problem);
        for (const s of problem.sheets.keys()) {
          const [edge, beside] = [new StripPricing(problem, s, 'w'), new StripPricing(problem, s, 'h')];
          edge.price(prices);
          beside.price(prices);
          const all = edge.wholeStrips().map(({ depth, worth }) => {
            const length = beside.length - depth;
            const block = beside.worthOfBlock(length);
            expect(beside.mostOfBlock(length)).toBeGreaterThanOrEqual(block - 1e-6);
            for (const asked of [block / 2, block, 2 * block]) {
              expect(beside.worthOfBlock(length, asked)).toBeCloseTo(Math.max(asked, block), 6);
            }
            return worth + block;
          });
          const best = all.filter((worth) => worth > 0).sort((a, b) => b - a);
          const worths = blockPatterns(edge, beside, prices, 0).map(({ counts }) =>
            counts.reduce((sum, { item, count }) => sum + count * prices[item]!, 0),
          );
          found += worths.length;
          expect(worths.length).toBe(Math.min(3, best.length));
          for (const [i, worth] of worths.entries()) expect(worth).toBeCloseTo(best[i]!, 6);
        }
      }),
      { numRuns: 150 },
    );
    expect(found).toBeGreaterThan(100);
  });

  it('keeps to the pieces there are, and fits', () => {
    fc.assert(
      fc.property(seeds, fc.constantFrom('w', 'h'), (seed, axis) => {
        const problem = problemOf(seed);
        const { count } = problem.items;
        for (const [s, sheet] of problem.sheets.entries()) {
          const pattern = new StripPricing(problem, s, axis).patternWithin(pricesOf(seed, problem), count);
          if (!pattern) continue;
          const size = leastSize(problem, pattern.tree);
          expect(size.w).toBeLessThanOrEqual(sheet.w);
          expect(size.h).toBeLessThanOrEqual(sheet.h);
          for (const held of pattern.counts) expect(held.count).toBeLessThanOrEqual(count[held.item]!);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('trimPattern', () => {
  it('leaves out what there is too much of, and nothing else', () => {
    fc.assert(
      fc.property(seeds, seeds, (seed, other) => {
        const problem = problemOf(seed);
        const left = Int32Array.from(problem.items.count, (_, i) => (other * (i + 3)) % 4);
        const pricing = new StripPricing(problem, 0, 'h');
        const prices = pricesOf(seed, problem);
        pricing.price(prices);
        const pattern = pricing.patterns(prices, 0, 1)[0];
        if (!pattern) return;
        const trimmed = trimPattern(pattern, left);
        const wanted = pattern.counts
          .map(({ item, count }) => ({ item, count: Math.min(count, left[item]!) }))
          .filter(({ count }) => count > 0);
        expect(trimmed?.counts ?? []).toEqual(wanted);
      }),
    );
  });
});
