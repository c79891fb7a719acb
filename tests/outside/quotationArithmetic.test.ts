import { describe, expect, it } from 'vitest';
import { percentOf, priceOf, workPriceOf } from '../../src/quoting/amounts.ts';

/**
 * Prices of lengths and pieces with the answers that are printed in school quizzes on the arithmetic of timber (13 ft at
 * 2.75, 8 ft 6 in at 2.75, 1 × 6 in × 14 ft at 4.25 a board foot, three ¾ × 2 × 14½ in at 2.10 a board foot): the halves
 * show that they are rounded up.
 */
describe('price of a quantity, as printed worked examples have it', () => {
  it.each([
    ['13 ft at 2.75', 13_000, 275, 3575],
    ['8 ft 6 in at 2.75, 23.375 before rounding', 8500, 275, 2338],
    ['7 board feet at 4.25', 7000, 425, 2975],
    // Three pieces counted as 1 in thick: 3 × 2 × 14.5 / 144 = 0.604 board feet.
    ['0.604 board feet at 2.10', 604, 210, 127],
  ])('%s', (_, quantityMilli, priceMinor, amountMinor) => {
    expect(priceOf(quantityMilli, priceMinor)).toBe(amountMinor);
  });
});

/**
 * Mark-up is a percentage of cost, margin one of price: a mark-up of 25 % is a margin of 20 %, and one of 100 % a margin
 * of 50 % (arithmetic, as every primer of bookkeeping has it; from memory). Here it is always one of cost.
 */
it.each([
  [2500, 0.2],
  [10_000, 0.5],
  [5000, 1 / 3],
])('a mark-up of %i hundredths of a percent', (percent, margin) => {
  const cost = 120_000;
  const added = percentOf(cost, percent);
  expect(added / (cost + added)).toBeCloseTo(margin, 6);
});

/** 3600 s are an hour (SI brochure, table 8, units accepted for use with the SI), whatever it is parted into. */
it('an hour costs what an hour costs', () => {
  expect(workPriceOf(1000, 3_600_000, 5200)).toBe(5200);
  expect(workPriceOf(3_600_000, 1000, 5200)).toBe(5200);
  expect(workPriceOf(60_000, 60_000, 5200)).toBe(5200);
});
