import { sweepList } from '../documents/comparison/sweepList.ts';
import { csvFromTable } from '../documents/table.ts';
import type { Sweep } from '../model/sweep.ts';

export { leastOf, runsOf, sheetsOf, sweepOf } from '../comparing/sweep.ts';
export { sheetsFall, stepsText } from '../documents/comparison/sweepList.ts';
export type { Sweep, SweepPoint, WorkedOut } from '../model/sweep.ts';

/** The points of a sweep as comma-separated values. */
export function sweepCsv(sweep: Sweep): string {
  return csvFromTable(sweepList(sweep));
}
