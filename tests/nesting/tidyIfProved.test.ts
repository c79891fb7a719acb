import { describe, expect, it } from 'vitest';
import { lowerBound } from '../../src/bounds/index.ts';
import { nest } from '../../src/nesting/index.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { smallGroup } from '../helpers/smallGroups.ts';

const groups = Array.from({ length: 60 }, (_, seed) =>
  smallGroup(seed, { kinds: 6, pieces: 20, sheetKinds: 1 + (seed % 2), longest: 9, kerfUm: 300 }),
);

describe('a first search that is tidied only if nothing follows', () => {
  it('gives just what a tidied one does where the plan is proved best, else a plan as good with the same cost', () => {
    let proved = 0;
    let open = 0;
    for (const [seed, group] of groups.entries()) {
      const { bound } = lowerBound(group, { solver: null, effort: 1e6 });
      const search = (finish: 'tidy' | 'tidy if proved') =>
        nest(group, bound, { seed, workLimit: 300, finish });
      const [always, ifProved] = [search('tidy'), search('tidy if proved')];
      if (!always.ok || !ifProved.ok) continue;
      assertNest(group, ifProved.nest);
      expect([ifProved.nest.costMinor, ifProved.nest.proved]).toEqual([
        always.nest.costMinor,
        always.nest.proved,
      ]);
      if (always.nest.proved) {
        proved++;
        expect(ifProved).toEqual(always);
      } else open++;
    }
    expect(Math.min(proved, open)).toBeGreaterThan(5);
  });

  it('gives a plan to be sawn, no dearer than the rough one, when the search is ended there', () => {
    let ended = 0;
    for (const [seed, group] of groups.entries()) {
      let asked = 0;
      const outcome = nestGroup(group, null, { seed, workLimit: 5000, stop: () => ++asked > 3 });
      if (!outcome.ok || outcome.nest.proved) continue;
      assertNest(group, outcome.nest);
      const rough = nestGroup(group, null, { seed, workLimit: 5000, stop: () => true });
      expect(rough.ok && rough.nest.costMinor).toBeGreaterThanOrEqual(outcome.nest.costMinor);
      ended++;
    }
    expect(ended).toBeGreaterThan(3);
  });
});
