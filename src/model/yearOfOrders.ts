import type { SheetSupply } from './stock.ts';

/** One kind of order of a mix: an order file, perhaps with something otherwise, and how often it comes. */
export interface MixEntry {
  /** Path as written, from the folder of the mix. */
  readonly order: string;
  /** What is otherwise, as on the command line. */
  readonly set: readonly string[];
  /** How many come, in weeks that the seed draws; or the weeks in which they came. */
  readonly comes: { readonly count: number } | { readonly weeks: readonly number[] };
}

/** What orders come within so many weeks, and how they are cut. */
export interface OrderMix {
  readonly title: string;
  readonly weeks: number;
  /** Orders of so many weeks are cut together. */
  readonly cutTogetherWeeks: number;
  /** How long an offcut is kept, and for how many there is room; null for any. */
  readonly keepWeeks: number | null;
  readonly mostOffcuts: number | null;
  readonly entries: readonly MixEntry[];
}

/** An order as it comes: the entry it is of, which of its number, and when. Weeks count from 1. */
export interface ComingOrder {
  readonly entry: number;
  readonly number: number;
  readonly week: number;
}

/** Orders that are cut together at the end of a week. */
export interface CuttingDay {
  readonly week: number;
  readonly orders: readonly ComingOrder[];
}

/** An offcut in the rack, with the week in which it was sawn. */
export interface RackedOffcut {
  readonly week: number;
  readonly supply: SheetSupply;
}

/** What one board and finish took; areas in µm². */
export interface FinishTaken {
  readonly board: string;
  readonly finish: string;
  readonly panels: number;
  /** Whole sheets, offcuts from the rack not among them. */
  readonly sheets: number;
  readonly costMinor: number;
  readonly panelAreaUm2: bigint;
  readonly sheetAreaUm2: bigint;
}

/** What was cut together, and the rack after it. */
export interface CutTogether {
  readonly week: number;
  readonly orders: number;
  readonly taken: readonly FinishTaken[];
  readonly offcutsUsed: number;
  readonly offcutsMade: number;
  /** Given away or thrown away since the last cutting, for want of room or for age. */
  readonly offcutsGone: number;
  readonly offcutsInRack: number;
  readonly rackAreaUm2: bigint;
}

/** One simulated run of all weeks. */
export interface YearRun {
  readonly seed: number;
  readonly cuttings: readonly CutTogether[];
  readonly taken: readonly FinishTaken[];
}

/** The same figure of several runs. */
export interface Spread {
  readonly least: number;
  readonly mean: number;
  readonly most: number;
  /** Standard deviation of the runs as a sample; 0 for one run. */
  readonly deviation: number;
}

/** Figures of all runs together. */
export interface YearSummary {
  readonly orders: number;
  readonly sheets: Spread;
  readonly costMinor: Spread;
  /** Panels over whole sheets that were taken, 0 to 1. */
  readonly yield: Spread;
  readonly offcutsInRack: Spread;
  readonly finishes: readonly {
    readonly board: string;
    readonly finish: string;
    readonly sheets: Spread;
    readonly costMinor: Spread;
    readonly yield: Spread;
  }[];
}
