import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import type { PlanFile } from '../model/plan.ts';
import { alreadySawn } from './alreadySawn.ts';
import { appliancesList } from './appliancesList.ts';
import { cuttingList } from './cuttingList.ts';
import { drillingList } from './drillingList.ts';
import { edgingList, edgingToBuy, type ListedEdging } from './edgingList.ts';
import { fittingsList } from './fittingsList.ts';
import { massByUnit } from './massByUnit.ts';
import { offcutsKept } from './offcutsKept.ts';
import { sawSteps } from './sawSteps.ts';
import { sheetsToBuy, type Titles } from './sheetsToBuy.ts';
import { csvFromTable, type Table } from './table.ts';

export { type EdgingNeed, edgingNeeds, type ListedEdging } from './edgingList.ts';
export { type FittingNeed, fittingNeeds } from './fittingsList.ts';
export type { Titles } from './sheetsToBuy.ts';
export { type GroupSummary, type JobSummary, summarise } from './summary.ts';
export type { Cell, CellKind, Column, Table } from './table.ts';

/** What a library adds to a plan; both maps are empty for plain lists. */
export interface ListedLibrary {
  /** Edgings by id. */
  readonly edgings: ReadonlyMap<string, ListedEdging>;
  /** Titles of boards and finishes by id. */
  readonly titles: Titles;
}

/** What an order adds to a plan; a plain list has nothing of it. */
export interface ListedOrder {
  readonly order: Order;
  readonly library: Library;
  readonly furniture: Furniture;
}

function tablesOfOrder(plan: PlanFile, { order, library, furniture }: ListedOrder): Table[] {
  const vehicle = library.vehicles.get(order.vehicle);
  if (vehicle === undefined) throw new Error(`the vehicle ${order.vehicle} is not in the library`);
  // A panel that is cut anew takes no new fittings, and the furniture weighs what it did.
  if (plan.recut !== undefined) return [drillingList(plan, furniture, library)];
  return [
    drillingList(plan, furniture, library),
    fittingsList(furniture, library),
    appliancesList(furniture),
    massByUnit(furniture, vehicle, library),
  ];
}

/**
 * The lists of a job as tables, from which CSV and worksheets are made: cutting list, edging list, edging and sheets to
 * buy, offcuts kept and the steps of the saw; of a plan that goes on from another what is sawn already; for an order its holes, its fittings, its appliances and the mass of its units as well.
 */
export function makeTables(plan: PlanFile, library: ListedLibrary, ordered?: ListedOrder): readonly Table[] {
  return [
    cuttingList(plan),
    edgingList(plan, library.edgings),
    edgingToBuy(plan, library.edgings),
    sheetsToBuy(plan, library.titles),
    offcutsKept(plan),
    sawSteps(plan),
    ...(plan.sawn === undefined ? [] : [alreadySawn(plan)]),
    ...(ordered === undefined ? [] : tablesOfOrder(plan, ordered)),
  ];
}

/**
 * The lists of a job by file name, each RFC 4180 text with a header line. Lengths are in mm with one decimal and a
 * point; columns are named in the file of each list and do not change. A list without lines is still a list.
 */
export function makeLists(
  plan: PlanFile,
  library: ListedLibrary,
  ordered?: ListedOrder,
): ReadonlyMap<string, string> {
  return new Map(
    makeTables(plan, library, ordered).map((table) => [`${table.name}.csv`, csvFromTable(table)]),
  );
}
