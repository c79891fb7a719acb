import { describe, expect, it } from 'vitest';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import { drawOverview } from '../../src/drawing/overview.ts';
import { namesInStack, stackSizes, togetherWords } from '../../src/drawing/stackWords.ts';
import type { PlanGroup, PlanSheet } from '../../src/model/plan.ts';
import { measure, toSvg, words } from './drawingTools.ts';
import { stripPlan } from './planFixtures.ts';

/** Two plans of the same cuts, five sheets of the first and one of the second, on which panel p1 is p2. */
function twoPlans(): { group: PlanGroup; sheets: readonly [PlanSheet, PlanSheet] } {
  const { group, sheet } = stripPlan(
    [
      { name: 'left side', unit: 'sink', size: [800, 450] },
      { name: 'right side', unit: 'sink', size: [800, 450] },
    ],
    {},
    { copies: 5 },
  );
  const other = { ...structuredClone(sheet), number: 2, copies: 1 };
  for (const piece of other.pieces) if (piece.is === 'panel' && piece.panel === 'p1') piece.panel = 'p2';
  group.sheets = [sheet, other];
  return { group, sheets: [sheet, other] };
}

const textOf = (group: PlanGroup, sheet: PlanSheet) =>
  drawCutPlan(group, sheet, { measure, words, job: 'test' })
    .map(toSvg)
    .join('\n')
    .replace(/<[^>]*>/g, ' ');

describe('sheets that are sawn together', () => {
  it('say how many lie in each stack, and with which other plans', () => {
    const { group, sheets } = twoPlans();
    const [first, second] = sheets;
    expect(togetherWords(group, first, words.cutPlan)).toBeNull();
    group.stacks = [{ times: 1, sheets: [{ number: 1, copies: 5 }] }];
    expect(togetherWords(group, first, words.cutPlan)).toBe('cut 5 sheets together');
    expect(togetherWords(group, second, words.cutPlan)).toBeNull();
    group.stacks = [{ times: 2, sheets: [{ number: 1, copies: 2 }] }];
    expect(stackSizes(group, first)).toBe('2 × 2 + 1');
    group.stacks = [
      { times: 1, sheets: [{ number: 1, copies: 3 }] },
      {
        times: 1,
        sheets: [
          { number: 1, copies: 2 },
          { number: 2, copies: 1 },
        ],
      },
    ];
    expect(togetherWords(group, first, words.cutPlan)).toBe('cut 3 + 3 sheets together, with cut plan 2');
    expect(togetherWords(group, second, words.cutPlan)).toBe('cut 3 sheets together, with cut plan 1');
  });

  it('list the pieces that have other names on other sheets', () => {
    const { group, sheets } = twoPlans();
    const [first, second] = sheets;
    group.stacks = [
      {
        times: 1,
        sheets: [
          { number: 1, copies: 5 },
          { number: 2, copies: 1 },
        ],
      },
    ];
    const names = namesInStack(group, first);
    expect(names.map(({ here, others }) => [here.name, others.map((o) => [o.panel.name, o.plans])])).toEqual([
      ['left side', [['right side', [2]]]],
    ]);
    expect(namesInStack(group, second).map(({ here, others }) => [here.name, others[0]!.panel.name])).toEqual(
      [['right side', 'left side']],
    );
    const text = textOf(group, first);
    expect(text).toContain('Other names on other sheets of the stack');
    expect(text).toContain('plan 2: right side, sink');
  });

  it('are drawn with this in title, title block and table of cuts, and none of it without stacks', () => {
    const { group, sheets } = twoPlans();
    const [first] = sheets;
    expect(textOf(group, first)).not.toContain('together');
    expect(textOf(group, first)).not.toContain('each through');
    group.stacks = [{ times: 1, sheets: [{ number: 1, copies: 5 }] }];
    expect(textOf(group, first)).toContain('cut 5 sheets together');
    expect(textOf(group, first)).toContain('Cuts in order, each through 5 sheets');
    const [drawing] = drawCutPlan(group, first, { measure, words, job: 'test' });
    expect(drawing!.title).toBe('Cut plan 1 of 2, poplar ply, laminated matt white, cut 5 sheets together');
    const overview = drawOverview(group, { measure, words, job: 'test' }).map(toSvg).join('\n');
    expect(overview).toContain('1 · cut 5 sheets together');
    expect(overview).toContain('2 · 1 sheet');
  });
});

describe('the rules of the saw', () => {
  it('stand in the title block where the saw has them', () => {
    const { group, sheets } = twoPlans();
    expect(textOf(group, sheets[0])).not.toContain('no cut over');
    Object.assign(group.saw, { longestCut: 3200, smallestPart: 50 });
    expect(textOf(group, sheets[0]).replace(/\s+/g, ' ')).toContain('no cut over 3200');
    expect(textOf(group, sheets[0]).replace(/\s+/g, ' ')).toContain('under 50 wide');
  });
});
