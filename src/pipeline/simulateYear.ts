import { mmToUm } from '../basics/lengths.ts';
import { csvFromTable } from '../documents/table.ts';
import { yearLists } from '../documents/yearLists.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Library } from '../model/library.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Nest } from '../model/nest.ts';
import type { PlanFile } from '../model/plan.ts';
import type {
  CutTogether,
  CuttingDay,
  FinishTaken,
  OrderMix,
  RackedOffcut,
  YearRun,
} from '../model/yearOfOrders.ts';
import { measurePlan } from '../replay/index.ts';
import { addTaken, keptInRack, rackAreaUm2, scheduleOf } from '../yearOfOrders/index.ts';
import type { OrderedFurniture } from './job.ts';
import { describeNestFailure } from './nestFailures.ts';
import { nestGroup } from './nestGroup.ts';
import { offcutsCutUp, offcutsOfPlan } from './piecesOfPlan.ts';
import { poolOrders } from './poolOrders.ts';
import { provenOrThrow } from './provenPlan.ts';

export type { FinishTaken, OrderMix, Spread, YearRun, YearSummary } from '../model/yearOfOrders.ts';
export { readMix, summariseRuns, yieldOf } from '../yearOfOrders/index.ts';

/** A mix with its orders worked out, an order for each entry, all of one library. */
export interface YearRequest {
  readonly mix: OrderMix;
  readonly orders: readonly OrderedFurniture[];
  readonly library: Library;
  /** The mix as it is called in findings. */
  readonly file: string;
  /** Moves for each stock group. */
  readonly workLimit: number;
  /** Told before each cutting. */
  readonly progress?: (week: number) => void;
}

/** An order of a mix under a name of its own, so that several alike can be pooled. */
function named(ordered: OrderedFurniture, id: string): OrderedFurniture {
  const { order, furniture } = ordered;
  const units = furniture.units.map((unit) => ({
    ...unit,
    panels: unit.panels.map((panel) => ({ ...panel, order: id })),
  }));
  return { ...ordered, order: { ...order, id }, furniture: { ...furniture, order: id, units } };
}

function takenBy(plan: PlanFile): FinishTaken[] {
  const measures = measurePlan(plan);
  return plan.groups.map((group, index): FinishTaken => {
    const stocks = new Map(group.stock.map((stock) => [stock.id, stock]));
    const whole = group.sheets.flatMap(({ stock: id, copies }) => {
      const stock = stocks.get(id)!;
      return stock.kind === 'sheet' ? [{ stock, copies }] : [];
    });
    const { panels, panelAreaUm2 } = measures[index]!;
    return {
      board: group.board,
      finish: group.finish,
      panels,
      sheets: whole.reduce((sum, { copies }) => sum + copies, 0),
      costMinor: whole.reduce((sum, { stock, copies }) => sum + copies * stock.price, 0),
      panelAreaUm2,
      sheetAreaUm2: whole.reduce(
        (sum, { stock, copies }) =>
          sum + BigInt(mmToUm(stock.length)) * BigInt(mmToUm(stock.width)) * BigInt(copies),
        0n,
      ),
    };
  });
}

/** Cuts what has come, from the rack and from new sheets; the plan is replayed. */
function cutDay(
  { week, orders }: CuttingDay,
  rack: readonly RackedOffcut[],
  request: YearRequest,
  solver: LinearSolver | null,
  seed: number,
): Checked<{ readonly plan: PlanFile; readonly name: string }> {
  const { mix, library, workLimit, file } = request;
  const name = `week-${week}`;
  const own = orders.map(({ entry, number }) => {
    const ordered = request.orders[entry]!;
    return named(ordered, `${ordered.order.id}-${entry + 1}-${number}`);
  });
  const title = `${mix.title}, week ${week}`;
  const pooled = poolOrders(
    own,
    library,
    { name, title },
    rack.map(({ supply }) => supply),
  );
  if (!pooled.ok) return pooled;
  const nests: Nest[] = [];
  const findings: Finding[] = [];
  for (const group of pooled.value.groups) {
    const outcome = nestGroup(group, solver, { seed, workLimit });
    if (outcome.ok) nests.push(outcome.nest);
    else findings.push(...describeNestFailure(group, outcome.failure, file));
  }
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: { plan: provenOrThrow(pooled.value, nests, seed).plan, name }, findings: [] };
}

/**
 * One run through the weeks of a mix: orders come in weeks drawn by the seed, those of some weeks are cut together from the
 * offcuts of earlier ones and new sheets, and what is left goes to the rack. Every plan is replayed. The same request and
 * seed give the same run. Throws a WrongPlan when a plan does not pass its replay.
 */
export function simulateYear(
  request: YearRequest,
  seed: number,
  solver: LinearSolver | null,
): Checked<YearRun> {
  const { mix } = request;
  const cuttings: CutTogether[] = [];
  let rack: readonly RackedOffcut[] = [];
  for (const day of scheduleOf(mix, seed)) {
    const { week, orders } = day;
    request.progress?.(week);
    const before = rack.length;
    const offered = keptInRack(rack, week, mix);
    const cut = cutDay(day, offered, request, solver, seed);
    if (!cut.ok) return cut;
    const { plan, name } = cut.value;
    const used = new Set(offcutsCutUp(plan));
    const made = offcutsOfPlan(plan, name).map(({ sheet: _, ...supply }) => ({ week, supply }));
    const left = offered.filter(({ supply }) => !used.has(supply.id));
    rack = keptInRack([...left, ...made], week, mix);
    cuttings.push({
      week,
      orders: orders.length,
      taken: addTaken(takenBy(plan)),
      offcutsUsed: used.size,
      offcutsMade: made.length,
      offcutsGone: before + made.length - used.size - rack.length,
      offcutsInRack: rack.length,
      rackAreaUm2: rackAreaUm2(rack),
    });
  }
  const taken = addTaken(cuttings.flatMap((one) => one.taken));
  return { ok: true, value: { seed, cuttings, taken }, findings: [] };
}

/** The lists of the runs by file name. */
export function yearCsv(runs: readonly YearRun[], currency: string): ReadonlyMap<string, string> {
  return new Map(yearLists(runs, currency).map((table) => [`${table.name}.csv`, csvFromTable(table)]));
}
