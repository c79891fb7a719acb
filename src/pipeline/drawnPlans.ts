import type { TextMeasurer, Units } from '../drawing/index.ts';
import type { DrawingWindow } from '../drawing/svg.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import type { Job } from './job.ts';
import { titlesOf } from './listTables.ts';

/** How papers are wanted that people read. */
export interface PaperWishes {
  /** A tag such as `en`. */
  readonly language: string;
  readonly lengths: Units;
}

/** What drawings need that only the edge can give. */
export interface DrawingTools {
  readonly measure: TextMeasurer;
  readonly window: DrawingWindow;
}

/** Cut plans of stock groups as SVG: by `drawnKey` of the group, then by path. */
export type DrawnPlans = ReadonlyMap<string, CutPlanPages>;

/** The cut plans of one stock group as SVG, by path. */
export type CutPlanPages = ReadonlyMap<string, string>;

/** What cut plans tell of their job; plain data, so that it can be copied into any thread. */
export interface DrawnJob {
  /** The job's title. */
  readonly job: string;
  /** Words for ids. */
  readonly titles: ReadonlyMap<string, string>;
}

/** What the cut plans of a job tell of it. */
export function drawnJob(job: Job, plan: Pick<PlanFile, 'job'>): DrawnJob {
  return { job: plan.job, titles: titlesOf(job) };
}

/** What a drawing of a group depends on, as a key: two groups with the same key are drawn alike. */
export function drawnKey(group: PlanGroup): string {
  return JSON.stringify(group);
}
