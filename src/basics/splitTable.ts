import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { grown } from './grown.ts';
import { KnownFailures } from './knownFailures.ts';
import { axisItems, mayTurn } from './pricesFromFunctions.ts';
import { Parts, type Selections } from './selections.ts';
import type { StepCount } from './stepCount.ts';

/** What looking at one way to part a selection, and at one pair of rectangles, counts for, in steps of about a nanosecond. */
const STEPS_A_SPLIT = 15;
const STEPS_A_PAIR = 15;
/** The same for a way to cut a larger selection, with what is asked about what is left. */
const STEPS_A_CUT = 35;
/** Sides of more units than this are not looked at for gaps. */
const MOST_SIDE = 400_000;
/** Selections up to this part of the sheet have their rectangles in the table. */
const PART_IN_TABLE = 0.5;
/** Least waste of a selection in the table, in so many steps of what may be wasted; then those without any rectangle. */
const ROUGH_STEPS = 253;
const NO_RECTANGLE = 255;

/** A guillotine cut: what lies on the near side of it, along which axis, and how long that is. */
interface Cut {
  readonly part: number;
  readonly axis: 'w' | 'h';
  readonly at: number;
}

/**
 * In which rectangles selections of pieces can lie by guillotine cuts, on one kind of sheet of which no more than `waste`
 * may stay unused.
 *
 * Of each selection of up to half of the sheet, or of the largest piece, the rectangles are worked out when they are first asked for: those that
 * are not larger both ways than another, joined side by side from the rectangles of its parts. Kept are those that fit
 * the sheet and waste no more than `waste`; to what a rectangle wastes in itself counts what pieces beside it can at best
 * leave open, since sums of their sides do not reach every length.
 *
 * Larger selections are asked for one rectangle only and taken apart from outside: the smaller side of the first cut is
 * in the table, which says how far the cut must be from the edge, and the larger side is asked for what is left. There
 * the little that may be wasted leaves few ways.
 */
export class SplitTable {
  private readonly problem: RectangleProblem;
  private readonly selections: Selections;
  private readonly count: StepCount;
  private readonly waste: number;
  private readonly sheetW: number;
  private readonly sheetH: number;
  /** As much of the sheet as sums of sides reach. */
  private readonly reachedW: number;
  private readonly reachedH: number;
  private readonly mostInTable: number;
  private readonly turnable: readonly boolean[];
  /** By a length along the axis: what of it no sum of sides can cover. */
  private readonly gapW: Int32Array;
  private readonly gapH: Int32Array;
  /** By selection: 0 while its rectangles are not known, then 1 and the least waste of them in rough steps, rounded down. */
  private readonly rough: Uint8Array;
  /** The same for what it wastes in a strip over the whole height of the sheet, and in one over its whole width. */
  private readonly roughHigh: Uint8Array;
  private readonly roughWide: Uint8Array;
  private readonly roughStep: number;
  /** By selection where its list begins: how many rectangles, then the entry of each, the narrowest first. */
  private readonly start: Int32Array;
  private lists: Int32Array = new Int32Array(1 << 14);
  private listsUsed = 0;
  private readonly failures = new KnownFailures();
  private readonly partsByDepth: Parts[] = [];
  private readonly foundByDepth: Int32Array[] = [];
  private depth = 0;
  /** Rectangles of the selection that is worked out, an entry each. */
  private found: Int32Array = new Int32Array(0);
  private foundUsed = 0;
  private area = 0;
  private lastCut: Cut = { part: 0, axis: 'w', at: 0 };

  /** `waste`: area of the sheet that may stay unused, 0 or more. */
  constructor(
    problem: RectangleProblem,
    selections: Selections,
    sheet: number,
    waste: number,
    count: StepCount,
  ) {
    const of = problem.sheets[sheet]!;
    this.problem = problem;
    this.selections = selections;
    this.count = count;
    this.waste = waste;
    this.sheetW = of.w;
    this.sheetH = of.h;
    // Single pieces cannot be taken apart.
    this.mostInTable = Math.max(of.w * of.h * PART_IN_TABLE, ...selections.areas);
    this.turnable = Array.from({ length: problem.items.kinds }, (_, item) => mayTurn(problem, item, of));
    this.gapW = gaps(problem, sheet, 'w');
    this.gapH = gaps(problem, sheet, 'h');
    this.reachedW = of.w - this.gapW[of.w]!;
    this.reachedH = of.h - this.gapH[of.h]!;
    this.rough = new Uint8Array(selections.count);
    this.roughHigh = new Uint8Array(selections.count);
    this.roughWide = new Uint8Array(selections.count);
    this.roughStep = ROUGH_STEPS / Math.max(1, waste);
    this.start = new Int32Array(selections.count);
  }

