import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { planOfOrder } from '../../src/pipeline/planOfOrder.ts';
import { nestFailures, nestJobs, type SearchOptions } from '../cutting/nestJobs.ts';
import type { PreparedJob } from '../cutting/prepareJobs.ts';
import { diskReader } from '../files/reader.ts';

/** What an order was worked out to, beside the job. Throws for a plain list, which has no order. */
export function orderedOf({ job }: PreparedJob): OrderedFurniture {
  if (job.ordered === undefined) throw new Error(`${job.name} is no order`);
  return job.ordered;
}

/** The plan in a file, sawn again in simulation and held against the order that it is to be the plan of. */
export async function planFromFile({ job }: PreparedJob, file: string): Promise<Checked<PlanFile>> {
  const text = await diskReader.text(file, 'plan');
  return text.ok ? planOfOrder(job, text.value, file) : text;
}

/**
 * Plans of orders as `plywright cut` finds them, each replayed; nothing is written. Findings with `faulty` mean that a
 * plan did not pass its replay.
 */
export async function searchPlans(
  jobs: readonly PreparedJob[],
  options: SearchOptions,
  stoppable: (stop: () => void) => void,
): Promise<
  | { readonly ok: true; readonly plans: readonly PlanFile[] }
  | { readonly ok: false; readonly findings: readonly Finding[]; readonly faulty: boolean }
> {
  const nested = await nestJobs(jobs, options, stoppable);
  const failures = nestFailures(jobs, nested);
  if (failures.length > 0) return { ok: false, findings: failures, faulty: false };
  const proofs = jobs.map(({ job }, index) => {
    const nests = nested[index]!.map(({ outcome }) => (outcome as { ok: true; nest: Nest }).nest);
    return provePlan(job, nests, options.seed);
  });
  const wrong = proofs.flatMap((proof) => (proof.ok ? [] : proof.findings));
  if (wrong.length > 0) return { ok: false, findings: wrong, faulty: true };
  return { ok: true, plans: proofs.flatMap((proof) => (proof.ok ? [proof.plan] : [])) };
}
