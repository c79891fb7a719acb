import type { Nest, NestOutcome } from '../../src/model/nest.ts';
import type { PlanFile, PlanGroup } from '../../src/model/plan.ts';
import type { CutPlanPages, DrawnJob, DrawnPlans, PaperWishes } from '../../src/pipeline/makePapers.ts';
import type { PreparedJob } from './prepareJobs.ts';

/** Draws the cut plans of one stock group, in a thread. */
export type DrawGroup = (subject: DrawnJob, group: PlanGroup, wishes: PaperWishes) => Promise<CutPlanPages>;

/**
 * Draws cut plans of stock groups whose search is done while others are still searched. What is drawn is replayed first,
 * and used only for a plan that is exactly the same in the end.
 */
export class DrawingAhead {
  private readonly jobs: readonly PreparedJob[];
  private readonly seed: number;
  private readonly wishes: PaperWishes;
  private readonly drawGroup: DrawGroup;
  private readonly drawn: readonly Map<string, Promise<CutPlanPages>>[];
  /** Loaded while the first group is searched. */
  private readonly loading = import('../../src/pipeline/makePapers.ts');

  constructor(jobs: readonly PreparedJob[], seed: number, wishes: PaperWishes, drawGroup: DrawGroup) {
    this.jobs = jobs;
    this.seed = seed;
    this.wishes = wishes;
    this.drawGroup = drawGroup;
    this.drawn = jobs.map(() => new Map());
  }

  /** A group's search is done. */
  groupDone(job: number, group: number, outcome: NestOutcome): void {
    // A fault shows again where the papers are made.
    if (outcome.ok) this.drawNest(job, group, outcome.nest).catch(() => undefined);
  }

  /** The cut plans of a plan, those drawn before as they are. Rejects as `drawGroup` does. */
  async plansOf(job: number, plan: PlanFile): Promise<DrawnPlans> {
    const { drawnJob, drawnKey } = await this.loading;
    const subject = drawnJob(this.jobs[job]!.job, plan);
    const drawn = plan.groups.map(async (group) => {
      const key = drawnKey(group);
      return [key, await this.draw(job, key, subject, group)] as const;
    });
    return new Map(await Promise.all(drawn));
  }

  private async drawNest(index: number, group: number, nest: Nest): Promise<void> {
    const { drawnJob, drawnKey, provePlan } = await this.loading;
    const { job } = this.jobs[index]!;
    const proof = provePlan({ ...job, groups: [job.groups[group]!] }, [nest], this.seed);
    // A plan that cannot be sawn is told of where all of the job is proved.
    if (!proof.ok) return;
    const [alone] = proof.plan.groups;
    await this.draw(index, drawnKey(alone!), drawnJob(job, proof.plan), alone!);
  }

  private draw(job: number, key: string, subject: DrawnJob, group: PlanGroup): Promise<CutPlanPages> {
    const before = this.drawn[job]!.get(key);
    if (before) return before;
    const drawing = this.drawGroup(subject, group, this.wishes);
    this.drawn[job]!.set(key, drawing);
    return drawing;
  }
}
