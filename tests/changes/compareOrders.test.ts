import { describe, expect, it } from 'vitest';
import type { Nest } from '../../src/model/nest.ts';
import type { PlanFile, SawnCopies } from '../../src/model/plan.ts';
import { changeLists, compareOrders, comparePanels, restOfOrder } from '../../src/pipeline/compareOrders.ts';
import type { Job } from '../../src/pipeline/job.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { quoteOrder } from '../../src/pipeline/makeQuote.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { type PlannedOrder, plannedOrder } from '../helpers/demoPlan.ts';
import { readCsv } from '../helpers/readCsv.ts';

const old = plannedOrder('demo-short');
/** Other fronts, a lower fridge, no bed lockers. */
const changed = plannedOrder(
  'demo-short',
  ['front: { board: poplar-15, finish: warm-oak }', 'front: { board: poplar-15, finish: light-ash }'],
  ['fridge_height: 700', 'fridge_height: 750'],
  ['bed_lockers: both', 'bed_lockers: none'],
);

function planOf(job: Job): PlanFile {
  const nests = job.groups.map((group): Nest => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(`stock group ${group.id} was not nested`);
    return outcome.nest;
  });
  const proven = provePlan(job, nests, 1);
  if (!proven.ok) throw new Error(JSON.stringify(proven.findings));
  return proven.plan;
}

function sheetsOf(plan: PlanFile, which: (index: number) => boolean): SawnCopies[] {
  const all = plan.groups.flatMap(({ id, sheets }) =>
    sheets.map(({ number, copies }) => ({
      group: id,
      number,
      copies: Array.from({ length: copies }, (_, index) => index + 1),
    })),
  );
  return all.filter((_, index) => which(index));
}

function compared(after: PlannedOrder, sawn: readonly SawnCopies[]) {
  const panels = comparePanels(old.job.ordered!, after.job.ordered!, { plan: old.proven.plan, sheets: sawn });
  const rest = restOfOrder(panels, after.job, 'new.yaml', []);
  if (!rest.ok) throw new Error(JSON.stringify(rest.findings));
  const changes = compareOrders(panels, { before: old.proven.plan, sawn, rest: planOf(rest.value) }, null);
  return { panels, rest: rest.value, changes };
}

const counts = (job: Job) =>
  job.groups.flatMap(({ parts }) => parts).reduce((sum, { count }) => sum + count, 0);

describe('an order held against itself', () => {
  it('is the same in everything', () => {
    const { changes } = compared(old, []);
    expect(new Set(changes.panels.map(({ kind }) => kind))).toEqual(new Set(['same']));
    for (const row of changes.material) expect([row.toBuy, row.before]).toEqual([0, row.after]);
    for (const row of changes.prices) expect(row.afterMinor).toBe(row.beforeMinor);
  });

  it('needs nothing more of the saw once all of it is sawn', () => {
    const all = sheetsOf(old.proven.plan, () => true);
    const { rest, changes } = compared(old, all);
    expect(rest.groups).toEqual([]);
    const sheets = old.proven.plan.groups
      .flatMap((group) => group.sheets)
      .reduce((sum, { copies }) => sum + copies, 0);
    expect(sheets).toBeGreaterThan(5);
    expect(changes.sawn).toEqual({ sheets, panels: counts(old.job), used: counts(old.job) });
    for (const row of changes.material) expect(row.after, row.id).toBe(row.before);
    for (const row of changes.material) if (row.item !== 'fitting') expect(row.done, row.id).toBe(row.after);
    const [material] = changes.prices;
    expect(material!.afterMinor).toBe(material!.beforeMinor);
  });
});

describe('a changed order', () => {
  it('is priced as the estimates of both, while nothing is sawn', () => {
    const { changes, rest } = compared(changed, []);
    const total = (order: PlannedOrder, plan: PlanFile) =>
      quoteOrder(order.job.ordered!, plan).quotation.sums.totalMinor;
    expect(changes.prices.find(({ what }) => what === 'total')).toEqual({
      what: 'total',
      beforeMinor: total(old, old.proven.plan),
      afterMinor: total(changed, planOf(rest)),
    });
    // Two lockers with one front each.
    expect(changes.panels.filter(({ kind }) => kind === 'no longer needed')).toHaveLength(12);
  });

  it('has what is sawn taken off what is to be sawn, in whatever order it was sawn', () => {
    for (const parity of [0, 1]) {
      const sawn = sheetsOf(old.proven.plan, (index) => index % 2 === parity);
      const { panels, rest, changes } = compared(changed, sawn);
      const used = panels.uses.reduce((sum, { after, count }) => (after === null ? sum : sum + count), 0);
      expect(used).toBeGreaterThan(0);
      expect(counts(rest)).toBe(counts(changed.job) - used);
      expect(changes.sawn!.used).toBe(used);
      // Sheets of the new order are those that are sawn and those of the rest.
      const sheets = changes.material.filter(({ item }) => item === 'sheet');
      const done = sheets.reduce((sum, row) => sum + row.done, 0);
      expect(done).toBe(changes.sawn!.sheets);
      const restSheets = planOf(rest).groups.flatMap((group) => group.sheets);
      expect(sheets.reduce((sum, row) => sum + row.after, 0)).toBe(
        done + restSheets.reduce((sum, { copies }) => sum + copies, 0),
      );
      // Edging, holes and fittings are those of the whole new order.
      const whole = compared(changed, []).changes;
      for (const item of ['edging', 'fitting'] as const) {
        const amounts = (rows: typeof whole.material) =>
          rows.filter((row) => row.item === item).map(({ id, after }) => [id, after]);
        expect(amounts(changes.material)).toEqual(amounts(whole.material));
      }
    }
  });

  it('has its lists add up to the panels of both orders', () => {
    const lists = changeLists(
      compared(
        changed,
        sheetsOf(old.proven.plan, (index) => index < 4),
      ).changes,
      'EUR',
    );
    const rows = readCsv(lists.get('changed-panels.csv')!);
    const sum = (of: (row: Record<string, string>) => boolean, key: string) =>
      rows.filter(of).reduce((total, row) => total + Number(row[key]), 0);
    expect(sum(({ change }) => change !== 'new', 'count')).toBe(counts(old.job));
    expect(sum(({ change }) => change !== 'no longer needed', 'count')).toBe(counts(changed.job));
    expect(sum(() => true, 'sawn')).toBeGreaterThan(sum(() => true, 'used'));
    for (const row of readCsv(lists.get('changed-material.csv')!)) {
      expect(Number(row['difference'])).toBeCloseTo(Number(row['after']) - Number(row['before']), 3);
    }
  });
});
