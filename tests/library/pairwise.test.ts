import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allPairs, pairsOf, pairwise } from '../helpers/pairwise.ts';

describe('pairwise', () => {
  it('holds every pair of values, and nothing but values', () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 2, maxLength: 9 });
    fc.assert(
      fc.property(sizes, (factors) => {
        const rows = pairwise(factors);
        const held = new Set(rows.flatMap(pairsOf));
        expect(allPairs(factors).filter((pair) => !held.has(pair))).toEqual([]);
        for (const row of rows) {
          expect(row).toHaveLength(factors.length);
          for (const [factor, value] of row.entries()) {
            expect(value).toBeGreaterThanOrEqual(0);
            expect(value).toBeLessThan(factors[factor]!);
          }
        }
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  it('counts the pairs right', () => {
    expect(allPairs([2, 3, 4])).toHaveLength(2 * 3 + 2 * 4 + 3 * 4);
    expect(new Set(allPairs([2, 3, 4])).size).toBe(26);
    expect(pairsOf([1, 2, 3])).toEqual(['0 1 1 2', '0 1 2 3', '1 2 2 3']);
  });

  it('takes far fewer rows than all combinations', () => {
    // Ten factors of three values have 59,049 combinations; nine rows are the least for two factors.
    const rows = pairwise(Array.from({ length: 10 }, () => 3));
    expect(rows.length).toBeGreaterThanOrEqual(9);
    expect(rows.length).toBeLessThanOrEqual(27);
  });

  it('gives the same rows again', () => {
    expect(pairwise([3, 2, 4, 2])).toEqual(pairwise([3, 2, 4, 2]));
  });

  it('takes one factor, and none', () => {
    expect(pairwise([3])).toEqual([[0], [1], [2]]);
    expect(pairwise([])).toEqual([]);
  });
});
