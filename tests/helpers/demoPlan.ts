import type { PlanFile } from '../../src/model/plan.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { demoFiles, demoLibrary, demoRoot, must } from './demoVan.ts';

/** A demonstration order with a proven plan, searched for a moment only. */
export function demoPlan(name: 'demo-long' | 'demo-short'): {
  readonly plan: PlanFile;
  readonly ordered: OrderedFurniture;
} {
  const path = `${demoRoot}/orders/${name}.yaml`;
  const job = must(prepareOrder(demoFiles().get(path)!, path, demoLibrary()));
  const nests = job.groups.map((group) => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(`stock group ${group.id} was not nested`);
    return outcome.nest;
  });
  const proven = provePlan(job, nests, 1);
  if (!proven.ok || job.ordered === undefined) throw new Error(`${name} has no proven plan`);
  return { plan: proven.plan, ordered: job.ordered };
}
