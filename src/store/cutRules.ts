import { errorFinding } from '../basics/findings.ts';
import type { Finding } from '../model/finding.ts';
import type { Booking, Draft, Ledger } from '../model/store.ts';
import { bookingsOfPlan } from './planBookings.ts';

type Cut = Pick<Booking, 'plan' | 'sheets'>;

/** Whether two cuts of one plan have a sheet in common; one that does not say which is of all sheets. */
function overlap(a: Cut, b: Cut): boolean {
  if (a.sheets === undefined || b.sheets === undefined) return true;
  return a.sheets.some((one) =>
    b.sheets!.some(
      (other) =>
        other.group === one.group &&
        other.number === one.number &&
        other.copies.some((copy) => one.copies.includes(copy)),
    ),
  );
}

/** The cut that a booking makes or brings back; null for any other. */
function cutOf(ledger: Ledger, draft: Draft): Cut | null {
  if (draft.kind === 'cut') return draft;
  const reversed = draft.reverses === undefined ? undefined : ledger.bookings[draft.reverses - 1];
  const first = reversed?.reverses === undefined ? undefined : ledger.bookings[reversed.reverses - 1];
  return first?.kind === 'cut' ? first : null;
}

/** A sheet is sawn once: what stands in the way where a booking saws a sheet of a plan that another one has sawn. */
export function cutFindings(ledger: Ledger, draft: Draft): Finding[] {
  const cut = cutOf(ledger, draft);
  if (cut?.plan === undefined) return [];
  const before = bookingsOfPlan(ledger, cut.plan).find((other) => overlap(cut, other));
  if (before === undefined) return [];
  const message = `This plan is booked already, as booking ${before.number} of ${before.date}.`;
  const advice = `if that one was wrong, reverse it: plywright stock reverse ${before.number}`;
  return [errorFinding('cut-twice', message, undefined, { advice })];
}
