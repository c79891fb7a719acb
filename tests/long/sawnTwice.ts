import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { Job } from '../../src/pipeline/job.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { replay } from '../../src/replay/index.ts';
import { secondReplay } from '../secondReplay/secondReplay.ts';

/** What became of a job that was nested with little work. */
export interface SawnTwice {
  /** The plan file, or null where a group cannot be cut as the saw and its stock are. */
  readonly text: string | null;
  readonly sheets: number;
  readonly panels: number;
  /** What either replay has against the plan: there must be none. */
  readonly against: readonly string[];
}

/** Nests a job, writes its plan and has it sawn by both replays. */
export function sawTwice(job: Job, seed: number, workLimit: number): SawnTwice {
  const nests: Nest[] = [];
  for (const group of job.groups) {
    const outcome = nestGroup(group, null, { seed, workLimit }, 1_000_000);
    if (!outcome.ok) return { text: null, sheets: 0, panels: 0, against: [] };
    nests.push(outcome.nest);
  }
  const groups = job.groups.map((group, index) => ({ group, nest: nests[index]! }));
  const plan = makePlan(groups, { job: job.title, currency: job.currency, seed });
  const text = writePlan(plan);
  const first = replay(text).findings.map(({ code, message }) => `first replay: ${code}: ${message}`);
  const second = secondReplay(text);
  return {
    text,
    sheets: sum(nests.flatMap(({ sheets }) => sheets.map(({ copies }) => copies))),
    panels: sum(plan.groups.flatMap(({ panels }) => panels.map(({ count }) => count))),
    against: second === null ? first : [...first, `second replay: ${second}`],
  };
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
