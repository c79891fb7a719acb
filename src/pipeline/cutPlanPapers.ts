import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawCutPlan, drawOverview, type TextMeasurer, type Units } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
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
}

/** Cut plans that were drawn while others were still searched: by the whole of their stock group's plan, then by path. */
export type DrawnAhead = ReadonlyMap<string, ReadonlyMap<string, string>>;

type DrawnPage = readonly [path: string, svg: string];

/** What a drawing of a group depends on, as a key: two groups with the same key are drawn alike. */
export function drawnKey(group: PlanGroup): string {
  return JSON.stringify(group);
}

/**
 * The cut plans of one stock group, overview first, as SVG by path: one drawing with all its pages at a time, so that
 * something else can be done in between. Those that were drawn already are given as they are.
 */
export function* cutPlansOfGroup(
  job: Job,
  plan: Pick<PlanFile, 'job'>,
  group: PlanGroup,
  tools: DrawingTools,
  wishes: PaperWishes,
  drawn: ReadonlyMap<string, string> = new Map(),
): Generator<readonly DrawnPage[]> {
  const options = {
    measure: tools.measure,
    words: wordsOf(wishes.language).drawings,
    units: wishes.lengths,
    job: plan.job,
    titles: titlesOf(job),
  };
  const digits = String(group.sheets.length).length;
  const wanted: readonly (readonly [name: string, draw: () => readonly Drawing[]])[] = [
    ...(group.sheets.length > 1 ? [['overview', () => drawOverview(group, options)] as const] : []),
    ...group.sheets.map(
      (sheet) =>
        [String(sheet.number).padStart(digits, '0'), () => drawCutPlan(group, sheet, options)] as const,
    ),
  ];
  for (const [name, draw] of wanted) {
    const path = (page: number) =>
      `cut-plans/${group.id}-${name}${page === 0 ? '' : `-page-${page + 1}`}.svg`;
    const before = pagesDrawn(drawn, path);
    if (before.length > 0) yield before;
    else yield draw().map((page, index) => [path(index), svgFromDrawing(page)] as const);
  }
}

/** Pages of one drawing among those drawn before. */
function pagesDrawn(drawn: ReadonlyMap<string, string>, path: (page: number) => string): DrawnPage[] {
  const pages: DrawnPage[] = [];
  for (let page = 0; ; page++) {
    const svg = drawn.get(path(page));
    if (svg === undefined) return pages;
    pages.push([path(page), svg]);
  }
}
