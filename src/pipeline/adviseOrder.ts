import { type ChangeValues, findChanges, smallestParts, type Trials } from '../advising/index.ts';
import { shortNumber } from '../basics/evaluateFormula.ts';
import { makeStockGroups } from '../demands/index.ts';
import type { Advice, AdviceReport, AdvisedPlan, ChangeLimit, SheetsChange } from '../model/advice.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Library } from '../model/library.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Nest } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import type { WhatIf } from '../model/whatIf.ts';
import { MATERIAL_ONLY, makeQuotation } from '../quoting/index.ts';
import { changeLimits } from './changeLimits.ts';
import { CostOfGroups, type SearchLimits } from './costOfGroups.ts';
import type { Job, OrderedFurniture } from './job.ts';
import type { ProvenPlan } from './makePapers.ts';
import { quoteFacts } from './makeQuote.ts';
import { describeNestFailure } from './nestFailures.ts';
import { checkOrdered, furnishOrder, jobOfOrder, panelsOfOrder, suppliesOf } from './prepareOrder.ts';
import { provenOrThrow, yieldOf } from './provenPlan.ts';
import { holdingPanels, otherSizes } from './whatHolds.ts';

export type { Advice, AdviceReport, AdvisedChange, HoldingPanel, OtherSize } from '../model/advice.ts';

/** An order as it is read, and what may be changed of it. */
export interface AdviceRequest {
  readonly text: string;
  readonly file: string;
  readonly library: Library;
  readonly whatIf: WhatIf;
  /** Such as `locker.depth=300..320`. */
  readonly may: readonly string[];
  /** Nestings after which no further change is looked for. */
  readonly mostNestings: number;
  readonly search: SearchLimits;
}

/** A plan that was replayed, with the order that it is for. */
interface Planned {
  readonly job: Job;
  readonly ordered: OrderedFurniture;
  readonly nests: readonly Nest[];
  readonly proven: ProvenPlan;
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}

function figuresOf({ ordered, nests, proven }: Planned): AdvisedPlan {
  const rates = ordered.library.rates ?? MATERIAL_ONLY;
  return {
    sheets: sum(proven.groups, ({ sheetCount }) => sheetCount),
    sheetsCostMinor: sum(nests, ({ costMinor }) => costMinor),
    leastCostMinor: sum(nests, ({ bound }) => bound.costMinor),
    netMinor: makeQuotation(quoteFacts(ordered, proven.plan), rates).sums.netMinor,
    yield: yieldOf(proven),
    proved: nests.every(({ proved }) => proved),
  };
}

function sheetsOf({ job, nests }: Planned, { board, finish }: Pick<StockGroup, 'board' | 'finish'>) {
  const own = nests.filter((_, index) => {
    const group = job.groups[index]!;
    return group.board === board && group.finish === finish;
  });
  return {
    sheets: sum(own, (nest) => sum(nest.sheets, ({ copies }) => copies)),
    costMinor: sum(own, ({ costMinor }) => costMinor),
  };
}

function sheetsChanges(before: Planned, after: Planned): SheetsChange[] {
  const kinds = new Map(
    [...before.job.groups, ...after.job.groups].map(
      ({ board, finish }) => [JSON.stringify([board, finish]), { board, finish }] as const,
    ),
  );
  return [...kinds.values()].flatMap((kind) => {
    const [old, now] = [sheetsOf(before, kind), sheetsOf(after, kind)];
    if (old.sheets === now.sheets && old.costMinor === now.costMinor) return [];
    return [
      {
        ...kind,
        sheetsBefore: old.sheets,
        sheetsAfter: now.sheets,
        costBeforeMinor: old.costMinor,
        costAfterMinor: now.costMinor,
      },
    ];
  });
}

function settingsOf(limits: readonly ChangeLimit[], values: ChangeValues): string[] {
  return limits.flatMap(({ name, now }, index) =>
    values[index] === now ? [] : [`${name}=${shortNumber(values[index]!)}`],
  );
}

/** How often each kind of warning was found: a change may bring none that the order does not have. */
function warningsBy(findings: readonly Finding[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { code, severity } of findings)
    if (severity !== 'caution') counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}

/** Tries values of an order: its panels, their checks, the bound and, only then, plans. */
class OrderTrials implements Trials<Planned> {
  private readonly request: AdviceRequest;
  private readonly limits: readonly ChangeLimit[];
  private readonly costs: CostOfGroups;
  private readonly warnings: ReadonlyMap<string, number>;
  private readonly furnished = new Map<string, Checked<OrderedFurniture>>();

  constructor(
    request: AdviceRequest,
    limits: readonly ChangeLimit[],
    costs: CostOfGroups,
    findingsNow: readonly Finding[],
  ) {
    this.request = request;
    this.limits = limits;
    this.costs = costs;
    this.warnings = warningsBy(findingsNow);
  }

