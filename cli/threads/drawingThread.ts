import { Worker } from 'node:worker_threads';
import type { PlanGroup } from '../../src/model/plan.ts';
import type { CutPlanPages, DrawnJob, PaperWishes } from '../../src/pipeline/makePapers.ts';
import type { DrawingReply, DrawingRequest } from './drawingMessages.ts';
import { LostThread } from './lostThread.ts';
import { NestingFault, nestingError } from './nestPool.ts';

interface Waiting {
  readonly resolve: (pages: CutPlanPages) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Draws cut plans in a thread of its own. What draws them takes as long to load as an order to read, so it is started
 * before there is anything to draw. It keeps no process alive until it is asked for something.
 */
export class DrawingThread {
  private readonly worker = new Worker(new URL('./drawingWorker.js', import.meta.url), {
    stderr: true,
    stdout: true,
  });
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;
  private fault: Error | null = null;

  constructor() {
    this.worker.on('message', (reply: DrawingReply) => this.hear(reply));
    this.worker.on('error', (error) => this.fail(nestingError(error)));
    this.worker.on('exit', () => this.fail(new LostThread('ended')));
    this.worker.unref();
  }

  /**
   * The cut plans of one stock group. Rejects with a NestingFault when drawing them fails, with a LostThread when the
   * thread is gone.
   */
  draw(subject: DrawnJob, group: PlanGroup, wishes: PaperWishes): Promise<CutPlanPages> {
    return new Promise((resolve, reject) => {
      if (this.fault) return reject(this.fault);
      const index = this.asked++;
      this.waiting.set(index, { resolve, reject });
      this.worker.ref();
      const request: DrawingRequest = { index, subject, group, wishes };
      this.worker.postMessage(request);
    });
  }

  async end(): Promise<void> {
    await this.worker.terminate();
  }

  private hear(reply: DrawingReply): void {
    if (reply.kind === 'fault') {
      const fault = new NestingFault(reply.message);
      fault.stack = reply.stack;
      this.fail(nestingError(fault));
      return;
    }
    this.waiting.get(reply.index)?.resolve(reply.pages);
    this.waiting.delete(reply.index);
    if (this.waiting.size === 0) this.worker.unref();
  }

  private fail(error: Error): void {
    this.fault ??= error;
    for (const { reject } of this.waiting.values()) reject(this.fault);
    this.waiting.clear();
  }
}
