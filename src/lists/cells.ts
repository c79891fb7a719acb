import { errorFinding, listWords, shownText, sortFindings } from '../basics/findings.ts';
import { LENGTH_EXPECTED, LONGEST_UM, lengthAdvice, lengthFromText } from '../basics/lengthText.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import { composed, unreadablePart } from '../basics/visibleText.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { Um } from '../model/geometry.ts';
import type { ListRow } from './csvTable.ts';

/** Most of one panel or sheet that a row may ask for. */
const MOST_ALIKE = 100_000;
/** More findings than this are not even counted. */
const MOST_KEPT = 10_000;

/** Reads the cells of one list, row by row, and collects what is wrong with them. */
export class CellReader {
  readonly findings: Finding[] = [];
  private readonly file: string;

  constructor(file: string) {
    this.file = file;
  }

  placeOf(row: ListRow, column: string): Place {
    return { file: this.file, line: row.line, field: column };
  }

  report(finding: Finding): void {
    if (this.findings.length < MOST_KEPT) this.findings.push(finding);
  }

  private wrong(row: ListRow, column: string, code: string, message: string, expected: string): void {
    const cell = row.cells.get(column) ?? '';
    this.report(
      errorFinding(code, message, this.placeOf(row, column), {
        found: cell === '' ? 'nothing' : shownText(cell),
        expected,
        advice: lengthAdvice(cell),
      }),
    );
  }

  /** A length in µm above 0 and at most 100 m; 1 mm where it is wrong. */
  sizeUm(row: ListRow, column: string): Um {
    const cell = row.cells.get(column) ?? '';
    const um = lengthFromText(cell);
    if (um === undefined) {
      const empty = cell === '';
      const message = empty ? `\`${column}\` is empty.` : `\`${column}\` is not a length.`;
      this.wrong(row, column, empty ? 'empty-cell' : 'wrong-form', message, LENGTH_EXPECTED);
      return 1000;
    }
    if (um <= 0 || um > LONGEST_UM) {
      const problem = um < 0 ? 'is negative' : um === 0 ? 'is 0' : 'is too large';
      this.wrong(row, column, 'out-of-range', `\`${column}\` ${problem}.`, 'more than 0, at most 100 m');
      return 1000;
    }
    return um;
  }

  /** Like `sizeUm`, or `otherwise` where the cell is empty. */
  optionalSizeUm(row: ListRow, column: string, otherwise: Um): Um {
    return (row.cells.get(column) ?? '') === '' ? otherwise : this.sizeUm(row, column);
  }

  /** A whole number from 1 to 100,000, or `otherwise` where the cell is empty. */
  count<T>(row: ListRow, otherwise: T): number | T {
    const cell = row.cells.get('count') ?? '';
    if (cell === '') return otherwise;
    if (!/^\+?[0-9]{1,9}$/.test(cell)) {
      const code = /^-[0-9]+$/.test(cell) ? 'out-of-range' : 'wrong-form';
      const message = code === 'out-of-range' ? '`count` is negative.' : '`count` is not a whole number.';
      this.wrong(row, 'count', code, message, 'a whole number such as 2');
      return otherwise;
    }
    const count = Number(cell);
    if (count < 1 || count > MOST_ALIKE) {
      const expected = `1 to ${MOST_ALIKE}`;
      const message = count < 1 ? '`count` is 0: take the row out.' : '`count` is too large.';
      this.wrong(row, 'count', 'out-of-range', message, expected);
      return otherwise;
    }
    return count;
  }

  /** One of some words, in any case; the first of them where the cell is empty or wrong. */
  word<W extends string>(row: ListRow, column: string, words: readonly [W, ...W[]]): W {
    const cell = row.cells.get(column) ?? '';
    const plain = cell.toLowerCase();
    const found = words.find((word) => word === plain);
    if (found !== undefined || cell === '') return found ?? words[0];
    this.report(
      errorFinding(
        'unknown-word',
        `\`${shownText(cell)}\` cannot stand under \`${column}\`.`,
        this.placeOf(row, column),
        {
          found: shownText(cell),
          expected: listWords(words),
          nearest: nearestWord(cell, words),
        },
      ),
    );
    return words[0];
  }

  /**
   * A text for people: line breaks become single ones, tabs spaces; other control characters and texts of more than
   * 200 characters are refused.
   */
  text(row: ListRow, column: string): string {
    const written = row.cells.get(column) ?? '';
    if (written === '') return '';
    const cell = composed(written).replace(/\t/g, ' ').replace(/\n+/g, '\n');
    if (cell.length > 200) {
      this.wrong(row, column, 'out-of-range', `\`${column}\` is too long.`, 'at most 200 characters');
    } else {
      const unreadable = unreadablePart(cell);
      if (unreadable !== undefined) {
        this.wrong(row, column, 'wrong-form', `\`${column}\` holds ${unreadable}.`, 'plain text');
      }
    }
    return cell;
  }

  /** Like `text`, for a text that must be there. */
  neededText(row: ListRow, column: string): string {
    const text = this.text(row, column);
    if (text === '') this.wrong(row, column, 'empty-cell', `\`${column}\` is empty.`, 'a text');
    return text;
  }

  /** A word that is compared between lists: runs of spaces and line breaks count as one space. */
  material(row: ListRow, column: string): string {
    return this.text(row, column).replace(/\s+/g, ' ');
  }

  /** A price of 0 or more in currency units with at most two decimals, in minor units; null where the cell is empty. */
  priceMinor(row: ListRow, column: string): number | null {
    const cell = row.cells.get(column) ?? '';
    if (cell === '') return null;
    const parts = /^([0-9]{1,8})(?:\.([0-9]{1,2}))?$/.exec(cell);
    if (parts === null) {
      const expected = 'a price such as 92.50, without a currency sign';
      const message = cell.startsWith('-') ? `\`${column}\` is negative.` : `\`${column}\` is not a price.`;
      this.wrong(row, column, 'wrong-form', message, expected);
      return null;
    }
    return Number(parts[1]) * 100 + Number((parts[2] ?? '').padEnd(2, '0'));
  }
}

/** At most as many findings as a person can use: the first errors, and how many there are in all. */
export function shortenFindings(findings: readonly Finding[], file: string): readonly Finding[] {
  const most = 50;
  if (findings.length <= most) return findings;
  const sorted = sortFindings(findings);
  const errors = sorted.filter((finding) => finding.severity === 'error');
  const others = sorted.filter((finding) => finding.severity !== 'error');
  const severity = errors.length > 0 ? 'error' : 'warning';
  const message = `Only the first ${most} of ${findings.length} findings about this list are shown.`;
  return [
    { code: 'many-findings', severity, message, place: { file } },
    ...[...errors, ...others].slice(0, most),
  ];
}
