import { errorFinding, listWords, shownText, warningFinding } from '../basics/findings.ts';
import { sheetsWithout } from '../changes/sheetsOfPlan.ts';
import { edgingNeeds, fittingNeeds } from '../documents/index.ts';
import { labelledPieces } from '../documents/panelStickerPieces.ts';
import type { Finding } from '../model/finding.ts';
import type { PlanFile, SawnCopies } from '../model/plan.ts';
import type { BookingLine, Ledger, StoreItem } from '../model/store.ts';
import { amountFor } from '../store/applyLine.ts';
import { issueLines } from '../store/draftLines.ts';
import { amountInWords, amountOf, itemInWords, itemKey, itemOf } from '../store/items.ts';
import { bookingsOfPlan } from '../store/planBookings.ts';
import type { OrderedFurniture } from './job.ts';

/** Edging comes off a roll in whole metres, as it is counted in the store. */
const METRE_UM = 1_000_000;
const MM_PER_METRE = 1000;

/** What of a cut is booked. */
export interface CutSheets {
  readonly plan: PlanFile;
  /** SHA-256 of the plan's text. */
  readonly hash: string;
  readonly job: string;
  /** All sheets of the plan that are sawn once this is booked. */
  readonly sawn: readonly SawnCopies[];
}

/** The plan as if only the panels of some sheets were on it. */
function onlySawn({ plan, job, sawn }: CutSheets): PlanFile {
  const count = new Map<string, number>();
  for (const piece of labelledPieces(plan, job)) {
    if (piece.is !== 'panel') continue;
    const { group, sheet, copy } = piece;
    const isSawn = sawn.some(
      (one) => one.group === group.id && one.number === sheet.number && one.copies.includes(copy),
    );
    if (isSawn) count.set(piece.ending.panel, (count.get(piece.ending.panel) ?? 0) + 1);
  }
  const { sawn: _earlier, ...rest } = plan;
  const groups = plan.groups.map((group) => ({
    ...group,
    panels: group.panels.flatMap((panel) => {
      const pieces = count.get(panel.id) ?? 0;
      return pieces === 0 ? [] : [{ ...panel, count: pieces }];
    }),
  }));
  return { ...rest, groups };
}

/** What bookings of some plans have taken out of an item, reversed ones left out. */
function takenBefore(ledger: Ledger, plans: readonly string[], item: StoreItem): number {
  return plans
    .flatMap((plan) => bookingsOfPlan(ledger, plan))
    .flatMap(({ lines }) => lines)
    .filter((line) => line.move === 'out' && itemKey(itemOf(line)) === itemKey(item))
    .reduce((sum, line) => sum + amountOf(line), 0);
}

/** What jobs may take of an item: what is free, and what is reserved for them. */
function available(ledger: Ledger, item: StoreItem, jobs: readonly string[]): number {
  const entry = ledger.stock.get(itemKey(item));
  return entry === undefined ? 0 : amountFor(entry, jobs);
}

function tooLittle(item: StoreItem, wanted: number, there: number): Finding {
  const what = itemInWords(item);
  const message =
    there === 0
      ? `The store has nothing of ${what}, so none was taken out.`
      : `The store has too little of ${what}: what is there was taken out.`;
  return warningFinding('too-little-in-store', message, undefined, {
    found: amountInWords(item, there),
    expected: amountInWords(item, wanted),
    advice: 'count what is there; if it is more, correct the stock',
  });
}

function ordersOn({ groups, sawn }: PlanFile): Set<string> {
  const panels = [...groups, ...(sawn?.groups ?? [])].flatMap((group) => [...group.panels]);
  return new Set(panels.map(({ order }) => order));
}

/** Of a plan for several orders the panels of one. */
function onlyOf(plan: PlanFile, { order }: OrderedFurniture): PlanFile {
  if (ordersOn(plan).size < 2) return plan;
  const groups = plan.groups.map((group) => ({
    ...group,
    panels: group.panels.filter((panel) => panel.order === order.id),
  }));
  return { ...plan, groups };
}

/** Orders whose supplies are to go out with a plan for several orders that has no panel of them. */
export function ordersNotCut(plan: PlanFile, orders: readonly OrderedFurniture[]): Finding[] {
  const known = ordersOn(plan);
  if (known.size < 2) return [];
  return orders.flatMap(({ order }) =>
    known.has(order.id)
      ? []
      : [
          errorFinding(
            'order-not-cut',
            `The plan has no panel of the order ${shownText(order.id)}.`,
            undefined,
            {
              expected: listWords([...known], 'or'),
            },
          ),
        ],
  );
}

interface Wanted {
  readonly item: StoreItem;
  readonly amount: number;
}

/** What an order takes of each item: edging in whole metres, as mm; fittings in pieces. */
function needs(cut: CutSheets, ordered: OrderedFurniture): Wanted[] {
  const { furniture, library } = ordered;
  const edging = edgingNeeds(onlyOf(onlySawn(cut), ordered), library.edgings).map(
    ({ edging, netUm, toBuyUm }) => ({
      item: { item: 'edging', edging } as const,
      amount: Math.ceil((toBuyUm ?? netUm) / METRE_UM) * MM_PER_METRE,
    }),
  );
  const isWhole = cut.plan.recut === undefined && sheetsWithout(cut.plan, cut.sawn).length === 0;
  if (!isWhole) return edging;
  const fittings = fittingNeeds(furniture, library).map(({ fitting, count }) => ({
    item: { item: 'fitting', fitting } as const,
    amount: count,
  }));
  return [...edging, ...fittings];
}

/** What several orders take, each item once. */
function together(all: readonly Wanted[]): Wanted[] {
  const found = new Map<string, Wanted>();
  for (const { item, amount } of all) {
    const before = found.get(itemKey(item))?.amount ?? 0;
    found.set(itemKey(item), { item, amount: before + amount });
  }
  return [...found.values()];
}

/**
 * The lines that take out edging and fittings of one or several orders with a cut: edging for the panels of all sheets of the
 * plan that are sawn, each strip with its overlength, in whole metres; fittings with the last sheet; first what is reserved for
 * the job and the orders. What earlier bookings of the plan took out is not taken again. Of what the store has too little as
 * much as there is goes out, and that is told.
 */
export function suppliesOfCut(
  cut: CutSheets,
  orders: readonly OrderedFurniture[],
  ledger: Ledger,
): { readonly lines: readonly BookingLine[]; readonly findings: readonly Finding[] } {
  const lines: BookingLine[] = [];
  const findings: Finding[] = [];
  const jobs = [cut.job, ...orders.map(({ order }) => order.id)];
  const earlier = [...(cut.plan.before?.earlier ?? []), ...(cut.plan.before ? [cut.plan.before.plan] : [])];
  for (const { item, amount } of together(orders.flatMap((ordered) => needs(cut, ordered)))) {
    // Fittings are of the whole order, and an earlier plan of it may have been finished.
    const plans = item.item === 'fitting' ? [...earlier, cut.hash] : [cut.hash];
    const wanted = Math.max(0, amount - takenBefore(ledger, plans, item));
    const there = available(ledger, item, jobs);
    const taken = Math.min(wanted, there);
    if (taken > 0) lines.push(...issueLines(ledger, item, taken, jobs));
    if (taken < wanted) findings.push(tooLittle(item, wanted, there));
  }
  return { lines, findings };
}
