import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { WorkedOut } from '../../src/model/sweep.ts';
import type {
  DesignReply,
  DesignRequest,
  DesignTask,
  DesignWorkerData,
  NestedGroups,
} from './designMessages.ts';
import { LostThread } from './lostThread.ts';
import { nestingError } from './nestPool.ts';

/** How designs are worked out in threads. */
export interface DesignPoolOptions {
  /** Greatest number of threads; by default as many as the machine runs at once. */
  readonly threads?: number;
  /** Called with each result as it comes, before the next is asked for. */
  readonly done: (index: number, result: WorkedOut) => Promise<void>;
  /** True ends the work after what is being worked on. */
  readonly stopped: () => boolean;
}

/** What all threads have nested so far, in the order in which they told it. */
type SharedNests = { readonly by: Worker; readonly nested: NestedGroups }[];

/** Hands requests to one thread until none is waiting, each with what other threads have nested meanwhile. */
function serve(
  worker: Worker,
  waiting: DesignRequest[],
  shared: SharedNests,
  { done, stopped }: DesignPoolOptions,
): Promise<void> {
  return new Promise((resolve, reject) => {
    let handedOn = 0;
    const next = () => {
      const request = stopped() ? undefined : waiting.shift();
      if (request === undefined) return resolve();
      const nested = shared.slice(handedOn).flatMap((each) => (each.by === worker ? [] : each.nested));
      handedOn = shared.length;
      const task: DesignTask = { ...request, nested };
      worker.postMessage(task);
    };
    worker.on('error', (error) => reject(nestingError(error)));
    worker.on('exit', () => reject(new LostThread('ended')));
    worker.on('message', (reply: DesignReply) => {
      if (reply.kind === 'fault') return reject(nestingError(new Error(reply.message)));
      if (reply.kind === 'ready') return next();
      shared.push({ by: worker, nested: reply.nested });
      done(reply.index, reply.result).then(next, reject);
    });
  });
}

/**
 * Works designs out in threads. Each is worked out by one thread from the order, seed and moves alone, so the results do
 * not depend on how many threads there are. Throws a NestingFault when a thread fails, a
 * LostThread when one is gone without an answer.
 */
export async function workOutInThreads(
  requests: readonly DesignRequest[],
  data: DesignWorkerData,
  options: DesignPoolOptions,
): Promise<void> {
  const waiting = [...requests];
  const count = Math.min(options.threads ?? availableParallelism(), waiting.length);
  const workers: Worker[] = [];
  const shared: SharedNests = [];
  try {
    await Promise.all(
      Array.from({ length: count }, () => {
        const worker = new Worker(new URL('./designWorker.js', import.meta.url), {
          workerData: data,
          stderr: true,
          stdout: true,
        });
        workers.push(worker);
        return serve(worker, waiting, shared, options);
      }),
    );
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}
