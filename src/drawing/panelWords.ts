import type { Units } from './lengthsInWords.ts';

/** Drawings of single panels with their holes. */
export interface PanelWords {
  /** Over the chapter that they make. */
  readonly heading: string;
  readonly document: string;
  readonly measured: string;
  readonly fromOrigin: (units: Units) => string;
  readonly finished: (size: string) => string;
  readonly count: (count: number) => string;
  readonly faceUp: (face: string) => string;
  readonly through: (diameter: string) => string;
  readonly deep: (diameter: string, depth: string) => string;
  readonly fromBelow: string;
  /** A hole in an edge, `below` the face that is up. */
  readonly inEdge: (diameter: string, depth: string, below: string) => string;
  readonly groove: (depth: string, holds: string) => string;
  /** Where the wall shapes both ends, so that no edge is left to measure from: the edge as it is sawn is so far outside. */
  readonly marksFromSawn: (edge: string, outside: string) => string;
  /** Where there are more distances than figures have room for. */
  readonly noRoom: string;
  readonly title: (job: string, page: number, pages: number) => string;
  readonly description: (panels: readonly string[]) => string;
}
