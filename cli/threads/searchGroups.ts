import { availableParallelism } from 'node:os';
import type { NestProgress, NestRequest } from '../../src/edge/index.ts';
import type { NestOutcome } from '../../src/model/nest.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { betterOf, MANY_MOVES, partsOfSearch } from '../../src/pipeline/partsOfSearch.ts';
import { type NestedGroup, type NestPoolOptions, type NestThreads, nestInThreads } from './nestPool.ts';

/** Search moves per stock group when neither a number of them nor a time is given. */
export const USUAL_WORK = 30_000;
/** More groups of many moves than this keep two threads busy by themselves; fewer are searched from two seeds each. */
const MOST_GROUPS_OF_TWO_SEEDS = 2;
/** Between the seeds of searches for one group. */
const SEED_STEP = 1_000_003;
/** With less time left, in seconds, no further search is begun. */
const LEAST_TIME = 0.2;

/** Whether what a group comes to with so many moves depends on no other groups that are searched together with it. */
export function isSearchedByItself(work: number): boolean {
  return work < MANY_MOVES;
}

export interface GroupSearchOptions {
  readonly seed: number;
  /** Seconds by the clock for all groups together. */
  readonly time?: number;
  /** Moves for each group. */
  readonly work?: number;
  /** Moves for a group when neither `work` nor `time` says otherwise. */
  readonly movesFor?: (group: StockGroup) => number;
  readonly threads?: number;
  readonly started?: NestThreads;
  readonly progress: (group: number, state: NestProgress) => void;
  readonly stoppable: (stop: () => void) => void;
  /** No further search is for this group; `waiting`: how many searches have not begun. */
  readonly done?: (group: number, outcome: NestOutcome, waiting: number) => void;
}

/**
 * Searches plans for stock groups, in threads; outcomes in the order of the groups. With a number of moves, or nothing
 * said, the outcomes depend on groups and seed only. With a time and no moves all groups are searched as usual first;
 * those that are not proved best then share the time that is left, from more seeds where there are threads to spare.
 */
export async function searchGroups(
  groups: readonly StockGroup[],
  options: GroupSearchOptions,
): Promise<readonly NestedGroup[]> {
  const search = new GroupSearch(groups, options);
  const clockOnly = options.time !== undefined && options.work === undefined;
  const wanted = groups.map((group) => {
    const work = options.work ?? (clockOnly ? USUAL_WORK : (options.movesFor?.(group) ?? USUAL_WORK));
    return { work, isLong: !isSearchedByItself(work) };
  });
  // With more long searches there is enough for the threads to do.
  const splits = wanted.filter(({ isLong }) => isLong).length <= MOST_GROUPS_OF_TWO_SEEDS;
  const shares = wanted.map(({ work, isLong }) => {
    const seeds = isLong && splits ? 2 : 1;
    return { seeds, workLimit: Math.ceil(work / seeds) };
  });
  await search.run(
    shares.flatMap((share, group) => {
      const requests = search.requests(group, { first: 0, ...share });
      const parts = share.seeds === 1 ? partsOfSearch(groups[group]!, share.workLimit) : [];
      return parts.length === 0 ? requests : parts.map((emphasis) => ({ ...requests[0]!, emphasis }));
    }),
    { settles: !clockOnly },
  );
  if (clockOnly) await search.useTimeLeft();
  return search.results();
}

class GroupSearch {
  private readonly groups: readonly StockGroup[];
  private readonly options: GroupSearchOptions;
  private readonly began = performance.now();
  private readonly nested: (NestedGroup | undefined)[];
  private readonly leastCost: number[];
  private stopped = false;

  constructor(groups: readonly StockGroup[], options: GroupSearchOptions) {
    this.groups = groups;
    this.options = options;
    this.nested = groups.map(() => undefined);
    this.leastCost = groups.map(() => Number.POSITIVE_INFINITY);
  }

  results(): readonly NestedGroup[] {
    return this.nested.map((group, index) => {
      if (!group) throw new Error(`stock group ${this.groups[index]!.id} was not nested`);
      return group;
    });
  }

  /** Requests for one group from several seeds; their `index` is that of the group. */
  requests(
    index: number,
    {
      first,
      seeds,
      workLimit,
    }: { readonly first: number; readonly seeds: number; readonly workLimit: number },
  ): NestRequest[] {
    const group = this.groups[index]!;
    return Array.from({ length: seeds }, (_, k) => ({
      index,
      group,
      seed: this.options.seed + (first + k) * SEED_STEP,
      workLimit,
      // Two searches for one group share the work on plan and bound.
      ...(seeds > 1 && { emphasis: k % 2 === 0 ? ('plan' as const) : ('bound' as const) }),
    }));
  }

  async useTimeLeft(): Promise<void> {
    const open = this.nested.flatMap((group, index) =>
      group?.outcome.ok && !group.outcome.nest.proved ? [index] : [],
    );
    if (open.length === 0 || this.stopped || this.secondsLeft()! < LEAST_TIME) return;
    const threads = this.options.threads ?? availableParallelism();
    const seeds = Math.max(1, Math.floor(threads / open.length));
    const workLimit = Number.MAX_SAFE_INTEGER;
    await this.run(
      open.flatMap((index) => this.requests(index, { first: 1, seeds, workLimit })),
      { sharesTime: true },
    );
  }

  /** Runs requests and keeps the better of what is known of a group and what they give; `settles`: no others follow. */
  async run(
    requests: readonly NestRequest[],
    { settles = false, ...more }: Pick<NestPoolOptions, 'sharesTime'> & { readonly settles?: boolean } = {},
  ): Promise<void> {
    const { options } = this;
    const numbered = requests.map((request, index) => ({ ...request, index }));
    const groupOf = (request: number) => requests[request]!.index;
    const outcomes = requests.map((): NestOutcome | null => null);
    const isLastOf = (group: number) => outcomes.every((own, request) => own || groupOf(request) !== group);
    const bestOf = (group: number) =>
      outcomes
        .filter((own, request) => own !== null && groupOf(request) === group)
        .reduce((a, b) => betterOf(a!, b!))!;
    const results = await nestInThreads(numbered, {
      ...(options.started && { started: options.started }),
      ...(options.threads === undefined ? {} : { threads: options.threads }),
      timeLimitSeconds: this.secondsLeft(),
      ...more,
      progress: (request, state) => this.tell(groupOf(request), state),
      done: (request, outcome, waiting) => {
        outcomes[request] = outcome;
        const group = groupOf(request);
        const isSettled = settles ? isLastOf(group) : outcome.ok && outcome.nest.proved;
        if (isSettled) options.done?.(group, bestOf(group), waiting);
      },
      stoppable: (stop) =>
        options.stoppable(() => {
          this.stopped = true;
          stop();
        }),
    });
    for (const [request, found] of [...results].sort(([a], [b]) => a - b)) {
      const index = groupOf(request);
      const known = this.nested[index];
      this.nested[index] = known
        ? { outcome: betterOf(known.outcome, found.outcome), seconds: known.seconds + found.seconds }
        : found;
    }
  }

  private secondsLeft(): number | null {
    if (this.options.time === undefined) return null;
    return Math.max(0, this.options.time - (performance.now() - this.began) / 1000);
  }

  /** What another seed has not bettered is not told. */
  private tell(group: number, state: NestProgress): void {
    if (state.costMinor > this.leastCost[group]!) return;
    this.leastCost[group] = state.costMinor;
    this.options.progress(group, state);
  }
}
