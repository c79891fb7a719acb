import { describe, expect, it } from 'vitest';
import { lowerBound } from '../../src/bounds/index.ts';
import type { SheetPattern } from '../../src/model/patterns.ts';
import { nest } from '../../src/nesting/index.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { smallGroup } from '../helpers/smallGroups.ts';
import { stockGroup } from '../helpers/stockGroups.ts';

describe('starting from patterns', () => {
  it('gives valid nests for the patterns of any small group, with and without limits of the saw', async () => {
    const solver = await loadSolver();
    for (let seed = 1; seed <= 80; seed++) {
      const plain = smallGroup(seed, { kinds: 6, pieces: 30, sheetKinds: 3, longest: 12, kerfUm: 300 });
      const turns = [null, 1, 2, 3][seed % 4]!;
      const firstCut = (['either', 'rip', 'crosscut'] as const)[seed % 3]!;
      const group = { ...plain, saw: { ...plain.saw, turns, firstCut } };
      const { bound, patterns } = lowerBound(group, { solver, effort: 1e7 });
      const outcome = nest(group, bound, { seed, workLimit: 300 }, patterns);
      if (outcome.ok) assertNest(group, outcome.nest);
      else expect([seed, turns !== null || firstCut !== 'either']).toEqual([seed, true]);
    }
  });

  it('cuts ten thousand pieces of three sizes as the bound says, within a moment', async () => {
    const group = stockGroup({
      demands: [
        [900, 500, 4000],
        [600, 400, 3500],
        [450, 300, 2500],
      ],
      saw: { kerfUm: 3200 },
    });
    const { bound, patterns } = lowerBound(group, { solver: await loadSolver(), effort: 1e9 });
    const outcome = nest(group, bound, { seed: 1, workLimit: 2000 }, patterns);
    if (!outcome.ok) throw new Error('not nested');
    assertNest(group, outcome.nest);
    expect(outcome.nest.costMinor).toBeLessThanOrEqual(bound.costMinor + 2);
  });

  it('passes over patterns that are too large, hold what nobody wants, or lie across the grain', () => {
    const group = stockGroup({
      demands: [
        [1000, 400, 3, 'length'],
        [500, 300, 0],
      ],
      sheets: [{ lengthMm: 2000, widthMm: 900 }],
    });
    const item = (index: number, turned = false) => ({ kind: 'item' as const, item: index, turned });
    const pattern = (tree: SheetPattern['tree']): SheetPattern => ({ sheet: 0, counts: [], tree, use: 1 });
    const outcome = nest(
      group,
      { sheets: 0, costMinor: 0, certificate: { method: 'area' } },
      { seed: 1, workLimit: 0 },
      [
        pattern({ kind: 'stack', axis: 'w', children: [item(0), item(0), item(0)] }),
        pattern({ kind: 'stack', axis: 'h', children: [item(1), item(1)] }),
        pattern({ kind: 'stack', axis: 'w', children: [item(0, true), item(0, true)] }),
      ],
    );
    if (!outcome.ok) throw new Error('not nested');
    assertNest(group, outcome.nest);
    expect(outcome.nest.costMinor).toBe(1);
  });
});
