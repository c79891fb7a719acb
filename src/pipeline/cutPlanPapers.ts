import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawCutPlan, drawOverview } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import {
  type CutPlanPages,
  type DrawingTools,
  type DrawnJob,
  type DrawnPlans,
  drawnJob,
  drawnKey,
  type PaperWishes,
} from './drawnPlans.ts';
import type { Job } from './job.ts';

export { makeFontMeasurer } from '../drawing/fontMeasurer.ts';
export type { CutPlanPages, DrawingTools, DrawnJob, PaperWishes } from './drawnPlans.ts';

/** The cut plans of one stock group, overview first. */
export function cutPlansOfGroup(
  { job, titles }: DrawnJob,
  group: PlanGroup,
  { measure, window }: DrawingTools,
  wishes: PaperWishes,
): CutPlanPages {
  const words = wordsOf(wishes.language).drawings;
  const options = { measure, words, units: wishes.lengths, job, titles };
  const digits = String(group.sheets.length).length;
  const papers = new Map<string, string>();
  const add = (name: string, pages: readonly Drawing[]) => {
    for (const [page, drawing] of pages.entries()) {
      const path = `cut-plans/${group.id}-${name}${page === 0 ? '' : `-page-${page + 1}`}.svg`;
      papers.set(path, svgFromDrawing(drawing, window));
    }
  };
  if (group.sheets.length > 1) add('overview', drawOverview(group, options));
  for (const sheet of group.sheets) {
    add(String(sheet.number).padStart(digits, '0'), drawCutPlan(group, sheet, options));
  }
  return papers;
}

/** The cut plans of all groups of a plan. */
export function drawCutPlans(job: Job, plan: PlanFile, tools: DrawingTools, wishes: PaperWishes): DrawnPlans {
  const subject = drawnJob(job, plan);
  return new Map(
    plan.groups.map((group) => [drawnKey(group), cutPlansOfGroup(subject, group, tools, wishes)]),
  );
}
