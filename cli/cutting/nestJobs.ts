import type { NestRequest } from '../../src/edge/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import { describeNestFailure } from '../../src/pipeline/nestFailures.ts';
import { progressLine } from '../terminal/progress.ts';
import { type NestedGroup, type NestThreads, nestInThreads } from '../threads/nestPool.ts';
import type { PreparedJob } from './prepareJobs.ts';

/** Search moves per stock group when neither `--work` nor `--time` says otherwise. */
const USUAL_WORK = 30_000;

/** How long and by which seed a command searches. */
export interface SearchOptions {
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  /** Threads that were started while the order was read. */
  readonly started?: NestThreads;
}

/** All stock groups of all jobs through the threads; outcomes come back job by job. */
export async function nestJobs(
  jobs: readonly PreparedJob[],
  options: SearchOptions,
  stoppable: (stop: () => void) => void,
): Promise<NestedGroup[][]> {
  const clockOnly = options.time !== undefined && options.work === undefined;
  const workLimit = clockOnly ? Number.MAX_SAFE_INTEGER : (options.work ?? USUAL_WORK);
  const requests: NestRequest[] = jobs
    .flatMap(({ job }) => job.groups)
    .map((group, index) => ({ index, group, seed: options.seed, workLimit }));
  const nested = await withProgress(requests.length, options, (progress) =>
    nestInThreads(requests, {
      ...(options.started && { started: options.started }),
      ...(options.threads === undefined ? {} : { threads: options.threads }),
      timeLimitSeconds: options.time ?? null,
      progress,
      stoppable,
    }),
  );
  let next = 0;
  return jobs.map(({ job }) =>
    job.groups.map((group) => {
      const outcome = nested.get(next++);
      if (outcome === undefined) throw new Error(`stock group ${group.id} was not nested`);
      return outcome;
    }),
  );
}

async function withProgress<T>(
  groups: number,
  options: SearchOptions,
  run: (progress: ReturnType<typeof progressLine>['update']) => Promise<T>,
): Promise<T> {
  const line = progressLine(process.stderr, options.json ? 0 : groups);
  try {
    return await run(line.update);
  } finally {
    line.clear();
  }
}

/** What kept groups from being nested, in words. */
export function nestFailures(
  jobs: readonly PreparedJob[],
  nested: readonly (readonly NestedGroup[])[],
): Finding[] {
  return jobs.flatMap(({ job, file }, j) =>
    job.groups.flatMap((group, g) => {
      const outcome = nested[j]![g]!.outcome;
      return outcome.ok ? [] : describeNestFailure(group, outcome.failure, file);
    }),
  );
}
