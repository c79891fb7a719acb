/**
 * A stock group with everything but whole numbers taken away: what the nester and the bounds work on.
 *
 * Axes follow the grain: w along it, h across it. A sheet whose grain runs across its length is turned by a quarter
 * (`transposed`). Trims are taken off, and the kerf is added to every item and to every sheet, after which pieces can
 * be laid edge to edge: n items of size a fit a strip of size U exactly when n·a + (n − 1)·kerf ≤ U, which is
 * n·(a + kerf) ≤ U + kerf. Sizes are in units of `unitUm`, the greatest common divisor of all of them.
 */
export interface RectangleProblem {
  readonly unitUm: number;
  /** The kerf in units; already inside the sizes below. */
  readonly kerf: number;
  readonly items: {
    /** Number of kinds; item i stands for demand i of the group. */
    readonly kinds: number;
    readonly w: Int32Array;
    readonly h: Int32Array;
    readonly count: Int32Array;
    /** 1 where w must run along the grain. */
    readonly grained: Uint8Array;
  };
  readonly sheets: readonly RectangleSheet[];
}

export interface RectangleSheet {
  /** Index into the group's sheets. */
  readonly sheet: number;
  readonly w: number;
  readonly h: number;
  readonly costMinor: number;
  /** How many there are; -1 for any number. */
  readonly count: number;
  /** True when this sheet has no grain: every item may be turned on it. */
  readonly noGrain: boolean;
  /** True when w runs along the sheet's width. */
  readonly transposed: boolean;
  /** Direction of the blade in the first stage, in grain axes; `either` when both are allowed. */
  readonly firstBlade: 'w' | 'h' | 'either';
}
