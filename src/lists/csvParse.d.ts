/**
 * The part of csv-parse that is used here. Its own types for browsers pull in those of Node, which nothing under
 * `src/` may lean on.
 */
declare module 'csv-parse/browser/esm/sync' {
  export interface ParseOptions {
    readonly delimiter: string;
    readonly bom: boolean;
    /** A quote within an unquoted field stands for itself. */
    readonly relax_quotes: boolean;
    readonly relax_column_count: boolean;
    readonly record_delimiter: readonly string[];
    readonly max_record_size: number;
    /** Called for each record; `lines` is the line on which it ends, from 1. What it gives back is kept. */
    readonly on_record: (record: string[], context: { readonly lines: number }) => unknown;
  }

  /** Throws an error with `code` (`CSV_QUOTE_NOT_CLOSED`, …) when the text is not CSV. */
  export function parse(text: string, options: ParseOptions): unknown[];
}
