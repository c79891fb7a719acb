/**
 * Cautions that the program has words for. `saw`, `dust` and `edges` are for every job; `fixing`, `latches` and
 * `overloading` for every vehicle; the others apply where a unit, a fitting or a layout names them.
 */
export const CAUTIONS = [
  'saw',
  'dust',
  'edges',
  'fixing',
  'latches',
  'overloading',
  'seats',
  'ways-out',
  'gas',
  'ventilation',
  'heat',
  'electrics',
  'water',
  'gas-stays',
  'wall-fixing',
] as const;

export type KnownCaution = (typeof CAUTIONS)[number];

/** A caution as people read it: what it is about, and a few plain sentences. */
export interface CautionText {
  readonly title: string;
  readonly points: readonly string[];
}
