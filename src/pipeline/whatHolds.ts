import { umToMm } from '../basics/lengths.ts';
import { makeStockGroups } from '../demands/index.ts';
import type { HoldingPanel, OtherSize } from '../model/advice.ts';
import type { Nest } from '../model/nest.ts';
import type { Part } from '../model/part.ts';
import type { Demand, SheetSupply, StockGroup } from '../model/stock.ts';
import type { CostOfGroups } from './costOfGroups.ts';
import type { Job, OrderedFurniture } from './job.ts';
import { suppliesOf } from './prepareOrder.ts';
import { provenOrThrow, yieldOf } from './provenPlan.ts';

/** An order with its plan. */
interface PlannedOrder {
  readonly job: Job;
  readonly ordered: OrderedFurniture;
  readonly nests: readonly Nest[];
}

interface Figures {
  readonly sheets: number;
  readonly costMinor: number;
  readonly yield: number;
}

/** What one group takes by its plan, which is replayed before its figures are told. */
function figuresOf({ job }: PlannedOrder, group: StockGroup, nest: Nest, seed: number): Figures {
  const { ordered: _, later: __, ...about } = job;
  const proven = provenOrThrow({ ...about, groups: [group] }, [nest], seed);
  const sheets = nest.sheets.reduce((sum, { copies }) => sum + copies, 0);
  return { sheets, costMinor: nest.costMinor, yield: yieldOf(proven) };
}

function groupOf({ ordered }: PlannedOrder, parts: readonly Part[], supplies: readonly SheetSupply[]) {
  const { order, library } = ordered;
  const saw = library.saws.get(order.saw);
  if (saw === undefined) throw new Error(`the order's saw ${order.saw} is not in the library`);
  const { groups, findings } = makeStockGroups(parts, supplies, saw);
  return findings.some(({ severity }) => severity === 'error') ? undefined : groups[0];
}

/** The parts of a group less one piece of a demand: one panel, or one row of matched fronts. */
function without(parts: readonly Part[], demand: Demand): Part[] {
  const gone = demand.blank === undefined ? demand.parts.slice(0, 1) : demand.parts;
  return parts.flatMap((part) => {
    if (!gone.some((one) => one.part === part.id)) return [part];
    return part.count > 1 ? [{ ...part, count: part.count - 1 }] : [];
  });
}

/** Whether a piece has room where another was. */
function fitsInto(small: Demand, large: Demand): boolean {
  const straight = small.lengthUm <= large.lengthUm && small.widthUm <= large.widthUm;
  const turned = small.lengthUm <= large.widthUm && small.widthUm <= large.lengthUm;
  // Both must be free to lie as the other does.
  if (small.grain === 'none') return straight || turned;
  return straight && large.grain === 'length';
}

/**
 * The smallest panel of each stock group that brings a sheet, or a dearer one: without it the group would cost less, bound
 * first, by a plan that was replayed. None where a group needs its sheets for more than one panel. Of large panels
 * that save nothing no smaller one is tried that would lie in their place.
 */
export function holdingPanels(planned: PlannedOrder, costs: CostOfGroups, seed: number): HoldingPanel[] {
  const supplies = suppliesOf(planned.ordered.library);
  return planned.job.groups.flatMap((group, index) => {
    const nest = planned.nests[index]!;
    const area = ({ lengthUm, widthUm }: Demand) => lengthUm * widthUm;
    const useless: Demand[] = [];
    let last: { readonly demand: Demand; readonly group: StockGroup; readonly nest: Nest } | undefined;
    for (const demand of [...group.demands].sort((a, b) => area(b) - area(a))) {
      if (useless.some((large) => fitsInto(demand, large))) continue;
      const left = without(group.parts, demand);
      const rest = left.length === 0 ? undefined : groupOf(planned, left, supplies);
      const nests = rest && costs.plansBelow([rest], nest.costMinor);
      if (rest && nests) last = { demand, group: rest, nest: nests[0]! };
      else useless.push(demand);
    }
    if (last === undefined) return [];
    const { demand } = last;
    const [before, after] = [
      figuresOf(planned, group, nest, seed),
      figuresOf(planned, last.group, last.nest, seed),
    ];
    const named = demand.blank === undefined ? demand.parts.slice(0, 1) : demand.parts;
    const parts = named.flatMap(({ part }) => group.parts.filter(({ id }) => id === part));
    return [
      {
        board: group.board,
        finish: group.finish,
        unit: parts[0]?.unit ?? '',
        panels: parts.map(({ name }) => name),
        lengthMm: umToMm(demand.lengthUm),
        widthMm: umToMm(demand.widthUm),
        sheetsBefore: before.sheets,
        sheetsAfter: after.sheets,
        costBeforeMinor: before.costMinor,
        costAfterMinor: after.costMinor,
        yieldBefore: before.yield,
        yieldAfter: after.yield,
      },
    ];
  });
}

function sameSize(a: SheetSupply, b: SheetSupply): boolean {
  return a.lengthUm === b.lengthUm && a.widthUm === b.widthUm;
}

/**
 * What each stock group would take from sheets of one size alone: every size in which its finish can be had, where there are
 * several, and sizes that the library has only in other finishes of the same board, as a question to a supplier. The
 * group's own plan may mix the sizes of its finish.
 */
export function otherSizes(planned: PlannedOrder, costs: CostOfGroups, seed: number): OtherSize[] {
  const supplies = suppliesOf(planned.ordered.library);
  return planned.job.groups.flatMap((group, index) => {
    const ofBoard = supplies.filter(
      ({ board, thicknessUm }) => board === group.board && thicknessUm === group.thicknessUm,
    );
    const own = ofBoard.filter(({ finish }) => finish === group.finish);
    const others = ofBoard.filter(
      (supply, place) =>
        !own.some((one) => sameSize(one, supply)) &&
        ofBoard.findIndex((one) => sameSize(one, supply)) === place &&
        own.some(({ grain }) => grain === supply.grain),
    );
    const now = figuresOf(planned, group, planned.nests[index]!, seed);
    const told = (supply: SheetSupply, had: OtherSize['had']): OtherSize => {
      const alone = groupOf(planned, group.parts, [supply]);
      const nest = alone && costs.nest(alone);
      const figures = alone && nest ? figuresOf(planned, alone, nest, seed) : null;
      return {
        board: group.board,
        finish: group.finish,
        lengthMm: umToMm(supply.lengthUm),
        widthMm: umToMm(supply.widthUm),
        had,
        sheetsNow: now.sheets,
        costNowMinor: now.costMinor,
        yieldNow: now.yield,
        sheets: figures?.sheets ?? null,
        costMinor: had === 'offered' ? (figures?.costMinor ?? null) : null,
        yield: figures?.yield ?? null,
      };
    };
    return [
      ...(own.length > 1 ? own.map((supply) => told(supply, 'offered')) : []),
      ...others.map((supply) =>
        told({ ...supply, finish: group.finish, priceMinor: null, count: null }, 'other finish'),
      ),
    ];
  });
}
