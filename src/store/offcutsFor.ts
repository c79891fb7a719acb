import { mmToUm } from '../basics/lengths.ts';
import type { SheetSupply } from '../model/stock.ts';
import type { Ledger } from '../model/store.ts';

/** The offcuts that an order may be cut from, at no price: those that are free and those that are reserved for it. */
export function offcutsFor({ stock }: Ledger, order: string): SheetSupply[] {
  return [...stock.values()].flatMap(({ item, reserved }): SheetSupply[] => {
    if (item.item !== 'offcut' || (reserved.size > 0 && !reserved.has(order))) return [];
    const { label, board, finish, thickness, length, width, grain } = item;
    return [
      {
        id: label,
        board,
        finish,
        thicknessUm: mmToUm(thickness),
        lengthUm: mmToUm(length),
        widthUm: mmToUm(width),
        grain,
        priceMinor: null,
        count: 1,
        kind: 'offcut',
      },
    ];
  });
}
