import type { PlanFile } from '../model/plan.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of pieces that earlier plans of the order have sawn, one line a piece: those that it uses, then those
 * that it has no use for any more. Only a plan that goes on from another one has this list.
 *
 * | column | holds |
 * |---|---|
 * | label | text of the label on the piece |
 * | use | `panel`, or what becomes of it: `offcut`, `waste` |
 * | number, id, unit, name | the panel that it is; of one without use name and unit that it was sawn for |
 * | group, board, finish, thickness | what it was sawn from |
 * | cut length, cut width | mm |
 * | grain | which of the two the grain runs along, or `none`; of a panel as in the cutting list |
 * | otherwise since | what the order has otherwise since it was sawn, parted by semicolons |
 */
export const ALREADY_SAWN_COLUMNS = tableColumns({
  label: 'text',
  use: 'text',
  number: 'whole',
  id: 'text',
  unit: 'text',
  name: 'text',
  group: 'text',
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  'cut length': 'mm',
  'cut width': 'mm',
  grain: 'text',
  'otherwise since': 'text',
});

/** What is sawn already, piece by piece; without lines for a first plan. */
export function alreadySawn(plan: PlanFile): Table {
  const groups = plan.sawn?.groups ?? [];
  const used = groups.flatMap(({ id: group, board, finish, thickness, panels }) =>
    panels.flatMap((panel) =>
      panel.codes.map((label) => ({
        label,
        use: 'panel',
        number: panel.label.number,
        id: panel.id,
        unit: panel.unit,
        name: panel.name,
        group,
        board,
        finish,
        thickness,
        'cut length': panel.length,
        'cut width': panel.width,
        grain: panel.grain,
        'otherwise since': panel.differs.join('; '),
      })),
    ),
  );
  const left = groups.flatMap(({ id: group, board, finish, thickness, left: pieces }) =>
    pieces.map(({ code, name, unit, length, width, grain, kept }) => ({
      label: code,
      use: kept ? 'offcut' : 'waste',
      number: null,
      id: null,
      unit,
      name,
      group,
      board,
      finish,
      thickness,
      'cut length': length,
      'cut width': width,
      grain,
      'otherwise since': null,
    })),
  );
  return tableOf('already-sawn', ALREADY_SAWN_COLUMNS, [...used, ...left]);
}
