import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import { nestGroup, nestInParts } from '../../src/pipeline/nestGroup.ts';
import { betterOf, partsOfSearch } from '../../src/pipeline/partsOfSearch.ts';
import { workshopListByBoard } from '../bench/workshopLists.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { smallGroup } from '../helpers/smallGroups.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

describe('searches that share the work on a group', () => {
  it('give plans that can be sawn and bounds that no plan is below', () => {
    let open = 0;
    // No plan of list 7's carcasses is proved best: to the end both searches have something to do.
    const groups = [workshopListByBoard(6, 0, 'both sizes')[0]!];
    for (let seed = 1; seed <= 3; seed++) {
      groups.push(smallGroup(seed, { kinds: 8, pieces: 26, sheetKinds: 2, longest: 9, kerfUm: 300 }));
    }
    for (const [seed, group] of groups.entries()) {
      let asked = 0;
      const search = (emphasis: 'plan' | 'bound') => {
        asked = 0;
        const stop = () => ++asked > 100;
        return nestGroup(group, solver, { seed, workLimit: 2_000_000, emphasis, stop });
      };
      const [plan, bound] = [search('plan'), search('bound')];
      if (!plan.ok || !bound.ok) continue;
      assertNest(group, plan.nest);
      assertNest(group, bound.nest);
      if (!plan.nest.proved) open++;
      const cheaper = Math.min(plan.nest.costMinor, bound.nest.costMinor);
      expect(Math.max(plan.nest.bound.costMinor, bound.nest.bound.costMinor)).toBeLessThanOrEqual(cheaper);
    }
    expect(open).toBeGreaterThan(0);
  });

  it('find in parts what can be sawn, with the bound by patterns, the same each time', () => {
    const groups = [19, 23].map((list) => workshopListByBoard(list, 0, 'both sizes')[0]!);
    for (const group of groups) {
      expect(partsOfSearch(group, 2000)).toEqual(['plan alone', 'bound alone']);
      const [one, again] = [1, 2].map(() => nestInParts(group, solver, { seed: 1, workLimit: 2000 }));
      expect(again).toEqual(one);
      if (!one!.ok) throw new Error('it can be nested');
      assertNest(group, one!.nest);
      const [plan, bound] = partsOfSearch(group, 2000).map((emphasis) =>
        nestGroup(group, solver, { seed: 1, workLimit: 2000, emphasis }),
      );
      expect(betterOf(plan!, bound!)).toEqual(one);
      const quick = nestGroup(group, null, { seed: 1, workLimit: 1000 });
      if (!quick.ok) throw new Error('it can be nested');
      expect(one!.nest.bound.costMinor).toBeLessThanOrEqual(one!.nest.costMinor);
      expect(one!.nest.bound.costMinor).toBeGreaterThanOrEqual(quick.nest.bound.costMinor);
      expect(one!.nest.costMinor).toBeLessThanOrEqual(quick.nest.costMinor);
    }
  });

  it('are one where the sizes are few, the copies many or the moves', () => {
    const [carcass, front] = workshopListByBoard(19, 0, 'both sizes');
    expect(partsOfSearch(front!, 2000)).toEqual([]);
    expect(partsOfSearch(carcass!, 400_000)).toEqual([]);
    const many = carcass!.demands.map((demand) => ({ ...demand, count: 8 * demand.count }));
    expect(partsOfSearch({ ...carcass!, demands: many }, 2000)).toEqual([]);
  });
});