  /** Whether a selection of this area lies on the sheet. False when the steps are spent. */
  fitsSheet(selection: number, area: number): boolean {
    return this.fits(selection, area, this.sheetW, this.sheetH);
  }

  /** A tree of a selection that lies on the sheet; null for the empty selection. */
  tree(selection: number): PatternNode | null {
    if (selection === 0) return null;
    return this.treeIn(selection, this.selections.areaOf(selection), this.sheetW, this.sheetH);
  }

  private fits(selection: number, area: number, w: number, h: number): boolean {
    if (selection === 0) return true;
    if (area <= this.mostInTable) {
      const at = this.least(selection, area, 'w', h);
      return at > 0 && this.lists[at]! <= w;
    }
    // What no sum of sides can cover is wasted.
    const reachedW = w - this.gapW[w]!;
    const reachedH = h - this.gapH[h]!;
    if (reachedW * reachedH < area || this.failures.has(selection, reachedW, reachedH)) return false;
    if (this.findCut(selection, area, reachedW, reachedH)) return true;
    if (!this.count.isSpent) this.failures.add(selection, reachedW, reachedH);
    return false;
  }

  /** Where the rectangle with the least extent along the axis is listed, given the room across; 0 when there is none. */
  private least(selection: number, area: number, axis: 'w' | 'h', room: number): number {
    if (this.rough[selection] === 0) this.workOut(selection, area);
    if (this.rough[selection] === NO_RECTANGLE) return 0;
    const { lists } = this;
    const first = this.start[selection]! + 1;
    const end = first + 2 * lists[first - 1]!;
    if (axis === 'w') {
      for (let at = first; at < end; at += 2) if (lists[at + 1]! <= room) return at;
    } else {
      for (let at = end - 2; at >= first; at -= 2) if (lists[at]! <= room) return at;
    }
    return 0;
  }

  /** Looks for a cut of a rectangle both sides of which hold their part; it is then `lastCut`. */
  private findCut(selection: number, area: number, w: number, h: number): boolean {
    const { rough, count } = this;
    const slack = w * h - area;
    const most = 1 + Math.floor(Math.min(slack, this.waste) * this.roughStep);
    const roughBeside = h === this.reachedH ? this.roughHigh : rough;
    const roughAbove = w === this.reachedW ? this.roughWide : rough;
    const parts = this.partsAt(this.depth++);
    parts.first(selection, area / 2);
    let isFound = false;
    for (let part = parts.next(); part > 0 && !isFound; part = parts.next()) {
      count.steps += STEPS_A_CUT;
      if (count.isSpent) break;
      if (rough[part] === 0) this.workOut(part, parts.area);
      if (rough[part]! > most) continue;
      const partArea = parts.area;
      isFound =
        (roughBeside[part]! <= most && this.canCut(selection, area, w, h, part, partArea, 'w')) ||
        (roughAbove[part]! <= most && this.canCut(selection, area, w, h, part, partArea, 'h'));
    }
    this.depth--;
    return isFound;
  }

  private canCut(
    selection: number,
    area: number,
    w: number,
    h: number,
    part: number,
    partArea: number,
    axis: 'w' | 'h',
  ): boolean {
    const entry = this.least(part, partArea, axis, axis === 'w' ? h : w);
    if (entry === 0) return false;
    const at = this.lists[axis === 'w' ? entry : entry + 1]!;
    const restW = axis === 'w' ? w - at : w;
    const restH = axis === 'w' ? h : h - at;
    if (restW < 0 || restH < 0 || restW * restH < area - partArea) return false;
    if (!this.fits(selection - part, area - partArea, restW, restH)) return false;
    this.lastCut = { part, axis, at };
    return true;
  }

  private partsAt(depth: number): Parts {
    this.partsByDepth[depth] ??= new Parts(this.selections);
    return this.partsByDepth[depth]!;
  }

  /** Works out the rectangles of a selection, and before that those of its parts. */
  private workOut(selection: number, area: number): void {
    const { found, foundUsed, area: areaOutside, depth } = this;
    this.foundByDepth[depth] ??= new Int32Array(64);
    this.found = this.foundByDepth[depth]!;
    this.foundUsed = 0;
    this.area = area;
    const parts = this.partsAt(this.depth++);
    parts.first(selection, area / 2);
    if (parts.pieces === 1) this.keepPiece(parts.digits.indexOf(1));
    else this.joinParts(selection, parts);
    this.store(selection);
    this.foundByDepth[depth] = this.found;
    this.found = found;
    this.foundUsed = foundUsed;
    this.area = areaOutside;
    this.depth = depth;
  }

