/** What a workshop reckons with in an estimate: how long work takes and what it costs, what is added, and how it charges. */

/** Kinds of work, each with what its time is stated for. */
export const workUnits = {
  sawing: ['sheet', 'metre', 'cut', 'setting', 'turn'],
  edging: ['metre', 'edge', 'set-up'],
  drilling: ['panel', 'hole'],
  'hand work': ['opening', 'outline'],
  assembly: ['unit', 'panel', 'fitting'],
} as const;

export type WorkKind = keyof typeof workUnits;
export const workKinds = Object.keys(workUnits) as WorkKind[];

/** One kind of work: what its hour costs, and how long each of its units takes. */
export interface WorkRate {
  readonly hourMinor: number;
  /** In ms by unit of `workUnits`; only those that are stated. */
  readonly timesMs: ReadonlyMap<string, number>;
  /** Of assembly: the time of single units of furniture, by id, in place of the one for every unit. */
  readonly byUnitMs?: ReadonlyMap<string, number>;
}

/** How material is charged. */
export interface Charges {
  /** `share`: a sheet without the area of its offcuts that are kept. */
  readonly sheets: 'whole' | 'share';
  readonly edging: 'metres' | 'rolls';
  readonly fittings: 'pieces' | 'packs';
}

/** Anything else that an estimate has, such as carriage. */
export interface Extra {
  readonly id: string;
  readonly title: string;
  readonly priceMinor: number;
  /** Once for the order, or for every vehicle or room of it. */
  readonly for: 'order' | 'each';
}

export interface Rates {
  /** Kinds of work that have a rate; others are not charged. */
  readonly work: ReadonlyMap<WorkKind, WorkRate>;
  readonly charges: Charges;
  /** In hundredths of a percent: 15 % is 1500. */
  readonly markUp: { readonly material: number; readonly work: number };
  /** Value added tax in hundredths of a percent; null where none is stated. */
  readonly vat: number | null;
  /** How many days an estimate holds; null where it does not say. */
  readonly validDays: number | null;
  readonly extras: readonly Extra[];
}
