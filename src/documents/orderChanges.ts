import type { MaterialChange } from '../model/orderChanges.ts';
import type { Part } from '../model/part.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/** A panel of an old order and of a new one, as far as the list of changed panels needs it. */
export interface ListedChange {
  readonly kind: string;
  readonly before: Part | null;
  readonly after: Part | null;
  readonly count: number;
  readonly differs: readonly string[];
  /** How many of `count` are sawn already, and how many of those serve the new order. */
  readonly sawn: number;
  readonly used: number;
}

/**
 * Columns of the list of changed panels, one line a panel that is the same, changed, new or no longer needed. Figures of
 * the old order are empty for a new panel, those of the new order for one that is no longer needed.
 *
 * | column | holds |
 * |---|---|
 * | change | same, changed, new or no longer needed |
 * | unit, name | the panel |
 * | count | how many |
 * | differs | in what: board, finish, thickness, size, cut size, grain, edging, row, outline, openings, holes; parted by semicolons |
 * | board before, board after | ids |
 * | finish before, finish after | ids |
 * | length before, width before, length after, width after | finished size, mm |
 * | cut length before, cut width before, cut length after, cut width after | sawn size, mm |
 * | edging before, edging after | on length 1, length 2, width 1, width 2; a hyphen where there is none |
 * | sawn, used | how many are sawn already, and how many of these serve the new order as this panel |
 */
export const CHANGED_PANELS_COLUMNS = tableColumns({
  change: 'text',
  unit: 'text',
  name: 'text',
  count: 'whole',
  differs: 'text',
  'board before': 'text',
  'board after': 'text',
  'finish before': 'text',
  'finish after': 'text',
  'length before': 'mm',
  'width before': 'mm',
  'length after': 'mm',
  'width after': 'mm',
  'cut length before': 'mm',
  'cut width before': 'mm',
  'cut length after': 'mm',
  'cut width after': 'mm',
  'edging before': 'text',
  'edging after': 'text',
  sawn: 'whole',
  used: 'whole',
});

/**
 * Columns of the list of changed material, one line a size of sheet, an edging or a fitting.
 *
 * | column | holds |
 * |---|---|
 * | item | sheet, offcut, edging or fitting |
 * | id, board, finish | ids in the library; of an offcut its label |
 * | unit | piece, or m for edging |
 * | before, after, difference | what the old order takes, the new one, and how much more that is |
 * | done | of `after`: what the saw has taken already |
 * | in store | free, or reserved for the order; empty without a store |
 * | on order | on order with suppliers for the order, or for nobody; empty without a store |
 * | to buy | what is neither done nor in store nor on order; without a store what is more than before |
 * | to buy price | of that in whole packs and rolls, with price breaks, without delivery; empty where nobody sells it |
 * | price before, price after | of all of it, at the prices of one |
 * | currency | ISO 4217 |
 */
export const CHANGED_MATERIAL_COLUMNS = tableColumns({
  item: 'text',
  id: 'text',
  board: 'text',
  finish: 'text',
  unit: 'text',
  before: 'number',
  after: 'number',
  difference: 'number',
  done: 'number',
  'in store': 'number',
  'on order': 'number',
  'to buy': 'number',
  'to buy price': 'money',
  'price before': 'money',
  'price after': 'money',
  currency: 'text',
});

function edgingText(part: Part | null): string | null {
  if (part === null) return null;
  const { alongLength, alongWidth } = part.edging;
  return [...alongLength, ...alongWidth].map((edging) => edging ?? '-').join(' ');
}

function mm(um: number | undefined): number | null {
  return um === undefined ? null : um / 1000;
}

/** Panels of the old order and the new, side by side. */
export function changedPanels(changes: readonly ListedChange[]): Table {
  return tableOf(
    'changed-panels',
    CHANGED_PANELS_COLUMNS,
    changes.map(({ kind, before, after, count, differs, sawn, used }) => {
      const { unit, name } = (after ?? before)!;
      return {
        change: kind,
        unit,
        name,
        count,
        differs: differs.join('; '),
        'board before': before?.board ?? null,
        'board after': after?.board ?? null,
        'finish before': before?.finish ?? null,
        'finish after': after?.finish ?? null,
        'length before': mm(before?.finishedLengthUm),
        'width before': mm(before?.finishedWidthUm),
        'length after': mm(after?.finishedLengthUm),
        'width after': mm(after?.finishedWidthUm),
        'cut length before': mm(before?.cutLengthUm),
        'cut width before': mm(before?.cutWidthUm),
        'cut length after': mm(after?.cutLengthUm),
        'cut width after': mm(after?.cutWidthUm),
        'edging before': edgingText(before),
        'edging after': edgingText(after),
        sawn,
        used,
      };
    }),
  );
}

/** An amount in the unit in which it is told: pieces, of edging metres. */
export function toldAmount({ item }: Pick<MaterialChange, 'item'>, amount: number): number {
  return item === 'edging' ? amount / 1000 : amount;
}

/** What the old order takes and the new. */
export function changedMaterial(changes: readonly MaterialChange[], currency: string): Table {
  return tableOf(
    'changed-material',
    CHANGED_MATERIAL_COLUMNS,
    changes.map((row) => ({
      item: row.item,
      id: row.id,
      board: row.board,
      finish: row.finish,
      unit: row.item === 'edging' ? 'm' : 'piece',
      before: toldAmount(row, row.before),
      after: toldAmount(row, row.after),
      difference: toldAmount(row, row.after - row.before),
      done: toldAmount(row, row.done),
      'in store': row.there === null ? null : toldAmount(row, row.there),
      'on order': row.coming === null ? null : toldAmount(row, row.coming),
      'to buy': toldAmount(row, row.toBuy),
      'to buy price': row.toBuyMinor === null ? null : row.toBuyMinor / 100,
      'price before': row.priceBeforeMinor / 100,
      'price after': row.priceAfterMinor / 100,
      currency,
    })),
  );
}
