import { dayNumber } from '../basics/calendar.ts';
import { checkedValue, errorFinding, shownText } from '../basics/findings.ts';
import { umToMm } from '../basics/lengths.ts';
import type { Checked } from '../model/finding.ts';
import type { ItemWish } from '../model/store.ts';
import { CellReader, shortenFindings } from './cells.ts';
import { type ListColumns, type ListRow, readCsvTable } from './csvTable.ts';

/** A row of a list of what has come in. Lengths in mm; what a cell does not say is absent. */
export interface ReceivedRow extends ItemWish {
  readonly line: number;
  /** Pieces, at least 1; of edging whole mm. */
  readonly amount: number;
  /** Who delivers it. */
  readonly supplier?: string;
  /** Day on which it is expected. */
  readonly expected?: string;
}

const COLUMNS: ListColumns = {
  needed: [],
  optional: [
    'item',
    'kind',
    'label',
    'name',
    'place',
    'board',
    'finish',
    'thickness',
    'length',
    'width',
    'grain',
    'count',
    'edging',
    'metres',
    'metres to buy',
    'roll',
    'rolls',
    'fitting',
    'pack',
    'packs',
    'supplier',
    'expected',
    'price each',
  ],
};

const items = ['sheet', 'offcut', 'edging', 'fitting'] as const;
const MM_PER_METRE = 1000;

function cellOf(row: ListRow, column: string): string {
  return row.cells.get(column) ?? '';
}

/** A number with at most three decimals; null for an empty cell, and told where it is none. */
function numberOf(cells: CellReader, row: ListRow, column: string): number | null {
  const cell = cellOf(row, column);
  if (cell === '') return null;
  if (/^\d{1,7}(?:\.\d{1,3})?$/.test(cell)) return Number(cell);
  const place = cells.placeOf(row, column);
  const expected = 'a number of 0 or more such as 12 or 12.5';
  cells.report(
    errorFinding('wrong-form', `\`${column}\` is not such a number.`, place, {
      found: shownText(cell),
      expected,
    }),
  );
  return null;
}

function itemOf(cells: CellReader, row: ListRow): ReceivedRow['item'] | null {
  const column = cellOf(row, 'item') === '' ? 'kind' : 'item';
  if (cellOf(row, column) !== '') return cells.word(row, column, items);
  if (cellOf(row, 'edging') !== '') return 'edging';
  if (cellOf(row, 'fitting') !== '') return 'fitting';
  if (cellOf(row, 'length') !== '' || cellOf(row, 'board') !== '') return 'sheet';
  const expected = 'length and width of a sheet, an edging, or a fitting; or the word under `item`';
  const message = 'This row does not say what has come in.';
  cells.report(errorFinding('item-missing', message, cells.placeOf(row, 'item'), { expected }));
  return null;
}

/** Whole packs or rolls where the list has them, otherwise what it counts. */
function whole(
  cells: CellReader,
  row: ListRow,
  packs: string,
  pack: string,
  plain: readonly string[],
): number {
  const [many, each] = [numberOf(cells, row, packs), numberOf(cells, row, pack)];
  if (many !== null && each !== null) return many * each;
  for (const column of plain) {
    const amount = numberOf(cells, row, column);
    if (amount !== null) return amount;
  }
  return 0;
}

function amountOf(cells: CellReader, row: ListRow, item: ReceivedRow['item']): number {
  switch (item) {
    case 'edging':
      return Math.round(whole(cells, row, 'rolls', 'roll', ['metres', 'metres to buy']) * MM_PER_METRE);
    case 'fitting':
      return whole(cells, row, 'packs', 'pack', ['count']);
    case 'sheet':
      return numberOf(cells, row, 'count') ?? 0;
    case 'offcut':
      return numberOf(cells, row, 'count') ?? 1;
  }
}

