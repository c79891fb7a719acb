import { parse } from 'csv-parse/browser/esm/sync';
import { plainCell } from '../basics/csvCells.ts';
import { errorFinding, listWords, shownText, warningFinding } from '../basics/findings.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { Finding } from '../model/finding.ts';

/** Largest list that is read, in UTF-16 units (about bytes). */
const LARGEST_LIST = 40_000_000;
/** Most rows of a list, beside its header. */
export const MOST_ROWS = 200_000;
const LONGEST_RECORD = 100_000;

/** The columns that a list may have, and those it needs. */
export interface ListColumns {
  readonly needed: readonly string[];
  readonly optional: readonly string[];
}

/** One row: on which line it begins, and its cells by column, without spaces at their ends. Missing cells are empty. */
export interface ListRow {
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

interface CsvRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

function failure(findings: readonly Finding[]): { rows: undefined; findings: readonly Finding[] } {
  return { rows: undefined, findings };
}

/** Commas as RFC 4180 has them; semicolons or tabs where the header has no comma but those. */
function delimiterOf(text: string): string {
  const header = text.split('\n', 1)[0]!.replace(/"[^"]*"/g, '');
  if (header.includes(',')) return ',';
  return header.includes(';') ? ';' : header.includes('\t') ? '\t' : ',';
}

function parseRecords(
  text: string,
  delimiter: string,
): { readonly records: readonly CsvRecord[]; readonly failedLine?: number; readonly code?: string } {
  const records: CsvRecord[] = [];
  let last = 0;
  try {
    parse(text, {
      delimiter,
      bom: true,
      relax_quotes: true,
      relax_column_count: true,
      record_delimiter: ['\n'],
      max_record_size: LONGEST_RECORD,
      on_record: (cells, { lines }) => {
        if (cells.some((cell) => cell.trim() !== '')) records.push({ line: last + 1, cells });
        last = lines;
        return null;
      },
    });
  } catch (problem) {
    const code = (problem as { code?: unknown }).code;
    if (typeof code !== 'string') throw problem;
    return { records, failedLine: last + 1, code };
  }
  return { records };
}

function wordParseFailure(code: string, file: string, line: number): Finding {
  const place = { file, line };
  if (code === 'CSV_QUOTE_NOT_CLOSED') {
    return errorFinding('csv-quote', 'A quote is opened in this row and never closed.', place, {
      advice: 'Close it, or write a quote within a quoted text twice: "6"" pipe box".',
    });
  }
  if (code === 'CSV_MAX_RECORD_SIZE') {
    return errorFinding('csv-row-too-long', 'This row is longer than 100,000 characters.', place, {
      advice: 'Look for a quote that is not closed.',
    });
  }
  return errorFinding('csv-syntax', 'The list cannot be read from this row on.', place, {
    advice: 'A cell that begins with a quote must end with one, right before the next comma.',
  });
}

const plainColumn = (column: string) =>
  column
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

/** Which column of the file is which; findings for missing, unknown and doubled ones. */
function readHeader(
  header: CsvRecord,
  columns: ListColumns,
  file: string,
): { readonly positions: ReadonlyMap<string, number>; readonly findings: readonly Finding[] } {
  const known = [...columns.needed, ...columns.optional];
  const findings: Finding[] = [];
  const positions = new Map<string, number>();
  const strange: string[] = [];
  const place = { file, line: header.line };
  for (const [index, written] of header.cells.entries()) {
    const column = plainColumn(written);
    if (column === '') continue;
    if (!known.includes(column)) {
      strange.push(column);
      continue;
    }
    if (positions.has(column)) {
      const message = `There are two columns \`${column}\`.`;
      findings.push(errorFinding('duplicate-column', message, place, { advice: 'Keep one of the two.' }));
    }
    positions.set(column, index);
  }
  const missing = columns.needed.filter((column) => !positions.has(column));
  for (const column of missing) {
    findings.push(
      errorFinding('missing-column', `The list has no column \`${column}\`.`, place, {
        found: listWords([...positions.keys(), ...strange], 'and'),
        expected: `${listWords(columns.needed, 'and')}; if wanted ${listWords(columns.optional, 'and')}`,
        nearest: nearestWord(column, strange),
        advice: 'The first line names the columns, in any order.',
      }),
    );
  }
  for (const column of strange) {
    const nearest = nearestWord(
      column,
      known.filter((each) => !positions.has(each)),
    );
    if (nearest !== undefined && missing.includes(nearest)) continue;
    const message = `The column \`${shownText(column)}\` is not read.`;
    findings.push(warningFinding('unread-column', message, place, { expected: listWords(known), nearest }));
  }
  return { positions, findings };
}

function readRow(
  record: CsvRecord,
  positions: ReadonlyMap<string, number>,
  width: number,
  file: string,
): ListRow | Finding {
  const extra = record.cells.slice(width).some((cell) => cell.trim() !== '');
  if (extra || record.cells.length < width) {
    return errorFinding(
      'csv-cells',
      `This row has ${extra ? 'more' : 'fewer'} cells than the header.`,
      { file, line: record.line },
      {
        found: `${record.cells.length} cells`,
        expected: `${width} cells`,
        advice: extra
          ? 'Write decimals with a point, and put a text with a comma in quotes.'
          : 'Leave a cell empty between two commas where nothing is to be said.',
      },
    );
  }
  const cells = new Map<string, string>();
  for (const [column, index] of positions) cells.set(column, plainCell((record.cells[index] ?? '').trim()));
  return { line: record.line, cells };
}

function emptyList(file: string): Finding {
  const advice = 'The first line names the columns; each further line is one row.';
  return errorFinding('empty-file', 'The list is empty.', { file, line: 1 }, { advice });
}

function refuseText(text: string, file: string): Finding | undefined {
  if (text.length > LARGEST_LIST) {
    return errorFinding(
      'file-too-large',
      'The list is larger than 40 MB, so it is not read.',
      { file },
      {
        found: `${(text.length / 1_000_000).toFixed(0)} MB`,
      },
    );
  }
  const odd = [text.indexOf('\0'), text.indexOf('\ufffd')].find((offset) => offset >= 0);
  if (odd !== undefined) {
    const line = text.slice(0, odd).split('\n').length;
    const advice = 'Save it as “CSV UTF-8”.';
    return errorFinding('not-text', 'The list is not plain text in UTF-8.', { file, line }, { advice });
  }
  if (text.replace(/^\ufeff/, '').trim() === '') return emptyList(file);
  return undefined;
}

/**
 * A plain list as rows of cells: RFC 4180 (commas, quotes, any line ends, a byte-order mark), the first line naming the
 * columns in any order and case. Semicolons or tabs in place of commas are read with a warning. Blank rows are passed
 * over. `rows` is undefined when the list as a whole cannot be read; rows that cannot be are left out with a finding.
 */
export function readCsvTable(
  text: string,
  file: string,
  columns: ListColumns,
): { readonly rows: readonly ListRow[] | undefined; readonly findings: readonly Finding[] } {
  const refused = refuseText(text, file);
  if (refused !== undefined) return failure([refused]);
  // One kind of line end, so that lines are counted right within quotes too.
  const plain = text.replace(/\r\n?/g, '\n').replace(/^\ufeff/, '');
  const delimiter = delimiterOf(plain);
  const findings: Finding[] = [];
  if (delimiter !== ',') {
    const mark = delimiter === ';' ? 'semicolons' : 'tabs';
    const message = `The cells are separated by ${mark}, not commas; they are read as such.`;
    findings.push(
      warningFinding('csv-separator', message, { file, line: 1 }, { advice: 'Decimals need a point.' }),
    );
  }
  const { records, failedLine, code } = parseRecords(plain, delimiter);
  if (code !== undefined) findings.push(wordParseFailure(code, file, failedLine ?? 1));
  const [header, ...body] = records;
  if (header === undefined) {
    if (code === undefined) findings.push(emptyList(file));
    return failure(findings);
  }
  const { positions, findings: headerFindings } = readHeader(header, columns, file);
  findings.push(...headerFindings);
  if (body.length > MOST_ROWS) {
    const message = `The list has more than ${MOST_ROWS} rows.`;
    findings.push(errorFinding('too-many-rows', message, { file }, { found: `${body.length} rows` }));
    return failure(findings);
  }
  if (headerFindings.some((finding) => finding.severity === 'error')) return failure(findings);
  if (body.length === 0 && code === undefined) {
    findings.push(
      errorFinding('empty-file', 'The list has a header but no rows.', { file, line: header.line }),
    );
  }
  const rows: ListRow[] = [];
  for (const record of body) {
    const row = readRow(record, positions, header.cells.length, file);
    if ('severity' in row) findings.push(row);
    else rows.push(row);
  }
  return { rows, findings };
}
