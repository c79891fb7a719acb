import { parse } from 'csv-parse/sync';

/** Reads RFC 4180 text with another program than wrote it: one record a line, by column. Throws on ragged lines. */
export function readCsv(text: string): Record<string, string>[] {
  return parse(text, { columns: true, record_delimiter: '\r\n', relax_column_count: false });
}
