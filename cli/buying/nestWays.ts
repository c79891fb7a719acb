import type { Finding } from '../../src/model/finding.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import type { Job } from '../../src/pipeline/job.ts';
import { type ProvenPlan, provePlan } from '../../src/pipeline/makePapers.ts';
import type { PlansOfWay } from '../../src/pipeline/makePurchase.ts';
import { leftAfter, type OnHand, suppliesOnHand } from '../../src/pipeline/onHand.ts';
import { poolOrders } from '../../src/pipeline/poolOrders.ts';
import { jobOfOrder } from '../../src/pipeline/prepareOrder.ts';
import type { BuyOptions } from '../commands/buy.ts';
import { nestFailures, nestJobs } from '../cutting/nestJobs.ts';
import type { PreparedJob } from '../cutting/prepareJobs.ts';
import type { NestedGroup } from '../threads/nestPool.ts';
import { USUAL_WORK } from '../threads/searchGroups.ts';
import type { ReadyOrder, ReadyOrders } from './readOrders.ts';

/** One way to cut with its jobs and their plans, all of which passed their replay. */
export interface NestedWay extends PlansOfWay {
  readonly jobs: readonly Job[];
  /** For each job, in order, the seconds that each of its groups took. */
  readonly seconds: readonly (readonly number[])[];
}

/** A way, or why there is none: panels without a sheet, or a plan that cannot be sawn. */
export type WayOutcome =
  | { readonly ok: true; readonly value: NestedWay; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly fault: boolean; readonly findings: readonly Finding[] };

export interface Ways {
  readonly apart: WayOutcome;
  /** Null for one order alone. */
  readonly together: WayOutcome | null;
}

/** What a search depends on: all of a group but the names of its panels. */
function searchedIn({ demands, sheets, saw, pricedBy }: StockGroup): string {
  const sizes = demands.map(({ lengthUm, widthUm, count, grain, blank }) => [
    lengthUm,
    widthUm,
    count,
    grain,
    blank && [blank.follows, blank.pieces.map(({ alongUm, acrossUm }) => [alongUm, acrossUm])],
  ]);
  return JSON.stringify([sizes, sheets, saw, pricedBy]);
}

/** A group of more than some hundred panels is searched longer, since many orders are pooled in it. */
const MOVES_A_PANEL = 700;
const MOST_MOVES = 1_200_000;
const MANY_PANELS = 100;
/** All small groups together get no more, that a hundred orders apart take no longer than together. */
const MOVES_OF_SMALL_GROUPS = 1_200_000;
const LEAST_MOVES = 3000;

function movesFor({ demands }: StockGroup, groups: number): number {
  const panels = demands.reduce((sum, { count }) => sum + count, 0);
  const few = Math.max(LEAST_MOVES, Math.floor(MOVES_OF_SMALL_GROUPS / groups));
  return Math.max(
    Math.min(USUAL_WORK, few),
    panels > MANY_PANELS ? Math.min(MOST_MOVES, MOVES_A_PANEL * panels) : 0,
  );
}

/** Both ways to cut. */
export class WaysToCut {
  private readonly orders: ReadyOrders;
  private readonly name: { readonly name: string; readonly title: string };
  private readonly onHand: readonly OnHand[];
  private readonly options: BuyOptions;
  private readonly stoppable: (stop: () => void) => void;

  constructor(
    orders: ReadyOrders,
    name: { readonly name: string; readonly title: string },
    onHand: readonly OnHand[],
    options: BuyOptions,
    stoppable: (stop: () => void) => void,
  ) {
    this.orders = orders;
    this.name = name;
    this.onHand = onHand;
    this.options = options;
    this.stoppable = stoppable;
  }

  async run(): Promise<Ways> {
    const { orders } = this.orders;
    const pooled = orders.length > 1 ? this.pooled() : null;
    if (this.onHand.length > 0) {
      const together = pooled === null ? null : await this.alone('together', pooled);
      return { together, apart: await this.oneAfterTheOther() };
    }
    // Nothing is on hand that only one of them could have: all are searched at the same time.
    const single = orders.map((order) => this.single(order, this.onHand));
    const wrong = single.flatMap((outcome) => (outcome.ok ? [] : outcome.findings));
    const good = single.flatMap((outcome) => (outcome.ok ? [outcome.value] : []));
    const shared = pooled?.ok ? [pooled.value] : [];
    const nested = await this.nest([...shared, ...good], 1);
    const findings = single.flatMap((outcome) => outcome.findings);
    const apart: WayOutcome =
      wrong.length > 0
        ? { ok: false, fault: false, findings: wrong }
        : this.outcome('apart', good, nested.slice(shared.length), findings);
    const together =
      pooled === null
        ? null
        : pooled.ok
          ? this.outcome('together', shared, nested.slice(0, 1), [])
          : { ok: false as const, fault: false, findings: pooled.findings };
    return { together, apart };
  }

