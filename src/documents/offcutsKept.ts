import type { PlanEnding, PlanFile, PlanGroup, PlanPanel, PlanSheet } from '../model/plan.ts';
import { type RowOf, type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of offcuts that go back to the rack. The first ten are those of a list of sheets, so that the
 * file can be given to a later job as it is: an offcut costs nothing again and is already clean on all sides. A piece of
 * a cut-out is as large as it is once it has been squared up.
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
 * | cut by hand from | id of the panel out of whose cut-out it comes; empty for what the saw leaves |
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
  'cut by hand from': 'text',
});

/** A piece that goes back to the rack. Lengths in mm along the sides of the sheet it came from. */
export interface KeptPiece {
  readonly name: string;
  readonly group: PlanGroup;
  readonly sheet: number;
  readonly piece: string;
  readonly length: number;
  readonly width: number;
  readonly grain: 'length' | 'width' | 'none';
  readonly count: number;
  /** The panel out of whose opening it is cut by hand; null for what the saw leaves. */
  readonly fromPanel: PlanPanel | null;
}

/** What a piece is called that goes back to the rack; `opening`: of its panel, where it falls out of one. */
export function offcutName(
  group: PlanGroup,
  sheet: Pick<PlanSheet, 'number'>,
  piece: string,
  opening: string | null,
): string {
  return [group.id, sheet.number, piece, ...(opening === null ? [] : [opening])].join(' ');
}

/** What falls out of a panel's openings and is kept, as it lies on the sheet. */
function fromOpenings(group: PlanGroup, ending: PlanEnding & { readonly is: 'panel' }) {
  const panel = group.panels.find(({ id }) => id === ending.panel);
  return (panel?.byHand?.openings ?? []).flatMap(({ name, kept }) => {
    if (panel === undefined || kept === undefined) return [];
    const [length, width] =
      ending.lengthAlong === 'length' ? [kept.length, kept.width] : [kept.width, kept.length];
    return [{ opening: name, length, width, fromPanel: panel }];
  });
}

/** Everything that goes back to the rack, in the order of the cut plans. */
export function keptPieces(plan: PlanFile): KeptPiece[] {
  return plan.groups.flatMap((group) =>
    group.sheets.flatMap(({ number, copies, stock, pieces }) => {
      const grain = group.stock.find(({ id }) => id === stock)?.grain ?? 'none';
      const of = { group, sheet: number, grain, count: copies };
      return pieces.flatMap((ending): KeptPiece[] => {
        const { piece } = ending;
        const name = offcutName(group, { number }, piece, null);
        if (ending.is === 'offcut') {
          return [{ ...of, name, piece, length: ending.length, width: ending.width, fromPanel: null }];
        }
        if (ending.is !== 'panel') return [];
        return fromOpenings(group, ending).map(({ opening, ...kept }) => ({
          ...of,
          ...kept,
          name: offcutName(group, { number }, piece, opening),
          piece,
        }));
      });
    }),
  );
}

function rowOf(kept: KeptPiece): RowOf<typeof OFFCUTS_KEPT_COLUMNS> {
  const { name, length, width, grain, count, group, sheet, piece, fromPanel } = kept;
  return {
    name,
    length,
    width,
    grain,
    count,
    price: null,
    thickness: group.thickness,
    board: group.board,
    finish: group.finish,
    kind: 'offcut',
    group: group.id,
    sheet,
    piece,
    'cut by hand from': fromPanel?.id ?? null,
  };
}

/** The offcuts that are kept, in the order of the cut plans. */
export function offcutsKept(plan: PlanFile): Table {
  return tableOf('offcuts-kept', OFFCUTS_KEPT_COLUMNS, keptPieces(plan).map(rowOf));
}
