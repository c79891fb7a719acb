import type { PlanFile, PlanGroup, PlanSheet } from '../model/plan.ts';
import { type RowOf, type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of offcuts that go back to the rack. The first ten are those of a list of sheets, so that the
 * file can be given to a later job as it is: an offcut costs nothing again and is already clean on all sides.
 *
 * | column | holds |
 * |---|---|
 * | name | group, number of the cut plan and name of the piece |
 * | length, width | mm, along the sides of the sheet it came from |
 * | grain | which of the two the grain runs along, or `none` |
 * | count | how many |
 * | price | empty: it is paid for |
 * | thickness, board, finish | mm, and ids |
 * | kind | `offcut` |
 * | group, sheet, piece | where it comes from |
 */
export const OFFCUTS_KEPT_COLUMNS = tableColumns({
  name: 'text',
  length: 'mm',
  width: 'mm',
  grain: 'text',
  count: 'whole',
  price: 'money',
  thickness: 'thickness',
  board: 'text',
  finish: 'text',
  kind: 'text',
  group: 'text',
  sheet: 'whole',
  piece: 'text',
});

function rowsOf(group: PlanGroup, sheet: PlanSheet): RowOf<typeof OFFCUTS_KEPT_COLUMNS>[] {
  const grain = group.stock.find((stock) => stock.id === sheet.stock)?.grain ?? 'none';
  return sheet.pieces.flatMap((piece) =>
    piece.is === 'offcut'
      ? [
          {
            name: `${group.id} ${sheet.number} ${piece.piece}`,
            length: piece.length,
            width: piece.width,
            grain,
            count: sheet.copies,
            price: null,
            thickness: group.thickness,
            board: group.board,
            finish: group.finish,
            kind: 'offcut',
            group: group.id,
            sheet: sheet.number,
            piece: piece.piece,
          },
        ]
      : [],
  );
}

/** The offcuts that are kept, in the order of the cut plans. */
export function offcutsKept(plan: PlanFile): Table {
  const rows = plan.groups.flatMap((group) => group.sheets.flatMap((sheet) => rowsOf(group, sheet)));
  return tableOf('offcuts-kept', OFFCUTS_KEPT_COLUMNS, rows);
}
