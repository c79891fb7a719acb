import { beforeAll, describe, expect, it } from 'vitest';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
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
    for (let seed = 1; seed <= 6; seed++) {
      groups.push(smallGroup(seed, { kinds: 8, pieces: 26, sheetKinds: 2, longest: 9, kerfUm: 300 }));
    }
    for (const [seed, group] of groups.entries()) {
      let asked = 0;
      const search = (emphasis: 'plan' | 'bound') => {
        asked = 0;
        const stop = () => ++asked > 300;
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
});
