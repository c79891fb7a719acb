import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { axisItems, mayTurn } from './pricesFromFunctions.ts';

/** More selections of pieces than this are not looked at. */
const MOST_SELECTIONS = 500_000;
/** What looking at one way to part a selection, and at one pair of rectangles, counts for, in steps of about a nanosecond. */
const STEPS_A_SPLIT = 6;
const STEPS_A_PAIR = 8;
/** What a way to part a selection counts for with its pairs, when it is foretold whether the work will do. */
const LIKELY_STEPS_A_SPLIT = 40;
/** Sides of more units than this are not looked at for gaps. */
const MOST_SIDE = 400_000;
/** Mixes of more sheets than this are not tried. */
const MOST_SHEETS_TRIED = 4;

/**
 * All guillotine layouts of few pieces, by dynamic programming over selections of them: a selection lies in a rectangle
 * when it can be parted into two selections that lie in rectangles side by side. Of each selection the rectangles are
 * kept that are not larger both ways than another, fit a sheet, and waste no more than all sheets of the mix can waste
 * together; to what a rectangle wastes in itself counts what pieces beside it on its sheet can at best leave open, since
 * sums of their sides do not reach every length. A selection is a number in mixed radix, a digit for each kind of item.
 */
export class EverySplit {
  /** Work done, in steps of about a nanosecond. */
  steps = 0;

  private readonly problem: RectangleProblem;
  /** Kinds of sheets of the mix, one entry a sheet. */
  private readonly sheets: readonly number[];
  private readonly mostSteps: number;
  private readonly strides: Int32Array;
  private readonly selections: number;
  private readonly parts: Parts;
  /** Rectangles of selection s: `count[s]` of them from index `start[s]` on. */
  private readonly start: Int32Array;
  private readonly count: Int32Array;
  /** Of the rectangles of a selection, what the tightest of them wastes in itself. */
  private readonly leastWaste: Float64Array;
  private w = new Int32Array(1 << 14);
  private h = new Int32Array(1 << 14);
  private used = 0;
  private readonly waste: number;
  /** Each sheet of the mix once. */
  private readonly kinds: readonly KindOfSheet[];
  private readonly mostW: number;
  private readonly mostH: number;
  private readonly turnable: readonly boolean[];
  private foundW = new Int32Array(64);
  private foundH = new Int32Array(64);
  private found = 0;
  private area = 0;

  /**
   * Null when there are too many selections, too many sheets or too little work allowed for them (`steps` is then
   * lost). `mix`: sheets of each kind.
   */
  static make(problem: RectangleProblem, mix: readonly number[], mostSteps: number): EverySplit | null {
    const sheets = mix.flatMap((n, sheet) =>
      new Array<number>(Math.min(n, MOST_SHEETS_TRIED + 1)).fill(sheet),
    );
    const selections = selectionsOf(problem);
    if (sheets.length > MOST_SHEETS_TRIED || sheets.length === 0 || selections > MOST_SELECTIONS) return null;
    if (splitsOf(problem) * LIKELY_STEPS_A_SPLIT > mostSteps) return null;
    const table = new EverySplit(problem, sheets, selections, mostSteps);
    return table.fill() ? table : null;
  }

