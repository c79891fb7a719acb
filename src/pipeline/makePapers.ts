import { guidesOf } from '../basics/cutGuide.ts';
import { makePlan, readPlan, writePlan } from '../cutPlans/index.ts';
import { cautionsSheet } from '../documents/cautionsSheet.ts';
import { type GroupSummary, summarise } from '../documents/index.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Finding } from '../model/finding.ts';
import type { Nest } from '../model/nest.ts';
import type { PlanFile } from '../model/plan.ts';
import { measurePlan, replay } from '../replay/index.ts';
import {
  cutPlansOfGroup,
  type DrawingTools,
  type DrawnAhead,
  drawnKey,
  type PaperWishes,
} from './cutPlanPapers.ts';
import { type Job, libraryOf } from './job.ts';
import { csvFromTable, listTables } from './listTables.ts';

export type { GroupSummary } from '../documents/index.ts';
export { makeFontMeasurer } from '../drawing/fontMeasurer.ts';
export type { PageSize, Units } from '../drawing/index.ts';
export type { DrawingTools, DrawnAhead, PaperWishes } from './cutPlanPapers.ts';
export { cutPlansOfGroup, drawnKey } from './cutPlanPapers.ts';

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

export const usualWishes: PaperWishes = { language: 'en', lengths: 'mm' };

/**
 * The papers that every job gets: cut plans, lists, plan file and, for an order, its cautions, as text by path within the job's folder. Lists and plan
 * file are for other programs too and stay in mm and English. The same plan gives the same bytes. `drawn`: cut plans that were
 * drawn while the search went on; of a group whose plan is not exactly the same they are drawn anew.
 */
export function makePapers(
  job: Job,
  proven: ProvenPlan,
  tools: DrawingTools,
  wishes: PaperWishes = usualWishes,
  drawn: DrawnAhead = new Map(),
): ReadonlyMap<string, string> {
  const papers = new Map<string, string>([['plan.json', proven.text]]);
  for (const table of listTables(job, proven.plan)) papers.set(`${table.name}.csv`, csvFromTable(table));
  if (job.ordered !== undefined) {
    const words = wordsOf(wishes.language);
    papers.set(
      'cautions.txt',
      cautionsSheet(job.ordered, words.cautions, words.mass, guidesOf(proven.plan.groups)),
    );
  }
  const { plan } = proven;
  for (const group of plan.groups) {
    const ahead = drawn.size === 0 ? undefined : drawn.get(drawnKey(group));
    for (const pages of cutPlansOfGroup(job, plan, group, tools, wishes, ahead)) {
      for (const [path, svg] of pages) papers.set(path, svg);
    }
  }
  return papers;
}
