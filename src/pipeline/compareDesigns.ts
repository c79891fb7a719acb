import { furnitureMass } from '../basics/furnitureMass.ts';
import { comparisonLists } from '../documents/comparison/comparisonLists.ts';
import { edgingNeeds } from '../documents/edgingList.ts';
import { payloadOf } from '../documents/payloadLines.ts';
import { csvFromTable } from '../documents/table.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { ComparedRow, Comparison, Design } from '../model/comparison.ts';
import type { PlanFile } from '../model/plan.ts';
import { MATERIAL_ONLY, makeQuotation } from '../quoting/index.ts';
import { measurePlan } from '../replay/index.ts';
import type { OrderedFurniture } from './job.ts';
import { quoteFacts } from './makeQuote.ts';

export { compare } from '../comparing/index.ts';
export type { ComparedRow, Comparison, Design } from '../model/comparison.ts';

const UM_PER_M = 1_000_000;
const UM2_PER_M2 = 1e12;

/** What of a plan is money, by the library's rates where it has them. */
function pricesOf(ordered: OrderedFurniture, plan: PlanFile) {
  const { rates } = ordered.library;
  const { sums } = makeQuotation(quoteFacts(ordered, plan), rates ?? MATERIAL_ONLY);
  const { materialMinor, workMinor, netMinor } = sums;
  return {
    pricedBy: rates === undefined ? ('material' as const) : ('estimate' as const),
    materialMinor,
    workMinor,
    netMinor,
  };
}

function costMinorOf({ pricedBy, sheets, stock }: PlanFile['groups'][number]): number | null {
  if (pricedBy !== 'price') return null;
  const prices = new Map(stock.map(({ id, price }) => [id, price]));
  return sheets.reduce((sum, sheet) => sum + sheet.copies * prices.get(sheet.stock)!, 0);
}

/**
 * An order with its plan, which has been replayed, as a design to compare: the figures that `plywright cut`, `check` and
 * `quote` tell of it. `name` tells it from the others.
 */
export function designOf(name: string, ordered: OrderedFurniture, plan: PlanFile): Design {
  const { order, library, furniture } = ordered;
  const vehicle = library.vehicles.get(order.vehicle);
  if (vehicle === undefined) throw new Error(`the vehicle ${order.vehicle} is not in the library`);
  const measures = measurePlan(plan);
  const total = (of: (measure: (typeof measures)[number]) => number) =>
    measures.reduce((sum, measure) => sum + of(measure), 0);
  const area = (of: 'panelAreaUm2' | 'sheetAreaUm2') =>
    measures.reduce((sum, measure) => sum + measure[of], 0n);
  const offcuts = measures.flatMap((measure) => measure.offcuts);
  const mass = furnitureMass(furniture, vehicle, library);
  const edging = edgingNeeds(plan, library.edgings).reduce(
    (sum, { toBuyUm, netUm }) => sum + (toBuyUm ?? netUm),
    0,
  );
  return {
    name,
    title: order.title,
    layout: library.layouts.get(order.layout)?.title ?? order.layout,
    vehicle: vehicle.title,
    currency: library.currency,
    alike: furniture.count,
    units: furniture.units.length * furniture.count,
    panels: total(({ panels }) => panels),
    groups: plan.groups.map((group, index) => ({
      board: group.board,
      finish: group.finish,
      panels: measures[index]!.panels,
      sheets: measures[index]!.sheets,
      leastSheets: group.bound.sheets,
      proved: group.proved,
      costMinor: costMinorOf(group),
      yield: measures[index]!.yield,
    })),
    yield:
      plan.groups.length === 0
        ? 0
        : Number((area('panelAreaUm2') * 1_000_000n) / area('sheetAreaUm2')) / 1_000_000,
    offcuts: {
      count: offcuts.reduce((sum, { count }) => sum + count, 0),
      areaM2: offcuts.reduce(
        (sum, { lengthUm, widthUm, count }) => sum + (lengthUm * widthUm * count) / UM2_PER_M2,
        0,
      ),
    },
    edgingMetres: edging / UM_PER_M,
    ...pricesOf(ordered, plan),
    furnitureKg: mass.totalKg,
    leftKg: mass.leftKg,
    frontKg: mass.frontKg,
    payloadLeftKg: payloadOf(ordered)?.leftKg ?? null,
    seats: furniture.seats ?? null,
    sleepingPlaces: furniture.sleepingPlaces ?? null,
    sawnMetres: total(({ sawings }) => sawings.sawnUm) / UM_PER_M,
    cuts: total(({ sawings }) => sawings.cuts),
    fenceSettings: total(({ sawings }) => sawings.fenceSettings),
  };
}

/** The lists of a comparison by file name. */
export function comparedLists(comparison: Comparison): ReadonlyMap<string, string> {
  return new Map(comparisonLists(comparison).map((table) => [`${table.name}.csv`, csvFromTable(table)]));
}

/** A figure as people read it, in English; without a currency money has none. */
export { printFigure as describeFigure } from '../documents/comparison/printFigure.ts';

/** What a row is called in English. */
export function rowInWords({ figure, of }: ComparedRow): string {
  const words = wordsOf('en').compare;
  return of === null ? words.figure[figure] : words.sheetsOf(of.board, of.finish);
}
