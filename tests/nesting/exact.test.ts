import { describe, expect, it } from 'vitest';
import type { Bound } from '../../src/model/nest.ts';
import { nest } from '../../src/nesting/index.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { exactNest } from '../helpers/exactNest.ts';
import { smallGroup } from '../helpers/smallGroups.ts';

const noBound: Bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } };
const GROUPS = 60;

describe('beside an exhaustive search over all guillotine plans', () => {
  it('is never cheaper, knows what cannot be cut, and finds the cheapest plan of seven pieces', () => {
    const dearer: string[] = [];
    for (let seed = 1; seed <= GROUPS; seed++) {
      const kerfUm = seed % 2 === 0 ? 400 : 0;
      const group = smallGroup(seed, { kinds: 5, pieces: 7, sheetKinds: 3, longest: 12, kerfUm });
      const exact = exactNest(group);
      const outcome = nest(group, noBound, { seed: 1, workLimit: 15_000 });
      if (!outcome.ok || exact === null) {
        expect([seed, outcome.ok]).toEqual([seed, exact !== null]);
        continue;
      }
      assertNest(group, outcome.nest);
      expect(outcome.nest.costMinor).toBeGreaterThanOrEqual(exact.costMinor);
      if (outcome.nest.costMinor > exact.costMinor) {
        dearer.push(`seed ${seed}: ${outcome.nest.costMinor} for ${exact.costMinor}`);
      }
    }
    expect(dearer).toEqual([]);
  });
});
