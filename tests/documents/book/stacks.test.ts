import { describe, expect, it } from 'vitest';
import { makePlan } from '../../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../../src/demands/index.ts';
import { makeBook } from '../../../src/documents/book/makeBook.ts';
import type { BookSubject } from '../../../src/documents/book/subject.ts';
import { summarise } from '../../../src/documents/index.ts';
import { wordsOf } from '../../../src/documents/words/index.ts';
import { measurePlan } from '../../../src/replay/index.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { part, saw, supply } from '../../helpers/parts.ts';
import { nestOf, stack, wanted } from '../../helpers/planText.ts';

/** Three sheets in two halves each: panel a five times, panel b once. */
function chapters(cuttingHeightUm: number | null, language = 'en') {
  const half = stack('x', 2480, 1230, [wanted(0, 1238.4, 1230), wanted(0, 1238.4, 1230)]);
  const parts = [part('a', 1238.4, 1230, { count: 5 }), part('b', 1238.4, 1230, { count: 1 })];
  const group = makeStockGroups(parts, [supply(2500, 1250)], saw({ cuttingHeightUm })).groups[0]!;
  const nest = nestOf(group, [{ sheet: 0, copies: 3, root: half }]);
  const plan = makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 1 });
  const summaries = summarise(plan, measurePlan(plan)).groups;
  const subject = {
    plan,
    job: 'test',
    summaries,
    words: wordsOf(language),
    measure,
    units: 'mm',
    page: 'A4',
  } as BookSubject;
  return makeBook(subject).sections.filter((section) => section.id.startsWith('plan-'));
}

const textOf = (value: unknown) => JSON.stringify(value, (key, inner) => (key === 'drawings' ? [] : inner));

describe('the chapters of sheets that are cut together', () => {
  it('tell to lay them on each other, and which pieces are others on which sheet', () => {
    const [first, second] = chapters(60_000);
    expect(textOf(first)).toContain('Cut 3 sheets together: lay them on each other');
    expect(textOf(first)).toContain('Sheets of cut plan 2 lie in it too');
    expect(textOf(first)).toContain('Steps, each through 3 sheets');
    expect(textOf(first)).toContain('B is 1 a here; on the sheet of cut plan 2 it is 2 b.');
    expect(textOf(second)).toContain('B is 2 b here; on the sheet of cut plan 1 it is 1 a.');
    // A box to tick for every piece of every sheet in the stack.
    const ticks = [first, second].map((section) => {
      const blocks = section!.blocks.flatMap((block) =>
        block.kind === 'drawings' ? (block.beside ?? []).flat() : [],
      );
      return blocks.flatMap((block) => (block.kind === 'ticks' ? block.items.map((item) => item.panel) : []));
    });
    expect(ticks).toEqual([
      [1, 1, 1, 1],
      [1, 2],
    ]);
    expect(textOf(chapters(60_000, 'de')[0])).toContain('3 Platten zusammen sägen');
  });

  it('say nothing of it where sheets are sawn one by one', () => {
    const [first] = chapters(null);
    expect(textOf(first)).not.toContain('together');
    expect(textOf(first)).toContain('"text":"Steps"');
  });
});
