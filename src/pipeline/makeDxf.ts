import { type DxfFile, dxfFiles } from '../documents/dxf/index.ts';
import type { Job } from './job.ts';
import type { ProvenPlan } from './makePapers.ts';

export type { DxfFile } from '../documents/dxf/index.ts';

/** DXF files of the panels and cut plans of a job whose plan is proven. */
export function makeDxf(job: Job, proven: ProvenPlan): DxfFile[] {
  return dxfFiles(proven.plan, job.ordered);
}
