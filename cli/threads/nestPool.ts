import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { NestProgress, NestReply, NestRequest } from '../../src/edge/index.ts';
import type { NestOutcome } from '../../src/model/nest.ts';
import { LostThread, threadError } from './lostThread.ts';

/** What one stock group's search gave and how long it took by the clock. */
export interface NestedGroup {
  readonly outcome: NestOutcome;
  readonly seconds: number;
}

export interface NestPoolOptions {
  /** Greatest number of threads; by default as many as the machine runs at once. */
  readonly threads?: number;
  /** Threads that were started before there was anything to do; they end with this. */
  readonly started?: NestThreads;
  /** Ends every search after this time with the best plan so far; null to let the work limit decide. */
  readonly timeLimitSeconds: number | null;
  /** Whether each search ends early enough to leave its part of the time to those that wait. */
  readonly sharesTime?: boolean;
  readonly progress?: (index: number, state: NestProgress) => void;
  /** A search is done; `waiting`: how many have not begun. */
  readonly done?: (index: number, outcome: NestOutcome, waiting: number) => void;
  /** Called once with a function that ends every search early. */
  readonly stoppable?: (stop: () => void) => void;
}

/** A fault of the program inside a nesting thread. */
export class NestingFault extends Error {
  override readonly name = 'NestingFault';
}

/** A thread's error as what it is: its loss, or a fault of the program. */
export function nestingError(error: Error): Error {
  return threadError(error, (cause) => new NestingFault(cause.message, { cause }));
}

/** Threads that can nest, with the flag that ends every search early. They keep no process alive until they are used. */
export interface NestThreads {
  readonly stopFlag: Int32Array;
  readonly threads: readonly NestThread[];
  /** Whether they have been given work, after which they are of no further use. */
  used: boolean;
}

/** What a nesting thread is started with. */
export interface NestWorkerData {
  /** 1 ends every search early. */
  readonly stopFlag: Int32Array;
  /** Whether the solver is loaded before a search asks for it. */
  readonly loadsSolver: boolean;
}

/** The thread that the second of the longest searches goes to, which works on a bound; the first seldom needs a solver. */
const THREAD_FOR_BOUNDS = 1;

interface NestThread {
  readonly worker: Worker;
  isReady: boolean;
  fault: Error | null;
}

/**
 * Starts threads before it is known what they are to do: a thread takes as long to start as an order to read. `threads`:
 * how many; by default as many as the machine runs at once.
 */
export function startNestThreads(threads = availableParallelism()): NestThreads {
  const stopFlag = new Int32Array(new SharedArrayBuffer(4));
  return {
    stopFlag,
    threads: Array.from({ length: threads }, (_, index) =>
      startThread({ stopFlag, loadsSolver: index === THREAD_FOR_BOUNDS }),
    ),
    used: false,
  };
}

function startThread(workerData: NestWorkerData): NestThread {
  const worker = new Worker(new URL('./nestWorker.js', import.meta.url), {
    workerData,
    stderr: true,
    stdout: true,
  });
  const thread: NestThread = { worker, isReady: false, fault: null };
  worker.on('message', (reply: NestReply) => {
    if (reply.kind === 'ready') thread.isReady = true;
  });
  worker.on('error', (error) => {
    thread.fault = nestingError(error);
  });
  worker.on('exit', () => {
    thread.fault ??= new LostThread('ended');
  });
  worker.unref();
  return thread;
}

/** Most work first, so that no thread is left alone with the longest search at the end. */
function byWork(requests: readonly NestRequest[]): NestRequest[] {
  const pieces = (r: NestRequest) => r.group.demands.reduce((sum, d) => sum + d.count, 0);
  return [...requests].sort((a, b) => pieces(b) - pieces(a) || a.index - b.index);
}

/**
 * Nests stock groups in threads. Each group is searched by one thread from its own seed and work limit, so the
 * outcomes, given by the requests' index, do not depend on how many threads there are. Throws a NestingFault when a
 * thread fails, a LostThread when one is gone without an answer.
 */
export async function nestInThreads(
  requests: readonly NestRequest[],
  options: NestPoolOptions,
): Promise<ReadonlyMap<number, NestedGroup>> {
  const waiting = byWork(requests);
  const results = new Map<number, NestedGroup>();
  if (waiting.length === 0) return results;
  const count = Math.max(1, Math.min(options.threads ?? availableParallelism(), waiting.length));
  const pool = options.started?.used === false ? options.started : startNestThreads(count);
  pool.used = true;
  const stop = () => void Atomics.store(pool.stopFlag, 0, 1);
  options.stoppable?.(stop);
  const began = performance.now();
  const secondsLeft = () => {
    const limit = options.sharesTime ? options.timeLimitSeconds : null;
    if (limit === null) return undefined;
    const left = Math.max(0, limit - (performance.now() - began) / 1000);
    return waiting.length === 0 ? left : (left * count) / (waiting.length + count);
  };
  const timer = options.timeLimitSeconds === null ? null : setTimeout(stop, options.timeLimitSeconds * 1000);
  try {
    await Promise.all(
      pool.threads
        .slice(0, count)
        .map((thread) => serve(thread, waiting, results, { ...options, secondsLeft })),
    );
    return results;
  } finally {
    if (timer !== null) clearTimeout(timer);
    await Promise.all(pool.threads.map(({ worker }) => worker.terminate()));
  }
}

/** Hands groups to one thread until none is waiting. */
function serve(
  thread: NestThread,
  waiting: NestRequest[],
  results: Map<number, NestedGroup>,
  options: NestPoolOptions & { readonly secondsLeft: () => number | undefined },
): Promise<void> {
  const { worker } = thread;
  worker.ref();
  return new Promise((resolve, reject) => {
    if (thread.fault) return reject(thread.fault);
    let started = 0;
    const next = () => {
      const request = waiting.shift();
      if (request === undefined) return resolve();
      started = performance.now();
      const seconds = options.secondsLeft();
      worker.postMessage(seconds === undefined ? request : { ...request, seconds });
    };
    worker.on('error', (error) => reject(nestingError(error)));
    worker.on('exit', () => reject(new LostThread('ended')));
    worker.on('message', (reply: NestReply) => {
      switch (reply.kind) {
        case 'ready':
          return next();
        case 'progress':
          return options.progress?.(reply.index, reply.state);
        case 'done':
          results.set(reply.index, { outcome: reply.outcome, seconds: (performance.now() - started) / 1000 });
          tellLast(reply.index, reply.outcome, options);
          next();
          return options.done?.(reply.index, reply.outcome, waiting.length);
        case 'fault': {
          const fault = new NestingFault(reply.message);
          fault.stack = reply.stack;
          return reject(threadError(fault, () => fault));
        }
      }
    });
    if (thread.isReady) next();
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