  private constructor(
    problem: RectangleProblem,
    sheets: readonly number[],
    selections: number,
    mostSteps: number,
  ) {
    const { items } = problem;
    this.problem = problem;
    this.sheets = sheets;
    this.selections = selections;
    this.mostSteps = mostSteps;
    this.strides = new Int32Array(items.kinds);
    let stride = 1;
    let total = 0;
    for (let item = 0; item < items.kinds; item++) {
      this.strides[item] = stride;
      stride *= items.count[item]! + 1;
      total += items.w[item]! * items.h[item]! * items.count[item]!;
    }
    this.start = new Int32Array(selections);
    this.count = new Int32Array(selections);
    this.leastWaste = new Float64Array(selections);
    this.parts = new Parts(items.count, this.strides);
    const of = sheets.map((sheet) => problem.sheets[sheet]!);
    this.waste = of.reduce((sum, sheet) => sum + sheet.w * sheet.h, 0) - total;
    this.mostW = Math.max(...of.map((sheet) => sheet.w));
    this.mostH = Math.max(...of.map((sheet) => sheet.h));
    this.kinds = [...new Set(sheets)].map((sheet) => {
      const { w, h } = problem.sheets[sheet]!;
      return { w, h, gapW: gaps(problem, sheet, 'w'), gapH: gaps(problem, sheet, 'h') };
    });
    // Where one of the sheets has no grain, what may turn there is let turn everywhere: at worst too much is held to fit.
    this.turnable = Array.from({ length: items.kinds }, (_, item) =>
      of.some((sheet) => mayTurn(problem, item, sheet)),
    );
  }

  /**
   * The selections that lie on the sheets of the mix, one for each sheet; null when no layout holds everything, or the
   * work is spent (`isSpent`).
   */
  divide(): readonly { readonly sheet: number; readonly selection: number }[] | null {
    if (this.waste < 0) return null;
    const dead = this.sheets.map(() => new Uint8Array(this.selections));
    const partsOf = this.sheets.map(() => new Parts(this.problem.items.count, this.strides));
    const chosen: number[] = [];
    const visit = (index: number, left: number): boolean => {
      const sheet = this.sheets[index]!;
      if (index === this.sheets.length - 1) {
        if (!this.fits(left, sheet)) return false;
        chosen[index] = left;
        return true;
      }
      if (dead[index]![left] === 1) return false;
      const parts = partsOf[index]!;
      for (let part = parts.first(left); part >= 0; part = parts.next()) {
        this.steps += STEPS_A_SPLIT;
        if (this.steps > this.mostSteps) return false;
        if (!this.fits(part, sheet)) continue;
        if (!visit(index + 1, left - part)) continue;
        chosen[index] = part;
        return true;
      }
      dead[index]![left] = 1;
      return false;
    };
    if (!visit(0, this.selections - 1)) return null;
    return this.sheets.map((sheet, index) => ({ sheet, selection: chosen[index]! }));
  }

  /** False where pieces were let turn on a sheet on which they must not, since they may on another of the mix. */
  get isExact(): boolean {
    const { problem } = this;
    const exact = (item: number, sheet: number) =>
      mayTurn(problem, item, problem.sheets[sheet]!) === this.turnable[item];
    return this.sheets.every((sheet) => this.turnable.every((_, item) => exact(item, sheet)));
  }

  get isSpent(): boolean {
    return this.steps > this.mostSteps;
  }

  /** A tree of the selection that fits the sheet, which it must; null for the empty selection. */
  tree(selection: number, sheet: number): PatternNode | null {
    if (selection === 0) return null;
    const { w, h } = this.problem.sheets[sheet]!;
    for (let i = 0; i < this.count[selection]!; i++) {
      const at = this.start[selection]! + i;
      if (this.w[at]! <= w && this.h[at]! <= h) return this.treeOf(selection, this.w[at]!, this.h[at]!);
    }
    return null;
  }

  private fits(selection: number, sheet: number): boolean {
    if (selection === 0) return true;
    const { w, h } = this.problem.sheets[sheet]!;
    const end = this.start[selection]! + this.count[selection]!;
    for (let at = this.start[selection]!; at < end; at++) {
      if (this.w[at]! <= w && this.h[at]! <= h) return true;
    }
    return false;
  }

  private fill(): boolean {
    if (this.waste < 0) return true;
    for (let selection = 1; selection < this.selections; selection++) {
      this.fillOne(selection);
      if (this.steps > this.mostSteps) return false;
    }
    return true;
  }

