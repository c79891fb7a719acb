/** What one stock group of a design takes; sheets and offcuts over all copies, money in minor units. */
export interface DesignGroup {
  readonly board: string;
  readonly finish: string;
  readonly panels: number;
  readonly sheets: number;
  /** No plan takes fewer sheets. */
  readonly leastSheets: number;
  /** True when no plan can be cheaper. */
  readonly proved: boolean;
  /** Null where some sheet has no price. */
  readonly costMinor: number | null;
  /** Area of the cut panels over that of the whole sheets, 0 to 1. */
  readonly yield: number;
}

/** An order, a variant or a layout with its defaults, worked out to its plan: the figures that designs are compared by. */
export interface Design {
  /** Tells it from the others. */
  readonly name: string;
  readonly title: string;
  /** Titles of its layout and its vehicle or room. */
  readonly layout: string;
  readonly vehicle: string;
  /** ISO 4217; empty where prices have none. */
  readonly currency: string;
  /** Vehicles or rooms that are alike; all figures are for all of them, masses for one. */
  readonly alike: number;
  readonly units: number;
  readonly panels: number;
  readonly groups: readonly DesignGroup[];
  /** Of all groups together. */
  readonly yield: number;
  readonly offcuts: { readonly count: number; readonly areaM2: number };
  /** As to be bought, overlength included. */
  readonly edgingMetres: number;
  /** `estimate`: by the library's rates; `material`: sheets, edging and fittings alone, where it has none. */
  readonly pricedBy: 'estimate' | 'material';
  readonly materialMinor: number;
  readonly workMinor: number;
  /** Before VAT. */
  readonly netMinor: number;
  /** With the appliances whose mass is known. */
  readonly furnitureKg: number;
  readonly leftKg: number;
  readonly frontKg: number;
  /** Payload less furniture, appliances and passengers; null for a room. */
  readonly payloadLeftKg: number | null;
  /** Null where the layout does not say. */
  readonly seats: number | null;
  readonly sleepingPlaces: number | null;
  /** At the saw, equal sheets on each other as the plan says. */
  readonly sawnMetres: number;
  readonly cuts: number;
  readonly fenceSettings: number;
}

/** Figures of designs, in the order in which they are shown. */
export const comparedFigures = [
  'units',
  'panels',
  'sheets',
  'sheets of',
  'yield',
  'offcuts',
  'offcut area',
  'edging',
  'sheets cost',
  'material',
  'work',
  'net',
  'furniture mass',
  'left share',
  'front share',
  'payload left',
  'seats',
  'sleeping places',
  'sawn metres',
  'cuts',
  'fence settings',
] as const;
export type ComparedFigure = (typeof comparedFigures)[number];

/** One figure of all designs. */
export interface ComparedRow {
  readonly figure: ComparedFigure;
  /** Board and finish of `sheets of`; null for all other figures. */
  readonly of: { readonly board: string; readonly finish: string } | null;
  /** Counts, metres, m², kg; shares from 0 to 1; money in minor units. Null where a design has no such figure. */
  readonly values: readonly (number | null)[];
  /** What the figure can be at the least, for sheets; null for all others. */
  readonly least: readonly (number | null)[] | null;
  readonly differs: boolean;
  /** Designs, by place, with the best value where it differs and one is better than another. */
  readonly best: readonly number[];
}

/** Designs with their figures side by side. */
export interface Comparison {
  readonly designs: readonly Design[];
  readonly rows: readonly ComparedRow[];
}
