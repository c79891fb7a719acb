import { describe, expect, it } from 'vitest';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { workshopList } from '../bench/workshopLists.ts';
import { assertNest } from '../helpers/assertNest.ts';

describe('a long list and several sizes of sheet', () => {
  it('costs no more than from the sheets of best value alone with half of the moves', () => {
    const list = workshopList(20);
    // Six times as many of each: some 700 pieces on more than twenty sheets.
    const demands = list.demands.map((demand) => ({ ...demand, count: 6 * demand.count }));
    const group = { ...list, demands };
    const workLimit = 4000;
    const both = nestGroup(group, null, { seed: 1, workLimit });
    const large = nestGroup({ ...group, sheets: group.sheets.slice(0, 1) }, null, {
      seed: 1,
      workLimit: 1500,
    });
    if (!both.ok || !large.ok) throw new Error('not nested');
    assertNest(group, both.nest);
    expect(both.nest.costMinor).toBeLessThanOrEqual(large.nest.costMinor);
  });

  it('is cut from what there is where the sheets of best value are few', () => {
    const list = workshopList(20);
    const demands = list.demands.map((demand) => ({ ...demand, count: 6 * demand.count }));
    const sheets = list.sheets.map((sheet, index) => (index === 0 ? { ...sheet, count: 10 } : sheet));
    const group = { ...list, demands, sheets };
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 2000 });
    if (!outcome.ok) throw new Error('not nested');
    assertNest(group, outcome.nest);
  });
});
