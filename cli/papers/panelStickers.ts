import type { Papers } from '../../src/edge/index.ts';
import { makeStickers } from '../../src/pipeline/makeStickers.ts';
import type { PaperRequest } from './morePapers.ts';

/** Labels for panels and offcuts, to be printed in true size: `labels.pdf`. None when nothing is cut. */
export async function stickerPapers({ job, proven, tools, wishes, labels }: PaperRequest): Promise<Papers> {
  const { title, pages } = makeStickers(job, proven, tools.measure, { ...labels, wishes });
  if (pages.length === 0) return new Map();
  const { pdfFromDrawings } = await import('./pdfFromDrawings.ts');
  return new Map([['labels.pdf', await pdfFromDrawings(pages, { title, language: wishes.language })]]);
}
