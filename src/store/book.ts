import { dayNumber } from '../basics/calendar.ts';
import { errorFinding, hasErrors } from '../basics/findings.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Booking, BookingKind, BookingLine, Draft, Ledger } from '../model/store.ts';
import { applyLine, inverseLines, type OpenStock } from './applyLine.ts';
import { cutFindings } from './cutRules.ts';

/** A ledger in which nothing is booked. */
export const emptyLedger: Ledger = {
  bookings: [],
  stock: new Map(),
  onOrder: new Map(),
  reversedBy: new Map(),
};

/** What the lines of a kind of booking may do. */
const allowedMoves: Readonly<Record<BookingKind, readonly BookingLine['move'][]>> = {
  receive: ['in'],
  correct: ['in', 'out'],
  issue: ['out'],
  reserve: ['reserve'],
  release: ['release'],
  'put back': ['in'],
  cut: ['in', 'out'],
  reverse: ['in', 'out', 'reserve', 'release', 'expect', 'withdraw'],
  // A purchase keeps at once what the store has for it.
  expect: ['expect', 'reserve'],
  withdraw: ['withdraw'],
  postpone: ['withdraw', 'expect'],
};

/** Kinds whose lines may be of what is on order: what comes in against it, and for whom it is kept. */
const ofGoodsOnOrder: readonly BookingKind[] = [
  'receive',
  'reserve',
  'release',
  'reverse',
  'expect',
  'withdraw',
  'postpone',
];

/** Whether a text is a day of the calendar, `2026-03-02`. */
export function isDay(text: string): boolean {
  return dayNumber(text) !== undefined;
}

function dayFindings(ledger: Ledger, { date, lines }: Draft): Finding[] {
  if (!isDay(date)) {
    return [
      errorFinding('wrong-day', 'The day is not one of the calendar.', undefined, {
        found: date,
        expected: 'a day such as 2026-03-02',
      }),
    ];
  }
  const never = lines.find(({ onOrder }) => onOrder?.expected !== undefined && !isDay(onOrder.expected));
  if (never !== undefined) {
    return [
      errorFinding(
        'wrong-day',
        'The day on which goods are expected is not one of the calendar.',
        undefined,
        {
          found: never.onOrder!.expected!,
          expected: 'a day such as 2026-03-02',
        },
      ),
    ];
  }
  const last = ledger.bookings.at(-1);
  if (last === undefined || date >= last.date) return [];
  return [
    errorFinding('day-goes-back', 'A later day has been booked already.', undefined, {
      found: date,
      expected: `${last.date} or later, the day of booking ${last.number}`,
      advice: `look whether the clock of the computer is right; if it is, book it with --date ${last.date}, and say in --why when it really was`,
    }),
  ];
}

function kindFindings(draft: Draft): Finding[] {
  const wrong = draft.lines.find(
    (line) =>
      !allowedMoves[draft.kind].includes(line.move) ||
      (line.onOrder !== undefined && !ofGoodsOnOrder.includes(draft.kind)) ||
      (draft.kind === 'put back' && line.item !== 'offcut') ||
      (draft.kind === 'cut' && line.move === 'in' && line.item !== 'offcut'),
  );
  if (wrong === undefined) return [];
  const message = `A booking of kind ${draft.kind} has no line with ${wrong.item} ${wrong.move}.`;
  return [errorFinding('wrong-line', message)];
}

