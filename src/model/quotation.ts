import type { Um } from './geometry.ts';
import type { Charges, WorkKind } from './rates.ts';

/** What an order was worked out to, as far as an estimate needs it; all figures are for the whole order. */
export interface QuoteFacts {
  /** Sheets as nested, a row a stock group and size. */
  readonly sheets: readonly {
    readonly group: string;
    readonly stock: string;
    readonly board: string;
    readonly finish: string;
    readonly kind: 'sheet' | 'offcut';
    readonly count: number;
    readonly priceMinor: number;
    /** Of all of them, and of the offcuts of them that are kept. */
    readonly areaUm2: bigint;
    readonly keptUm2: bigint;
  }[];
  readonly edgings: readonly {
    readonly edging: string;
    readonly strips: number;
    /** Overlength included. */
    readonly lengthUm: Um;
    readonly rolls: number;
    readonly rollM: number;
    readonly priceMinorPerM: number;
    /** How often the machine is changed to it. */
    readonly setUps: number;
  }[];
  readonly fittings: readonly {
    readonly fitting: string;
    readonly count: number;
    readonly pack: number;
    readonly packs: number;
    /** Of one piece. */
    readonly priceMinor: number;
  }[];
  /** Work at the saw, equal sheets on each other as the plan says. */
  readonly sawing: readonly {
    readonly group: string;
    readonly sheets: number;
    readonly sawnUm: Um;
    readonly cuts: number;
    readonly settings: number;
    readonly turns: number;
  }[];
  readonly drilledPanels: number;
  readonly holes: number;
  readonly openings: number;
  readonly outlines: number;
  /** Units of furniture by the id of their definition. */
  readonly units: readonly { readonly unit: string; readonly count: number }[];
  readonly panels: number;
  /** Vehicles or rooms that are alike. */
  readonly alike: number;
}

/** What a quantity counts; `share` is a sheet of which only a part is charged. */
export type QuoteUnit =
  | 'sheet'
  | 'share'
  | 'metre'
  | 'roll'
  | 'piece'
  | 'pack'
  | 'cut'
  | 'setting'
  | 'turn'
  | 'edge'
  | 'set-up'
  | 'panel'
  | 'hole'
  | 'opening'
  | 'outline'
  | 'unit'
  | 'fitting'
  | 'order'
  | 'each';

export type QuoteSection = 'material' | WorkKind | 'extras' | 'added';

/** Where a figure comes from: a list of the order's papers or a file of the library, and what it is found by there. */
export interface QuoteSource {
  readonly list: string;
  readonly row: string;
}

interface CommonLine {
  /** From 1, without gaps. */
  readonly number: number;
  readonly section: QuoteSection;
  /** Id of what is charged: a sheet, edging, fitting, unit, extra; of work the word of its unit. */
  readonly item: string;
  readonly amountMinor: number;
}

/** Material and extras: quantity × price. */
export interface PricedLine extends CommonLine {
  readonly kind: 'priced';
  readonly section: 'material' | 'extras';
  readonly material: 'sheet' | 'offcut' | 'edging' | 'fitting' | 'extra';
  /** Of a sheet: its stock group. */
  readonly group: string | null;
  readonly quantityMilli: number;
  readonly unit: QuoteUnit;
  readonly priceMinor: number;
  /** Where the quantity and where the price stands. */
  readonly source: QuoteSource;
  readonly priceSource: QuoteSource;
}

/** Work: quantity × time of one × price of an hour. */
export interface WorkLine extends CommonLine {
  readonly kind: 'work';
  readonly section: WorkKind;
  readonly quantityMilli: number;
  readonly unit: QuoteUnit;
  /** Of one. */
  readonly timeMs: number;
  readonly hourMinor: number;
  readonly source: QuoteSource;
  readonly priceSource: QuoteSource;
}

/** Mark-up and tax: a percentage of the sum of other lines. */
export interface AddedLine extends CommonLine {
  readonly kind: 'added';
  readonly section: 'added';
  readonly item: 'mark-up on material' | 'mark-up on work' | 'VAT';
  /** Numbers of the lines that it is a percentage of, first and last. */
  readonly of: readonly [number, number];
  readonly baseMinor: number;
  /** In hundredths of a percent. */
  readonly percent: number;
  readonly priceSource: QuoteSource;
}

export type QuoteLine = PricedLine | WorkLine | AddedLine;

/** A clear estimate: every line from its figures as printed, every sum from its lines as printed. */
export interface Quotation {
  readonly lines: readonly QuoteLine[];
  /** In whole minor units. `netMinor` is the sum of all lines but VAT, `totalMinor` that of all lines. */
  readonly sums: {
    readonly materialMinor: number;
    readonly workMinor: number;
    readonly extrasMinor: number;
    readonly markUpMinor: number;
    readonly netMinor: number;
    readonly vatMinor: number | null;
    readonly totalMinor: number;
  };
  /** All work, in ms. */
  readonly workMs: number;
  readonly charges: Charges;
  /** Kinds of work that the order has and for which the library has no rate. */
  readonly notCharged: readonly WorkKind[];
}
