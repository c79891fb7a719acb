import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { grown } from './grown.ts';
import { KnownFailures } from './knownFailures.ts';
import { Parts, Selections } from './selections.ts';
import { SplitTable } from './splitTable.ts';
import { StepCount } from './stepCount.ts';

/** More selections of pieces than this are not looked at: a table takes seven bytes for each. */
const MOST_SELECTIONS = 8_000_000;
/** Steps of about a nanosecond that must be allowed for each selection; and what looking at one counts for. */
const STEPS_A_SELECTION = 8;
/** Mixes of more sheets than this are not tried. */
const MOST_SHEETS_TRIED = 4;
/** Steps in which waste is told apart where selections are put in the order of it. */
const WASTE_STEPS = 1 << 20;

/** What lies on one sheet of a mix. */
export interface SheetSelection {
  readonly sheet: number;
  readonly selection: number;
}

/**
 * Whether a mix of few sheets holds few pieces, with every way to part them: of each sheet but the last all selections
 * are tried that lie on it, and waste no more than the mix has too much. Smaller sheets come first, and on the first one
 * selections that waste least: the tables of the larger ones then know that so much less may be wasted on them.
 */
export class EverySplit {
  private readonly problem: RectangleProblem;
  private readonly selections: Selections;
  private readonly count: StepCount;
  /** Kinds of sheets of the mix, one entry a sheet, the smallest first. */
  private readonly order: readonly number[];
  private readonly areas: readonly number[];
  /** Area that may stay unused on all sheets together. */
  private readonly waste: number;
  private readonly tables = new Map<number, SplitTable>();
  private readonly leastWaste = new Map<number, number>();
  private readonly failures: readonly KnownFailures[];
  private readonly parts: readonly Parts[];

  /** Whether there are few enough selections of pieces. */
  static suits(problem: RectangleProblem): boolean {
    return new Selections(problem).count <= MOST_SELECTIONS;
  }

  /**
   * Null when there are too many selections, too many sheets or too little work allowed for them. `mix`: sheets of each
   * kind; `mostSteps`: work, in steps of about a nanosecond; `stop`: asked now and then, true ends the work.
   */
  static make(
    problem: RectangleProblem,
    mix: readonly number[],
    mostSteps: number,
    stop: () => boolean = () => false,
  ): EverySplit | null {
    const sheets = mix.flatMap((n, sheet) =>
      new Array<number>(Math.min(n, MOST_SHEETS_TRIED + 1)).fill(sheet),
    );
    if (sheets.length > MOST_SHEETS_TRIED || sheets.length === 0) return null;
    const selections = new Selections(problem);
    if (selections.count > MOST_SELECTIONS || selections.count * STEPS_A_SELECTION > mostSteps) return null;
    return new EverySplit(problem, selections, sheets, new StepCount(mostSteps, stop));
  }

  private constructor(
    problem: RectangleProblem,
    selections: Selections,
    sheets: readonly number[],
    count: StepCount,
  ) {
    const areaOf = (sheet: number) => problem.sheets[sheet]!.w * problem.sheets[sheet]!.h;
    this.problem = problem;
    this.selections = selections;
    this.count = count;
    this.order = sheets.toSorted((a, b) => areaOf(a) - areaOf(b) || a - b);
    this.areas = this.order.map(areaOf);
    this.waste = this.areas.reduce((sum, area) => sum + area, 0) - selections.area;
    this.failures = this.order.map(() => new KnownFailures());
    this.parts = this.order.map(() => new Parts(selections));
  }

  /** Work done, in steps of about a nanosecond. */
  get steps(): number {
    return this.count.steps;
  }

  get isSpent(): boolean {
    return this.count.isSpent;
  }

  /**
   * The selections that lie on the sheets of the mix, one for each sheet; null when no layout holds everything, or the
   * work is spent (`isSpent`).
   */
  divide(): readonly SheetSelection[] | null {
    const { selections } = this;
    const chosen: SheetSelection[] = [];
    const all = selections.count - 1;
    if (this.waste < 0 || !this.place(0, all, selections.area, chosen)) return null;
    return chosen;
  }

  /** A tree of the selection, which must have been found to lie on the sheet; null for the empty selection. */
  tree(selection: number, sheet: number): PatternNode | null {
    return this.count.free(() => this.tableOf(sheet).tree(selection));
  }

