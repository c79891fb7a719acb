import { errorFinding, listWords, unknownWord } from '../basics/findings.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { ItemWish, Ledger, OffcutItem, SheetItem, StoreItem } from '../model/store.ts';
import { itemInWords, itemKey, itemOf } from './items.ts';

const boardFields = ['board', 'finish', 'thickness', 'length', 'width', 'grain'] as const;

function missing(option: string, why: string): Checked<never> {
  return { ok: false, findings: [errorFinding('option-missing', `--${option} is missing: ${why}.`)] };
}

function found(item: StoreItem): Checked<StoreItem> {
  return { ok: true, value: item, findings: [] };
}

function refused(finding: Finding): Checked<never> {
  return { ok: false, findings: [finding] };
}

function inStock(ledger: Ledger): StoreItem[] {
  return [...ledger.stock.values()].map(({ item }) => item);
}

/** Every item that ever was in the store, as it was last, the latest last. */
function everKnown(ledger: Ledger): StoreItem[] {
  const known = new Map<string, StoreItem>();
  for (const { lines } of ledger.bookings) {
    for (const line of lines) {
      const item = itemOf(line);
      known.delete(itemKey(item));
      known.set(itemKey(item), item);
    }
  }
  return [...known.values()];
}

function fits(item: SheetItem | OffcutItem, wish: ItemWish): boolean {
  return boardFields.every((field) => wish[field] === undefined || item[field] === wish[field]);
}

/** Where an item is sought, as sentences say it. */
type Where = 'in the store' | 'on order';

const notFound = { 'in the store': 'not-in-store', 'on order': 'not-on-order' } as const;

function oneOf(items: readonly SheetItem[], what: string, where: Where): Checked<StoreItem> {
  const [first, second] = items;
  if (first === undefined) {
    return refused(errorFinding(notFound[where], `No such ${what} is ${where}.`));
  }
  if (second === undefined) return found(first);
  return refused(
    errorFinding('several-fit', `Several kinds of ${what} fit what was said.`, undefined, {
      found: listWords(items.map((item) => `${itemInWords(item)} grain ${item.grain}`).slice(0, 8), 'and'),
      advice: 'say more: --board, --finish, --thickness, --length, --width, --grain',
    }),
  );
}

function newBoard(wish: ItemWish): Checked<Omit<SheetItem, 'item'>> {
  const { board = '', finish = '', thickness, length, width, grain } = wish;
  if (length === undefined) return missing('length', 'this size is not known to the store yet');
  if (width === undefined) return missing('width', 'this size is not known to the store yet');
  if (grain === undefined) return missing('grain', 'length, width or none; this size is not known yet');
  if (thickness === undefined && board !== '') return missing('thickness', 'this size is not known yet');
  return {
    ok: true,
    value: { board, finish, thickness: thickness ?? 0, length, width, grain },
    findings: [],
  };
}

/** The item in the store that a person means; what is not there, or could be several, is told. */
export function itemInStore(ledger: Ledger, wish: ItemWish): Checked<StoreItem> {
  return itemAmong(inStock(ledger), wish, 'in the store');
}

/** The item on order with a supplier that a person means; what is not on order, or could be several, is told. */
export function itemOnOrder(ledger: Ledger, wish: ItemWish): Checked<StoreItem> {
  const items = new Map([...ledger.onOrder.values()].map(({ item }) => [itemKey(item), item]));
  return itemAmong([...items.values()], wish, 'on order');
}

function itemAmong(items: readonly StoreItem[], wish: ItemWish, where: Where): Checked<StoreItem> {
  switch (wish.item) {
    case 'sheet': {
      const sheets = items.filter((item) => item.item === 'sheet');
      return oneOf(
        sheets.filter((item) => fits(item, wish)),
        'sheet',
        where,
      );
    }
    case 'offcut': {
      const { label } = wish;
      if (label === undefined) return missing('label', 'an offcut is known by it');
      const offcuts = items.filter((item) => item.item === 'offcut');
      const one = offcuts.find((item) => item.label.toUpperCase() === label.toUpperCase());
      if (one !== undefined) return found(one);
      const labels = offcuts.map((item) => item.label);
      return refused({ ...unknownWord(label, `an offcut ${where}`, labels), code: notFound[where] });
    }
    case 'edging':
    case 'fitting':
      return namedAmong(items, wish.item, wish.name, where);
  }
}

function namedAmong(
  items: readonly StoreItem[],
  kind: 'edging' | 'fitting',
  name: string | undefined,
  where: Where,
): Checked<StoreItem> {
  if (name === undefined) return missing('name', `which ${kind}`);
  const own = items.flatMap((item) => (item.item === kind ? [{ item, name: nameOf(item) }] : []));
  const one = own.find((other) => other.name === name);
  if (one !== undefined) return found(one.item);
  const what = `${kind === 'edging' ? 'an edging' : 'a fitting'} ${where}`;
  const names = own.map((other) => other.name);
  return refused({ ...unknownWord(name, what, names), code: notFound[where] });
}

function nameOf(item: StoreItem): string {
  switch (item.item) {
    case 'edging':
      return item.edging;
    case 'fitting':
      return item.fitting;
    case 'sheet':
    case 'offcut':
      return item.board;
  }
}

/**
 * The item that comes into the store. Where exactly one that was there before fits what was said it is that one, an offcut
 * by its label; otherwise everything must be said.
 */
export function itemComingIn(ledger: Ledger, wish: ItemWish): Checked<StoreItem> {
  switch (wish.item) {
    case 'sheet': {
      const known = everKnown(ledger).filter((item) => item.item === 'sheet' && fits(item, wish));
      if (known.length === 1) return found(known[0]!);
      const made = newBoard(wish);
      if (made.ok) return found({ item: 'sheet', ...made.value });
      return known.length > 1 ? oneOf(known as SheetItem[], 'sheet', 'in the store') : made;
    }
    case 'offcut':
      return offcutComingIn(ledger, wish);
    case 'edging':
      return wish.name === undefined
        ? missing('name', 'which edging')
        : found({ item: 'edging', edging: wish.name });
    case 'fitting':
      return wish.name === undefined
        ? missing('name', 'which fitting')
        : found({ item: 'fitting', fitting: wish.name });
  }
}

function offcutComingIn(ledger: Ledger, wish: ItemWish): Checked<StoreItem> {
  const { label } = wish;
  if (label === undefined) return missing('label', 'what is written on the offcut');
  const known = everKnown(ledger).find(
    (item): item is OffcutItem => item.item === 'offcut' && item.label.toUpperCase() === label.toUpperCase(),
  );
  const made = newBoard({ ...known, ...wish });
  if (!made.ok) return made;
  return found({
    item: 'offcut',
    label: known?.label ?? label,
    place: wish.place ?? known?.place ?? '',
    ...made.value,
  });
}

/** An offcut as it is from now on: what was said of it, and the rest as it was. */
export function changedOffcut(item: OffcutItem, wish: ItemWish): OffcutItem {
  const { board, finish, thickness, length, width, grain, place } = { ...item, ...wish };
  return { item: 'offcut', label: item.label, place, board, finish, thickness, length, width, grain };
}
