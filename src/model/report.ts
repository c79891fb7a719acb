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
