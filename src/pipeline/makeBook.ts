import type { Book } from '../documents/book/book.ts';
import { bookHtml } from '../documents/book/bookHtml.ts';
import { bookPages } from '../documents/book/bookPages.ts';
import { makeBook } from '../documents/book/makeBook.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Drawing, PageSize } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { Job } from './job.ts';
import { type DrawingTools, type PaperWishes, type ProvenPlan, usualWishes } from './makePapers.ts';

export type { Drawing } from '../drawing/index.ts';

/** What the job book needs that only the edge can give. */
export interface BookTools extends DrawingTools {
  /** SHA-256 in base64 of the UTF-8 of a text. */
  readonly sha256: (text: string) => string;
}

/** The job book in its two shapes: a page for a screen, and pages of paper that the edge writes as PDF. */
export interface JobBook {
  readonly title: string;
  readonly html: string;
  readonly pages: readonly Drawing[];
}

/** How a job book is wanted. */
export interface BookWishes extends PaperWishes {
  readonly page: PageSize;
}

/** What the job book says, before it is a page or pages. Throws for an unknown language. */
export function makeBookOf(
  job: Job,
  proven: ProvenPlan,
  measure: DrawingTools['measure'],
  wishes: BookWishes,
): Book {
  return makeBook({
    plan: proven.plan,
    job: job.name,
    summaries: proven.groups,
    ...(job.ordered === undefined ? {} : { ordered: job.ordered }),
    words: wordsOf(wishes.language),
    units: wishes.lengths,
    page: wishes.page,
    measure,
  });
}

/** The job book of a job whose plan is proven. The same plan gives the same bytes. Throws for an unknown language. */
export function makeJobBook(
  job: Job,
  proven: ProvenPlan,
  tools: BookTools,
  wishes: BookWishes = { ...usualWishes, page: 'A4' },
): JobBook {
  const book = makeBookOf(job, proven, tools.measure, wishes);
  const html = bookHtml(book, {
    svgOf: (drawing) => svgFromDrawing(drawing),
    sha256: tools.sha256,
    planMark: tools.sha256(proven.text).slice(0, 16),
  });
  return {
    title: `${book.words.book}: ${book.title}`,
    html,
    pages: bookPages(book, wishes.page, tools.measure),
  };
}
