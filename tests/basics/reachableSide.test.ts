import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reachableSide } from '../../src/basics/reachableSide.ts';

/** Sum by sum, as slowly as one can. */
function bySums(sides: readonly number[], most: number): number {
  const reached = [true];
  for (let sum = 1; sum <= most; sum++) {
    reached[sum] = sides.some((side) => side <= sum && reached[sum - side] === true);
  }
  return reached.lastIndexOf(true);
}

describe('the most of a side that pieces can cover', () => {
  it('agrees with all sums, one after another', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 6 }),
        fc.integer({ min: 1, max: 400 }),
        (sides, most) => {
          expect(reachableSide(sides, most)).toBe(bySums(sides, most));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('is nothing where no piece fits, and the side itself where one fits exactly', () => {
    expect(reachableSide([500], 499)).toBe(0);
    expect(reachableSide([7, 499], 499)).toBe(499);
  });

  it('is the side itself where working it out would take too long', () => {
    const sides = Array.from({ length: 200 }, (_, i) => 2 * (100_000 + i));
    expect(reachableSide(sides, 8_000_001)).toBe(8_000_001);
  });
});
