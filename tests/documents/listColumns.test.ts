import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ALREADY_SAWN_COLUMNS } from '../../src/documents/alreadySawn.ts';
import {
  COMPARED_DESIGNS_COLUMNS,
  COMPARED_SHEETS_COLUMNS,
} from '../../src/documents/comparison/comparisonLists.ts';
import { SWEEP_COLUMNS } from '../../src/documents/comparison/sweepList.ts';
import { CHANGED_MATERIAL_COLUMNS, CHANGED_PANELS_COLUMNS } from '../../src/documents/orderChanges.ts';
import { QUOTATION_COLUMNS } from '../../src/documents/quotation.ts';
import { YEAR_SHEETS_COLUMNS, YEAR_WEEKS_COLUMNS } from '../../src/documents/yearLists.ts';
import { listTables } from '../../src/pipeline/listTables.ts';
import { demoJob } from './book/demoBook.ts';

const made = demoJob();
const described = readFileSync(new URL('../../src/documents/LISTS.md', import.meta.url), 'utf8');

/** Columns of a list as its description names them, in order. */
function describedColumns(name: string, before = ''): string[] {
  const start = described.indexOf(`## ${before}\`${name}.csv\``);
  if (start < 0) throw new Error(`no description of ${name}.csv`);
  const end = described.indexOf('\n## ', start);
  const section = described.slice(start, end < 0 ? undefined : end);
  const rows = [...section.matchAll(/^\| ([a-z][a-z0-9, ]*) \|/gm)].map((row) => row[1]!);
  return rows.slice(1).flatMap((row) => row.split(', '));
}

describe('the columns of the lists', () => {
  it.each(listTables(made.job, made.proven.plan).map((table) => [table.name, table] as const))(
    'of %s are described, each once and in order',
    (name, table) => {
      expect(describedColumns(name)).toEqual(table.columns.map(({ key }) => key));
    },
  );

  it('of an estimate are described', () => {
    const columns = QUOTATION_COLUMNS.map(({ key }) => key);
    expect(describedColumns('quotation', 'Of an estimate: ')).toEqual(columns);
  });

  it('of a changed order are described', () => {
    const before = 'Of a changed order: ';
    const keys = (columns: readonly { key: string }[]) => columns.map(({ key }) => key);
    expect(describedColumns('changed-panels', before)).toEqual(keys(CHANGED_PANELS_COLUMNS));
    expect(describedColumns('changed-material', before)).toEqual(keys(CHANGED_MATERIAL_COLUMNS));
  });

  it('of a comparison are described', () => {
    const before = 'Of a comparison: ';
    const keys = (columns: readonly { key: string }[]) => columns.map(({ key }) => key);
    expect(describedColumns('compared-designs', before)).toEqual(keys(COMPARED_DESIGNS_COLUMNS));
    expect(describedColumns('compared-sheets', before)).toEqual(keys(COMPARED_SHEETS_COLUMNS));
  });

  it('of a sweep are described', () => {
    expect(describedColumns('sweep', 'Of a sweep: ')).toEqual(SWEEP_COLUMNS.map(({ key }) => key));
  });

  it('of a year of orders are described', () => {
    const before = 'Of a year of orders: ';
    const keys = (columns: readonly { key: string }[]) => columns.map(({ key }) => key);
    expect(describedColumns('year-sheets', before)).toEqual(keys(YEAR_SHEETS_COLUMNS));
    expect(describedColumns('year-weeks', before)).toEqual(keys(YEAR_WEEKS_COLUMNS));
  });

  it('of what is sawn already are described', () => {
    const columns = ALREADY_SAWN_COLUMNS.map(({ key }) => key);
    expect(describedColumns('already-sawn', 'Of a later plan: ')).toEqual(columns);
  });

  it('are described for no list that there is not', () => {
    const names = [...described.matchAll(/^## `([a-z-]+)\.csv`/gm)].map((found) => found[1]);
    expect(names.sort()).toEqual(
      listTables(made.job, made.proven.plan)
        .map(({ name }) => name)
        .sort(),
    );
  });
});
