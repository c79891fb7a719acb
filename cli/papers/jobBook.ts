import { createHash } from 'node:crypto';
import type { Papers } from '../../src/edge/index.ts';
import { makeJobBook } from '../../src/pipeline/makeBook.ts';
import type { PaperRequest } from './morePapers.ts';

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

/** The job book of a job whose plan is proven: `book.html` for a screen and `book.pdf` for paper. */
export async function jobBookPapers({ job, proven, tools, wishes, page }: PaperRequest): Promise<Papers> {
  const { pdfFromDrawings } = await import('./pdfFromDrawings.ts');
  const book = makeJobBook(job, proven, { ...tools, sha256 }, { ...wishes, page });
  const pdf = await pdfFromDrawings(book.pages, { title: book.title, language: wishes.language });
  return new Map<string, string | Uint8Array>([
    ['book.html', book.html],
    ['book.pdf', pdf],
  ]);
}
