import { writeCsv } from './csv.ts';
import { listMm, listThickness } from './figures.ts';

/**
 * What a column holds, and so the unit its numbers are in:
 *
 * | kind | cells |
 * |---|---|
 * | `text` | a word, an id |
 * | `whole` | a count or a running number |
 * | `number` | any other number without a unit, as many decimals as it has |
 * | `mm` | a length in mm, one decimal |
 * | `thickness` | a length in mm, up to three decimals |
 * | `metres` | a length in m, three decimals |
 * | `kg` | a mass in kg, three decimals |
 * | `percent` | of what the column's title says, one decimal |
 * | `money` | an amount in units of the currency (not minor units), two decimals |
 */
export type CellKind =
  | 'text'
  | 'whole'
  | 'number'
  | 'mm'
  | 'thickness'
  | 'metres'
  | 'kg'
  | 'percent'
  | 'money';

/** Words in columns of kind `text`, numbers in all others; null where there is nothing to say. */
export type Cell = string | number | null;

export interface Column<Key extends string = string> {
  /** Heads the column in CSV, where it never changes. */
  readonly key: Key;
  readonly kind: CellKind;
}

/** A list before it takes a shape such as CSV or a worksheet. */
export interface Table {
  /** Names the file: `cutting-list`. */
  readonly name: string;
  readonly columns: readonly Column[];
  /** A cell for each column, in their order. */
  readonly rows: readonly (readonly Cell[])[];
}

/** A row as it is written down: a cell for each key. */
export type RowOf<Columns> = Columns extends readonly Column<infer Key>[]
  ? Readonly<Record<Key, Cell>>
  : never;

/** Columns from their keys and kinds, in the order written. */
export function tableColumns<Key extends string>(kinds: Readonly<Record<Key, CellKind>>): Column<Key>[] {
  return (Object.keys(kinds) as Key[]).map((key) => ({ key, kind: kinds[key] }));
}

/** How many decimals a kind is printed with; null for words and for as many as there are. */
export function decimalsOf(kind: CellKind): number | null {
  switch (kind) {
    case 'text':
    case 'number':
    case 'thickness':
      return null;
    case 'whole':
      return 0;
    case 'mm':
    case 'percent':
      return 1;
    case 'money':
      return 2;
    case 'metres':
    case 'kg':
      return 3;
    default:
      throw new Error(`there is no kind ${kind satisfies never}`);
  }
}

/** A cell as lists print it, with a point in numbers; nothing for null. Throws where a number's column holds a word. */
export function printCell(cell: Cell, kind: CellKind): string {
  if (cell === null) return '';
  if (kind === 'text') return String(cell);
  if (typeof cell !== 'number' || !Number.isFinite(cell)) {
    throw new Error(`a column of kind ${kind} holds ${JSON.stringify(cell)}`);
  }
  if (kind === 'mm') return listMm(cell);
  if (kind === 'thickness') return listThickness(cell);
  const decimals = decimalsOf(kind);
  return decimals === null ? String(cell) : cell.toFixed(decimals);
}

/** A table from rows with a cell for each key. */
export function tableOf<Key extends string>(
  name: string,
  columns: readonly Column<Key>[],
  rows: readonly Readonly<Record<Key, Cell>>[],
): Table {
  return { name, columns, rows: rows.map((row) => columns.map(({ key }) => row[key])) };
}

/** A table as comma-separated values (RFC 4180); the header line has the keys of its columns. */
export function csvFromTable({ columns, rows }: Table): string {
  return writeCsv(
    columns.map(({ key }) => key),
    rows.map((row) => row.map((cell, index) => printCell(cell, columns[index]!.kind))),
  );
}
