import type { Um } from './geometry.ts';

/**
 * A piece of a sheet, with its size along the sheet's x (its length) and y (its width), in µm.
 *
 * A `stack` is cut into its children side by side along `axis`, each child as wide across as the stack, with one
 * kerf between neighbours. What is left after the last child is at most one kerf and goes to dust (a scrape cut):
 *
 *     0 ≤ size along axis − (sum of children + kerf · (children − 1)) ≤ kerf
 *
 *     axis x:  ┌────┬─┬──────┬─┬───┐
 *              │ a  │k│  b   │k│ c │
 *              └────┴─┴──────┴─┴───┘
 *
 * A `demand` fits its piece exactly. A `spare` is cut free too and is kept as an offcut or thrown away.
 */
export type NestPiece =
  | {
      readonly kind: 'stack';
      readonly axis: 'x' | 'y';
      readonly xUm: Um;
      readonly yUm: Um;
      readonly children: readonly NestPiece[];
    }
  | {
      readonly kind: 'demand';
      readonly xUm: Um;
      readonly yUm: Um;
      /** Index into the group's demands. */
      readonly demand: number;
      /** Whether the demand's length lies along the sheet's x or its y. */
      readonly lengthAlong: 'x' | 'y';
    }
  | { readonly kind: 'spare'; readonly xUm: Um; readonly yUm: Um; readonly use: 'offcut' | 'waste' };

/** One way to cut a sheet, and how many sheets are cut so. */
export interface NestedSheet {
  /** Index into the group's sheets. */
  readonly sheet: number;
  readonly copies: number;
  /** What is left of the sheet after its trims, in the sheet's axes. */
  readonly root: NestPiece;
}

/**
 * What is needed to check a lower bound again without the search: `recheckBound` in `src/basics/` derives it.
 *
 * Each method gives a price per piece of every demand and, for every kind of sheet, the most that pieces on it can be
 * worth; the bound is the least number, or cost, of sheets whose worth reaches that of all the pieces.
 *
 * - area: the price is the area.
 * - dual feasible function: `function` with `parameter` along the grain and `across` across it, scaled to the size of
 *   the sheet of index `sheet` in the group; the price is their product.
 * - pattern prices: `prices[d] / denominator` per piece of demand d, and no sheet of kind s can hold pieces worth more
 *   than `sheetValues[s] / denominator`, as the best guillotine pattern shows. Of the demands in `limited` a pattern
 *   has no more pieces than are wanted; of the others it may have any number.
 */
export type PriceCertificate =
  | { readonly method: 'area' }
  | {
      readonly method: 'dual feasible function';
      readonly function: string;
      readonly parameter: number;
      readonly across: { readonly function: string; readonly parameter: number };
      readonly sheet: number;
    }
  | {
      readonly method: 'pattern prices';
      readonly denominator: number;
      readonly prices: readonly number[];
      readonly sheetValues: readonly number[];
      /** Indices of demands, in rising order. */
      readonly limited: readonly number[];
      /** Grid in 0.1 mm to which pieces and sheets were rounded down; 1 when nothing was rounded. */
      readonly grid: number;
    };

/**
 * One set of prices, or several `together`: a plan must meet each of them, so that with several sizes of sheet the
 * cheapest mix of whole sheets that meets all can cost more than one that meets any single one. `tooFew`: mixes, as
 * numbers of sheets by kind, on which no way to part the few pieces there are finds room for all.
 */
export type Certificate =
  | PriceCertificate
  | {
      readonly method: 'together';
      readonly parts: readonly PriceCertificate[];
      readonly tooFew?: readonly (readonly number[])[] | undefined;
    };

export interface Bound {
  /** No plan uses fewer sheets than this. */
  readonly sheets: number;
  /** No plan costs less than this, in minor units. */
  readonly costMinor: number;
  readonly certificate: Certificate;
}

/** Why a group could not be nested; sizes and counts so that a person can be told. */
export type NestFailure =
  | { readonly kind: 'too large'; readonly demand: number }
  /** The demand would fit a sheet, but only with a cut longer than the saw's longest, trims counted. */
  | { readonly kind: 'cut too long'; readonly demand: number }
  | {
      readonly kind: 'sheets run out';
      readonly unplaced: readonly { readonly demand: number; readonly count: number }[];
    };

export interface Nest {
  readonly sheets: readonly NestedSheet[];
  readonly costMinor: number;
  readonly bound: Bound;
  /** True when the cost equals the bound: no plan can be cheaper. */
  readonly proved: boolean;
  /** Work done by the search, in moves: the same for the same input, seed and work limit. */
  readonly moves: number;
}

export type NestOutcome =
  | { readonly ok: true; readonly nest: Nest }
  | { readonly ok: false; readonly failure: NestFailure };

/** How long to search. The work limit decides the result; the clock, if given, may only stop earlier. */
/**
 * Of two long searches for one group one may look for plans and the other work on the bound first, with all effort; of
 * two short ones, which take as long as the bound by patterns, one may leave it out and the other do nothing else.
 */
export type Emphasis = 'plan' | 'bound' | 'plan alone' | 'bound alone';

export interface NestOptions {
  /** 32-bit unsigned. */
  readonly seed: number;
  /** Greatest number of search moves; the result for a given limit is the same on every machine. */
  readonly workLimit: number;
  /**
   * `as found`: neither offcuts nor fence settings are bettered, as for a part of a plan that goes on. `tidy if proved`:
   * they are where nothing follows, for a plan that is proved best; others are left as found, with the same moves.
   */
  readonly finish?: 'tidy' | 'as found' | 'tidy if proved';
  /** What this search has to do for a group that others search as well; without it all is done in turn. */
  readonly emphasis?: Emphasis;
  /** Asked now and then: true ends the search with the best plan so far. Makes results depend on the clock. */
  readonly stop?: () => boolean;
  readonly progress?: (state: {
    sheets: number;
    costMinor: number;
    boundSheets: number;
    boundCostMinor: number;
    moves: number;
  }) => void;
}
