/**
 * Where a spreadsheet would take a part of a text for a formula: at the beginning, and after what another setting of it
 * takes for the end of a cell (semicolon, tab, line break), a sign that formulas begin with, in its wide form too. A plain
 * number with its sign is none. Apostrophes that stand there already are counted in, so that the way back is clear.
 */
const BEGINS_FORMULA =
  /(?<=^|[;\t\r\n])'*(?=[=@\uff1d\uff0b\uff0d\uff20+-])(?!(?<=^)[+-]\d+(?:[.,]\d+)?$)|^'*(?=[\t\r\n])/g;

/**
 * A text as it stands in a list: with an apostrophe before each sign that would begin a formula in a spreadsheet, one more
 * than the text itself has there (Common Weakness Enumeration, CWE-1236: Improper Neutralization of Formula Elements in a
 * CSV File). Numbers with a sign stay numbers. `plainCell` gives the text back.
 */
export function disarmedCell(text: string): string {
  return text.replace(BEGINS_FORMULA, "$&'");
}

/** The text of a cell that `disarmedCell` may have changed. */
export function plainCell(cell: string): string {
  return cell.replace(BEGINS_FORMULA, (apostrophes) =>
    apostrophes.endsWith("'") ? apostrophes.slice(0, -1) : apostrophes,
  );
}
