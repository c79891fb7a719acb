import type { PlanFile, PlanGroup, PlanSheet } from '../model/plan.ts';
import { writeCsv } from './csv.ts';
import { listMm, listThickness } from './figures.ts';

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
export const OFFCUTS_KEPT_COLUMNS = [
  'name',
  'length',
  'width',
  'grain',
  'count',
  'price',
  'thickness',
  'board',
  'finish',
  'kind',
  'group',
  'sheet',
  'piece',
] as const;

function rowsOf(group: PlanGroup, sheet: PlanSheet): (string | number)[][] {
  const grain = group.stock.find((stock) => stock.id === sheet.stock)?.grain ?? 'none';
  return sheet.pieces.flatMap((piece) =>
    piece.is === 'offcut'
      ? [
          [
            `${group.id} ${sheet.number} ${piece.piece}`,
            listMm(piece.length),
            listMm(piece.width),
            grain,
            sheet.copies,
            '',
            listThickness(group.thickness),
            group.board,
            group.finish,
            'offcut',
            group.id,
            sheet.number,
            piece.piece,
          ],
        ]
      : [],
  );
}

/** The offcuts that are kept, as CSV text, in the order of the cut plans. */
export function offcutsKept(plan: PlanFile): string {
  const rows = plan.groups.flatMap((group) => group.sheets.flatMap((sheet) => rowsOf(group, sheet)));
  return writeCsv(OFFCUTS_KEPT_COLUMNS, rows);
}
