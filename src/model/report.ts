import type { Um } from './geometry.ts';

/** What replaying one group found, in µm² and counts, over all copies of all sheets. */
export interface ReplayGroupReport {
  readonly group: string;
  readonly sheets: number;
  readonly panels: number;
  readonly cuts: number;
  /** Metres sawn, trims included. */
  readonly sawnUm: Um;
  readonly areas: {
    readonly sheets: bigint;
    readonly panels: bigint;
    readonly offcuts: bigint;
    readonly kerf: bigint;
    readonly trim: bigint;
    readonly waste: bigint;
  };
}

/** What sawing one group takes and gives, over all copies of all sheets. */
export interface GroupMeasure {
  readonly group: string;
  readonly sheets: number;
  readonly panels: number;
  /** Every pass of the blade, trims and partings of matched blanks included. */
  readonly cuts: number;
  /** Length of all cuts together, trims included. */
  readonly sawnUm: Um;
  /** How often the fence is set: equal settings that follow each other within a sheet count once, trims not at all. */
  readonly fenceSettings: number;
  /** The greatest number of quarter turns that any piece needs between its first cut and its last. */
  readonly turns: number;
  /** Sheets that differ in size or in a cut; those that differ in the names of their panels only count once. */
  readonly differentSheets: number;
  /**
   * The same work with equal sheets sawn on each other, as the plan says: how often a stack or a single sheet goes
   * through the saw, how many of these are stacks, and the passes, metres and settings that this takes.
   */
  readonly sawings: {
    readonly count: number;
    readonly stacks: number;
    readonly cuts: number;
    readonly sawnUm: Um;
    readonly fenceSettings: number;
    /** How often a piece is turned by a quarter before it is cut, trims not counted. */
    readonly pieceTurns: number;
  };
  readonly heavy: {
    /** Passes of the blade, trims included, through pieces larger than half of their sheet. */
    readonly cuts: number;
    /** The largest piece that is still in hand once its sheet has been parted for the first time. */
    readonly largestUm2: bigint;
  };
  readonly panelAreaUm2: bigint;
  /** Whole sheets as bought or taken from the rack, before trimming. */
  readonly sheetAreaUm2: bigint;
  /** Area of the cut panels over the area of the whole sheets, 0 to 1. */
  readonly yield: number;
  /** Pieces that go back to the rack, in the order of the sheets; sizes along the sheet's length and width. */
  readonly offcuts: readonly {
    readonly sheet: number;
    readonly piece: string;
    readonly lengthUm: Um;
    readonly widthUm: Um;
    /** Along which of its two sizes the grain runs. */
    readonly grain: 'length' | 'width' | 'none';
    readonly count: number;
  }[];
}
