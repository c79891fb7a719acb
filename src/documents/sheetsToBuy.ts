import type { PlanFile, PlanGroup } from '../model/plan.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of sheets to buy, one line a stock group and size of sheet. Offcuts are taken from the rack and
 * stand in it too, so that all that must be fetched is on one list.
 *
 * | column | holds |
 * |---|---|
 * | group | stock group |
 * | board, finish, thickness | ids, and mm |
 * | description | titles of board and finish, where a library gives them |
 * | sheet | id of the sheet in the stock of the group |
 * | kind | `sheet` to buy, `offcut` from the rack |
 * | length, width | whole sheet, mm |
 * | grain | side of the sheet along which the grain runs, or `none` |
 * | count | how many |
 * | price each, price | in the currency; empty when the lists give no prices |
 * | currency | ISO 4217, or empty |
 */
export const SHEETS_TO_BUY_COLUMNS = tableColumns({
  group: 'text',
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  description: 'text',
  sheet: 'text',
  kind: 'text',
  length: 'mm',
  width: 'mm',
  grain: 'text',
  count: 'whole',
  'price each': 'money',
  price: 'money',
  currency: 'text',
});

/** Titles of boards and finishes by id; an id without one is left out of the description. */
export type Titles = ReadonlyMap<string, string>;

function describe(group: PlanGroup, titles: Titles): string {
  return [titles.get(group.board), titles.get(group.finish)]
    .filter((title) => title !== undefined)
    .join(', ');
}

/** The list of sheets to buy, and of offcuts to take. */
export function sheetsToBuy(plan: PlanFile, titles: Titles): Table {
  const rows = plan.groups.flatMap((group) =>
    group.stock.flatMap((stock) => {
      const own = group.sheets.filter((sheet) => sheet.stock === stock.id);
      const count = own.reduce((sum, sheet) => sum + sheet.copies, 0);
      if (count === 0) return [];
      const priced = group.pricedBy === 'price';
      return [
        {
          group: group.id,
          board: group.board,
          finish: group.finish,
          thickness: group.thickness,
          description: describe(group, titles),
          sheet: stock.id,
          kind: stock.kind,
          length: stock.length,
          width: stock.width,
          grain: stock.grain,
          count,
          'price each': priced ? stock.price / 100 : null,
          price: priced ? (stock.price * count) / 100 : null,
          currency: priced ? plan.currency : null,
        },
      ];
    }),
  );
  return tableOf('sheets-to-buy', SHEETS_TO_BUY_COLUMNS, rows);
}
