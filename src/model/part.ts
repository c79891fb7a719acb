import type { Um } from './geometry.ts';

/** Edging ids on the four edges of a part; null where the edge stays raw. */
export interface PartEdging {
  /** The two edges that run along the length: at width 0 and at full width. */
  readonly alongLength: readonly [string | null, string | null];
  /** The two edges that run along the width: at length 0 and at full length. */
  readonly alongWidth: readonly [string | null, string | null];
}

/** A place in a row of fronts over which the grain runs on. */
export interface MatchPlace {
  /** Name of the run, unique within the order. */
  readonly run: string;
  /** Position in the run, from 0, in the direction in which the fronts follow each other. */
  readonly position: number;
  /** Whether the fronts follow each other along the part's length or along its width. */
  readonly follows: 'length' | 'width';
}

/** A corner of a panel's shape in its own plane, in µm from the panel's corner at length 0 and width 0. */
export interface OutlinePoint {
  readonly alongLengthUm: Um;
  readonly alongWidthUm: Um;
}

/** An opening as it lies on the sawn part, edging not yet on. */
export interface SawnOpening {
  readonly name: string;
  readonly alongLength: readonly [Um, Um];
  readonly alongWidth: readonly [Um, Um];
  /** Size of the piece that falls out and is kept for another job, squared up; absent where it is waste. */
  readonly kept?: { readonly lengthUm: Um; readonly widthUm: Um };
}

/** What is cut by hand once the saw has done its work, on the sawn part, from its corner at length 0 and width 0. */
export interface HandWork {
  /** What the part is cut to, counter-clockwise with the length to the right; scribing allowance still on. */
  readonly outline?: readonly OutlinePoint[];
  readonly openings: readonly SawnOpening[];
}

/**
 * One kind of rectangular piece to be sawn: what the joiner's cutting list has a line for. The length runs with
 * the grain where the part has one. Plain lists give parts directly; panels of furniture are parts too.
 */
export interface Part {
  /** Unique and stable within a job. */
  readonly id: string;
  /** As printed: `left side`. */
  readonly name: string;
  /** The unit it belongs to, as printed; empty for plain lists without units. */
  readonly unit: string;
  /** Name of the order it belongs to; empty for plain lists. */
  readonly order: string;
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: Um;
  readonly finishedLengthUm: Um;
  readonly finishedWidthUm: Um;
  /** Sawn size: finished less edging plus allowances, in whole 0.1 mm. This is what is nested and printed. */
  readonly cutLengthUm: Um;
  readonly cutWidthUm: Um;
  /** `length`: the grain of the sheet must run along the part's length. `none`: it may be turned. */
  readonly grain: 'length' | 'none';
  readonly edging: PartEdging;
  /** How many of it, at least 1. */
  readonly count: number;
  readonly match?: MatchPlace;
  /** Absent where the saw gives the part its last shape. */
  readonly byHand?: HandWork;
}
