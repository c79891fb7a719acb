import papaparse from 'papaparse/papaparse.js';
import { disarmedCell } from '../basics/csvCells.ts';

const LINE_END = '\r\n';

/**
 * A table as comma-separated values (RFC 4180, Common Format and MIME Type for CSV Files, 2005): a header line, a line
 * a row, lines ending in CR LF, the last one too; fields with commas, quotes or line breaks in double quotes. What a
 * spreadsheet would run as a formula has an apostrophe in front (`disarmedCell`). Throws when a row has not a field for
 * each column.
 */
export function writeCsv(
  columns: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): string {
  const data = rows.map((row) => {
    if (row.length !== columns.length) {
      throw new Error(`a row has ${row.length} fields for ${columns.length} columns: ${JSON.stringify(row)}`);
    }
    return row.map((cell) => disarmedCell(String(cell)));
  });
  const text = papaparse.unparse({ fields: columns, data }, { newline: LINE_END, header: true });
  return text.endsWith(LINE_END) ? text : text + LINE_END;
}
