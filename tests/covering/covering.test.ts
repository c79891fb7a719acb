import { beforeAll, describe, expect, it } from 'vitest';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { lowerBound } from '../../src/bounds/index.ts';
import { coverFromPool } from '../../src/covering/coverFromPool.ts';
import type { PoolSheet } from '../../src/model/covering.ts';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { exactNest, setsThatFit } from '../helpers/exactNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { plainGroup, smallGroup } from '../helpers/smallGroups.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Every set of pieces that every kind of sheet can hold. */
function fullPool(group: StockGroup): PoolSheet[] {
  const kinds = group.demands.flatMap((demand, d) => Array.from({ length: demand.count }, () => d));
  const pool: PoolSheet[] = [];
  for (const [sheet, fits] of setsThatFit(group).entries()) {
    for (let set = 1; set < fits.length; set++) {
      if (!fits[set]) continue;
      const counts = new Map<number, number>();
      for (const [bit, d] of kinds.entries()) {
        if ((set >> bit) & 1) counts.set(d, (counts.get(d) ?? 0) + 1);
      }
      pool.push({
        id: 7 + 3 * pool.length,
        sheet,
        counts: [...counts].map(([item, count]) => ({ item, count })),
      });
    }
  }
  return pool;
}

describe('coverFromPool', () => {
  it('finds the true least cost from a pool of all patterns, never below the bound', () => {
    let plans = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const group = smallGroup(seed, { kinds: 4, pieces: 7, sheetKinds: 3, longest: 7, kerfUm: 400 });
      const exact = exactNest(group);
      const problem = makeRectangleProblem(group);
      const pool = fullPool(group);
      const choice = coverFromPool({ solver, problem, pool, below: null, nodes: 10_000 });
      expect(choice?.costMinor ?? null).toBe(exact?.costMinor ?? null);
      if (!exact || !choice) continue;
      plans++;
      expect(choice.cheapest).toBe(true);
      const { bound } = lowerBound(group, { solver, effort: 1e7, planCost: exact.costMinor });
      expect(bound.costMinor).toBeLessThanOrEqual(choice.costMinor);
      const least = exact.costMinor;
      expect(coverFromPool({ solver, problem, pool, below: least, nodes: 10_000 })).toBeNull();
      const cheaper = coverFromPool({ solver, problem, pool, below: least + 1, nodes: 10_000 });
      expect(cheaper?.costMinor).toBe(least);
    }
    expect(plans).toBeGreaterThan(30);
  });

  it('answers null when the pool does not hold every piece, and when it is empty', () => {
    const group = plainGroup({
      pieces: [
        [1, 1, 1],
        [2, 2, 1],
      ],
      sheets: [{ mm: [2, 2] }],
    });
    const problem = makeRectangleProblem(group);
    const half = [{ id: 1, sheet: 0, counts: [{ item: 0, count: 1 }] }];
    expect(coverFromPool({ solver, problem, pool: half, below: null, nodes: 100 })).toBeNull();
    expect(coverFromPool({ solver, problem, pool: [], below: null, nodes: 100 })).toBeNull();
  });

  it('keeps to the number of sheets there are and gives the same choice twice', () => {
    const group = plainGroup({
      pieces: [[2, 2, 3]],
      sheets: [
        { mm: [2, 2], priceMinor: 1, count: 2 },
        { mm: [3, 3], priceMinor: 50 },
      ],
    });
    const problem = makeRectangleProblem(group);
    const counts = [{ item: 0, count: 1 }];
    const pool = [
      { id: 10, sheet: 0, counts },
      { id: 20, sheet: 1, counts },
      { id: 30, sheet: 1, counts },
    ];
    const ask = () => coverFromPool({ solver, problem, pool, below: null, nodes: 100 });
    expect(ask()).toEqual({
      chosen: [
        { id: 10, copies: 2 },
        { id: 20, copies: 1 },
      ],
      costMinor: 52,
      cheapest: true,
    });
    expect(JSON.stringify(ask())).toBe(JSON.stringify(ask()));
  });
});
