import { errorFinding } from '../basics/findings.ts';
import { mmToUm } from '../basics/lengths.ts';
import { readPlan } from '../basics/readPlan.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { PlanFile } from '../model/plan.ts';
import { replay } from '../replay/index.ts';
import type { Job } from './job.ts';

/** What of a panel must be alike for a plan to be one of an order. */
function signOf(board: string, finish: string, sizesUm: readonly number[], count: number): string {
  return JSON.stringify([board, finish, sizesUm, count]);
}

function inPlan(plan: PlanFile): Map<string, string> {
  return new Map(
    plan.groups.flatMap(({ board, finish, panels }) =>
      panels.map(({ id, length, width, count }) => [
        id,
        signOf(board, finish, [mmToUm(length), mmToUm(width)], count),
      ]),
    ),
  );
}

function inJob({ groups }: Job): Map<string, string> {
  return new Map(
    groups.flatMap(({ parts }) =>
      parts.map(({ id, board, finish, cutLengthUm, cutWidthUm, count }) => [
        id,
        signOf(board, finish, [cutLengthUm, cutWidthUm], count),
      ]),
    ),
  );
}

/** A finding where a plan does not cut just the panels of a job: the order was changed since, or it is another's. */
export function checkPlanOf(job: Job, plan: PlanFile, file: string): Finding[] {
  const [planned, wanted] = [inPlan(plan), inJob(job)];
  const other = [...new Set([...wanted.keys(), ...planned.keys()])].filter(
    (id) => planned.get(id) !== wanted.get(id),
  );
  const [first] = other;
  if (first === undefined) return [];
  const message = `The plan does not cut the panels that the order ${job.name} has.`;
  return [
    errorFinding(
      'plan-of-another-order',
      message,
      { file },
      {
        found: `${other.length} of ${wanted.size} panels differ, the first is ${first}`,
        expected: 'a plan that was made from this very order',
        advice: 'cut the order again, or leave the plan out',
      },
    ),
  ];
}

/** The text of a plan file as the plan of a job: read, sawn again in simulation, and held against the job. */
export function planOfOrder(job: Job, text: string, file: string): Checked<PlanFile> {
  const read = readPlan(text, file);
  if (!read.ok) return read;
  const replayed = replay(text, file);
  if (!replayed.ok) return { ok: false, findings: replayed.findings };
  const findings = checkPlanOf(job, read.value, file);
  return findings.length > 0 ? { ok: false, findings } : read;
}
