import type { Finding } from '../model/finding.ts';
import type { Nest } from '../model/nest.ts';
import { measurePlan } from '../replay/index.ts';
import type { Job } from './job.ts';
import { type ProvenPlan, provePlan } from './makePapers.ts';

/** A fault of the program: a plan that cannot be sawn. */
export class WrongPlan extends Error {
  override readonly name = 'WrongPlan';
  readonly findings: readonly Finding[];

  constructor(findings: readonly Finding[]) {
    super(findings[0]?.message ?? 'a plan did not pass its replay');
    this.findings = findings;
  }
}

/** A job's plan, replayed; throws a WrongPlan when it cannot be sawn. */
export function provenOrThrow(job: Job, nests: readonly Nest[], seed: number): ProvenPlan {
  const proven = provePlan(job, nests, seed);
  if (!proven.ok) throw new WrongPlan(proven.findings);
  return proven;
}

/** Area of the panels of all groups over that of their sheets, to six decimals and rounded down. */
export function yieldOf({ plan }: ProvenPlan): number {
  const measures = measurePlan(plan);
  const sum = (of: (measure: (typeof measures)[number]) => bigint) =>
    measures.reduce((total, measure) => total + of(measure), 0n);
  const sheets = sum(({ sheetAreaUm2 }) => sheetAreaUm2);
  if (sheets === 0n) return 0;
  return Number((sum(({ panelAreaUm2 }) => panelAreaUm2) * 1_000_000n) / sheets) / 1_000_000;
}
