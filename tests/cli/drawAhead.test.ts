import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { DrawingAhead } from '../../cli/cutting/drawAhead.ts';
import type { PreparedJob } from '../../cli/cutting/prepareJobs.ts';
import type { DrawingTools } from '../../src/pipeline/makePapers.ts';
import { drawnKey, makePapers, provePlan, usualWishes } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { measure } from '../drawing/drawingTools.ts';
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
const tools: DrawingTools = { measure };
const prepared: PreparedJob[] = [{ job, file: path, folder: 'out/demo-short' }];

const drawings = (papers: ReadonlyMap<string, string>) =>
  [...papers].filter(([name]) => name.startsWith('cut-plans/'));

describe('drawing while others are searched', () => {
  it('waits until no search waits for a thread, then draws what is done, and no more once it has ended', async () => {
    const ahead = new DrawingAhead(prepared, 1, usualWishes, Promise.resolve(tools));
    const sizes = (all: ReadonlyMap<string, ReadonlyMap<string, string>>) =>
      [...all.values()].reduce((sum, papers) => sum + papers.size, 0);
    const drawn = () => sizes(ahead.end()[0]!);
    ahead.groupDone(0, 0, outcomes[0]!, 1);
    await setTimeout(50);
    ahead.groupDone(0, 1, outcomes[1]!, 0);
    for (let tries = 0; tries < 400 && (ahead as unknown as { running: boolean }).running; tries++) {
      await setTimeout(25);
    }
    expect(drawn()).toBeGreaterThanOrEqual(2);
    const before = drawn();
    ahead.groupDone(0, 2, outcomes[2]!, 0);
    await setTimeout(50);
    expect(drawn()).toBe(before);
    // The papers are the same, whether some of them were drawn before or not.
    const papers = makePapers(job, proven, tools, usualWishes, ahead.end()[0]);
    expect([...papers]).toEqual([...makePapers(job, proven, tools)]);
  });

  it('is used for a group whose plan is the same, and for no other', () => {
    const [group] = proven.plan.groups;
    const name = drawings(makePapers(job, proven, tools))[0]![0];
    const given = new Map([[name, 'drawn before']]);
    const used = makePapers(job, proven, tools, usualWishes, new Map([[drawnKey(group!), given]]));
    expect(used.get(name)).toBe('drawn before');
    const [sheet, ...sheets] = group!.sheets;
    const other = { ...group!, sheets: [{ ...sheet!, copies: sheet!.copies + 1 }, ...sheets] };
    const anew = makePapers(job, proven, tools, usualWishes, new Map([[drawnKey(other), given]]));
    expect(anew.get(name)).not.toBe('drawn before');
  });
});
