import type { FinishTaken, YearRun } from '../model/yearOfOrders.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

const UM2_PER_M2 = 1e12;

/** Columns of the list of what each run of a year took, a line a board and finish. */
export const YEAR_SHEETS_COLUMNS = tableColumns({
  seed: 'whole',
  board: 'text',
  finish: 'text',
  panels: 'whole',
  sheets: 'whole',
  cost: 'money',
  currency: 'text',
  yield: 'percent',
});

/** Columns of the list of what was cut together in each run of a year, a line a cutting. */
export const YEAR_WEEKS_COLUMNS = tableColumns({
  seed: 'whole',
  week: 'whole',
  orders: 'whole',
  panels: 'whole',
  sheets: 'whole',
  yield: 'percent',
  'offcuts used': 'whole',
  'offcuts made': 'whole',
  'offcuts gone': 'whole',
  'offcuts in rack': 'whole',
  'rack area': 'number',
});

function percentOf(taken: readonly FinishTaken[]): number | null {
  const sum = (of: (one: FinishTaken) => bigint) => taken.reduce((total, one) => total + of(one), 0n);
  const sheets = sum(({ sheetAreaUm2 }) => sheetAreaUm2);
  return sheets === 0n
    ? null
    : Number((sum(({ panelAreaUm2 }) => panelAreaUm2) * 1_000_000n) / sheets) / 10_000;
}

function total(taken: readonly FinishTaken[], of: (one: FinishTaken) => number): number {
  return taken.reduce((sum, one) => sum + of(one), 0);
}

/** The lists of the runs of a year. */
export function yearLists(runs: readonly YearRun[], currency: string): Table[] {
  const sheets = runs.flatMap(({ seed, taken }) =>
    taken.map((one) => ({
      seed,
      board: one.board,
      finish: one.finish,
      panels: one.panels,
      sheets: one.sheets,
      cost: one.costMinor / 100,
      currency,
      yield: percentOf([one]),
    })),
  );
  const weeks = runs.flatMap(({ seed, cuttings }) =>
    cuttings.map((one) => ({
      seed,
      week: one.week,
      orders: one.orders,
      panels: total(one.taken, ({ panels }) => panels),
      sheets: total(one.taken, (each) => each.sheets),
      yield: percentOf(one.taken),
      'offcuts used': one.offcutsUsed,
      'offcuts made': one.offcutsMade,
      'offcuts gone': one.offcutsGone,
      'offcuts in rack': one.offcutsInRack,
      'rack area': Math.round((Number(one.rackAreaUm2) / UM2_PER_M2) * 1000) / 1000,
    })),
  );
  return [
    tableOf('year-sheets', YEAR_SHEETS_COLUMNS, sheets),
    tableOf('year-weeks', YEAR_WEEKS_COLUMNS, weeks),
  ];
}