  private keepPiece(item: number): void {
    const { items } = this.problem;
    this.keep(items.w[item]!, items.h[item]!);
    if (this.turnable[item]) this.keep(items.h[item]!, items.w[item]!);
  }

  /** All ways to part a selection in two, by the smaller of both. */
  private joinParts(selection: number, parts: Parts): void {
    const { rough, count, area } = this;
    for (let part = parts.next(); part > 0; part = parts.next()) {
      count.steps += STEPS_A_SPLIT;
      if (count.isSpent) return;
      const rest = selection - part;
      if (rough[part] === 0) this.workOut(part, parts.area);
      if (rough[part] === NO_RECTANGLE) continue;
      if (rough[rest] === 0) this.workOut(rest, area - parts.area);
      // What both waste at least is wasted by the two together as well.
      if (rough[part]! + rough[rest]! > ROUGH_STEPS + 2) continue;
      this.joinBeside(this.start[part]!, this.start[rest]!);
      this.joinAbove(this.start[part]!, this.start[rest]!);
    }
  }

  /**
   * The rectangles of a part and of what is left side by side. Those of each are in order, wider and lower ones later.
   * Beginning with the narrowest of both, what is higher gives way to the next one, so that each height is met with the
   * least width.
   */
  private joinBeside(startA: number, startB: number): void {
    const { lists, sheetW } = this;
    const most = this.area + this.waste;
    const endA = startA + 2 * lists[startA]!;
    const endB = startB + 2 * lists[startB]!;
    let a = startA + 1;
    let b = startB + 1;
    let pairs = 0;
    while (a < endA && b < endB) {
      pairs++;
      const w = lists[a]! + lists[b]!;
      if (w > sheetW) break;
      const difference = lists[a + 1]! - lists[b + 1]!;
      const h = difference >= 0 ? lists[a + 1]! : lists[b + 1]!;
      if (w * h <= most) this.keep(w, h);
      if (difference >= 0) a += 2;
      if (difference <= 0) b += 2;
    }
    this.count.steps += pairs * STEPS_A_PAIR;
  }

  /** The same one above the other, beginning with the lowest. */
  private joinAbove(startA: number, startB: number): void {
    const { lists, sheetH } = this;
    const most = this.area + this.waste;
    let a = startA + 1 + 2 * (lists[startA]! - 1);
    let b = startB + 1 + 2 * (lists[startB]! - 1);
    let pairs = 0;
    while (a > startA && b > startB) {
      pairs++;
      const h = lists[a + 1]! + lists[b + 1]!;
      if (h > sheetH) break;
      const difference = lists[a]! - lists[b]!;
      const w = difference >= 0 ? lists[a]! : lists[b]!;
      if (w * h <= most) this.keep(w, h);
      if (difference >= 0) a -= 2;
      if (difference <= 0) b -= 2;
    }
    this.count.steps += pairs * STEPS_A_PAIR;
  }

  /** Keeps a rectangle unless a known one is no larger; drops those that are no smaller. */
  private keep(w: number, h: number): void {
    const { found, foundUsed } = this;
    for (let i = 0; i < foundUsed; i += 2) {
      if (found[i]! <= w && found[i + 1]! <= h) return;
    }
    if (!this.hasRoom(w, h)) return;
    let kept = 0;
    for (let i = 0; i < foundUsed; i += 2) {
      if (found[i]! >= w && found[i + 1]! >= h) continue;
      found[kept] = found[i]!;
      found[kept + 1] = found[i + 1]!;
      kept += 2;
    }
    if (kept + 2 > found.length) this.found = grown(found, kept + 2);
    this.found[kept] = w;
    this.found[kept + 1] = h;
    this.foundUsed = kept + 2;
  }

  private hasRoom(w: number, h: number): boolean {
    const { sheetW, sheetH } = this;
    if (w > sheetW || h > sheetH) return false;
    const beside = h * this.gapW[sheetW - w]! + w * this.gapH[sheetH - h]!;
    return w * h - this.area + beside <= this.waste;
  }

