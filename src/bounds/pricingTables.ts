import { GuillotineTable } from '../basics/guillotineTable.ts';
import { MOST_RECHECK_WORK, sameSheetBefore } from '../basics/recheckBound.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

/** Grids to which sizes are rounded when exact positions are too many, in 0.1 mm. */
const GRIDS = [1, 2, 5, 10, 20, 30, 40, 50, 70, 100, 150, 200, 300, 400, 500, 700, 1000];

/** Grids worth trying for a problem, in 0.1 mm, finest first: of those that round nothing only the first. */
export function gridsFor(problem: RectangleProblem): number[] {
  const unit = Math.round(problem.unitUm / 100);
  return GRIDS.filter((grid) => grid === 1 || unit % grid !== 0);
}

/** Tables for all kinds of sheets on one grid, one for all kinds that are alike. */
export interface PricingTables {
  readonly grid: number;
  readonly limited: readonly number[];
  readonly bySheet: readonly GuillotineTable[];
  /** Of kinds that are alike the first. */
  readonly distinct: readonly number[];
  /** Steps of pricing every kind once. */
  readonly work: number;
}

/**
 * Tables that take at most `mostWork` steps together, on the grid given or else on the finest that does; items in
 * `limited` have their copies counted. Null when there are none.
 */
export function makePricingTables(
  problem: RectangleProblem,
  limited: readonly number[],
  mostWork: number,
  onGrid: number | null,
): PricingTables | null {
  for (const grid of onGrid === null ? gridsFor(problem) : [onGrid]) {
    const bySheet: GuillotineTable[] = [];
    const distinct: number[] = [];
    const most = Math.min(mostWork, MOST_RECHECK_WORK);
    let work = 0;
    for (let s = 0; s < problem.sheets.length; s++) {
      const twin = sameSheetBefore(problem, s);
      const table =
        twin >= 0
          ? bySheet[twin]!
          : GuillotineTable.make(problem, { sheet: s, grid, limited, mostWork: most - work });
      if (!table) break;
      bySheet.push(table);
      if (twin >= 0) continue;
      distinct.push(s);
      work += table.work;
    }
    if (bySheet.length === problem.sheets.length) return { grid, limited, bySheet, distinct, work };
  }
  return null;
}
