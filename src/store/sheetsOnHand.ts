import { mmToUm, umToMm } from '../basics/lengths.ts';
import type { SheetSupply } from '../model/stock.ts';
import type { Ledger, SheetItem } from '../model/store.ts';
import { amountFor } from './applyLine.ts';
import { itemKey } from './items.ts';

/** How many sheets of a size an order may take: those that are free, and those that are reserved for it. */
export function sheetsThere({ stock }: Ledger, order: string, item: SheetItem): number {
  const entry = stock.get(itemKey(item));
  return entry === undefined ? 0 : amountFor(entry, [order]);
}

function itemOfSupply(supply: SheetSupply): SheetItem {
  const { board, finish, thicknessUm, lengthUm, widthUm, grain } = supply;
  const size = { length: umToMm(lengthUm), width: umToMm(widthUm) };
  return { item: 'sheet', board, finish, thickness: umToMm(thicknessUm), ...size, grain };
}

/** What a sheet costs by its area where the library has one of its board and finish, in minor units; null otherwise. */
function priceByArea(item: SheetItem, offered: readonly SheetSupply[]): number | null {
  const alike = offered.filter(
    ({ board, finish, thicknessUm, kind, priceMinor }) =>
      kind === 'sheet' &&
      priceMinor !== null &&
      board === item.board &&
      finish === item.finish &&
      thicknessUm === mmToUm(item.thickness),
  );
  const prices = alike.map(({ lengthUm, widthUm, priceMinor }) => {
    const share = (mmToUm(item.length) / lengthUm) * (mmToUm(item.width) / widthUm);
    return Math.round(priceMinor! * share);
  });
  return prices.length === 0 ? null : Math.min(...prices);
}

/**
 * The sheets that an order may be cut from when nothing is bought for it: of those that a library offers as many as the store
 * has free or reserved for it, and every other size that the store has, at the library's price by area.
 */
export function sheetsOnHand(ledger: Ledger, order: string, offered: readonly SheetSupply[]): SheetSupply[] {
  const listed = offered.map((supply): SheetSupply => {
    const there = sheetsThere(ledger, order, itemOfSupply(supply));
    return { ...supply, count: Math.min(there, supply.count ?? there) };
  });
  const known = new Set(offered.map((supply) => itemKey(itemOfSupply(supply))));
  const others = [...ledger.stock.values()].flatMap(({ item }): SheetSupply[] => {
    if (item.item !== 'sheet' || known.has(itemKey(item))) return [];
    const { board, finish, thickness, length, width, grain } = item;
    const count = sheetsThere(ledger, order, item);
    if (count === 0) return [];
    return [
      {
        id: `${[board, finish].filter((word) => word !== '').join('-') || 'sheet'}-${length}x${width}`,
        board,
        finish,
        thicknessUm: mmToUm(thickness),
        lengthUm: mmToUm(length),
        widthUm: mmToUm(width),
        grain,
        priceMinor: priceByArea(item, offered),
        count,
        kind: 'sheet',
      },
    ];
  });
  return [...listed, ...others];
}
