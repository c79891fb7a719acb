import type { Papers } from '../../src/edge/index.ts';
import type { Job } from '../../src/pipeline/job.ts';
import type { DrawingTools, PageSize, PaperWishes, ProvenPlan } from '../../src/pipeline/makePapers.ts';
import type { StickerFormat } from '../../src/pipeline/stickerFormats.ts';

/** What papers beside the usual ones are made from: a job whose plan is proven, and how they are wanted. */
export interface PaperRequest {
  readonly job: Job;
  readonly proven: ProvenPlan;
  readonly tools: DrawingTools;
  /** Language of the papers and how lengths are printed. */
  readonly wishes: PaperWishes;
  /** Of the job book. */
  readonly page: PageSize;
  /** Sheet or roll that labels are printed on, and the label of the first sheet to begin with, from 1. */
  readonly labels: { readonly format: StickerFormat; readonly first: number };
}

/** Makes papers of one kind. */
export type PaperMaker = (request: PaperRequest) => Promise<Papers>;

/** Papers that are written only when asked for, by the word of `--papers`. What each needs is loaded with it. */
const makers: Readonly<Record<string, () => Promise<PaperMaker>>> = {
  book: async () => (await import('./jobBook.ts')).jobBookPapers,
  dxf: async () => (await import('./dxf.ts')).dxfPapers,
  workbook: async () => (await import('./workbook.ts')).workbookPapers,
  labels: async () => (await import('./panelStickers.ts')).stickerPapers,
};

/** The papers of the kinds asked for, by path. Throws for a kind that there is not. */
export async function morePapers(
  kinds: readonly string[],
  request: PaperRequest,
): Promise<Map<string, string | Uint8Array>> {
  const papers = new Map<string, string | Uint8Array>();
  for (const kind of kinds) {
    const load = makers[kind];
    if (load === undefined) throw new Error(`there are no papers called ${kind}`);
    for (const [path, content] of await (await load())(request)) papers.set(path, content);
  }
  return papers;
}
