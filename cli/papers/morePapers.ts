import type { Papers } from '../../src/edge/index.ts';
import type { Job } from '../../src/pipeline/job.ts';
import type { DrawingTools, ProvenPlan } from '../../src/pipeline/makePapers.ts';

/** Makes papers of one kind for a job whose plan is proven; `language` is a tag such as `en`. */
export type PaperMaker = (
  job: Job,
  proven: ProvenPlan,
  tools: DrawingTools,
  language: string,
) => Promise<Papers>;

/** Papers that are written only when asked for, by the word of `--papers`. What each needs is loaded with it. */
const makers: Readonly<Record<string, () => Promise<PaperMaker>>> = {
  book: async () => (await import('./jobBook.ts')).jobBookPapers,
};

/** The papers of the kinds asked for, by path. Throws for a kind that there is not. */
export async function morePapers(
  kinds: readonly string[],
  ...of: Parameters<PaperMaker>
): Promise<Map<string, string | Uint8Array>> {
  const papers = new Map<string, string | Uint8Array>();
  for (const kind of kinds) {
    const load = makers[kind];
    if (load === undefined) throw new Error(`there are no papers called ${kind}`);
    for (const [path, content] of await (await load())(...of)) papers.set(path, content);
  }
  return papers;
}
