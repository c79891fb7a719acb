import { mmToUm, roundDownToTenth } from '../basics/lengths.ts';
import type { Library, SheetOffer } from '../model/library.ts';
import type { PlanFile, PlanGroup, PlanSheet, PlanStock } from '../model/plan.ts';
import type { SheetSupply } from '../model/stock.ts';
import type { Ledger, OffcutItem, OnOrder, SheetItem } from '../model/store.ts';
import { amountFor } from '../store/applyLine.ts';
import { comesFor } from '../store/onOrder.ts';

/**
 * What is paid for is cut before anything is bought, but not wasted: a sheet of the store counts as a tenth of its price,
 * so that up to ten of them are cut rather than one is bought, and of two plans that buy alike the one that cuts fewer
 * is the better.
 */
const PART_OF_PRICE = 10;

/** A piece of the store that a purchase may cut: a number of equal sheets, or one offcut. */
export interface OnHand {
  readonly item: SheetItem | OffcutItem;
  /** For whom it is kept; null for any of the orders. */
  readonly keptFor: string | null;
  readonly count: number;
  /** Whether it is only on order, and not there yet. */
  readonly isComing?: true;
}

function comingFor(goods: OnOrder, names: readonly string[]): OnHand[] {
  const { item, amount, reservedFor } = goods;
  if (item.item !== 'sheet' || !comesFor(goods, names)) return [];
  return [{ item, keptFor: reservedFor ?? null, count: amount, isComing: true }];
}

/**
 * Sheets and offcuts that are free, or kept for one of the names (the orders, and the purchase as a whole), and sheets that
 * are on order in the same way: they are paid for too.
 */
export function onHandFor({ stock, onOrder }: Ledger, names: readonly string[]): OnHand[] {
  const there = [...stock.values()].flatMap((entry): OnHand[] => {
    const { item } = entry;
    if (item.item !== 'sheet' && item.item !== 'offcut') return [];
    const kept = names.map((name) => ({ item, keptFor: name, count: entry.reserved.get(name) ?? 0 }));
    return [...kept, { item, keptFor: null, count: amountFor(entry, []) }].filter(({ count }) => count > 0);
  });
  return [...there, ...[...onOrder.values()].flatMap((goods) => comingFor(goods, names))];
}

function isOf({ board, finish }: SheetOffer, item: SheetItem): boolean {
  return board === item.board && finish === item.finish;
}

/** A tenth of what the sheet costs in the library; of a size that is not sold, by its area. */
function countedPrice(item: SheetItem, library: Library): number {
  const [lengthUm, widthUm] = [mmToUm(item.length), mmToUm(item.width)];
  const offers = library.sheets.filter((offer) => isOf(offer, item));
  const ofSize = offers.filter((offer) => offer.lengthUm === lengthUm && offer.widthUm === widthUm);
  const prices = (ofSize.length > 0 ? ofSize : offers).map(
    (offer) => (offer.priceMinor * lengthUm * widthUm) / (offer.lengthUm * offer.widthUm),
  );
  return prices.length === 0 ? 0 : Math.ceil(Math.min(...prices) / PART_OF_PRICE);
}

function supplyOf(parts: readonly OnHand[], library: Library): SheetSupply {
  const { item } = parts[0]!;
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const coming = parts.filter(({ isComing }) => isComing === true).length;
  const where =
    coming === 0 ? 'in the store' : coming === parts.length ? 'on order' : 'in the store or on order';
  const { board, finish, thickness, length, width, grain } = item;
  return {
    id: item.item === 'offcut' ? item.label : `${where} ${length} × ${width}`,
    board,
    finish,
    thicknessUm: mmToUm(thickness),
    lengthUm: mmToUm(length),
    widthUm: mmToUm(width),
    grain,
    priceMinor: item.item === 'offcut' ? null : countedPrice(item, library),
    count,
    kind: item.item,
  };
}

/** What of the store may be cut for the names, as sheets to nest from. */
export function suppliesOnHand(
  onHand: readonly OnHand[],
  names: readonly string[],
  library: Library,
): SheetSupply[] {
  const own = onHand.filter(
    ({ keptFor, count }) => count > 0 && (keptFor === null || names.includes(keptFor)),
  );
  const bySize = new Map<string, OnHand[]>();
  for (const each of own) {
    const key = keyOf(each.item);
    bySize.set(key, [...(bySize.get(key) ?? []), each]);
  }
  return [...bySize.values()].map((parts) => supplyOf(parts, library));
}

type SheetSize = Omit<SheetItem, 'item'>;

/** Equal for sheets that are nested alike: sizes down to 0.1 mm. */
export function sheetKey({ board, finish, thickness, length, width, grain }: SheetSize): string {
  const size = [length, width].map((mm) => roundDownToTenth(mmToUm(mm)));
  return JSON.stringify([board, finish, mmToUm(thickness), ...size, grain]);
}

function keyOf(item: SheetItem | OffcutItem): string {
  return item.item === 'offcut' ? offcutKey(item.label) : sheetKey(item);
}

function offcutKey(label: string): string {
  return `offcut ${label.toUpperCase()}`;
}

/** Sheets and offcuts that a plan takes, each kind of each group once, with the cut plans that take it. */
export function takenBy(plan: PlanFile): {
  readonly group: PlanGroup;
  readonly stock: PlanStock;
  readonly sheets: readonly PlanSheet[];
  readonly count: number;
}[] {
  return plan.groups.flatMap((group) =>
    group.stock.flatMap((stock) => {
      const sheets = group.sheets.filter((sheet) => sheet.stock === stock.id);
      const count = sheets.reduce((sum, { copies }) => sum + copies, 0);
      return count === 0 ? [] : [{ group, stock, sheets, count }];
    }),
  );
}

/** The sheet of a plan as the store knows it. */
export function sheetItemOf({ board, finish, thickness }: PlanGroup, stock: PlanStock): SheetItem {
  const { length, width, grain } = stock;
  return { item: 'sheet', board, finish, thickness, length, width, grain };
}

/** What a plan leaves of it: what was kept for the order goes first. */
export function leftAfter(onHand: readonly OnHand[], plan: PlanFile, names: readonly string[]): OnHand[] {
  const used = new Map<string, number>();
  for (const { group, stock, count } of takenBy(plan)) {
    const key = stock.kind === 'offcut' ? offcutKey(stock.id) : sheetKey(sheetItemOf(group, stock));
    used.set(key, (used.get(key) ?? 0) + count);
  }
  const rank = ({ keptFor }: OnHand) => (keptFor !== null && names.includes(keptFor) ? 0 : 1);
  const left = new Map<OnHand, number>(onHand.map((each) => [each, each.count]));
  for (const each of [...onHand].sort((a, b) => rank(a) - rank(b))) {
    if (each.keptFor !== null && !names.includes(each.keptFor)) continue;
    const key = keyOf(each.item);
    const take = Math.min(each.count, used.get(key) ?? 0);
    used.set(key, (used.get(key) ?? 0) - take);
    left.set(each, each.count - take);
  }
  return onHand.map((each) => ({ ...each, count: left.get(each)! }));
}
