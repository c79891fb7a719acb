import { describe, expect, it } from 'vitest';
import { countsOf, fitsSheet } from '../../src/basics/patternTree.ts';
import { recheckBound } from '../../src/basics/recheckBound.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { everySplitBound } from '../../src/bounds/everySplitBound.ts';
import { areaBound } from '../../src/bounds/index.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { exactNest } from '../helpers/exactNest.ts';
import { plainGroup, smallGroup } from '../helpers/smallGroups.ts';

const EFFORT = 200_000_000;
const shapes = [
  { kinds: 3, pieces: 5, sheetKinds: 1, longest: 7, kerfUm: 0 },
  { kinds: 4, pieces: 6, sheetKinds: 3, longest: 6, kerfUm: 0 },
  { kinds: 5, pieces: 6, sheetKinds: 2, longest: 9, kerfUm: 600 },
  { kinds: 2, pieces: 7, sheetKinds: 2, longest: 8, kerfUm: 1000 },
];

describe('trying every way to part few pieces', () => {
  it('gives the least cost of 1,200 small groups, as an exhaustive search does, with a plan for it', () => {
    let settled = 0;
    let withPlan = 0;
    for (const [s, shape] of shapes.entries()) {
      for (let k = 0; k < 300; k++) {
        const group = smallGroup(5000 + k + 100_000 * s, shape);
        const exact = exactNest(group);
        if (!exact) continue;
        const problem = makeRectangleProblem(group);
        const found = everySplitBound(problem, areaBound(group), exact.costMinor + 1, EFFORT);
        if (!found) continue;
        const { bound, patterns } = found;
        const said = `${JSON.stringify(found)} for ${JSON.stringify(exact)} of ${JSON.stringify(group)}`;
        if (bound.costMinor > exact.costMinor || bound.sheets > exact.sheets) expect.fail(said);
        expect(recheckBound(problem, bound.certificate)).toEqual({
          sheets: bound.sheets,
          costMinor: bound.costMinor,
        });
        if (patterns.length > 0 || bound.costMinor >= exact.costMinor) settled++;
        if (patterns.length === 0) continue;
        withPlan++;
        const cost = patterns.reduce((sum, { sheet }) => sum + problem.sheets[sheet]!.costMinor, 0);
        if (cost !== exact.costMinor) expect.fail(said);
        const counts = new Int32Array(problem.items.kinds);
        for (const pattern of patterns) {
          expect(fitsSheet(problem, pattern)).toBe(true);
          for (const { item, count } of countsOf(pattern.tree)) counts[item]! += count;
        }
        expect(counts).toEqual(problem.items.count);
      }
    }
    expect(settled).toBeGreaterThan(1000);
    expect(withPlan).toBeGreaterThan(1000);
  });

  it('proves without any prices that four boards which only a pinwheel would hold take two sheets', () => {
    const group = plainGroup({ pieces: [[60, 40, 4]], sheets: [{ mm: [100, 100] }] });
    expect(areaBound(group).sheets).toBe(1);
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 10 });
    if (!outcome.ok) throw new Error('not nested');
    assertNest(group, outcome.nest);
    expect(outcome.nest.proved).toBe(true);
    expect(outcome.nest.bound).toMatchObject({
      sheets: 2,
      certificate: { method: 'together', tooFew: [[1]] },
    });
  });

  it('is not believed when a certificate claims what is not so', () => {
    const group = plainGroup({ pieces: [[50, 100, 2]], sheets: [{ mm: [100, 100] }] });
    const problem = makeRectangleProblem(group);
    const certificate = { method: 'together', parts: [{ method: 'area' }], tooFew: [[1]] } as const;
    expect(recheckBound(problem, certificate).sheets).toBe(1);
    for (const mix of [[], [1, 1], [-1], [0.5], [1e9]]) {
      expect(recheckBound(problem, { ...certificate, tooFew: [mix] }).sheets).toBe(1);
    }
  });
});
