import type { PlanGroup, PlanStock, SawnCopies } from '../model/plan.ts';
import type { Booking, Ledger } from '../model/store.ts';
import { sheetsThere } from './sheetsOnHand.ts';

/** The bookings of a plan that are not reversed, by the SHA-256 of its text. */
export function bookingsOfPlan({ bookings, reversedBy }: Ledger, plan: string): Booking[] {
  return bookings.filter((one) => one.plan === plan && !reversedBy.has(one.number));
}

/** Whether anything of a plan is booked as sawn. */
export function planIsBooked(ledger: Ledger, plan: string): boolean {
  return bookingsOfPlan(ledger, plan).length > 0;
}

/** Numbers of the recuts of a job that are booked, reversed ones as well: their labels may be on offcuts. */
export function recutsBooked({ bookings }: Ledger, job: string): number[] {
  return bookings.flatMap(({ order, recut }) => (recut !== undefined && order === job ? [recut.number] : []));
}

/** Which sheets of a plan are booked as sawn: copies by group and number of the cut plan. `all` when that is all of them. */
export function sheetsBooked(ledger: Ledger, plan: string): readonly SawnCopies[] | 'all' {
  const done: SawnCopies[] = [];
  for (const { sheets } of bookingsOfPlan(ledger, plan)) {
    // Before parts of a plan could be booked, a booking was of the whole plan.
    if (sheets === undefined) return 'all';
    done.push(...sheets);
  }
  return done;
}

/** How many sheets there are of a size of a plan that an order may take: free, or reserved for it. */
export function sheetsFor(ledger: Ledger, order: string): (group: PlanGroup, of: PlanStock) => number {
  return ({ board, finish, thickness }, { length, width, grain }) =>
    sheetsThere(ledger, order, { item: 'sheet', board, finish, thickness, length, width, grain });
}
