import { setImmediate } from 'node:timers/promises';
import type { Nest, NestOutcome } from '../../src/model/nest.ts';
import type { DrawingTools, DrawnAhead, PaperWishes } from '../../src/pipeline/makePapers.ts';
import type { PreparedJob } from './prepareJobs.ts';

interface Waiting {
  readonly job: number;
  readonly group: number;
  readonly nest: Nest;
}

/**
 * Draws cut plans of stock groups whose search is done while the last ones are still searched. What is drawn is replayed
 * first, and used only for a plan that is exactly the same in the end. It begins once no search waits for a thread, and
 * gives way after each drawing, so that no thread waits for it.
 */
export class DrawingAhead {
  private readonly jobs: readonly PreparedJob[];
  private readonly seed: number;
  private readonly wishes: PaperWishes;
  private readonly loadingTools: Promise<DrawingTools>;
  private readonly waiting: Waiting[] = [];
  private readonly drawn: readonly Map<string, Map<string, string>>[];
  private running = false;
  private ended = false;

  constructor(
    jobs: readonly PreparedJob[],
    seed: number,
    wishes: PaperWishes,
    loadingTools: Promise<DrawingTools>,
  ) {
    this.jobs = jobs;
    this.seed = seed;
    this.wishes = wishes;
    this.loadingTools = loadingTools;
    this.drawn = jobs.map(() => new Map());
  }

  /** A search is done; `unbegun` have not begun. */
  groupDone(job: number, group: number, outcome: NestOutcome, unbegun: number): void {
    if (outcome.ok) this.waiting.push({ job, group, nest: outcome.nest });
    if (unbegun > 0 || this.running || this.ended) return;
    this.running = true;
    // A fault shows again where the papers are made.
    this.drawAll().catch(() => undefined);
  }

  /** Ends the drawing; what is drawn of a job so far. */
  end(): readonly DrawnAhead[] {
    this.ended = true;
    return this.drawn;
  }

  private async drawAll(): Promise<void> {
    const tools = await this.loadingTools;
    const { cutPlansOfGroup, drawnKey, provePlan } = await import('../../src/pipeline/makePapers.ts');
    for (let next = this.waiting.shift(); next !== undefined && !this.ended; next = this.waiting.shift()) {
      const { job } = this.jobs[next.job]!;
      const alone = { ...job, groups: [job.groups[next.group]!] };
      const proof = provePlan(alone, [next.nest], this.seed);
      const group = proof.ok ? proof.plan.groups[0] : undefined;
      if (!proof.ok || group === undefined) continue;
      const papers = new Map<string, string>();
      this.drawn[next.job]!.set(drawnKey(group), papers);
      for (const pages of cutPlansOfGroup(job, proof.plan, group, tools, this.wishes)) {
        for (const [path, svg] of pages) papers.set(path, svg);
        await setImmediate();
        if (this.ended) return;
      }
    }
    this.running = false;
  }
}
