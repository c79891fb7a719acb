import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups, type SawWithTrim } from '../../src/demands/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { PlanFile, PlanGroup, PlanSheet } from '../../src/model/plan.ts';
import { replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';

/** Two strips, crosscut, and a matched row; every kind of step and piece occurs. Usable 2480 × 1230. */
export function goodPlan(by: SawWithTrim = saw({ firstCut: 'rip', turns: 2 })): PlanFile {
  const fronts = [400, 300].map((width, position) =>
    part(`front ${position}`, 500 - position * 30, width, {
      match: { run: 'fronts', position, follows: 'width' },
    }),
  );
  const parts = [part('door', 700, 412, { count: 2 }), part('shelf', 500, 412, { grain: 'none' }), ...fronts];
  const group = makeStockGroups(parts, [supply(2500, 1250, { count: 3 })], by).groups[0]!;
  // Demands: 0 the blank (500 along the grain, 703.2 across it), 1 door, 2 shelf.
  const root = stack('y', 2480, 1230, [
    stack('x', 2480, 703.2, [wanted(0, 500, 703.2), spare(1976.8, 703.2, 'offcut')]),
    stack('x', 2480, 412, [wanted(1, 700, 412), wanted(1, 700, 412), wanted(2, 500, 412), spare(570.4, 412)]),
    spare(2480, 108.4),
  ]);
  const nest = nestOf(group, [{ sheet: 0, copies: 1, root }]);
  return makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 1 });
}

export type Change = (group: PlanGroup, sheet: PlanSheet, plan: PlanFile) => void;

/** What the replay says of the good plan after a change. */
export function wholeFindingsAfter(change: Change, by?: SawWithTrim): readonly Finding[] {
  const plan = structuredClone(goodPlan(by));
  change(plan.groups[0]!, plan.groups[0]!.sheets[0]!, plan);
  return replay(writePlan(plan)).findings;
}

export function findingsAfter(change: Change, by?: SawWithTrim): { code: string; message: string }[] {
  return wholeFindingsAfter(change, by).map(({ code, message }) => ({ code, message }));
}

export function codesAfter(change: Change): string[] {
  return findingsAfter(change).map((finding) => finding.code);
}

/** A step that divides a piece, counted from 0. */
export function parting(sheet: PlanSheet, index: number) {
  const steps = sheet.steps.filter((step) => step.cut !== 'trim');
  const step = steps[index];
  if (step === undefined) throw new Error(`no cut ${index}`);
  return step;
}
