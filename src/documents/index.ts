import type { PlanFile } from '../model/plan.ts';
import { cuttingList } from './cuttingList.ts';
import { edgingList, edgingToBuy, type ListedEdging } from './edgingList.ts';
import { offcutsKept } from './offcutsKept.ts';
import { sheetsToBuy, type Titles } from './sheetsToBuy.ts';

export { type EdgingNeed, edgingNeeds, type ListedEdging } from './edgingList.ts';
export type { Titles } from './sheetsToBuy.ts';
export { type GroupSummary, type JobSummary, summarise } from './summary.ts';

/** What a library adds to a plan; both maps are empty for plain lists. */
export interface ListedLibrary {
  /** Edgings by id. */
  readonly edgings: ReadonlyMap<string, ListedEdging>;
  /** Titles of boards and finishes by id. */
  readonly titles: Titles;
}

/**
 * The lists of a job by file name, each RFC 4180 text with a header line: cutting list, edging list, edging and sheets
 * to buy, and offcuts kept. Lengths are in mm with one decimal and a point; columns are named in the file of each list
 * and do not change. A list without lines is still a list.
 */
export function makeLists(plan: PlanFile, library: ListedLibrary): ReadonlyMap<string, string> {
  return new Map([
    ['cutting-list.csv', cuttingList(plan)],
    ['edging-list.csv', edgingList(plan, library.edgings)],
    ['edging-to-buy.csv', edgingToBuy(plan, library.edgings)],
    ['sheets-to-buy.csv', sheetsToBuy(plan, library.titles)],
    ['offcuts-kept.csv', offcutsKept(plan)],
  ]);
}