  /** Puts what is left on the sheets from `index` on; false when it does not fit. */
  private place(index: number, left: number, area: number, chosen: SheetSelection[]): boolean {
    const sheet = this.order[index]!;
    if (index === this.order.length - 1) {
      if (area > this.areas[index]! || !this.tableOf(sheet).fitsSheet(left, area)) return false;
      chosen[index] = { sheet, selection: left };
      return true;
    }
    const failures = this.failures[index]!;
    if (failures.has(left, 0, 0)) return false;
    const isPlaced = index === 0 ? this.placeInOrder(chosen) : this.placeAny(index, left, area, chosen);
    if (!isPlaced && !this.isSpent) failures.add(left, 0, 0);
    return isPlaced;
  }

  private placeAny(index: number, left: number, area: number, chosen: SheetSelection[]): boolean {
    const least = this.leastArea(index, area);
    const parts = this.parts[index]!;
    for (let part = parts.first(left, this.areas[index]!); part >= 0; part = parts.next()) {
      this.count.steps += STEPS_A_SELECTION;
      if (this.isSpent) return false;
      if (parts.area < least) continue;
      if (this.placeOne(index, left, area, part, parts.area, chosen)) return true;
    }
    return false;
  }

  private placeInOrder(chosen: SheetSelection[]): boolean {
    const { selections } = this;
    const all = selections.count - 1;
    for (const part of this.byWaste(0, this.leastArea(0, selections.area))) {
      if (this.isSpent) return false;
      if (this.placeOne(0, all, selections.area, part, selections.areaOf(part), chosen)) return true;
    }
    return false;
  }

  private placeOne(
    index: number,
    left: number,
    area: number,
    part: number,
    partArea: number,
    chosen: SheetSelection[],
  ): boolean {
    const sheet = this.order[index]!;
    if (!this.tableOf(sheet).fitsSheet(part, partArea)) return false;
    if (!this.place(index + 1, left - part, area - partArea, chosen)) return false;
    chosen[index] = { sheet, selection: part };
    return true;
  }

  /** What must lie on a sheet at least: what the later ones cannot hold, and of several alike the first holds most. */
  private leastArea(index: number, area: number): number {
    const later = this.areas.slice(index + 1).reduce((sum, of) => sum + of, 0);
    const isLast = this.order[index] === this.order.at(-1);
    return isLast ? Math.max(area - later, area / (this.order.length - index)) : area - later;
  }

  /** Selections of at least that area that may lie on the sheet by their area, those that waste least of it first. */
  private byWaste(index: number, leastArea: number): Float64Array {
    const { selections } = this;
    const sheetArea = this.areas[index]!;
    const step = WASTE_STEPS / Math.max(1, sheetArea - leastArea);
    let list = new Float64Array(1 << 10);
    let used = 0;
    const parts = new Parts(selections);
    for (let part = parts.first(selections.count - 1, sheetArea); part >= 0; part = parts.next()) {
      this.count.steps += STEPS_A_SELECTION;
      if (parts.area < leastArea) continue;
      list = grown(list, used + 1);
      // Sorted as numbers: rough steps of waste, then selections.
      list[used++] = Math.floor((sheetArea - parts.area) * step) * selections.count + part;
    }
    this.count.steps += used * STEPS_A_SELECTION;
    const sorted = list.subarray(0, used).sort();
    for (let i = 0; i < used; i++) sorted[i] = sorted[i]! % selections.count;
    return sorted;
  }

  private tableOf(sheet: number): SplitTable {
    const known = this.tables.get(sheet);
    if (known) return known;
    let waste = this.waste;
    for (let index = 0; this.order[index] !== sheet; index++) waste -= this.leastWasteOf(index);
    const table = new SplitTable(this.problem, this.selections, sheet, Math.max(0, waste), this.count);
    this.tables.set(sheet, table);
    return table;
  }

  /** Less than this cannot be wasted on a sheet, as far as that can be told of those that the mix allows. */
  private leastWasteOf(index: number): number {
    const sheet = this.order[index]!;
    const known = this.leastWaste.get(sheet);
    if (known !== undefined) return known;
    const table = this.tableOf(sheet);
    const sheetArea = this.areas[index]!;
    let least = this.waste;
    for (const selection of this.byWaste(index, sheetArea - this.waste)) {
      const area = this.selections.areaOf(selection);
      if (!this.isSpent && !table.fitsSheet(selection, area)) continue;
      // The order is a rough one: others may waste less by up to a step.
      least = Math.max(0, sheetArea - area - Math.ceil(this.waste / WASTE_STEPS));
      break;
    }
    this.leastWaste.set(sheet, least);
    return least;
  }
}