  /** What was found, the narrowest and so the highest first. */
  private store(selection: number): void {
    const { found, foundUsed } = this;
    if (foundUsed === 0) {
      this.rough[selection] = NO_RECTANGLE;
      return;
    }
    const start = this.listsUsed;
    const first = start + 1;
    this.lists = grown(this.lists, first + foundUsed);
    const { lists } = this;
    lists[start] = foundUsed / 2;
    let least = this.waste;
    for (let i = 0; i < foundUsed; i += 2) {
      let at = first + i;
      for (; at > first && lists[at - 2]! > found[i]!; at -= 2) {
        lists[at] = lists[at - 2]!;
        lists[at + 1] = lists[at - 1]!;
      }
      lists[at] = found[i]!;
      lists[at + 1] = found[i + 1]!;
      least = Math.min(least, found[i]! * found[i + 1]! - this.area);
    }
    this.start[selection] = start;
    this.listsUsed = first + foundUsed;
    // All are within the sheet: the narrowest one goes into a strip over its height, the lowest into one over its width.
    const last = first + foundUsed - 2;
    this.roughHigh[selection] = this.roughly(lists[first]! * this.reachedH - this.area);
    this.roughWide[selection] = this.roughly(lists[last + 1]! * this.reachedW - this.area);
    this.rough[selection] = this.roughly(least);
  }

  private roughly(waste: number): number {
    return waste > this.waste ? NO_RECTANGLE : 1 + Math.floor(waste * this.roughStep);
  }

  private treeIn(selection: number, area: number, w: number, h: number): PatternNode {
    if (area <= this.mostInTable) {
      const at = this.least(selection, area, 'w', h);
      return this.treeOf(selection, area, this.lists[at]!, this.lists[at + 1]!);
    }
    if (!this.findCut(selection, area, w - this.gapW[w]!, h - this.gapH[h]!))
      throw new Error('a selection that was found to fit does not');
    const { part, axis, at } = this.lastCut;
    const partArea = this.selections.areaOf(part);
    const isBeside = axis === 'w';
    const children = [
      this.treeIn(part, partArea, isBeside ? at : w, isBeside ? h : at),
      this.treeIn(selection - part, area - partArea, isBeside ? w - at : w, isBeside ? h : h - at),
    ];
    return { kind: 'stack', axis, children };
  }

  /** The tree of one of the rectangles in the table. */
  private treeOf(selection: number, area: number, w: number, h: number): PatternNode {
    const { items } = this.problem;
    const parts = new Parts(this.selections);
    parts.first(selection, area / 2);
    if (parts.pieces === 1) {
      const item = parts.digits.indexOf(1);
      return { kind: 'item', item, turned: !(items.w[item] === w && items.h[item] === h) };
    }
    for (let part = parts.next(); part > 0; part = parts.next()) {
      const found = this.pairOf(part, selection - part, w, h);
      if (!found) continue;
      const [a, b, axis] = found;
      const partArea = parts.area;
      const children = [
        this.treeOf(part, partArea, a.w, a.h),
        this.treeOf(selection - part, area - partArea, b.w, b.h),
      ];
      return { kind: 'stack', axis, children };
    }
    throw new Error('a rectangle that was found cannot be parted again');
  }

  private pairOf(a: number, b: number, w: number, h: number) {
    for (const one of this.rectanglesOf(a)) {
      for (const other of this.rectanglesOf(b)) {
        if (one.w + other.w === w && Math.max(one.h, other.h) === h) return [one, other, 'w'] as const;
        if (one.h + other.h === h && Math.max(one.w, other.w) === w) return [one, other, 'h'] as const;
      }
    }
    return null;
  }

  private rectanglesOf(selection: number): { readonly w: number; readonly h: number }[] {
    const rough = this.rough[selection];
    if (rough === 0 || rough === NO_RECTANGLE) return [];
    const start = this.start[selection]!;
    return Array.from({ length: this.lists[start]! }, (_, i) => ({
      w: this.lists[start + 1 + 2 * i]!,
      h: this.lists[start + 2 + 2 * i]!,
    }));
  }
}

function gaps(problem: RectangleProblem, sheet: number, axis: 'w' | 'h'): Int32Array {
  const most = problem.sheets[sheet]![axis];
  const gap = new Int32Array(most + 1);
  if (most > MOST_SIDE) return gap;
  const sides = [
    ...new Set(axisItems(problem, problem.sheets[sheet]!, axis).flatMap(({ sides: own }) => own)),
  ];
  for (let length = 1; length <= most; length++) {
    let least = gap[length - 1]! + 1;
    for (const side of sides) if (side <= length && gap[length - side]! < least) least = gap[length - side]!;
    gap[length] = least;
  }
  return gap;
}