  private fillOne(selection: number): void {
    const { items } = this.problem;
    this.start[selection] = this.used;
    this.found = 0;
    this.area = 0;
    let pieces = 0;
    let last = 0;
    this.parts.first(selection);
    for (let item = 0; item < items.kinds; item++) {
      const n = this.parts.digits[item]!;
      if (n === 0) continue;
      this.area += n * items.w[item]! * items.h[item]!;
      pieces += n;
      last = item;
    }
    if (this.area > this.mostW * this.mostH) return;
    if (pieces === 1) {
      this.keep(items.w[last]!, items.h[last]!);
      if (this.turnable[last]) this.keep(items.h[last]!, items.w[last]!);
    } else this.joinParts(selection);
    this.store(selection);
  }

  /** All ways to part a selection in two, each once: parts come in rising order, the smaller of two first. */
  private joinParts(selection: number): void {
    const { parts, count, leastWaste, waste } = this;
    let ways = 0;
    for (let part = parts.next(); part > 0 && part <= selection - part; part = parts.next()) {
      ways++;
      const rest = selection - part;
      // What both waste at least is wasted by the two together as well.
      if (count[part] === 0 || count[rest] === 0 || leastWaste[part]! + leastWaste[rest]! > waste) continue;
      this.join(part, rest, false);
      this.join(part, rest, true);
    }
    this.steps += ways * STEPS_A_SPLIT;
  }

  /**
   * The rectangles of two selections side by side, or one above the other. Those of each are in order, wider and lower ones
   * later. Beginning with the shortest of both along the way they are joined, what is longer across it gives way to the
   * next one, so that each length across is met with the least along.
   */
  private join(a: number, b: number, isAbove: boolean): void {
    const along = isAbove ? this.h : this.w;
    const across = isAbove ? this.w : this.h;
    const mostAlong = isAbove ? this.mostH : this.mostW;
    const most = this.area + this.waste;
    const way = isAbove ? -1 : 1;
    let leftA = this.count[a]!;
    let leftB = this.count[b]!;
    let i = this.start[a]! + (isAbove ? leftA - 1 : 0);
    let j = this.start[b]! + (isAbove ? leftB - 1 : 0);
    const before = leftA + leftB;
    while (leftA > 0 && leftB > 0) {
      const long = along[i]! + along[j]!;
      if (long > mostAlong) break;
      const acrossA = across[i]!;
      const acrossB = across[j]!;
      const broad = Math.max(acrossA, acrossB);
      if (long * broad <= most) {
        if (isAbove) this.keep(broad, long);
        else this.keep(long, broad);
      }
      if (acrossA >= acrossB) {
        i += way;
        leftA--;
      }
      if (acrossB >= acrossA) {
        j += way;
        leftB--;
      }
    }
    this.steps += (before - leftA - leftB) * STEPS_A_PAIR;
  }

  /** Keeps a rectangle unless a known one is no larger; drops those that are no smaller. */
  private keep(w: number, h: number): void {
    const { foundW, foundH } = this;
    for (let i = 0; i < this.found; i++) if (foundW[i]! <= w && foundH[i]! <= h) return;
    if (!this.kinds.some((kind) => this.hasRoom(kind, w, h))) return;
    let kept = 0;
    for (let i = 0; i < this.found; i++) {
      if (foundW[i]! >= w && foundH[i]! >= h) continue;
      foundW[kept] = foundW[i]!;
      foundH[kept++] = foundH[i]!;
    }
    if (kept === foundW.length) {
      this.foundW = grown(foundW);
      this.foundH = grown(foundH);
    }
    this.foundW[kept] = w;
    this.foundH[kept] = h;
    this.found = kept + 1;
  }

  private hasRoom({ w: sheetW, h: sheetH, gapW, gapH }: KindOfSheet, w: number, h: number): boolean {
    if (w > sheetW || h > sheetH) return false;
    const beside = h * gapW[sheetW - w]! + w * gapH[sheetH - h]!;
    return w * h - this.area + beside <= this.waste;
  }

