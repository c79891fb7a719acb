import type { PriceBreak, Supplier } from './library.ts';
import type { EdgingItem, FittingItem, SheetItem } from './store.ts';

/** What is bought. Amounts of it are pieces; of edging micrometres. */
export type BoughtItem = SheetItem | EdgingItem | FittingItem;

/** One way to buy an item. */
export interface Offer {
  /** Id of the sheet, edging or fitting in the library. */
  readonly id: string;
  /** Null where the library names none. */
  readonly supplier: string | null;
  /** Of one piece, or of a metre of edging. */
  readonly priceMinor: number;
  /** By rising number of units. */
  readonly breaks: readonly PriceBreak[];
  /** How much of the item one unit holds: 1 piece, or a roll's length in µm. */
  readonly unit: number;
  /** Units in a pack, of which only whole ones are sold. */
  readonly pack: number;
  /** Least number of units that is sold at a time. */
  readonly least: number;
  /** How many units can be had; null for any number. */
  readonly most: number | null;
}

/** Part of an item that is on order with a supplier already. */
export interface Coming {
  readonly amount: number;
  readonly purchase: string;
  readonly supplier: string | null;
  /** Day on which it is expected; null where it is not known. */
  readonly expected: string | null;
}

/** What all orders of a purchase take of one item, what the store has of it, and where it can be had. */
export interface Need {
  readonly item: BoughtItem;
  readonly title: string;
  /** By the plans; of edging with the overlength of every strip. */
  readonly amount: number;
  /** Which orders take it, in the order in which they were named. */
  readonly orders: readonly string[];
  /** First day on which one of them is begun; null where none of them says. */
  readonly start: string | null;
  /** What the store has that may be taken: what is free, and what is reserved for these orders. */
  readonly available: number;
  /** What the store has and keeps for other orders. */
  readonly keptForOthers: number;
  /** What is on order already and may be taken: first what comes for these orders, then what comes for nobody, by its day. */
  readonly coming: readonly Coming[];
  /** What is on order for others. */
  readonly comingForOthers: number;
  /** None where the library does not sell it, as a size that only the store has. */
  readonly offers: readonly Offer[];
}

/**
 * More than the plans take, and why. `percent of need`: so many hundredths of a percent of what the plans take are added.
 * `percent of bought`: so many of what is bought may be lost and the rest is still enough. `sheets`: so many more sheets.
 * Sheets to spare are counted for each board and finish and are of the size that is taken most.
 */
export type Spare =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'percent of need' | 'percent of bought';
      readonly hundredths: number;
      readonly why: string;
    }
  | { readonly kind: 'sheets'; readonly count: number; readonly why: string };

/** What is ordered by one offer. */
export interface Quantity {
  readonly offer: Offer;
  /** Sheets, rolls, pieces. */
  readonly units: number;
  readonly packs: number;
  /** Of one piece, or of a metre of edging, at this number. */
  readonly priceEachMinor: number;
  readonly priceMinor: number;
  /** Number of units from which that price holds; null for the usual one. */
  readonly breakFrom: number | null;
  /** Units beyond the fewest that would do, since so many cost less, and how much less. */
  readonly beyond: number;
  readonly savedMinor: number;
}

export interface PurchaseLine {
  readonly need: Need;
  readonly spare: number;
  /** Taken from the store. */
  readonly fromStore: number;
  /** Taken of what is on order already. */
  readonly fromOnOrder: number;
  /** Last day on which some of that is expected; null where there is none, or its day is not known. */
  readonly expected: string | null;
  /** Set where that is after the day on which it must be there for the first order that takes it. */
  readonly comesLate: { readonly thereBy: string } | null;
  /** Parts of it whose day is over already. */
  readonly overdue: readonly Coming[];
  /** Still to be had: need and spare less what is taken from the store and of what is on order. */
  readonly toBuy: number;
  /** Empty where nothing has to be bought; more than one where no single offer has enough. */
  readonly quantities: readonly Quantity[];
  /** What cannot be had from anybody, in amounts of the item. */
  readonly missing: number;
}

/** What one supplier is asked for. */
export interface SupplierOrder {
  /** Null for what has no supplier in the library. */
  readonly supplier: Supplier | null;
  readonly lines: readonly {
    readonly line: PurchaseLine;
    readonly quantity: Quantity;
    readonly orderBy: string | null;
  }[];
  readonly goodsMinor: number;
  readonly deliveryMinor: number;
  /** How much is missing to the least order value; 0 where nothing is. */
  readonly belowLeastMinor: number;
  /** Last day on which all of it still comes in time; null where no order says when it is begun, or no supplier is named. */
  readonly orderBy: string | null;
  /** Day on which the goods must be there: the working day before the first order that needs them is begun; null as above. */
  readonly thereBy: string | null;
  /** Day on which all of it is there if it is ordered on the day of the purchase; null without a supplier. */
  readonly expected: string | null;
  /** First day on which an order that needs these goods is begun; null as for `orderBy`. */
  readonly start: string | null;
  /** Set where that day is over: first day on which work can begin if all is ordered today. */
  readonly tooLate: { readonly canBegin: string; readonly orders: readonly string[] } | null;
}

export interface Purchase {
  readonly today: string;
  readonly spare: Spare;
  /** In the order of the needs. */
  readonly lines: readonly PurchaseLine[];
  /** In the order of the library, last what has no supplier; only those of whom something is asked. */
  readonly suppliers: readonly SupplierOrder[];
  readonly goodsMinor: number;
  readonly deliveryMinor: number;
}

/** Whether several orders are cut from shared sheets or each from sheets of its own. */
export type Way = 'together' | 'apart';

/** What cutting takes of one board and finish, over all orders. */
export interface WayGroup {
  readonly board: string;
  readonly finish: string;
  /** Mm. */
  readonly thickness: number;
  readonly panels: number;
  /** Whole sheets, from the store too. */
  readonly sheets: number;
  /** Pieces from the rack. */
  readonly offcuts: number;
  /** No plan cut in this way takes fewer sheets and offcuts. */
  readonly least: number;
  readonly proved: boolean;
  /** How much dearer than the best plans of this way these might at most be, in percent, rounded up to 0.1. */
  readonly withinPercent: number;
  readonly sheetAreaUm2: number;
  readonly panelAreaUm2: number;
}

export interface WayResult {
  readonly way: Way;
  /** In the order in which the orders first name them. */
  readonly groups: readonly WayGroup[];
  readonly purchase: Purchase;
}

export interface BoughtOrder {
  readonly id: string;
  readonly title: string;
  readonly start: string | null;
  readonly panels: number;
}

/** A purchase as it is told: what both ways to cut take, and which of them is ordered. */
export interface PurchaseReport {
  /** Names the folder and the reservations of what is cut together. */
  readonly name: string;
  /** What was given as its name, or the names of some orders. */
  readonly title: string;
  readonly currency: string;
  readonly orders: readonly BoughtOrder[];
  readonly chosen: WayResult;
  /** Absent where there is one order only. */
  readonly other?: WayResult;
}
