import { makePlan, readPlan, writePlan } from '../cutPlans/index.ts';
import { cautionsSheet } from '../documents/cautionsSheet.ts';
import { type GroupSummary, summarise } from '../documents/index.ts';
import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawCutPlan, drawOverview, type TextMeasurer, type Units } from '../drawing/index.ts';
import { type DrawingWindow, svgFromDrawing } from '../drawing/svg.ts';
import type { Finding } from '../model/finding.ts';
import type { Nest } from '../model/nest.ts';
import type { PlanFile } from '../model/plan.ts';
import { measurePlan, replay } from '../replay/index.ts';
import { type Job, libraryOf } from './job.ts';
import { csvFromTable, listTables, titlesOf } from './listTables.ts';

export type { GroupSummary } from '../documents/index.ts';
export { makeFontMeasurer } from '../drawing/fontMeasurer.ts';
export type { PageSize, Units } from '../drawing/index.ts';

/** A plan that has been written, read back and sawn in simulation. */
export interface ProvenPlan {
  readonly ok: true;
  readonly text: string;
  readonly plan: PlanFile;
  /** One per stock group, in order. */
  readonly groups: readonly GroupSummary[];
}

export type PlanProof = ProvenPlan | { readonly ok: false; readonly findings: readonly Finding[] };

/**
 * The plan file of a job with its nests, one per group. Its text is read back and replayed; what is told and drawn
 * later comes from the text that was replayed. Findings mean that the plan is wrong, which is a fault of the program:
 * nothing may be written.
 */
export function provePlan(job: Job, nests: readonly Nest[], seed: number): PlanProof {
  const groups = job.groups.map((group, index) => {
    const nest = nests[index];
    if (nest === undefined) throw new Error(`stock group ${group.id} has no nest`);
    return { group, nest };
  });
  const text = writePlan(
    makePlan(groups, {
      job: job.title,
      currency: job.currency,
      seed,
      ...(job.later === undefined ? {} : { later: job.later }),
    }),
  );
  const replayed = replay(text, 'plan.json');
  if (!replayed.ok) return { ok: false, findings: replayed.findings };
  const read = readPlan(text, 'plan.json');
  if (!read.ok) return { ok: false, findings: read.findings };
  const boards = libraryOf(job)?.boards;
  const arealMass = (board: string) => boards?.get(board)?.arealMassKgPerM2 ?? null;
  const { groups: summaries } = summarise(read.value, measurePlan(read.value), arealMass);
  return { ok: true, text, plan: read.value, groups: summaries };
}

/** How papers are wanted that people read. */
export interface PaperWishes {
  /** A tag such as `en`. */
  readonly language: string;
  readonly lengths: Units;
}

export const usualWishes: PaperWishes = { language: 'en', lengths: 'mm' };

/** What drawings need that only the edge can give. */
export interface DrawingTools {
  readonly measure: TextMeasurer;
  readonly window: DrawingWindow;
}

function cutPlanPapers(
  job: Job,
  plan: PlanFile,
  tools: DrawingTools,
  wishes: PaperWishes,
  papers: Map<string, string>,
): void {
  const options = {
    measure: tools.measure,
    words: wordsOf(wishes.language).drawings,
    units: wishes.lengths,
    job: plan.job,
    titles: titlesOf(job),
  };
  const keep = (name: string, pages: readonly Drawing[]) => {
    pages.forEach((page, index) => {
      const path = index === 0 ? `${name}.svg` : `${name}-page-${index + 1}.svg`;
      papers.set(path, svgFromDrawing(page, tools.window));
    });
  };
  for (const group of plan.groups) {
    const digits = String(group.sheets.length).length;
    if (group.sheets.length > 1) keep(`cut-plans/${group.id}-overview`, drawOverview(group, options));
    for (const sheet of group.sheets) {
      const number = String(sheet.number).padStart(digits, '0');
      keep(`cut-plans/${group.id}-${number}`, drawCutPlan(group, sheet, options));
    }
  }
}

/**
 * The papers that every job gets: cut plans, lists, plan file and, for an order, its cautions, as text by path within the job's folder. Lists and plan
 * file are for other programs too and stay in mm and English. The same plan gives the same bytes.
 */
export function makePapers(
  job: Job,
  proven: ProvenPlan,
  tools: DrawingTools,
  wishes: PaperWishes = usualWishes,
): ReadonlyMap<string, string> {
  const papers = new Map<string, string>([['plan.json', proven.text]]);
  for (const table of listTables(job, proven.plan)) papers.set(`${table.name}.csv`, csvFromTable(table));
  if (job.ordered !== undefined) {
    const words = wordsOf(wishes.language);
    papers.set('cautions.txt', cautionsSheet(job.ordered, words.cautions, words.mass));
  }
  cutPlanPapers(job, proven.plan, tools, wishes, papers);
  return papers;
}