  /** What was found, the narrowest and so the highest first. */
  private store(selection: number): void {
    while (this.used + this.found > this.w.length) {
      this.w = grown(this.w);
      this.h = grown(this.h);
    }
    const { w, h, foundW, foundH, used } = this;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.found; i++) {
      let at = used + i;
      for (; at > used && w[at - 1]! > foundW[i]!; at--) {
        w[at] = w[at - 1]!;
        h[at] = h[at - 1]!;
      }
      w[at] = foundW[i]!;
      h[at] = foundH[i]!;
      least = Math.min(least, foundW[i]! * foundH[i]! - this.area);
    }
    this.used += this.found;
    this.count[selection] = this.found;
    this.leastWaste[selection] = least;
  }

  private treeOf(selection: number, w: number, h: number): PatternNode {
    const { items } = this.problem;
    this.parts.first(selection);
    const single = this.strides.indexOf(selection);
    if (single >= 0 && items.count[single]! > 0) {
      return { kind: 'item', item: single, turned: !(items.w[single] === w && items.h[single] === h) };
    }
    for (let part = this.parts.next(); part > 0; part = this.parts.next()) {
      const found = this.partsOf(part, selection - part, w, h);
      if (found) {
        const [a, b, axis] = found;
        const children = [this.treeOf(part, a.w, a.h), this.treeOf(selection - part, b.w, b.h)];
        return { kind: 'stack', axis, children };
      }
    }
    throw new Error('a rectangle that was found cannot be parted again');
  }

  private partsOf(a: number, b: number, w: number, h: number) {
    for (let i = 0; i < this.count[a]!; i++) {
      for (let j = 0; j < this.count[b]!; j++) {
        const of = (start: number) => ({ w: this.w[start]!, h: this.h[start]! });
        const one = of(this.start[a]! + i);
        const other = of(this.start[b]! + j);
        if (one.w + other.w === w && Math.max(one.h, other.h) === h) return [one, other, 'w'] as const;
        if (one.h + other.h === h && Math.max(one.w, other.w) === w) return [one, other, 'h'] as const;
      }
    }
    return null;
  }
}

interface KindOfSheet {
  readonly w: number;
  readonly h: number;
  /** By a length along the axis: what of it no sum of sides can cover. */
  readonly gapW: Int32Array;
  readonly gapH: Int32Array;
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

/** The selections inside another, in rising order: a counter that only counts as far as each digit of the other. */
class Parts {
  readonly digits: Int32Array;
  private readonly part: Int32Array;
  private readonly count: Int32Array;
  private readonly strides: Int32Array;
  private value = 0;

  constructor(count: Int32Array, strides: Int32Array) {
    this.count = count;
    this.strides = strides;
    this.digits = new Int32Array(count.length);
    this.part = new Int32Array(count.length);
  }

  /** Begins with the empty part, which is 0. */
  first(selection: number): number {
    let rest = selection;
    for (let item = 0; item < this.count.length; item++) {
      const radix = this.count[item]! + 1;
      this.digits[item] = rest % radix;
      rest = Math.floor(rest / radix);
    }
    this.part.fill(0);
    this.value = 0;
    return 0;
  }

  /** The next part; −1 after the whole. */
  next(): number {
    const { digits, part, strides } = this;
    for (let item = 0; item < digits.length; item++) {
      if (part[item]! < digits[item]!) {
        part[item]! += 1;
        this.value += strides[item]!;
        return this.value;
      }
      this.value -= part[item]! * strides[item]!;
      part[item] = 0;
    }
    return -1;
  }
}

function grown(list: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * list.length);
  larger.set(list);
  return larger;
}

/** How many ways there are to part any selection in two. */
function splitsOf({ items }: RectangleProblem): number {
  return items.count.reduce((product, count) => (product * (count + 1) * (count + 2)) / 2, 1) / 2;
}

/** How many selections of pieces there are, pieces of a kind being alike. */
function selectionsOf({ items }: RectangleProblem): number {
  return items.count.reduce((product, count) => product * (count + 1), 1);
}
