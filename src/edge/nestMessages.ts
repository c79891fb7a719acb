import type { Emphasis, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';

/** Asks a nesting thread for one stock group. Plain data, so that it can be copied into any thread. */
export interface NestRequest {
  /** Index of the group in the job; answers carry it back. */
  readonly index: number;
  readonly group: StockGroup;
  readonly seed: number;
  readonly workLimit: number;
  /** As in `NestOptions`. */
  readonly emphasis?: Emphasis;
  /** When given, a thread that has a clock ends the search after so long with the best plan so far. */
  readonly seconds?: number;
}

/** How far the search for one group has come. */
export interface NestProgress {
  readonly sheets: number;
  readonly costMinor: number;
  readonly boundSheets: number;
  readonly boundCostMinor: number;
  readonly moves: number;
}

/** What a nesting thread says. `fault` is a fault of the program, with what it threw. */
export type NestReply =
  | { readonly kind: 'ready' }
  | { readonly kind: 'progress'; readonly index: number; readonly state: NestProgress }
  | { readonly kind: 'done'; readonly index: number; readonly outcome: NestOutcome }
  | { readonly kind: 'fault'; readonly index: number; readonly message: string; readonly stack: string };
