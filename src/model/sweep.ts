import type { Design } from './comparison.ts';

/** What became of one way to build: its figures, or why it cannot be built, in a sentence. */
export type WorkedOut =
  | { readonly ok: true; readonly design: Design }
  | { readonly ok: false; readonly refused: string };

/** How the sheets of a point differ from those of a point before it. */
export interface SheetStep {
  /** Sheets more; negative where some fall away. */
  readonly sheets: number;
  readonly board: string;
  readonly finish: string;
}

/** One way of a sweep: the value of each parameter as written, and what it came to. */
export interface SweepPoint {
  readonly values: readonly string[];
  readonly result: WorkedOut;
  /** Along the last parameter, from the nearest point before it that can be built; empty where there is none, or no change. */
  readonly steps: readonly SheetStep[];
  /** The same along the first of two parameters; empty where there is only one. */
  readonly stepsAcross: readonly SheetStep[];
}

/** An order tried with one or two parameters over their values; the last runs fastest. */
export interface Sweep {
  readonly parameters: readonly string[];
  readonly points: readonly SweepPoint[];
}