function boardWords(cells: CellReader, row: ListRow) {
  const has = (column: string) => cellOf(row, column) !== '';
  return {
    ...(has('board') ? { board: cells.material(row, 'board') } : {}),
    ...(has('finish') ? { finish: cells.material(row, 'finish') } : {}),
    ...(has('thickness') && cellOf(row, 'thickness') !== '0'
      ? { thickness: umToMm(cells.sizeUm(row, 'thickness')) }
      : {}),
    ...(has('length') ? { length: umToMm(cells.sizeUm(row, 'length')) } : {}),
    ...(has('width') ? { width: umToMm(cells.sizeUm(row, 'width')) } : {}),
    ...(has('grain') ? { grain: cells.word(row, 'grain', ['none', 'length', 'width']) } : {}),
  };
}

/** Offcuts are single pieces: a count makes as many of them, told apart by a number after their label. */
function offcutRows(cells: CellReader, row: ListRow, count: number): ReceivedRow[] {
  const label = cells.neededText(row, cellOf(row, 'label') === '' ? 'name' : 'label').replace(/\n/g, ' ');
  const place = cells.text(row, 'place').replace(/\n/g, ' ');
  return Array.from({ length: count }, (_, index) => ({
    line: row.line,
    item: 'offcut',
    label: count === 1 ? label : `${label} (${index + 1})`,
    ...(place === '' ? {} : { place }),
    ...boardWords(cells, row),
    amount: 1,
  }));
}

function aboutDelivery(cells: CellReader, row: ListRow): Pick<ReceivedRow, 'supplier' | 'expected'> {
  const [supplier, expected] = [cellOf(row, 'supplier'), cellOf(row, 'expected')];
  if (expected !== '' && dayNumber(expected) === undefined) {
    const form = { found: shownText(expected), expected: 'a day such as 2026-03-02' };
    cells.report(errorFinding('wrong-day', '`expected` is not a day.', cells.placeOf(row, 'expected'), form));
    return {};
  }
  return { ...(supplier === '' ? {} : { supplier }), ...(expected === '' ? {} : { expected }) };
}

function rowsOf(cells: CellReader, row: ListRow): ReceivedRow[] {
  const item = itemOf(cells, row);
  if (item === null) return [];
  // Among sheets to buy an offcut is one to be taken from the rack, which does not come in.
  if (item === 'offcut' && row.cells.has('price each')) return [];
  const amount = amountOf(cells, row, item);
  if (amount === 0) return [];
  if (item !== 'edging' && (!Number.isInteger(amount) || amount > 100_000)) {
    const place = cells.placeOf(row, 'count');
    const expected = 'a whole number of at most 100000';
    cells.report(
      errorFinding('wrong-form', '`count` is not such a number.', place, { found: String(amount), expected }),
    );
    return [];
  }
  const about = { line: row.line, ...aboutDelivery(cells, row) };
  switch (item) {
    case 'sheet':
      return [{ ...about, item, ...boardWords(cells, row), amount }];
    case 'offcut':
      return offcutRows(cells, row, amount);
    case 'edging':
    case 'fitting': {
      const column = cellOf(row, item) === '' ? 'name' : item;
      return [{ ...about, item, name: cells.neededText(row, column), amount }];
    }
  }
}

/**
 * What has come in or is on order, from a list (CSV with a header line): of a purchase, of what an order buys, of offcuts that are kept, or
 * one that a person has written. A row is what its `item` or `kind` says, otherwise an edging, a fitting or a sheet by the
 * column that is filled. Edging counts in whole rolls and fittings in whole packs where the list has them. Rows of which
 * nothing came, and with `supplier` those of others, are passed over. Every error comes back at once, with its line.
 */
export function readReceivedList(
  text: string,
  file: string,
  supplier?: string,
): Checked<readonly ReceivedRow[]> {
  const table = readCsvTable(text, file, COLUMNS);
  const cells = new CellReader(file);
  // Lists of this program have many columns beside these.
  const told = table.findings.filter(({ code }) => code !== 'unread-column');
  const own = table.rows?.filter((row) => supplier === undefined || cellOf(row, 'supplier') === supplier);
  const rows = own?.flatMap((row) => rowsOf(cells, row));
  if (rows?.length === 0 && cells.findings.length === 0) {
    const message =
      supplier === undefined
        ? 'The list has nothing that came in.'
        : `The list has nothing of \`${shownText(supplier)}\`.`;
    cells.report(errorFinding('nothing-received', message, { file }));
  }
  return checkedValue(rows, shortenFindings([...told, ...cells.findings], file));
}
