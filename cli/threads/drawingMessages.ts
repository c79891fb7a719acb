import type { PlanGroup } from '../../src/model/plan.ts';
import type { CutPlanPages, DrawnJob, PaperWishes } from '../../src/pipeline/makePapers.ts';

/** The cut plans of one stock group are wanted. Plain data, so that it can be copied into any thread. */
export interface DrawingRequest {
  readonly index: number;
  readonly subject: DrawnJob;
  readonly group: PlanGroup;
  readonly wishes: PaperWishes;
}

export type DrawingReply =
  | { readonly kind: 'done'; readonly index: number; readonly pages: CutPlanPages }
  | { readonly kind: 'fault'; readonly message: string; readonly stack: string };
