import type { BookingLine, OnOrder, PurchaseMark, StoreItem } from '../model/store.ts';

/** Millimetres in a metre: edging is counted in whole millimetres. */
const MM_PER_METRE = 1000;

/** A key that two items share exactly when they are alike; of an offcut its label, whose case does not count. */
export function itemKey(item: StoreItem): string {
  switch (item.item) {
    case 'sheet': {
      const { board, finish, thickness, length, width, grain } = item;
      return JSON.stringify(['sheet', board, finish, thickness, length, width, grain]);
    }
    case 'offcut':
      return JSON.stringify(['offcut', item.label.toUpperCase()]);
    case 'edging':
      return JSON.stringify(['edging', item.edging]);
    case 'fitting':
      return JSON.stringify(['fitting', item.fitting]);
  }
}

/** The item of a line, without what is done with it. */
export function itemOf(line: BookingLine): StoreItem {
  switch (line.item) {
    case 'sheet': {
      const { item, board, finish, thickness, length, width, grain } = line;
      return { item, board, finish, thickness, length, width, grain };
    }
    case 'offcut': {
      const { item, label, place, board, finish, thickness, length, width, grain } = line;
      return { item, label, place, board, finish, thickness, length, width, grain };
    }
    case 'edging':
      return { item: line.item, edging: line.edging };
    case 'fitting':
      return { item: line.item, fitting: line.fitting };
  }
}

/** How much a line moves: pieces, of edging whole millimetres. */
export function amountOf(line: BookingLine): number {
  switch (line.item) {
    case 'sheet':
    case 'fitting':
      return line.count;
    case 'edging':
      return Math.round(line.metres * MM_PER_METRE);
    case 'offcut':
      return 1;
  }
}

/** A line that moves an amount (see `amountOf`) of an item; an offcut is always one. */
export function lineOf(
  item: StoreItem,
  amount: number,
  move: BookingLine['move'],
  reservedFor?: string,
  onOrder?: PurchaseMark,
): BookingLine {
  const moved = {
    move,
    ...(onOrder === undefined ? {} : { onOrder: markOf(onOrder) }),
    ...(reservedFor === undefined ? {} : { reservedFor }),
  };
  switch (item.item) {
    case 'sheet':
    case 'fitting':
      return { ...item, count: amount, ...moved };
    case 'edging':
      return { ...item, metres: amount / MM_PER_METRE, ...moved };
    case 'offcut':
      return { ...item, ...moved };
  }
}

/** Purchase, supplier and day alone, in the order in which they are written. */
export function markOf({ purchase, supplier, expected }: PurchaseMark): PurchaseMark {
  return {
    purchase,
    ...(supplier === undefined ? {} : { supplier }),
    ...(expected === undefined ? {} : { expected }),
  };
}

/** A key of goods on order: equal exactly for what differs in nothing but its amount. */
export function onOrderKey(item: StoreItem, mark: PurchaseMark, reservedFor: string | undefined): string {
  const { purchase, supplier, expected } = mark;
  return JSON.stringify([itemKey(item), purchase, supplier ?? null, expected ?? null, reservedFor ?? null]);
}

/** A line that moves goods on order, all of them. */
export function onOrderLine(goods: OnOrder, move: BookingLine['move']): BookingLine {
  return lineOf(goods.item, goods.amount, move, goods.reservedFor, goods);
}

/** Under which purchase, with whom and for when goods are on order, for a sentence. */
export function markInWords({ purchase, supplier, expected }: PurchaseMark): string {
  return `${purchase}${supplier === undefined ? '' : ` with ${supplier}`}${expected === undefined ? '' : `, expected on ${expected}`}`;
}

/** Whether two items agree in everything, an offcut's place and size included. */
export function sameItem(a: StoreItem, b: StoreItem): boolean {
  const { item, ...rest } = a;
  return (
    item === b.item &&
    Object.entries(rest).every(([field, value]) => (b as Readonly<Record<string, unknown>>)[field] === value)
  );
}

/** What an item is, for a sentence: `poplar-15 pale-grey 16.2 mm, 2500 × 1250`. */
export function itemInWords(item: StoreItem): string {
  switch (item.item) {
    case 'sheet':
    case 'offcut': {
      const thick = item.thickness === 0 ? '' : `${item.thickness} mm`;
      const of = [item.board, item.finish, thick].filter((word) => word !== '').join(' ');
      const size = `${item.length} × ${item.width}`;
      const what = of === '' ? size : `${of}, ${size}`;
      if (item.item === 'sheet') return `sheet ${what}`;
      return `offcut ${item.label} (${what}${item.place === '' ? '' : `; ${item.place}`})`;
    }
    case 'edging':
      return `edging ${item.edging}`;
    case 'fitting':
      return `fitting ${item.fitting}`;
  }
}

/** An amount with its unit, for a sentence: `3`, `12.5 m`. */
export function amountInWords(item: StoreItem, amount: number): string {
  return item.item === 'edging' ? `${amount / MM_PER_METRE} m` : String(amount);
}
