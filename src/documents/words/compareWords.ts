import type { ComparedFigure } from '../../model/comparison.ts';

/** Words of designs side by side. Figures come in as printed, with their unit. */
export interface CompareWords {
  readonly heading: string;
  /** What was compared and by whose prices. */
  readonly intro: (designs: number) => string;
  readonly designs: string;
  readonly layout: string;
  readonly vehicle: string;
  readonly drawing: string;
  /** What is pressed to see a drawing larger. */
  readonly larger: string;
  readonly table: string;
  readonly figureHead: string;
  readonly figure: Readonly<Record<ComparedFigure, string>>;
  readonly sheetsOf: (board: string, finish: string) => string;
  readonly least: (sheets: string) => string;
  readonly best: string;
  readonly equal: string;
  /** What is reckoned how. */
  readonly notes: readonly string[];
  readonly materialOnly: string;
  readonly plots: string;
  readonly plot: {
    readonly sheets: string;
    readonly leastTick: string;
    readonly yield: string;
    readonly money: (currency: string) => string;
    readonly material: string;
    readonly work: string;
    readonly rest: string;
    readonly mass: string;
    readonly left: string;
    readonly right: string;
  };
  /** Of an order that is tried over a range. */
  readonly sweep: {
    readonly heading: string;
    readonly intro: (parameters: string, points: number) => string;
    readonly points: string;
    /** Sheets, least, price, mass, yield, steps. */
    readonly columns: readonly string[];
    readonly material: (currency: string) => string;
    readonly curveNote: string;
    readonly mapNote: string;
  };
}
