import type { SheetStep, Sweep, SweepPoint } from '../../model/sweep.ts';
import { type Table, tableColumns, tableOf } from '../table.ts';

/** Columns of the list of a sweep, one line a point. What each holds is described in `LISTS.md`. */
export const SWEEP_COLUMNS = tableColumns({
  'parameter 1': 'text',
  'value 1': 'text',
  'parameter 2': 'text',
  'value 2': 'text',
  panels: 'whole',
  sheets: 'whole',
  'least sheets': 'whole',
  steps: 'text',
  'steps along 1': 'text',
  yield: 'percent',
  'sheets cost': 'money',
  material: 'money',
  net: 'money',
  currency: 'text',
  'furniture mass': 'kg',
  refused: 'text',
});

/** Sheets that come and fall away: `−1 poplar-15 pale-grey, +1 …`. */
export function sheetsText(steps: readonly SheetStep[]): string {
  return steps
    .map(({ sheets, board, finish }) => `${sheets < 0 ? '−' : '+'}${Math.abs(sheets)} ${board} ${finish}`)
    .join(', ');
}

/** The same of a point of a sweep; of two parameters each is named: `sink: −1 …; bed_width: +1 …`. */
export function stepsText({ steps, stepsAcross }: SweepPoint, parameters: readonly string[]): string {
  if (parameters.length === 1) return sheetsText(steps);
  return [stepsAcross, steps]
    .map((each, index) => (each.length === 0 ? '' : `${parameters[index]}: ${sheetsText(each)}`))
    .filter((text) => text !== '')
    .join('; ');
}

/** Whether fewer sheets in all are taken at a point than at that before it, along either parameter. */
export function sheetsFall({ steps, stepsAcross }: SweepPoint): boolean {
  const sum = (of: readonly SheetStep[]) => of.reduce((total, { sheets }) => total + sheets, 0);
  return sum(steps) < 0 || sum(stepsAcross) < 0;
}

/** The points of a sweep as a list. */
export function sweepList({ parameters, points }: Sweep): Table {
  const rows = points.map((point) => {
    const { values, result } = point;
    const design = result.ok ? result.design : null;
    const groups = design?.groups ?? [];
    const cost = groups.reduce<number | null>(
      (sum, { costMinor }) => (sum === null || costMinor === null ? null : sum + costMinor),
      0,
    );
    const sum = (of: 'sheets' | 'leastSheets') =>
      design === null ? null : groups.reduce((total, group) => total + group[of], 0);
    return {
      'parameter 1': parameters[0] ?? null,
      'value 1': values[0] ?? null,
      'parameter 2': parameters[1] ?? null,
      'value 2': values[1] ?? null,
      panels: design?.panels ?? null,
      sheets: sum('sheets'),
      'least sheets': sum('leastSheets'),
      steps: sheetsText(point.steps),
      'steps along 1': parameters.length === 1 ? null : sheetsText(point.stepsAcross),
      yield: design === null ? null : 100 * design.yield,
      'sheets cost': design === null || cost === null ? null : cost / 100,
      material: design === null ? null : design.materialMinor / 100,
      net: design === null || design.pricedBy === 'material' ? null : design.netMinor / 100,
      currency: design?.currency ?? null,
      'furniture mass': design?.furnitureKg ?? null,
      refused: result.ok ? null : result.refused,
    };
  });
  return tableOf('sweep', SWEEP_COLUMNS, rows);
}
