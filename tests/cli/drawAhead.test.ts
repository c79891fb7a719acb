import { describe, expect, it } from 'vitest';
import { type DrawGroup, DrawingAhead } from '../../cli/cutting/drawAhead.ts';
import type { PreparedJob } from '../../cli/cutting/prepareJobs.ts';
import { cutPlansOfGroup, drawCutPlans } from '../../src/pipeline/cutPlanPapers.ts';
import { drawnKey, makePapers, provePlan, usualWishes } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { measure, window } from '../drawing/drawingTools.ts';
import { demoFiles, demoLibrary, demoRoot, must } from '../helpers/demoVan.ts';

const path = `${demoRoot}/orders/demo-short.yaml`;
const whole = must(prepareOrder(demoFiles().get(path)!, path, demoLibrary()));
// Groups of one sheet or two, which are soon drawn.
const bySize = whole.groups.toSorted((a, b) => a.demands.length - b.demands.length);
const job = { ...whole, groups: bySize.slice(0, 3) };
const outcomes = job.groups.map((group) => nestGroup(group, null, { seed: 1, workLimit: 0 }));
const nests = outcomes.map((outcome) => {
  if (!outcome.ok) throw new Error('not nested');
  return outcome.nest;
});
const proven = provePlan(job, nests, 1);
if (!proven.ok) throw new Error('not proven');
const tools = { measure, window: window as never };
const prepared: PreparedJob[] = [{ job, file: path, folder: 'out/demo-short' }];

/** Draws and notes what it was asked for. */
function drawing(asked: string[]): DrawGroup {
  return async (subject, group, wishes) => {
    asked.push(drawnKey(group));
    return cutPlansOfGroup(subject, group, tools, wishes);
  };
}

describe('drawing while others are searched', () => {
  it('draws each group once, with the same papers as when all are drawn in the end', async () => {
    const asked: string[] = [];
    const ahead = new DrawingAhead(prepared, 1, usualWishes, drawing(asked));
    for (const group of [0, 1]) ahead.groupDone(0, group, outcomes[group]!);
    await expect.poll(() => asked.length).toBe(2);
    const drawn = await ahead.plansOf(0, proven.plan);
    expect(asked.toSorted()).toEqual(proven.plan.groups.map(drawnKey).sort());
    const inTheEnd = drawCutPlans(job, proven.plan, tools, usualWishes);
    expect([...makePapers(job, proven, drawn)]).toEqual([...makePapers(job, proven, inTheEnd)]);
  });

  it('is of no use to a group whose plan is another in the end', async () => {
    const asked: string[] = [];
    const ahead = new DrawingAhead(prepared, 1, usualWishes, drawing(asked));
    ahead.groupDone(0, 0, outcomes[0]!);
    await expect.poll(() => asked.length).toBe(1);
    const [group, ...groups] = proven.plan.groups;
    const other = {
      ...group!,
      sheets: group!.sheets.map((sheet) => ({ ...sheet, number: sheet.number + 6 })),
    };
    const plan = { ...proven.plan, groups: [other, ...groups] };
    const drawn = await ahead.plansOf(0, plan);
    expect(asked).toContain(drawnKey(other));
    expect([...drawn.get(drawnKey(other))!.keys()].join()).toContain('7');
  });

  it('tells a fault of the drawing where the papers are made, and not before', async () => {
    const ahead = new DrawingAhead(prepared, 1, usualWishes, () => Promise.reject(new Error('no ink')));
    ahead.groupDone(0, 0, outcomes[0]!);
    await expect(ahead.plansOf(0, proven.plan)).rejects.toThrow('no ink');
  });
});