  spent(): number {
    return this.costs.nestings / this.request.mostNestings;
  }

  private panels(values: ChangeValues): Checked<OrderedFurniture> {
    const key = JSON.stringify(values);
    const known = this.furnished.get(key);
    if (known !== undefined) return known;
    const { text, file, library, whatIf } = this.request;
    const set = [...whatIf.set, ...settingsOf(this.limits, values)];
    const made = panelsOfOrder(text, file, library, { ...whatIf, set });
    this.furnished.set(key, made);
    return made;
  }

  mayCostLess(corners: readonly ChangeValues[], below: number): 'yes' | 'no' | 'unknown' {
    const { library } = this.request;
    const lists = [];
    let saw: string | undefined;
    for (const corner of corners) {
      const made = this.panels(corner);
      if (!made.ok) return 'unknown';
      saw = made.value.order.saw;
      lists.push(made.value.furniture.units.flatMap(({ panels }) => panels));
    }
    const rules = saw === undefined ? undefined : library.saws.get(saw);
    if (rules === undefined) return 'unknown';
    const { groups, findings } = makeStockGroups(smallestParts(lists), suppliesOf(library), rules);
    // Smallest panels may be too small for the saw, or a row no row any more, where no single value has them so.
    if (findings.some(({ severity }) => severity === 'error')) return 'unknown';
    return this.costs.plansBelow(groups, below) === null ? 'no' : 'yes';
  }

  planBelow(values: ChangeValues, below: number) {
    const made = this.panels(values);
    if (!made.ok) return null;
    const { file } = this.request;
    const findings = [...made.findings, ...checkOrdered(made.value, file)];
    if (findings.some(({ severity }) => severity === 'error')) return null;
    const job = jobOfOrder(made.value, file);
    if (!job.ok) return null;
    const warnings = warningsBy([...findings, ...job.findings]);
    if ([...warnings].some(([code, count]) => count > (this.warnings.get(code) ?? 0))) return null;
    const nests = this.costs.plansBelow(job.value.groups, below);
    if (nests === null) return null;
    const proven = provenOrThrow(job.value, nests, this.request.search.seed);
    const plan = { job: job.value, ordered: made.value, nests, proven };
    return { costMinor: sum(nests, ({ costMinor }) => costMinor), plan };
  }
}

/**
 * What a designer can be told who wants an order to take less: which small changes within the limits given, all checks
 * passing, make its sheets cost less; which panel brings a sheet; what sheets of one size alone would take. Everything
 * that is told has a plan that was nested with the same seed and work limit as the order's own, and replayed. Findings
 * are those of the order and of the limits. Throws a WrongPlan when a plan does not pass its replay.
 */
export function adviseOrder(request: AdviceRequest, solver: LinearSolver | null): Checked<AdviceReport> {
  const { text, file, library, whatIf, search } = request;
  const ordered = furnishOrder(text, file, library, whatIf);
  if (!ordered.ok) return ordered;
  const job = jobOfOrder(ordered.value, file);
  const limits = changeLimits(request.may, ordered.value);
  const findings = [...ordered.findings, ...job.findings];
  if (!job.ok || !limits.ok)
    return { ok: false, findings: [...findings, ...(limits.ok ? [] : limits.findings)] };
  const costs = new CostOfGroups(solver, search);
  const nested = job.value.groups.map((group) => costs.outcome(group));
  const failures = nested.flatMap((outcome, index) =>
    outcome.ok ? [] : describeNestFailure(job.value.groups[index]!, outcome.failure, file),
  );
  if (failures.length > 0) return { ok: false, findings: [...findings, ...failures] };
  const nests = nested.flatMap((outcome) => (outcome.ok ? [outcome.nest] : []));
  const before: Planned = {
    job: job.value,
    ordered: ordered.value,
    nests,
    proven: provenOrThrow(job.value, nests, search.seed),
  };
  const now = figuresOf(before);
  const trials = new OrderTrials(request, limits.value, costs, findings);
  const { found, lookedUpTo } = findChanges(limits.value, now.sheetsCostMinor, trials);
  const advice = found.map(({ values, plan }): Advice => {
    const settings = settingsOf(limits.value, values);
    const changes = limits.value.flatMap(({ name, kind, now: from }, index) =>
      values[index] === from ? [] : [{ name, kind, from, to: values[index]! }],
    );
    return { changes, settings, sheets: sheetsChanges(before, plan), plan: figuresOf(plan) };
  });
  const { nestings, ruledOut } = costs;
  const panels = holdingPanels(before, costs, search.seed);
  const sizes = otherSizes(before, costs, search.seed);
  return { ok: true, value: { now, advice, panels, sizes, nestings, ruledOut, lookedUpTo }, findings };
}
