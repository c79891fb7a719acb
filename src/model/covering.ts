/** A sheet that is known how to cut, as far as choosing among such sheets needs to know it. */
export interface PoolSheet {
  /** Any number by which whoever asks knows it again. */
  readonly id: number;
  /** Index into the problem's sheets. */
  readonly sheet: number;
  readonly counts: readonly { readonly item: number; readonly count: number }[];
}

/** Sheets chosen from a pool so that together they hold at least the pieces wanted. */
export interface PoolChoice {
  readonly chosen: readonly { readonly id: number; readonly copies: number }[];
  readonly costMinor: number;
  /** True when no choice from the pool costs less. */
  readonly cheapest: boolean;
}
