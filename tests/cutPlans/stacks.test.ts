import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sheetsSawn } from '../../src/basics/stacks.ts';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStacks } from '../../src/cutPlans/makeStacks.ts';
import { makeStockGroups, type SawWithTrim } from '../../src/demands/index.ts';
import type { NestedSheet } from '../../src/model/nest.ts';
import type { Part } from '../../src/model/part.ts';
import type { PlanFile, PlanGroup, PlanSheet } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, stack, wanted } from '../helpers/planText.ts';
import { makeRandomNest } from '../helpers/randomNest.ts';

const job = { job: 'test', currency: 'EUR', seed: 1 };
/** Room for three sheets of 15 mm. */
const HIGH = saw({ cuttingHeightUm: 59_999 });

/** A sheet of 2480 × 1230 in two halves. */
const half = stack('x', 2480, 1230, [wanted(0, 1238.4, 1230), wanted(0, 1238.4, 1230)]);

function planned(parts: readonly Part[], sheets: readonly NestedSheet[], by: SawWithTrim = HIGH): PlanFile {
  const group = makeStockGroups(parts, [supply(2500, 1250)], by).groups[0]!;
  const plan = makePlan([{ group, nest: nestOf(group, sheets) }], job);
  expect(replay(writePlan(plan)).findings).toEqual([]);
  return plan;
}

/** Halves of `count` sheets, all alike. */
function halves(count: number, by?: SawWithTrim): PlanFile {
  const parts = [part('a', 1238.4, 1230, { count: 2 * count })];
  return planned(parts, [{ sheet: 0, copies: count, root: half }], by);
}

const stacksOf = (plan: PlanFile) =>
  plan.groups[0]!.stacks!.map(({ times, sheets }) => [
    times,
    ...sheets.map(({ number, copies }) => `${copies} of ${number}`),
  ]);

describe('sheets cut alike', () => {
  it('lie on each other as high as the saw cuts, in stacks as even as can be', () => {
    expect(stacksOf(halves(1))).toEqual([]);
    expect(stacksOf(halves(2))).toEqual([[1, '2 of 1']]);
    expect(stacksOf(halves(3))).toEqual([[1, '3 of 1']]);
    expect(stacksOf(halves(4))).toEqual([[2, '2 of 1']]);
    expect(stacksOf(halves(7))).toEqual([
      [1, '3 of 1'],
      [2, '2 of 1'],
    ]);
    expect(stacksOf(halves(3, saw({ cuttingHeightUm: 45_000 })))).toEqual([[1, '3 of 1']]);
    expect(stacksOf(halves(3, saw({ cuttingHeightUm: 44_900 })))).toEqual([[1, '2 of 1']]);
    expect(stacksOf(halves(3, saw({ cuttingHeightUm: 29_900 })))).toEqual([]);
    expect(stacksOf(halves(3, saw()))).toEqual([]);
  });

  it('are sawn together where only the names of their panels differ, and each keeps its names', () => {
    const parts = [part('a', 1238.4, 1230, { count: 5 }), part('b', 1238.4, 1230, { count: 1 })];
    const plan = planned(parts, [{ sheet: 0, copies: 3, root: half }]);
    expect(stacksOf(plan)).toEqual([[1, '2 of 1', '1 of 2']]);
    const group = plan.groups[0]!;
    expect(
      group.sheets.map(({ copies, pieces }) => [copies, ...pieces.map((p) => p.is === 'panel' && p.panel)]),
    ).toEqual([
      [2, 'a', 'a'],
      [1, 'a', 'b'],
    ]);
    expect(sheetsSawn(group, 2)).toEqual({
      stacks: [{ times: 1, sheets: 3, own: 1, others: [1] }],
      singly: 0,
    });
  });

  it('are found where panels of one size with and without grain stand in another order', () => {
    const strips = (first: number, second: number) =>
      stack('y', 2480, 1230, [wanted(first, 2480, 613.4), wanted(second, 2480, 613.4)]);
    const parts = [part('a', 2480, 613.4, { count: 3 }), part('b', 2480, 613.4, { count: 3, grain: 'none' })];
    const plan = planned(parts, [
      { sheet: 0, copies: 1, root: strips(0, 1) },
      { sheet: 0, copies: 1, root: strips(1, 1) },
      { sheet: 0, copies: 1, root: strips(0, 0) },
    ]);
    expect(stacksOf(plan)).toEqual([[1, '1 of 1', '1 of 2', '1 of 3']]);
    expect(measurePlan(plan)[0]!.differentSheets).toBe(1);
  });

  it('are measured with and without stacks', () => {
    const measure = measurePlan(halves(7))[0]!;
    // Four trims and a crosscut, all through more than half of a sheet.
    expect(measure).toMatchObject({ cuts: 35, fenceSettings: 7, differentSheets: 1, sheets: 7 });
    expect(measure.sawings).toEqual({
      count: 3,
      stacks: 3,
      cuts: 15,
      fenceSettings: 3,
      pieceTurns: 0,
      sawnUm: 3 * (2 * 1_250_000 + 2 * 2_480_000 + 1_230_000),
    });
    expect(measure.sawnUm).toBe(7 * (2 * 1_250_000 + 2 * 2_480_000 + 1_230_000));
    expect(measure.heavy).toEqual({ cuts: 35, largestUm2: 1_238_400n * 1_230_000n });
    const singly = measurePlan(halves(7, saw()))[0]!;
    expect(singly.sawings).toEqual({
      count: 7,
      stacks: 0,
      cuts: 35,
      fenceSettings: 7,
      pieceTurns: 0,
      sawnUm: singly.sawnUm,
    });
  });
});

