import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Job } from '../../../src/pipeline/job.ts';
import { type BookWishes, type JobBook, makeJobBook } from '../../../src/pipeline/makeBook.ts';
import { type ProvenPlan, provePlan } from '../../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../../src/pipeline/nestGroup.ts';
import { prepareOrder } from '../../../src/pipeline/prepareOrder.ts';
import { measure, window } from '../../drawing/drawingTools.ts';
import { demoFiles, demoLibrary, demoRoot, must } from '../../helpers/demoVan.ts';

export const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');

/** The demonstration order, with texts of it changed, as a job whose plan is proven; searched for a moment only. */
export function demoJob(...changes: readonly (readonly [before: string, after: string])[]): {
  readonly job: Job;
  readonly proven: ProvenPlan;
} {
  const path = `${demoRoot}/orders/demo-long.yaml`;
  let text = demoFiles().get(path)!;
  for (const [before, after] of changes) {
    if (!text.includes(before)) throw new Error(`the order has no ${before}`);
    text = text.replace(before, after);
  }
  const job = must(prepareOrder(text, path, demoLibrary()));
  const nests = job.groups.map((group) => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(`stock group ${group.id} was not nested`);
    return outcome.nest;
  });
  const proven = provePlan(job, nests, 1);
  if (!proven.ok) throw new Error(proven.findings.map((finding) => finding.message).join('\n'));
  return { job, proven };
}

export function bookOf(made: ReturnType<typeof demoJob>, wishes: Partial<BookWishes> = {}): JobBook {
  return makeJobBook(
    made.job,
    made.proven,
    { measure, window: window as never, sha256 },
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
