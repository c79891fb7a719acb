import type { PlanFile } from '../../src/model/plan.ts';
import type { Job, OrderedFurniture } from '../../src/pipeline/job.ts';
import { type ProvenPlan, provePlan } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { demoFiles, demoLibrary, demoRoot, must } from './demoVan.ts';

export const demoOrders = [
  'demo-long',
  'demo-short',
  'roof-bed-long',
  'roof-bed-short',
  'two-singles-long',
  'two-singles-short',
  'weekend-dog-long',
  'weekend-dog-short',
] as const;

export type DemoOrder = (typeof demoOrders)[number];

export interface PlannedOrder {
  readonly job: Job;
  readonly proven: ProvenPlan;
}

/** An order of the demonstration library, with texts of it changed, whose plan is proven; searched for a moment only. */
export function plannedOrder(
  name: DemoOrder,
  ...changes: readonly (readonly [before: string, after: string])[]
): PlannedOrder {
  const path = `${demoRoot}/orders/${name}.yaml`;
  let text = demoFiles().get(path)!;
  for (const [before, after] of changes) {
    if (!text.includes(before)) throw new Error(`the order has no ${before}`);
    text = text.replace(before, after);
  }
  const job = must(prepareOrder(text, path, demoLibrary()));
  const nests = job.groups.map((group) => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(`stock group ${group.id} was not nested`);
    return outcome.nest;
  });
  const proven = provePlan(job, nests, 1);
  if (!proven.ok) throw new Error(proven.findings.map((finding) => finding.message).join('\n'));
  return { job, proven };
}

/** A demonstration order as it is, with its furniture. */
export function demoPlan(name: DemoOrder): {
  readonly plan: PlanFile;
  readonly ordered: OrderedFurniture;
} {
  const { job, proven } = plannedOrder(name);
  if (job.ordered === undefined) throw new Error(`${name} has no furniture`);
  return { plan: proven.plan, ordered: job.ordered };
}