describe('wrong stacks', () => {
  const parts = [part('a', 1238.4, 1230, { count: 5 }), part('b', 1238.4, 1230, { count: 1 })];
  function messagesAfter(change: (group: PlanGroup) => void): string[] {
    const plan = structuredClone(planned(parts, [{ sheet: 0, copies: 3, root: half }]));
    change(plan.groups[0]!);
    return replay(writePlan(plan)).findings.map(({ code, message }) => `${code}: ${message}`);
  }

  it('that are too high for the saw', () => {
    expect(messagesAfter((group) => Object.assign(group.saw, { cuttingHeight: 44.9 }))).toEqual([
      'stack-too-high: Group ply-grey: stack 1 is 3 sheets of 15.0 high, and this saw cuts no higher than 44.9.',
    ]);
    expect(messagesAfter((group) => Object.assign(group.saw, { cuttingHeight: null }))).toEqual([
      'stack-too-high: Group ply-grey: stack 1 is 3 sheets of 15.0 high, and this saw cuts sheets one by one.',
    ]);
    expect(messagesAfter((group) => Object.assign(group, { thickness: 30 }))[0]).toContain('stack-too-high');
  });

  it('of sheets that are not there, or not as often', () => {
    expect(messagesAfter((group) => Object.assign(group.stacks![0]!.sheets[1]!, { number: 3 }))).toEqual([
      'stack-wrong: Group ply-grey: stack 1 holds sheets of cut plan 3, which does not exist.',
    ]);
    expect(messagesAfter((group) => Object.assign(group.stacks![0]!, { times: 2 }))).toEqual([
      'stack-wrong: Group ply-grey: 4 sheets of cut plan 1 lie in stacks, but it has only 2.',
      'stack-wrong: Group ply-grey: 2 sheets of cut plan 2 lie in stacks, but it has only 1.',
    ]);
  });

  it('of sheets that differ in a cut or in the board they come from', () => {
    const otherCut = (group: PlanGroup) => {
      const step = group.sheets[1]!.steps.at(-1)!;
      if (step.cut === 'trim') throw new Error('no cut');
      step.gives.reverse();
    };
    expect(messagesAfter(otherCut)).toEqual([
      'stack-wrong: Group ply-grey: the sheets of stack 1 are not cut alike: cut 5 of sheet 1 is not that of sheet 2.',
    ]);
    const otherStock = (group: PlanGroup) => {
      group.stock.push({ ...group.stock[0]!, id: 'other' });
      group.sheets[1]!.stock = 'other';
    };
    expect(messagesAfter(otherStock)[0]).toContain('sheet 1 is of stock "2500x1250", sheet 2 of "other"');
  });

  it('are none in a plan that was written before there were stacks', () => {
    expect(messagesAfter((group) => void delete group.stacks)).toEqual([]);
  });
});

describe('stacks of any list of sheets', () => {
  it('hold every sheet once, are no higher than allowed and as few as can be', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(counts, fc.integer({ min: 2, max: 5 }), (copies, most) => {
        const sheets = copies.map(
          (count, index): PlanSheet => ({
            number: index + 1,
            stock: 's',
            copies: count,
            start: 'sheet',
            steps: [],
            pieces: [],
          }),
        );
        const rules = {
          name: '',
          kerf: 3,
          firstCut: 'either',
          turns: null,
          cuttingHeight: most * 10,
        } as const;
        const stacks = makeStacks(rules, 10, sheets);
        const heights = stacks.flatMap(({ times, sheets: in1 }) =>
          Array.from({ length: times }, () => in1.reduce((sum, entry) => sum + entry.copies, 0)),
        );
        const total = copies.reduce((sum, count) => sum + count, 0);
        expect(Math.max(0, ...heights)).toBeLessThanOrEqual(most);
        const singly = total - heights.reduce((sum, height) => sum + height, 0);
        expect(heights.length + singly).toBe(Math.ceil(total / most));
        for (const sheet of sheets) {
          const inStacks = stacks.reduce(
            (sum, stack) =>
              sum +
              stack.times * stack.sheets.reduce((n, e) => (e.number === sheet.number ? n + e.copies : n), 0),
            0,
          );
          expect(inStacks).toBeLessThanOrEqual(sheet.copies);
        }
      }),
    );
  });

  it('replay for nests drawn at random, and never take more passes than sheets one by one', () => {
    let stacked = 0;
    for (let seed = 0; seed < 60; seed++) {
      const made = makeRandomNest({
        seed,
        kerfTenths: 32,
        trimTenths: [100, 100, 100, 100],
        grain: 'length',
        sheets: 3,
        mostCopies: 6,
        depth: 3,
        matched: 0.2,
      });
      if (made === null) continue;
      const group = { ...made.group, saw: { ...made.group.saw, cuttingHeightUm: 60_000 } };
      const plan = makePlan([{ group, nest: made.nest }], job);
      expect(replay(writePlan(plan)).findings).toEqual([]);
      const measure = measurePlan(plan)[0]!;
      stacked += measure.sawings.stacks;
      expect(measure.sawings.cuts).toBeLessThanOrEqual(measure.cuts);
      expect(measure.sawings.count).toBeGreaterThanOrEqual(Math.ceil(measure.sheets / 4));
      if (measure.sawings.stacks === 0) expect(measure.sawings.sawnUm).toBe(measure.sawnUm);
    }
    expect(stacked).toBeGreaterThan(30);
  });
});
