/** What a changed order means for what is bought: one kind of sheet, edging or fitting in the old order and in the new. */
export interface MaterialChange {
  readonly item: 'sheet' | 'offcut' | 'edging' | 'fitting';
  /** Id in the library, or of an offcut its label. */
  readonly id: string;
  readonly board: string;
  readonly finish: string;
  /** Pieces; of edging mm, overlength included. */
  readonly before: number;
  readonly after: number;
  /** Of `after`: what has been sawn by the old order's plan and is used up already. */
  readonly done: number;
  /** What the store has of it for this order; null where no store was asked. */
  readonly there: number | null;
  /** What is on order for it with suppliers; null where no store was asked. */
  readonly coming: number | null;
  /** What is still to be bought: without a store what the new order takes beyond the old one. */
  readonly toBuy: number;
  /** What that costs as it is sold: in whole packs and rolls, with price breaks; null where nobody sells it. */
  readonly toBuyMinor: number | null;
  readonly priceBeforeMinor: number;
  readonly priceAfterMinor: number;
}

/** A price in the old order and in the new. */
export interface PriceChange {
  readonly what: 'material' | 'work' | 'extras' | 'mark-up' | 'net' | 'VAT' | 'total';
  readonly beforeMinor: number;
  readonly afterMinor: number;
}
