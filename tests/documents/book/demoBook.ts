import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type BookWishes, type JobBook, makeJobBook } from '../../../src/pipeline/makeBook.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { type PlannedOrder, plannedOrder } from '../../helpers/demoPlan.ts';

export const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');

/** The demonstration order for the long van, with texts of it changed, as a job whose plan is proven. */
export function demoJob(...changes: readonly (readonly [before: string, after: string])[]): PlannedOrder {
  return plannedOrder('demo-long', ...changes);
}

export function bookOf(made: ReturnType<typeof demoJob>, wishes: Partial<BookWishes> = {}): JobBook {
  return makeJobBook(
    made.job,
    made.proven,
    { measure, sha256 },
    {
      language: 'en',
      lengths: 'mm',
      page: 'A4',
      ...wishes,
    },
  );
}

/** The source of the accessibility rules, to be run inside a page. */
export function axeSource(): string {
  return readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
}
