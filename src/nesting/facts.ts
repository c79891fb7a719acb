import type { RectangleProblem, RectangleSheet } from '../model/rectangles.ts';
import type { LongestCut } from './longestCut.ts';
import { STACK_W } from './treeLayout.ts';

/** Bits of `Facts.ways`. */
export const AS_IS = 1;
export const TURNED = 2;

/** What the search asks for again and again about a problem, worked out once. Sizes in the problem's units. */
export interface Facts {
  readonly problem: RectangleProblem;
  readonly kinds: number;
  readonly sheetKinds: number;
  readonly w: Int32Array;
  readonly h: Int32Array;
  /** The shorter side. */
  readonly short: Int32Array;
  readonly area: Float64Array;
  readonly sheetW: Int32Array;
  readonly sheetH: Int32Array;
  readonly sheetArea: Float64Array;
  /** What the search minimises: the sheets' prices; 1 each where all prices are alike, areas where all are nothing. */
  readonly sheetCost: Float64Array;
  /** Costs of plans differ by a multiple of this. */
  readonly costStep: number;
  /** How many sheets of a kind there are; as many as there are items where any number can be had. */
  readonly sheetLimit: Int32Array;
  /** `ways[sheet * kinds + item]`: in which positions the item fits an empty sheet, as bits AS_IS and TURNED. */
  readonly ways: Uint8Array;
  /** Greatest number of levels of alternating stacks; a large number where any number is allowed. */
  readonly mostLevels: number;
  /** Bit 1: a stack along w may be cut first on this sheet; bit 2: a stack along h may. */
  readonly firstStacks: Uint8Array;
  /** Greatest size of a stack across its axis, so that no cut is too long; 0 where any size is allowed. */
  readonly longestCut: number;
  /** True when levels, first cuts or lengths of cuts are limited, so that each insertion must be checked for them. */
  readonly limited: boolean;
  /** Items in all. */
  readonly total: number;
  readonly totalArea: number;
  /** Area of the largest sheet. */
  readonly greatestSheet: number;
  readonly leastItemArea: number;
}

export const ANY_LEVELS = 1000;

/** Whether a stack along `axis` may be the first that is cut on the sheet. */
export function mayBeFirst(facts: Facts, sheet: number, axis: number): boolean {
  return (facts.firstStacks[sheet]! & (axis === STACK_W ? 1 : 2)) !== 0;
}

/**
 * Level of a root that is a stack along `axis`: 2 when the first cut must divide along the other axis. The root must
 * then leave something across for that first cut.
 */
export function rootLevel(facts: Facts, sheet: number, axis: number): number {
  return mayBeFirst(facts, sheet, axis) ? 1 : 2;
}

/**
 * Levels that a single piece w × h needs on the sheet: none when it is the whole sheet, one when it is as wide or
 * high as the sheet, else two. ANY_LEVELS + 1 when the prescribed first cut is of no use.
 */
function levelsOfSinglePiece(w: number, h: number, sheetW: number, sheetH: number, first: number): number {
  if (w === sheetW && h === sheetH) return 0;
  if (w === sheetW) return (first & 2) !== 0 ? 1 : ANY_LEVELS + 1;
  if (h === sheetH) return (first & 1) !== 0 ? 1 : ANY_LEVELS + 1;
  return first === 0 ? ANY_LEVELS + 1 : 2;
}

/** Blade along w divides along h. */
function firstStackBits(blade: 'w' | 'h' | 'either'): number {
  switch (blade) {
    case 'w':
      return 2;
    case 'h':
      return 1;
    case 'either':
      return 3;
  }
}

/**
 * Whether the cuts along a single piece on the sheet are within the longest: a longer side must be one of the sheet's
 * first cuts or lie on its edge.
 */
function sidesCanBeSawn(
  item: number,
  w: number,
  h: number,
  sheet: RectangleSheet,
  longest: LongestCut | null,
): boolean {
  if (longest === null) return true;
  if (longest.parted[item] === true && Math.max(w, h) > longest.most) return false;
  if (w === sheet.w && h === sheet.h) return longest.whole[sheet.sheet]!;
  return (w <= longest.most || h === sheet.h) && (h <= longest.most || w === sheet.w);
}

function waysOf(
  problem: RectangleProblem,
  mostLevels: number,
  firstStacks: Uint8Array,
  longest: LongestCut | null,
): Uint8Array {
  const { items, sheets } = problem;
  const ways = new Uint8Array(sheets.length * items.kinds);
  sheets.forEach((sheet, s) => {
    const first = firstStacks[s]!;
    const fits = (item: number, w: number, h: number) =>
      w <= sheet.w &&
      h <= sheet.h &&
      levelsOfSinglePiece(w, h, sheet.w, sheet.h, first) <= mostLevels &&
      sidesCanBeSawn(item, w, h, sheet, longest);
    for (let i = 0; i < items.kinds; i++) {
      const w = items.w[i]!;
      const h = items.h[i]!;
      const mayTurn = (items.grained[i] === 0 || sheet.noGrain) && w !== h;
      ways[s * items.kinds + i] = (fits(i, w, h) ? AS_IS : 0) | (mayTurn && fits(i, h, w) ? TURNED : 0);
    }
  });
  return ways;
}

function searchCosts(problem: RectangleProblem): number[] {
  const { sheets } = problem;
  if (
    sheets.every((s) => s.costMinor === sheets[0]!.costMinor && s.w * s.h === sheets[0]!.w * sheets[0]!.h)
  ) {
    return sheets.map(() => 1);
  }
  if (sheets.every((s) => s.costMinor === 0)) return sheets.map((s) => s.w * s.h);
  return sheets.map((s) => s.costMinor);
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** `turns`: as in `SawRules`, null for any number; `longest`: see `longestCutOf`. */
export function makeFacts(
  problem: RectangleProblem,
  turns: number | null,
  longest: LongestCut | null,
): Facts {
  const { items, sheets } = problem;
  const area = Float64Array.from(items.w, (w, i) => w * items.h[i]!);
  const mostLevels = turns === null ? ANY_LEVELS : turns + 1;
  const total = items.count.reduce((sum, n) => sum + n, 0);
  const sheetArea = Float64Array.from(sheets, (s) => s.w * s.h);
  const costs = searchCosts(problem);
  const firstStacks = Uint8Array.from(
    sheets,
    (sheet, index) => firstStackBits(sheet.firstBlade) & (longest?.firstStacks[index] ?? 3),
  );
  return {
    problem,
    kinds: items.kinds,
    sheetKinds: sheets.length,
    w: items.w,
    h: items.h,
    short: Int32Array.from(items.w, (w, i) => Math.min(w, items.h[i]!)),
    area,
    sheetW: Int32Array.from(sheets, (s) => s.w),
    sheetH: Int32Array.from(sheets, (s) => s.h),
    sheetArea,
    sheetCost: Float64Array.from(costs),
    costStep: costs.reduce(greatestCommonDivisor, 0) || 1,
    sheetLimit: Int32Array.from(sheets, (s) => (s.count < 0 ? total : Math.min(s.count, total))),
    ways: waysOf(problem, mostLevels, firstStacks, longest),
    mostLevels,
    firstStacks,
    longestCut: longest?.most ?? 0,
    limited: turns !== null || longest !== null || firstStacks.some((bits) => bits !== 3),
    total,
    totalArea: area.reduce((sum, a, i) => sum + a * items.count[i]!, 0),
    greatestSheet: sheetArea.reduce((most, a) => Math.max(most, a), 0),
    leastItemArea: area.reduce((least, a) => Math.min(least, a), Number.MAX_SAFE_INTEGER),
  };
}
