import type { Um } from './geometry.ts';
import type { MatchPlace, Part } from './part.ts';

/**
 * What is taken off each side of a sheet to leave clean, square edges, kerf included, in µm.
 * A sheet lies with its length along x and its width along y; `left` is at x = 0 and `near` at y = 0.
 */
export interface Trim {
  readonly left: Um;
  readonly right: Um;
  readonly near: Um;
  readonly far: Um;
}

/** What guides the blade: a fence along which the piece is pushed, or a rail that is laid on the piece. */
export type CutGuide = 'fence' | 'rail';

/** What a saw can do, as the nester and the replay must obey it. */
export interface SawRules {
  readonly name: string;
  /** Width of the cut, in whole 0.1 mm, at least 0. */
  readonly kerfUm: Um;
  /** `rip`: the first cuts run along the sheet's length; `crosscut`: across it. */
  readonly firstCut: 'rip' | 'crosscut' | 'either';
  /** How often a piece may be turned by a quarter between its first cut and its last; null for any number. */
  readonly turns: number | null;
  /** The narrowest strip that the saw can hold safely, in µm; narrower parts are refused, narrower waste is fine. */
  readonly smallestPartUm: Um;
  /** The smallest offcut that is worth a place in the rack. */
  readonly leastOffcut: { readonly lengthUm: Um; readonly widthUm: Um };
  /** The longest cut the saw can make, or null. */
  readonly longestCutUm: Um | null;
  /** Greatest cutting height, for sawing equal sheets as a book; null when sheets are cut singly. */
  readonly cuttingHeightUm: Um | null;
  /** What the papers call the settings of a cut after; no cut depends on it. Absent: a fence. */
  readonly guidedBy?: CutGuide;
}

/**
 * One size of sheet, or an offcut, that can be had in one board, finish and thickness, before a saw has trimmed it: from
 * a library's sheets or from a plain list.
 */
export interface SheetSupply {
  readonly id: string;
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: Um;
  /** Along x of the sheet, in whole 0.1 mm. */
  readonly lengthUm: Um;
  readonly widthUm: Um;
  readonly grain: 'length' | 'width' | 'none';
  /** Price of the whole sheet in minor units; null when the list gives none, so that areas are compared. */
  readonly priceMinor: number | null;
  /** How many there are; null when more can be bought. */
  readonly count: number | null;
  readonly kind: 'sheet' | 'offcut';
}

/** One size of sheet, or an offcut, that a stock group may be cut from. */
export interface StockSheet {
  readonly id: string;
  readonly lengthUm: Um;
  readonly widthUm: Um;
  /** Along which side of this sheet the grain runs; `none` for a board without one. */
  readonly grain: 'length' | 'width' | 'none';
  /** Price of the whole sheet in minor units of the order's currency; 0 for an offcut already paid for. */
  readonly priceMinor: number;
  /** How many there are; null when more can be bought. */
  readonly count: number | null;
  readonly kind: 'sheet' | 'offcut';
  readonly trim: Trim;
}

/** A size to be cut and how often. Parts of one size, grain and group share a demand. */
export interface Demand {
  /** Along the grain, in whole 0.1 mm, as µm. */
  readonly lengthUm: Um;
  readonly widthUm: Um;
  readonly count: number;
  readonly grain: 'length' | 'none';
  /**
   * The parts this demand stands for, each with how many. For a matched blank: one entry per part of the run in
   * order, and every blank of `count` is parted into all of them.
   */
  readonly parts: readonly { readonly part: string; readonly count: number }[];
  /** Set when the demand is a blank that is parted into a row of matched parts after it has been cut free. */
  readonly blank?: {
    readonly run: string;
    readonly follows: MatchPlace['follows'];
    /** Sizes of the parts in order, in µm: along `follows` first. The other size of each part is at most the blank's. */
    readonly pieces: readonly { readonly part: string; readonly alongUm: Um; readonly acrossUm: Um }[];
  };
}

/** All parts and sheets of one board, thickness and finish: what can be nested together. */
export interface StockGroup {
  /** Stable: board and finish joined, safe as part of a file name. */
  readonly id: string;
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: Um;
  readonly parts: readonly Part[];
  readonly demands: readonly Demand[];
  readonly sheets: readonly StockSheet[];
  readonly saw: SawRules;
  /** `area` when some sheet has no price: every price is then the sheet's area in mm². Absent means real prices. */
  readonly pricedBy?: 'price' | 'area';
}
