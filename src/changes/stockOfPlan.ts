import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanStock } from '../model/plan.ts';
import type { SawRules, SheetSupply, StockSheet } from '../model/stock.ts';

/** The smallest offcut that is kept where an older plan does not say so. */
const USUAL_LEAST_OFFCUT = { lengthUm: 400_000, widthUm: 200_000 };

function mmOrNull(mm: number | null | undefined): number | null {
  return mm === null || mm === undefined ? null : mmToUm(mm);
}

/** The rules of the saw that a group of a plan was made for. */
export function sawOfPlan({ saw }: Pick<PlanGroup, 'saw'>): SawRules {
  const { name, kerf, firstCut, turns, smallestPart, longestCut, cuttingHeight, leastOffcut, guidedBy } = saw;
  return {
    name,
    kerfUm: mmToUm(kerf),
    firstCut,
    turns,
    smallestPartUm: mmToUm(smallestPart ?? 0),
    leastOffcut:
      leastOffcut === undefined
        ? USUAL_LEAST_OFFCUT
        : { lengthUm: mmToUm(leastOffcut.length), widthUm: mmToUm(leastOffcut.width) },
    longestCutUm: mmOrNull(longestCut),
    cuttingHeightUm: mmOrNull(cuttingHeight),
    ...(guidedBy === undefined ? {} : { guidedBy }),
  };
}

function trimOf({ trim }: PlanStock): StockSheet['trim'] {
  const { left, right, near, far } = trim;
  return { left: mmToUm(left), right: mmToUm(right), near: mmToUm(near), far: mmToUm(far) };
}

/**
 * The sheets that a group of a plan may still be cut from: those of its stock, less what the plan takes itself where they
 * are counted. `onHand` says how many of one there are; without it as many as can be bought.
 */
export function freshSheets(group: PlanGroup, onHand?: (stock: PlanStock) => number): StockSheet[] {
  return group.stock.flatMap((stock): StockSheet[] => {
    if (stock.kind !== 'sheet') return [];
    const { id, length, width, grain, price } = stock;
    const used = group.sheets.reduce((sum, sheet) => (sheet.stock === id ? sum + sheet.copies : sum), 0);
    const listed = stock.count === null ? null : Math.max(0, stock.count - used);
    const there = onHand?.(stock) ?? null;
    const count = listed === null || there === null ? (listed ?? there) : Math.min(listed, there);
    if (count === 0) return [];
    const size = { lengthUm: mmToUm(length), widthUm: mmToUm(width) };
    return [{ id, ...size, grain, priceMinor: price, count, kind: 'sheet', trim: trimOf(stock) }];
  });
}

/** Those of some offcuts that are of a group's board, finish and thickness, at no price; each label once. */
export function offcutsOfGroup(group: PlanGroup, offcuts: readonly SheetSupply[]): StockSheet[] {
  const thicknessUm = mmToUm(group.thickness);
  const own = offcuts.filter(
    ({ board, finish, thicknessUm: thick }) =>
      board === group.board && finish === group.finish && thick === thicknessUm,
  );
  const byLabel = new Map(own.map((offcut) => [offcut.id.toUpperCase(), offcut]));
  const trim = { left: 0, right: 0, near: 0, far: 0 };
  return [...byLabel.values()].map(({ id, lengthUm, widthUm, grain, count }) => {
    return { id, lengthUm, widthUm, grain, priceMinor: 0, count, kind: 'offcut', trim };
  });
}
