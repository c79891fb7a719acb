import { Buffer } from 'node:buffer';
import readExcelFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { xlsxFromTables } from '../../cli/papers/workbook.ts';
import { plainCell } from '../../src/basics/csvCells.ts';
import { csvFromTable, type Table, tableColumns, tableOf } from '../../src/documents/table.ts';
import { listTables } from '../../src/pipeline/listTables.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { demoJob } from './book/demoBook.ts';

const made = demoJob();
const tables = listTables(made.job, made.proven.plan);

/** The worksheets of a workbook by name: rows of cells as they lie in the file. */
async function read(workbook: Uint8Array) {
  const sheets = await readExcelFile(Buffer.from(workbook), { trim: false });
  return new Map(sheets.map(({ sheet, data }) => [sheet, data] as const));
}

describe('the workbook', () => {
  it('holds the same as the CSV lists, a worksheet each', async () => {
    const sheets = await read(await xlsxFromTables(tables));
    expect([...sheets.keys()]).toEqual(tables.map(({ name }) => name.replaceAll('-', ' ')));
    for (const table of tables) {
      const records = readCsv(csvFromTable(table));
      const [heads, ...rows] = sheets.get(table.name.replaceAll('-', ' '))!;
      expect(heads).toEqual(table.columns.map(({ key }) => key));
      expect(rows).toHaveLength(records.length);
      rows.forEach((row, index) => {
        table.columns.forEach(({ key, kind }, column) => {
          const text = records[index]![key]!;
          // CSV holds words that would run as formulas behind an apostrophe; cells of a workbook have a type instead.
          const plain = kind === 'text' ? plainCell(text) : text;
          const wanted = plain === '' ? null : kind === 'text' ? plain : Number(plain);
          expect(row[column] ?? null, `${table.name}, row ${index + 2}, ${key}`).toEqual(wanted);
        });
      });
    }
  });

  it('has no formula, whatever a name begins with', async () => {
    const words = [
      '=1+1',
      '@sum',
      '+49',
      '-2',
      '\tx',
      '<b>&"',
      "'quoted",
      '12',
      ' spaced ',
      'ü€漢🙂',
      '_x0041_',
      'bolt_x005F_x0038_',
    ];
    const table = tableOf(
      'words',
      tableColumns({ word: 'text', size: 'mm' }),
      words.map((word) => ({ word, size: 12.34 })),
    );
    const workbook = await xlsxFromTables([table]);
    const rows = (await read(workbook)).get('words')!.slice(1);
    expect(rows.map(([word]) => word)).toEqual(words);
    // Lengths are rounded as the lists print them.
    expect(rows.map(([, size]) => size)).toEqual(words.map(() => 12.3));
  });

  it('is the same for the same lists, byte for byte, at any time', async () => {
    const first = Buffer.from(await xlsxFromTables(tables));
    await new Promise((settle) => setTimeout(settle, 2100));
    expect(Buffer.from(await xlsxFromTables(tables)).equals(first)).toBe(true);
  });

  it('is a workbook when a list has no lines', async () => {
    const empty: Table = tableOf('empty', tableColumns({ name: 'text' }), []);
    expect((await read(await xlsxFromTables([empty]))).get('empty')).toEqual([['name']]);
  });
});