  private pooled() {
    const { orders, library } = this.orders;
    const names = [this.name.name, ...orders.map(({ ordered }) => ordered.order.id)];
    const supplies = suppliesOnHand(this.onHand, names, library);
    const job = poolOrders(
      orders.map(({ ordered }) => ordered),
      library,
      this.name,
      supplies,
    );
    const file = orders.map((order) => order.file).join(', ');
    return job.ok ? { ...job, value: { job: job.value, file, folder: '' } } : job;
  }

  private single({ file, ordered }: ReadyOrder, left: readonly OnHand[]) {
    const supplies = suppliesOnHand(left, [ordered.order.id], this.orders.library);
    const job = jobOfOrder(ordered, file, supplies);
    return job.ok ? { ...job, value: { job: job.value, file, folder: '' } } : job;
  }

  /** Groups that differ in names only, as those of vans alike, are searched once. */
  private async nest(jobs: readonly PreparedJob[], part: number): Promise<NestedGroup[][]> {
    const first = new Map<string, number>();
    const different: StockGroup[] = [];
    const places = jobs.map(({ job }) =>
      job.groups.map((group) => {
        const key = searchedIn(group);
        const place = first.get(key) ?? different.push(group) - 1;
        first.set(key, place);
        return place;
      }),
    );
    const [one] = jobs;
    if (one === undefined) return [];
    const { time } = this.options;
    const options = {
      ...this.options,
      ...(time === undefined ? {} : { time: time * part }),
      movesFor: (group: StockGroup) => movesFor(group, different.length),
    };
    const all = { ...one, job: { ...one.job, groups: different } };
    const [nested] = await nestJobs([all], options, this.stoppable);
    return places.map((groups) => groups.map((place) => nested![place]!));
  }

  private async alone(way: 'together', pooled: ReturnType<WaysToCut['pooled']>): Promise<WayOutcome> {
    if (!pooled.ok) return { ok: false, fault: false, findings: pooled.findings };
    const nested = await this.nest([pooled.value], 1 / (this.orders.orders.length + 1));
    return this.outcome(way, [pooled.value], nested, []);
  }

  /** Each order is cut from what the ones before it have left in the store, in the order in which they are begun. */
  private async oneAfterTheOther(): Promise<WayOutcome> {
    const { orders } = this.orders;
    const parts = orders.length > 1 ? orders.length + 1 : 1;
    const startOf = ({ ordered }: ReadyOrder) => ordered.order.start ?? '9999-12-31';
    const byStart = orders.map((order, index) => ({ order, index }));
    byStart.sort((a, b) =>
      startOf(a.order) < startOf(b.order) ? -1 : startOf(a.order) > startOf(b.order) ? 1 : a.index - b.index,
    );
    const ways: (NestedWay | undefined)[] = orders.map(() => undefined);
    const findings: Finding[] = [];
    let left = this.onHand;
    for (const { order, index } of byStart) {
      const prepared = this.single(order, left);
      findings.push(...prepared.findings);
      if (!prepared.ok) return { ok: false, fault: false, findings };
      const nested = await this.nest([prepared.value], 1 / parts);
      const outcome = this.outcome('apart', [prepared.value], nested, []);
      if (!outcome.ok) return outcome;
      ways[index] = outcome.value;
      left = leftAfter(left, outcome.value.plans[0]!.plan, [order.ordered.order.id]);
    }
    const all = ways.flatMap((way) => way ?? []);
    const value: NestedWay = {
      way: 'apart',
      jobs: all.flatMap(({ jobs }) => jobs),
      plans: all.flatMap(({ plans }) => plans),
      seconds: all.flatMap(({ seconds }) => seconds),
    };
    return { ok: true, value, findings };
  }

  private outcome(
    way: 'together' | 'apart',
    prepared: readonly PreparedJob[],
    nested: readonly (readonly NestedGroup[])[],
    findings: readonly Finding[],
  ): WayOutcome {
    const failures = nestFailures(prepared, nested);
    if (failures.length > 0) return { ok: false, fault: false, findings: failures };
    const jobs = prepared.map(({ job }) => job);
    const proofs = jobs.map((job, index) => {
      const nests = nested[index]!.map(({ outcome }) => (outcome as { ok: true; nest: Nest }).nest);
      return provePlan(job, nests, this.options.seed);
    });
    const wrong = proofs.flatMap((proof) => (proof.ok ? [] : proof.findings));
    if (wrong.length > 0) return { ok: false, fault: true, findings: wrong };
    const seconds = nested.map((groups) => groups.map((group) => Math.round(group.seconds * 1000) / 1000));
    return { ok: true, value: { way, jobs, plans: proofs as ProvenPlan[], seconds }, findings };
  }
}
