import type { Checked } from '../model/finding.ts';
import type { Booking, Ledger } from '../model/store.ts';
import { bookInto, type OpenLedger } from './book.ts';

/**
 * What a history of bookings comes to: goes in with the bookings in their order, and gives the ledger after the last of
 * them, with the stock item by item. Every rule of `book` holds for every prefix, so that at no day there was less than
 * nothing of anything. A history that breaks a rule is refused with the number of the booking.
 */
export function replayBookings(bookings: readonly Booking[]): Checked<Ledger> {
  const ledger: OpenLedger = {
    bookings: [],
    stock: new Map(),
    onOrder: new Map(),
    reversedBy: new Map(),
  };
  for (const booking of bookings) {
    const field = `booking ${booking.number}`;
    if (booking.number !== ledger.bookings.length + 1) {
      const message = `Booking ${booking.number} stands where ${ledger.bookings.length + 1} should.`;
      return {
        ok: false,
        findings: [{ code: 'number-wrong', severity: 'error', message, place: { file: '', field } }],
      };
    }
    const wrong = bookInto(ledger, booking);
    if (wrong.length > 0) {
      return { ok: false, findings: wrong.map((finding) => ({ ...finding, place: { file: '', field } })) };
    }
  }
  return { ok: true, value: ledger, findings: [] };
}

/** The ledger as it stood in the evening of a day (`2026-03-02`). */
export function ledgerOnDay(ledger: Ledger, day: string): Ledger {
  const until = ledger.bookings.findIndex(({ date }) => date > day);
  return until < 0 ? ledger : ledgerAfter(ledger, until);
}

/** The ledger as it stood after a booking; 0 for before the first. Throws when the history itself breaks a rule. */
export function ledgerAfter(ledger: Ledger, number: number): Ledger {
  const before = replayBookings(ledger.bookings.slice(0, number));
  if (!before.ok) throw new Error(`a prefix of a good history breaks a rule: ${before.findings[0]?.message}`);
  return before.value;
}
