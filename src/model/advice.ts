/** A number of an order that may be changed, with the values that it may have. */
export interface ChangeLimit {
  /** What stands before the `=` of a setting: `locker.depth`, or `bed_width` for a choice of the layout. */
  readonly name: string;
  /** Lengths are in mm; a count is a number of shelves and the like. */
  readonly kind: 'length' | 'count';
  readonly now: number;
  /** Rising, without the value that it has now. */
  readonly values: readonly number[];
}

/** One number that advice changes. */
export interface AdvisedChange {
  readonly name: string;
  readonly kind: 'length' | 'count';
  readonly from: number;
  readonly to: number;
}

/** Whole sheets of one board and finish, before and after a change; money in minor units. */
export interface SheetsChange {
  readonly board: string;
  readonly finish: string;
  readonly sheetsBefore: number;
  readonly sheetsAfter: number;
  readonly costBeforeMinor: number;
  readonly costAfterMinor: number;
}

/** What an order takes as it is, or would take after a change: a plan that was replayed. Money in minor units. */
export interface AdvisedPlan {
  readonly sheets: number;
  readonly sheetsCostMinor: number;
  /** No plan for these panels costs less. */
  readonly leastCostMinor: number;
  /** By the rates of the library before VAT, or the material alone where it has none. */
  readonly netMinor: number;
  readonly yield: number;
  readonly proved: boolean;
}

/** A change of one or two numbers after which the sheets cost less, all checks passing. */
export interface Advice {
  readonly changes: readonly AdvisedChange[];
  /** The same as settings of the command line. */
  readonly settings: readonly string[];
  /** Only boards and finishes whose sheets are others. */
  readonly sheets: readonly SheetsChange[];
  readonly plan: AdvisedPlan;
}

/** The smallest panel, or row of matched fronts, of a stock group without which it would take cheaper sheets. */
export interface HoldingPanel {
  readonly board: string;
  readonly finish: string;
  readonly unit: string;
  /** Several for a row of matched fronts. */
  readonly panels: readonly string[];
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly sheetsBefore: number;
  readonly sheetsAfter: number;
  readonly costBeforeMinor: number;
  readonly costAfterMinor: number;
  readonly yieldBefore: number;
  readonly yieldAfter: number;
}

/** What a stock group would take if it were cut from sheets of one size alone. */
export interface OtherSize {
  readonly board: string;
  readonly finish: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** `offered`: in this finish, with a price; `other finish`: the library has the size only in another finish. */
  readonly had: 'offered' | 'other finish';
  readonly sheetsNow: number;
  readonly costNowMinor: number;
  readonly yieldNow: number;
  /** Null where a panel does not fit the size, or the sheets run out. */
  readonly sheets: number | null;
  /** Null without a price. */
  readonly costMinor: number | null;
  readonly yield: number | null;
}

/** What can be told to a designer who wants an order to take less. */
export interface AdviceReport {
  readonly now: AdvisedPlan;
  /** Smallest change first. */
  readonly advice: readonly Advice[];
  readonly panels: readonly HoldingPanel[];
  readonly sizes: readonly OtherSize[];
  /** Nestings that were made, and combinations of values that were ruled out without one by the bound. */
  readonly nestings: number;
  readonly ruledOut: number;
  /** Set when the search ended before everything within the limits was looked at: changes below this were. */
  readonly lookedUpTo: number | null;
}
