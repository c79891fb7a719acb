/**
 * Kantorovich's wood workshop, as told in D. Yurichev, SAT/SMT by Example, "Wood workshop, linear programming and
 * Leonid Kantorovich": sheets of 6 × 13, wanted 800 pieces of 4 × 5 and 400 of 2 × 3 that may be turned. The answer is
 * 275 sheets. Prices of 5/16 and 1/16 prove it: the best pattern is worth exactly 1, and 800·5/16 + 400/16 = 275, where
 * areas alone prove only 236.
 */
import { describe, expect, it } from 'vitest';
import { recheckBound } from '../../src/basics/recheckBound.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { lowerBound } from '../../src/bounds/index.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { plainGroup } from '../helpers/smallGroups.ts';

const workshop = plainGroup({
  pieces: [
    [4, 5, 800],
    [2, 3, 400],
  ],
  sheets: [{ mm: [6, 13], priceMinor: 1 }],
});
/** Ten times as large, less a kerf of 3 on every side. */
const sawn = plainGroup({
  pieces: [
    [37, 47, 800],
    [17, 27, 400],
  ],
  sheets: [{ mm: [57, 127], priceMinor: 1 }],
  kerfUm: 3000,
});

describe.each([
  ['without kerf', workshop],
  ['with a kerf', sawn],
])('the wood workshop %s', (_, group) => {
  it('needs 236 sheets by area and 275 by the prices 5/16 and 1/16', () => {
    const problem = makeRectangleProblem(group);
    expect(recheckBound(problem, { method: 'area' }).sheets).toBe(236);
    const certificate = {
      method: 'pattern prices',
      denominator: 16,
      prices: [5, 1],
      sheetValues: [16],
      limited: [],
      grid: 1,
    } as const;
    expect(recheckBound(problem, certificate)).toEqual({ sheets: 275, costMinor: 275 });
  });

  it('is bounded by 275 sheets without being told the prices', async () => {
    const { bound } = lowerBound(group, { solver: await loadSolver(), effort: 50_000_000 });
    expect(bound.sheets).toBe(275);
    expect(recheckBound(makeRectangleProblem(group), bound.certificate).sheets).toBe(275);
  });
});
