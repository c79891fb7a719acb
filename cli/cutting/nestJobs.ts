import type { Finding } from '../../src/model/finding.ts';
import type { NestOutcome } from '../../src/model/nest.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { describeNestFailure } from '../../src/pipeline/nestFailures.ts';
import { progressLine } from '../terminal/progress.ts';
import type { NestedGroup, NestThreads } from '../threads/nestPool.ts';
import { searchGroups } from '../threads/searchGroups.ts';
import type { PreparedJob } from './prepareJobs.ts';

/** How long and by which seed a command searches. */
export interface SearchOptions {
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  /** Search moves for a group when neither `work` nor `time` says otherwise. */
  readonly movesFor?: (group: StockGroup) => number;
  /** Threads that were started while the order was read. */
  readonly started?: NestThreads;
}

/**
 * All stock groups of all jobs through the threads; outcomes come back job by job. `done` hears of each that is
 * settled, as it comes, and how many have not begun.
 */
export async function nestJobs(
  jobs: readonly PreparedJob[],
  options: SearchOptions,
  stoppable: (stop: () => void) => void,
  done?: (job: number, group: number, outcome: NestOutcome, waiting: number) => void,
): Promise<NestedGroup[][]> {
  const groups = jobs.flatMap(({ job }) => job.groups);
  const nested = await withProgress(groups.length, options, (progress) =>
    searchGroups(groups, {
      ...options,
      progress,
      stoppable,
      ...(done && {
        done: (index: number, outcome: NestOutcome, waiting: number) => {
          const [job, group] = placeOf(jobs, index);
          done(job, group, outcome, waiting);
        },
      }),
    }),
  );
  let next = 0;
  return jobs.map(({ job }) =>
    job.groups.map((group) => {
      const outcome = nested[next++];
      if (outcome === undefined) throw new Error(`stock group ${group.id} was not nested`);
      return outcome;
    }),
  );
}

/** Which group of which job stands at a place among all groups. */
function placeOf(jobs: readonly PreparedJob[], index: number): readonly [job: number, group: number] {
  let group = index;
  let job = 0;
  while (group >= jobs[job]!.job.groups.length) group -= jobs[job++]!.job.groups.length;
  return [job, group];
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
