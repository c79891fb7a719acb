import type { z } from 'zod';
import { otherVersion } from '../basics/fileVersion.ts';
import { errorFinding, shownText } from '../basics/findings.ts';
import type { Checked, Finding } from '../model/finding.ts';
import { type Booking, booking, type Ledger } from '../model/store.ts';
import { checksum } from './checksum.ts';
import { replayBookings } from './index.ts';

/**
 * The text of a ledger: a line of JSON for what it is, then a line for each booking, in order. Each line ends in a check
 * that is made from the line and the check of the line before, so that a line that is missing, changed, moved or written
 * only in part is recognised. Lines are only ever added.
 *
 *     {"format":"plywright store","version":1,"check":"…"}
 *     {"number":1,"date":"2026-03-02","kind":"receive","who":"…","why":"…","lines":[…],"check":"…"}
 */
const FIRST_LINE = JSON.stringify({ format: 'plywright store', version: 1 });
const LINE = /^(\{.*),"check":"([0-9a-f]{8})"\}$/;

function withCheck(body: string, before: string): string {
  return `${body.slice(0, -1)},"check":"${checksum(before + body)}"}`;
}

/** The text of a ledger in which nothing is booked, with its line break. */
export function newLedgerText(): string {
  return `${withCheck(FIRST_LINE, '')}\n`;
}

/** The line of a booking, with its line break; `before` is the check of the line before. */
export function bookingText(one: Booking, before: string): string {
  return `${withCheck(JSON.stringify(one), before)}\n`;
}

/** What was read of a ledger's text. */
export interface LedgerText {
  readonly ledger: Ledger;
  /** Check of the last good line, which the next one follows. */
  readonly check: string;
  /** A last line that was written only in part, and counts for nothing; empty where there is none. */
  readonly torn: string;
  /** Whether the last good line lacks its line break. */
  readonly open: boolean;
}

interface Line {
  readonly body: string;
  readonly check: string;
}

function partsOf(text: string): Line | null {
  const match = LINE.exec(text.endsWith('\r') ? text.slice(0, -1) : text);
  return match === null ? null : { body: `${match[1]}}`, check: match[2]! };
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function changedLine(file: string, line: number, text: string): Finding {
  return errorFinding(
    'ledger-changed',
    line === 1
      ? 'This is not the ledger of a store.'
      : 'This line is not as it was booked, or one before it is missing.',
    { file, line },
    {
      found: shownText(text),
      advice:
        'bookings are never changed: bring the file back as it was, from a copy or from version control, and reverse a wrong booking instead',
    },
  );
}

/** A first line that is whole, and yet not that of a ledger of this version. */
function strangeLedger(file: string, line: string, body: string): Finding {
  const head = isJson(body) ? (JSON.parse(body) as { format?: unknown; version?: unknown }) : {};
  return head.format === 'plywright store' && head.version !== undefined
    ? otherVersion('a ledger', head.version, { file, line: 1, field: 'version' })
    : changedLine(file, 1, line);
}

function readBooking(body: string, file: string, line: number): Booking | Finding {
  const read = isJson(body) ? booking.safeParse(JSON.parse(body)) : null;
  if (read?.success) return read.data;
  const issue: z.core.$ZodIssue | undefined = read?.error.issues[0];
  const field = issue?.path.map((step) => (typeof step === 'number' ? step + 1 : String(step))).join(' › ');
  return errorFinding(
    'ledger-field-wrong',
    `The booking is not as a ledger has it: ${issue?.message ?? 'it is not JSON'}.`,
    { file, line, ...(field ? { field } : {}) },
  );
}

/** Where a broken rule of the history stands in the file: booking n is on line n + 1. */
function placedInFile(findings: readonly Finding[], file: string): Finding[] {
  return findings.map((finding) => {
    const number = Number(/^booking (\d+)$/.exec(finding.place?.field ?? '')?.[1] ?? 0);
    return { ...finding, place: { file, ...(number > 0 ? { line: number + 1 } : {}) } };
  });
}

/**
 * Reads the text of a ledger and replays it. A last line of which the end is missing is left out and comes back in `torn`;
 * anything else that is not as it was booked is an error. `file` is only used to say where.
 */
export function readLedgerText(text: string, file: string): Checked<LedgerText> {
  const lines = text.split('\n');
  const open = lines.at(-1) !== '';
  if (!open) lines.pop();
  const bookings: Booking[] = [];
  let check = '';
  let torn = '';
  for (const [index, line] of lines.entries()) {
    const parts = partsOf(line);
    if (parts === null || checksum(check + parts.body) !== parts.check) {
      const isLast = index === lines.length - 1;
      // A whole line that differs was changed; one that is no JSON is what a power cut or a full disk leaves.
      if (isLast && index > 0 && !isJson(line)) {
        torn = line;
        break;
      }
      return { ok: false, findings: [changedLine(file, index + 1, line)] };
    }
    if (index === 0) {
      if (parts.body !== FIRST_LINE) return { ok: false, findings: [strangeLedger(file, line, parts.body)] };
    } else {
      const read = readBooking(parts.body, file, index + 1);
      if ('code' in read) return { ok: false, findings: [read] };
      bookings.push(read);
    }
    check = parts.check;
  }
  if (check === '') return { ok: false, findings: [changedLine(file, 1, text)] };
  const ledger = replayBookings(bookings);
  if (!ledger.ok) return { ok: false, findings: placedInFile(ledger.findings, file) };
  return {
    ok: true,
    value: { ledger: ledger.value, check, torn, open: open && torn === '' },
    findings: [],
  };
}
