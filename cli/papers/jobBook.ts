import { createHash } from 'node:crypto';
import type { Job } from '../../src/pipeline/job.ts';
import { makeJobBook } from '../../src/pipeline/makeBook.ts';
import type { DrawingTools, ProvenPlan } from '../../src/pipeline/makePapers.ts';

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

/** The job book of a job whose plan is proven: `book.html` for a screen and `book.pdf` for paper. */
export async function jobBookPapers(
  job: Job,
  proven: ProvenPlan,
  tools: DrawingTools,
  language = 'en',
): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const { pdfFromDrawings } = await import('./pdfFromDrawings.ts');
  const book = makeJobBook(job, proven, { ...tools, sha256 }, language);
  const pdf = await pdfFromDrawings(book.pages, { title: book.title, language });
  return new Map<string, string | Uint8Array>([
    ['book.html', book.html],
    ['book.pdf', pdf],
  ]);
}
