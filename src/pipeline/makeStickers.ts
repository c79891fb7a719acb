import { makePanelStickers } from '../documents/panelStickers.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Drawing } from '../drawing/index.ts';
import type { StickerFormat } from '../drawing/panelStickerFormats.ts';
import { drawStickers } from '../drawing/panelStickers.ts';
import { type Job, libraryOf } from './job.ts';
import type { DrawingTools, PaperWishes, ProvenPlan } from './makePapers.ts';

/** How labels are wanted. */
export interface StickerRequest {
  readonly format: StickerFormat;
  /** Label of the first sheet to begin with, from 1. */
  readonly first: number;
  readonly wishes: PaperWishes;
}

/** The labels of a job whose plan is proven, as pages. No pages when nothing gets a label. Throws for an unknown language. */
export function makeStickers(
  job: Job,
  proven: ProvenPlan,
  measure: DrawingTools['measure'],
  { format, first, wishes }: StickerRequest,
): { readonly title: string; readonly pages: readonly Drawing[] } {
  const words = wordsOf(wishes.language).stickers;
  const library = libraryOf(job);
  const title = (id: string) =>
    (library?.boards.get(id) ?? library?.finishes.get(id) ?? library?.edgings.get(id))?.title ?? id;
  const { plan } = proven;
  const stickers = makePanelStickers({
    plan,
    job: job.name,
    ...(job.ordered === undefined ? {} : { furniture: job.ordered.furniture }),
    title,
    words,
    units: wishes.lengths,
  });
  const pages = drawStickers(stickers, {
    format,
    first,
    measure,
    title: (page, count) => words.page(plan.job, page, count),
  });
  return { title: words.title(plan.job), pages };
}
