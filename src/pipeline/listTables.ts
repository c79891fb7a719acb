import { type ListedLibrary, makeTables, type Table } from '../documents/index.ts';
import type { PlanFile } from '../model/plan.ts';
import { type Job, libraryOf } from './job.ts';

export { type CellKind, csvFromTable, decimalsOf, printCell, type Table } from '../documents/table.ts';

/** Words for ids: titles of the library's boards, finishes and edgings; none for a plain list. */
export function titlesOf(job: Job): ReadonlyMap<string, string> {
  const library = libraryOf(job);
  if (library === undefined) return new Map();
  const kinds = [library.boards, library.finishes, library.edgings];
  return new Map(
    kinds.flatMap((kind) => [...kind.values()].map((thing) => [thing.id, thing.title] as const)),
  );
}

function listedLibraryOf(job: Job): ListedLibrary {
  return { edgings: libraryOf(job)?.edgings ?? new Map(), titles: titlesOf(job) };
}

/** The lists of a job as tables: CSV files and the workbook are made from these and hold the same. */
export function listTables(job: Job, plan: PlanFile): readonly Table[] {
  return makeTables(plan, listedLibraryOf(job), job.ordered);
}
