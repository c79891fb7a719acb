import { makePlan, readPlan, writePlan } from '../cutPlans/index.ts';
import { type GroupSummary, makeLists, summarise } from '../documents/index.ts';
import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawCutPlan, drawOverview, type TextMeasurer } from '../drawing/index.ts';
import { type DrawingWindow, svgFromDrawing } from '../drawing/svg.ts';
import type { Finding } from '../model/finding.ts';
import type { Nest } from '../model/nest.ts';
import type { PlanFile } from '../model/plan.ts';
import { measurePlan, replay } from '../replay/index.ts';
import type { Job } from './job.ts';

export type { GroupSummary } from '../documents/index.ts';
export { makeFontMeasurer } from '../drawing/fontMeasurer.ts';

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
  const text = writePlan(makePlan(groups, { job: job.title, currency: job.currency, seed }));
  const replayed = replay(text, 'plan.json');
  if (!replayed.ok) return { ok: false, findings: replayed.findings };
  const read = readPlan(text, 'plan.json');
  if (!read.ok) return { ok: false, findings: read.findings };
  const boards = job.ordered?.library.boards;
  const arealMass = (board: string) => boards?.get(board)?.arealMassKgPerM2 ?? null;
  const { groups: summaries } = summarise(read.value, measurePlan(read.value), arealMass);
  return { ok: true, text, plan: read.value, groups: summaries };
}

/** What drawings need that only the edge can give. */
export interface DrawingTools {
  readonly measure: TextMeasurer;
  readonly window: DrawingWindow;
}

/** Words for ids: titles of the library's boards, finishes and edgings. */
function titlesOf(job: Job): ReadonlyMap<string, string> {
  const library = job.ordered?.library;
  if (library === undefined) return new Map();
  const kinds = [library.boards, library.finishes, library.edgings];
  return new Map(
    kinds.flatMap((kind) => [...kind.values()].map((thing) => [thing.id, thing.title] as const)),
  );
}

function cutPlanPapers(job: Job, plan: PlanFile, tools: DrawingTools, papers: Map<string, string>): void {
  const options = {
    measure: tools.measure,
    words: wordsOf('en').drawings,
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

/** The papers of a job whose plan is proven: text by path within the job's folder. The same plan gives the same bytes. */
export function makePapers(job: Job, proven: ProvenPlan, tools: DrawingTools): ReadonlyMap<string, string> {
  const edgings = job.ordered?.library.edgings ?? new Map();
  const lists = makeLists(proven.plan, { edgings, titles: titlesOf(job) }, job.ordered);
  const papers = new Map<string, string>([['plan.json', proven.text], ...lists]);
  cutPlanPapers(job, proven.plan, tools, papers);
  return papers;
}
