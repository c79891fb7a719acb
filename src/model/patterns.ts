/**
 * A way to cut one sheet, in the terms of a `RectangleProblem`: what the pattern bound finds and the search may start
 * from. Plain data, safe to send to a worker.
 */
export interface SheetPattern {
  /** Index into the problem's sheets. */
  readonly sheet: number;
  /** Items on the sheet with how many of each; a pattern may hold more of an item than is wanted. */
  readonly counts: readonly { readonly item: number; readonly count: number }[];
  readonly tree: PatternNode;
  /** How many such sheets the linear programme used, in part: 0 or more. */
  readonly use: number;
}

/**
 * A stack lays its children side by side along its axis, from 0 on; w and h as in the problem, kerf already inside
 * the items. Sizes follow from the items: along the axis the sum, across it the largest.
 */
export type PatternNode =
  | {
      readonly kind: 'item';
      readonly item: number /** True when the item's w lies along h. */;
      readonly turned: boolean;
    }
  | { readonly kind: 'stack'; readonly axis: 'w' | 'h'; readonly children: readonly PatternNode[] };
