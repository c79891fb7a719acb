import { shownText } from '../basics/findings.ts';
import { printMm } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { MatchPlace, Part } from '../model/part.ts';
import type { Demand, StockSheet } from '../model/stock.ts';
import { fitsSheet } from './checkSizes.ts';

interface MatchedPart extends Part {
  readonly match: MatchPlace;
}

/** A part on which nothing runs on (no grain) may be cut from anywhere, whatever its unit says. */
function isMatched(part: Part): part is MatchedPart {
  return part.match !== undefined && part.grain === 'length';
}

function sizesAlong(part: MatchedPart): { alongUm: number; acrossUm: number } {
  return part.match.follows === 'length'
    ? { alongUm: part.cutLengthUm, acrossUm: part.cutWidthUm }
    : { alongUm: part.cutWidthUm, acrossUm: part.cutLengthUm };
}

/**
 * The blank that a row is parted from: as long as its pieces and the kerfs between them, as wide as the widest piece;
 * narrower pieces are cut to their own width after parting.
 *
 *     ┌───────┬─┬─────┬─┬───────┐ ┐
 *     │   0   │k│  1  │k│   2   │ │ across
 *     └───────┴─┴─────┴─┴───────┘ ┘
 *      ──────── along ──────────
 */
function makeBlank(run: string, row: readonly MatchedPart[], kerfUm: number): Demand {
  const pieces = row.map((part) => ({ part: part.id, ...sizesAlong(part) }));
  const alongUm = pieces.reduce((sum, piece) => sum + piece.alongUm, 0) + (pieces.length - 1) * kerfUm;
  const acrossUm = Math.max(...pieces.map((piece) => piece.acrossUm));
  const { follows } = row[0]!.match;
  const count = row[0]!.count;
  return {
    lengthUm: follows === 'length' ? alongUm : acrossUm,
    widthUm: follows === 'length' ? acrossUm : alongUm,
    count,
    grain: 'length',
    parts: row.map((part) => ({ part: part.id, count })),
    blank: { run, follows, pieces },
  };
}

/** Rows of parts that really follow each other: a missing position, another direction or count starts a new row. */
function splitAtGaps(parts: readonly MatchedPart[]): MatchedPart[][] {
  const rows: MatchedPart[][] = [];
  for (const part of parts) {
    const last = rows.at(-1)?.at(-1);
    const follows =
      last !== undefined &&
      part.match.position === last.match.position + 1 &&
      part.match.follows === last.match.follows &&
      part.count === last.count;
    if (follows) rows.at(-1)!.push(part);
    else rows.push([part]);
  }
  return rows;
}

/** The row in pieces as long as some sheet can hold, from its start. */
function splitToFit(
  row: readonly MatchedPart[],
  sheets: readonly StockSheet[],
  kerfUm: number,
): MatchedPart[][] {
  const rows: MatchedPart[][] = [];
  for (const part of row) {
    const longer = [...(rows.at(-1) ?? []), part];
    const fits = longer.length > 1 && sheets.some((sheet) => fitsSheet(makeBlank('', longer, kerfUm), sheet));
    if (fits) rows.at(-1)!.push(part);
    else rows.push([part]);
  }
  return rows;
}

function namesOf(row: readonly Part[]): string {
  return row.map((part) => `"${shownText(part.name)}"`).join(', ');
}

function tooLong(
  run: string,
  row: readonly MatchedPart[],
  rows: readonly MatchedPart[][],
  kerfUm: number,
): Finding {
  const blank = makeBlank(run, row, kerfUm);
  const size = `${printMm(blank.lengthUm)} × ${printMm(blank.widthUm)}`;
  return {
    code: 'matched-row-too-long',
    severity: 'warning',
    message: `The grain cannot run on through all of row "${shownText(run)}": its blank of ${size} mm fits no sheet, so it is cut as ${rows.map(namesOf).join(' | ')}.`,
    found: `${size} mm`,
    advice: 'Use a larger sheet, or fewer or smaller fronts in the row.',
  };
}

function unevenRow(run: string, row: readonly MatchedPart[]): Finding[] {
  const positions = new Set(row.map((part) => part.match.position));
  const counts = new Set(row.map((part) => part.count));
  const ways = new Set(row.map((part) => part.match.follows));
  const why =
    positions.size < row.length
      ? 'two panels have the same place in it'
      : counts.size > 1
        ? 'its panels are not wanted equally often'
        : ways.size > 1
          ? 'its panels do not follow each other in one direction'
          : null;
  if (why === null) return [];
  return [
    {
      code: 'matched-row-uneven',
      severity: 'warning',
      message: `The grain cannot run on through all of row "${shownText(run)}" (${namesOf(row)}): ${why}.`,
      advice: 'Match only panels that stand in one row, each as often as the others.',
    },
  ];
}

/**
 * The matched rows among the parts of one group, each as a demand for blanks. A row too long for every sheet is split
 * into the longest blanks that fit, with a warning; a row that turns out to have one member is no row and is left to
 * the single parts. Rows of different orders never join.
 */
export function findRuns(
  parts: readonly Part[],
  sheets: readonly StockSheet[],
  kerfUm: number,
): { readonly blanks: Demand[]; readonly findings: Finding[] } {
  const byRun = new Map<string, MatchedPart[]>();
  for (const part of parts) {
    if (!isMatched(part)) continue;
    const key = JSON.stringify([part.order, part.match.run]);
    const row = byRun.get(key);
    if (row) row.push(part);
    else byRun.set(key, [part]);
  }
  const blanks: Demand[] = [];
  const findings: Finding[] = [];
  const taken = new Set<string>();
  for (const members of byRun.values()) {
    const run = members[0]!.match.run;
    const inOrder = [...members].sort((a, b) => a.match.position - b.match.position);
    findings.push(...unevenRow(run, inOrder));
    for (const row of splitAtGaps(inOrder)) {
      const rows = splitToFit(row, sheets, kerfUm);
      if (rows.length > 1) findings.push(tooLong(run, row, rows, kerfUm));
      for (const fitting of rows) {
        if (fitting.length < 2) continue;
        let name = run;
        for (let again = 2; taken.has(name); again++) name = `${run} (${again})`;
        taken.add(name);
        blanks.push(makeBlank(name, fitting, kerfUm));
      }
    }
  }
  return { blanks, findings };
}
