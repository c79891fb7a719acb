import writeXlsxFile from 'write-excel-file/node';
import type { Papers } from '../../src/edge/index.ts';
import {
  type CellKind,
  decimalsOf,
  listTables,
  printCell,
  type Table,
} from '../../src/pipeline/listTables.ts';
import type { PaperRequest } from './morePapers.ts';

/** The date of all parts, 1 January 1980 at midnight, as ZIP counts them: so the same lists give the same bytes. */
const FIRST_DOS_DATE = 0x0021;

/** Character widths of a column: room for most of what is in it, and no wider than can be seen beside others. */
const NARROWEST = 6;
const WIDEST = 44;

function formatOf(kind: CellKind): string | null {
  if (kind === 'thickness') return '0.0##';
  const decimals = decimalsOf(kind);
  if (decimals === null) return null;
  return decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`;
}

/** `_x0041_` stands for a letter in a workbook's texts (ECMA-376 part 1, 22.9.2.19), so a name that holds it is escaped. */
function escapedText(text: string): string {
  return text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
}

/** Numbers as numbers, rounded as the CSV lists print them; words as words whatever they begin with. */
function sheetOf({ name, columns, rows }: Table) {
  const heads = columns.map(({ key, kind }) => ({
    value: key,
    type: String,
    fontWeight: 'bold' as const,
    wrap: true,
    ...(kind === 'text' ? {} : { align: 'right' as const }),
  }));
  const lines = rows.map((row) =>
    row.map((cell, index) => {
      const { kind } = columns[index]!;
      const text = printCell(cell, kind);
      if (text === '') return null;
      if (kind === 'text') return { value: escapedText(text), type: String };
      const format = formatOf(kind);
      return { value: Number(text), type: Number, ...(format === null ? {} : { format }) };
    }),
  );
  const widths = columns.map(({ key, kind }, index) => {
    const longest = Math.max(
      ...key.split(' ').map((word) => word.length + 1),
      ...rows.map((row) => printCell(row[index]!, kind).length),
    );
    return { width: Math.min(WIDEST, Math.max(NARROWEST, longest + 2)) };
  });
  return {
    sheet: name.replaceAll('-', ' '),
    data: [heads, ...lines],
    columns: widths,
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
  };
}

/** Sets the dates in a ZIP archive (PKWARE APPNOTE 6.3.10, sections 4.3.7 and 4.3.12), which hold the clock's time. */
function withFixedDates(zip: Buffer): Buffer {
  const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  if (end < 0) throw new Error('the workbook has no end of its directory');
  const setDate = (at: number) => {
    zip.writeUInt16LE(0, at);
    zip.writeUInt16LE(FIRST_DOS_DATE, at + 2);
  };
  let at = zip.readUInt32LE(end + 16);
  for (let left = zip.readUInt16LE(end + 10); left > 0; left--) {
    if (zip.readUInt32LE(at) !== 0x02014b50)
      throw new Error(`the directory of the workbook breaks off at ${at}`);
    setDate(at + 12);
    setDate(zip.readUInt32LE(at + 42) + 10);
    at += 46 + zip.readUInt16LE(at + 28) + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return zip;
}

/** Tables as the worksheets of one workbook (Office Open XML), the first row of each frozen. */
export async function xlsxFromTables(tables: readonly Table[]): Promise<Uint8Array> {
  return withFixedDates(await writeXlsxFile(tables.map(sheetOf)).toBuffer());
}

/** `lists.xlsx`: the lists of the job, as in the CSV files, a worksheet each. */
export async function workbookPapers({ job, proven }: PaperRequest): Promise<Papers> {
  return new Map([['lists.xlsx', await xlsxFromTables(listTables(job, proven.plan))]]);
}
