import type { PlanFile } from '../model/plan.ts';
import { cuttingList } from './cuttingList.ts';
import { edgingList, edgingToBuy, type ListedEdging } from './edgingList.ts';
import { offcutsKept } from './offcutsKept.ts';
import { sheetsToBuy, type Titles } from './sheetsToBuy.ts';
import { csvFromTable, type Table } from './table.ts';

export { type EdgingNeed, edgingNeeds, type ListedEdging } from './edgingList.ts';
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

/**
 * The lists of a job as tables, from which CSV and worksheets are made: cutting list, edging list, edging and sheets to
 * buy, and offcuts kept.
 */
export function makeTables(plan: PlanFile, library: ListedLibrary): readonly Table[] {
  return [
    cuttingList(plan),
    edgingList(plan, library.edgings),
    edgingToBuy(plan, library.edgings),
    sheetsToBuy(plan, library.titles),
    offcutsKept(plan),
  ];
}

/**
 * The lists of a job by file name, each RFC 4180 text with a header line. Lengths are in mm with one decimal and a point; columns are named in the file of each list
 * and do not change. A list without lines is still a list.
 */
export function makeLists(plan: PlanFile, library: ListedLibrary): ReadonlyMap<string, string> {
  return new Map(makeTables(plan, library).map((table) => [`${table.name}.csv`, csvFromTable(table)]));
}
