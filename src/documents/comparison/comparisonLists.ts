import type { ComparedFigure, Comparison } from '../../model/comparison.ts';
import { type Cell, type Table, tableColumns, tableOf } from '../table.ts';

/** Columns of the list of compared designs, one line a design. What each holds is described in `LISTS.md`. */
export const COMPARED_DESIGNS_COLUMNS = tableColumns({
  design: 'text',
  title: 'text',
  layout: 'text',
  vehicle: 'text',
  alike: 'whole',
  units: 'whole',
  panels: 'whole',
  sheets: 'whole',
  'least sheets': 'whole',
  yield: 'percent',
  offcuts: 'whole',
  'offcut area': 'number',
  'edging metres': 'metres',
  'sheets cost': 'money',
  material: 'money',
  work: 'money',
  net: 'money',
  currency: 'text',
  'furniture mass': 'kg',
  left: 'percent',
  front: 'percent',
  'payload left': 'kg',
  seats: 'whole',
  'sleeping places': 'whole',
  'sawn metres': 'metres',
  cuts: 'whole',
  'fence settings': 'whole',
});

/** Columns of the list of their sheets, one line a stock group of a design. */
export const COMPARED_SHEETS_COLUMNS = tableColumns({
  design: 'text',
  board: 'text',
  finish: 'text',
  panels: 'whole',
  sheets: 'whole',
  'least sheets': 'whole',
  proved: 'text',
  yield: 'percent',
  cost: 'money',
  currency: 'text',
});

function money(minor: number | null): number | null {
  return minor === null ? null : minor / 100;
}

function percent(share: number | null): number | null {
  return share === null ? null : 100 * share;
}

/** The lists of a comparison. */
export function comparisonLists({ designs, rows }: Comparison): readonly Table[] {
  const figureOf = (figure: ComparedFigure, index: number): number | null =>
    rows.find((row) => row.figure === figure)?.values[index] ?? null;
  const lines = designs.map((design, index) => {
    const value = (figure: ComparedFigure) => figureOf(figure, index);
    return {
      design: design.name,
      title: design.title,
      layout: design.layout,
      vehicle: design.vehicle,
      alike: design.alike,
      units: design.units,
      panels: design.panels,
      sheets: value('sheets'),
      'least sheets': rows.find(({ figure }) => figure === 'sheets')?.least?.[index] ?? null,
      yield: percent(design.yield),
      offcuts: design.offcuts.count,
      'offcut area': Math.round(design.offcuts.areaM2 * 1000) / 1000,
      'edging metres': design.edgingMetres,
      'sheets cost': money(value('sheets cost')),
      material: money(design.materialMinor),
      work: money(value('work')),
      net: money(value('net')),
      currency: design.currency,
      'furniture mass': design.furnitureKg,
      left: percent(value('left share')),
      front: percent(value('front share')),
      'payload left': design.payloadLeftKg,
      seats: design.seats,
      'sleeping places': design.sleepingPlaces,
      'sawn metres': design.sawnMetres,
      cuts: design.cuts,
      'fence settings': design.fenceSettings,
    };
  });
  const sheets = designs.flatMap((design) =>
    design.groups.map(
      (group): Record<(typeof COMPARED_SHEETS_COLUMNS)[number]['key'], Cell> => ({
        design: design.name,
        board: group.board,
        finish: group.finish,
        panels: group.panels,
        sheets: group.sheets,
        'least sheets': group.leastSheets,
        proved: group.proved ? 'yes' : 'no',
        yield: percent(group.yield),
        cost: money(group.costMinor),
        currency: design.currency,
      }),
    ),
  );
  return [
    tableOf('compared-designs', COMPARED_DESIGNS_COLUMNS, lines),
    tableOf('compared-sheets', COMPARED_SHEETS_COLUMNS, sheets),
  ];
}
