import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { NestProgress, NestReply, NestRequest } from '../../src/edge/index.ts';
import type { NestOutcome } from '../../src/model/nest.ts';

/** What one stock group's search gave and how long it took by the clock. */
export interface NestedGroup {
  readonly outcome: NestOutcome;
  readonly seconds: number;
}

export interface NestPoolOptions {
  /** Greatest number of threads; by default as many as the machine runs at once. */
  readonly threads?: number;
  /** Ends every search after this time with the best plan so far; null to let the work limit decide. */
  readonly timeLimitSeconds: number | null;
  readonly progress?: (index: number, state: NestProgress) => void;
  /** Called once with a function that ends every search early. */
  readonly stoppable?: (stop: () => void) => void;
}

/** A fault of the program inside a nesting thread. */
export class NestingFault extends Error {
  override readonly name = 'NestingFault';
}

/** Most work first, so that no thread is left alone with the longest search at the end. */
function byWork(requests: readonly NestRequest[]): NestRequest[] {
  const pieces = (r: NestRequest) => r.group.demands.reduce((sum, d) => sum + d.count, 0);
  return [...requests].sort((a, b) => pieces(b) - pieces(a) || a.index - b.index);
}

/**
 * Nests stock groups in threads. Each group is searched by one thread from its own seed and work limit, so the
 * outcomes, given by the requests' index, do not depend on how many threads there are. Throws a NestingFault when a
 * thread fails.
 */
export async function nestInThreads(
  requests: readonly NestRequest[],
  options: NestPoolOptions,
): Promise<ReadonlyMap<number, NestedGroup>> {
  const waiting = byWork(requests);
  const results = new Map<number, NestedGroup>();
  if (waiting.length === 0) return results;
  const stopFlag = new Int32Array(new SharedArrayBuffer(4));
  const stop = () => void Atomics.store(stopFlag, 0, 1);
  options.stoppable?.(stop);
  const timer = options.timeLimitSeconds === null ? null : setTimeout(stop, options.timeLimitSeconds * 1000);
  const count = Math.max(1, Math.min(options.threads ?? availableParallelism(), waiting.length));
  const workers: Worker[] = [];
  try {
    await Promise.all(
      Array.from({ length: count }, () => {
        const worker = new Worker(new URL('./nestWorker.js', import.meta.url), {
          workerData: stopFlag,
          stderr: true,
          stdout: true,
        });
        workers.push(worker);
        return serve(worker, waiting, results, options);
      }),
    );
    return results;
  } finally {
    if (timer !== null) clearTimeout(timer);
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

/** Hands groups to one thread until none is waiting. */
function serve(
  worker: Worker,
  waiting: NestRequest[],
  results: Map<number, NestedGroup>,
  options: NestPoolOptions,
): Promise<void> {
  return new Promise((resolve, reject) => {
    let started = 0;
    const next = () => {
      const request = waiting.shift();
      if (request === undefined) return resolve();
      started = performance.now();
      worker.postMessage(request);
    };
    worker.on('error', (error) => reject(new NestingFault(error.message, { cause: error })));
    worker.on('exit', () => reject(new NestingFault('a nesting thread ended too early')));
    worker.on('message', (reply: NestReply) => {
      switch (reply.kind) {
        case 'ready':
          return next();
        case 'progress':
          return options.progress?.(reply.index, reply.state);
        case 'done':
          results.set(reply.index, { outcome: reply.outcome, seconds: (performance.now() - started) / 1000 });
          tellLast(reply.index, reply.outcome, options);
          return next();
        case 'fault': {
          const fault = new NestingFault(reply.message);
          fault.stack = reply.stack;
          return reject(fault);
        }
      }
    });
  });
}

/** What a group's search came to, for groups that were done before they told any progress. */
function tellLast(index: number, outcome: NestOutcome, options: NestPoolOptions): void {
  if (!outcome.ok) return;
  const { sheets, costMinor, bound, moves } = outcome.nest;
  options.progress?.(index, {
    sheets: sheets.reduce((sum, sheet) => sum + sheet.copies, 0),
    costMinor,
    boundSheets: bound.sheets,
    boundCostMinor: bound.costMinor,
    moves,
  });
}
