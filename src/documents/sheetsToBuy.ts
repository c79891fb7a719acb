import type { PlanFile, PlanGroup } from '../model/plan.ts';
import { writeCsv } from './csv.ts';
import { listMm, listMoney, listThickness } from './figures.ts';

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
export const SHEETS_TO_BUY_COLUMNS = [
  'group',
  'board',
  'finish',
  'thickness',
  'description',
  'sheet',
  'kind',
  'length',
  'width',
  'grain',
  'count',
  'price each',
  'price',
  'currency',
] as const;

/** Titles of boards and finishes by id; an id without one is left out of the description. */
export type Titles = ReadonlyMap<string, string>;

function describe(group: PlanGroup, titles: Titles): string {
  return [titles.get(group.board), titles.get(group.finish)]
    .filter((title) => title !== undefined)
    .join(', ');
}

/** The list of sheets to buy, and of offcuts to take, as CSV text. */
export function sheetsToBuy(plan: PlanFile, titles: Titles): string {
  const rows = plan.groups.flatMap((group) =>
    group.stock.flatMap((stock) => {
      const own = group.sheets.filter((sheet) => sheet.stock === stock.id);
      const count = own.reduce((sum, sheet) => sum + sheet.copies, 0);
      if (count === 0) return [];
      const priced = group.pricedBy === 'price';
      return [
        [
          group.id,
          group.board,
          group.finish,
          listThickness(group.thickness),
          describe(group, titles),
          stock.id,
          stock.kind,
          listMm(stock.length),
          listMm(stock.width),
          stock.grain,
          count,
          priced ? listMoney(stock.price) : '',
          priced ? listMoney(stock.price * count) : '',
          priced ? plan.currency : '',
        ],
      ];
    }),
  );
  return writeCsv(SHEETS_TO_BUY_COLUMNS, rows);
}