function reverseFindings(ledger: Ledger, draft: Draft): Finding[] {
  if (draft.reverses === undefined) {
    return draft.kind === 'reverse'
      ? [errorFinding('booking-unknown', 'It is not said which booking is reversed.')]
      : [];
  }
  const wrong = ledger.bookings[draft.reverses - 1];
  if (draft.kind !== 'reverse' || wrong === undefined) {
    return [
      errorFinding('booking-unknown', `There is no booking ${draft.reverses} to reverse.`, undefined, {
        expected: ledger.bookings.length === 0 ? 'none yet' : `1 to ${ledger.bookings.length}`,
      }),
    ];
  }
  const by = ledger.reversedBy.get(draft.reverses);
  if (by !== undefined) {
    return [
      errorFinding('reversed-already', `Booking ${draft.reverses} is reversed already.`, undefined, {
        found: `booking ${by} reverses it`,
        advice: `to have it back, reverse booking ${by}`,
      }),
    ];
  }
  const first = wrong.reverses === undefined ? undefined : ledger.bookings[wrong.reverses - 1]?.reverses;
  if (first !== undefined) {
    const message = `Booking ${draft.reverses} only brings back booking ${first}.`;
    return [errorFinding('reverses-a-return', message, undefined, { advice: `reverse booking ${first}` })];
  }
  if (JSON.stringify(draft.lines) === JSON.stringify(inverseLines(wrong.lines))) return [];
  return [errorFinding('reverse-differs', `The lines do not reverse those of booking ${draft.reverses}.`)];
}

/** A ledger that is being built; after a refused booking it is of no more use. */
export interface OpenLedger extends OpenStock {
  readonly bookings: Booking[];
  readonly reversedBy: Map<number, number>;
}

/** Adds a booking to a ledger that is being built, as `book` does to a finished one. */
export function bookInto(ledger: OpenLedger, draft: Draft): Finding[] {
  const findings = [...dayFindings(ledger, draft), ...kindFindings(draft), ...reverseFindings(ledger, draft)];
  if (hasErrors(findings)) return findings;
  for (const line of draft.lines) {
    const wrong = applyLine(ledger, line);
    if (wrong !== null) findings.push(wrong);
  }
  if (hasErrors(findings)) return findings;
  const booking = numbered(draft, ledger.bookings.length + 1);
  if (draft.reverses !== undefined) {
    ledger.reversedBy.set(draft.reverses, booking.number);
    // Reversing a reversal brings back what that one had reversed, which can then be reversed anew.
    const first = ledger.bookings[draft.reverses - 1]?.reverses;
    if (first !== undefined) ledger.reversedBy.delete(first);
  }
  ledger.bookings.push(booking);
  return findings;
}

/**
 * Adds a booking to a ledger, with the next number, if every rule holds: days do not go back, nothing becomes less than
 * nothing, no offcut is there twice, what is reserved for an order goes out only as such, no more is withdrawn than is on order, a sheet of a plan is sawn once, a
 * booking is reversed at most once and just as it was. Lines are done in their order; all lines or, with any finding, none. The ledger that is handed
 * in stays as it was.
 */
export function book(ledger: Ledger, draft: Draft): Checked<Ledger> {
  const twice = cutFindings(ledger, draft);
  if (twice.length > 0) return { ok: false, findings: twice };
  const after: OpenLedger = {
    bookings: [...ledger.bookings],
    stock: new Map(ledger.stock),
    onOrder: new Map(ledger.onOrder),
    reversedBy: new Map(ledger.reversedBy),
  };
  const findings = bookInto(after, draft);
  return hasErrors(findings) ? { ok: false, findings } : { ok: true, value: after, findings };
}

/** The booking with its fields in the order in which they are written. */
function numbered(draft: Draft, number: number): Booking {
  const { date, kind, who, why, order, plan, sheets, recut, reverses, lines } = draft;
  return {
    number,
    date,
    kind,
    who,
    why,
    ...(order === undefined ? {} : { order }),
    ...(plan === undefined ? {} : { plan }),
    ...(sheets === undefined ? {} : { sheets }),
    ...(recut === undefined ? {} : { recut }),
    ...(reverses === undefined ? {} : { reverses }),
    lines,
  };
}

/** The draft that reverses a booking; without lines, which `book` refuses, where there is no such booking. */
export function reversal(ledger: Ledger, number: number, about: Pick<Draft, 'date' | 'who' | 'why'>): Draft {
  const lines = inverseLines(ledger.bookings[number - 1]?.lines ?? []);
  return { ...about, kind: 'reverse', reverses: number, lines };
}
