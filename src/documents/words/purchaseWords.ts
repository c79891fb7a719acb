/** Words of the papers of a purchase. Days, money and lengths come in as printed. */
export interface PurchaseWords {
  /** Kinds of documents, for title blocks. */
  readonly purchase: string;
  readonly request: string;
  readonly number: string;
  readonly supplier: string;
  readonly orderBy: string;
  readonly neededBy: string;
  /** Title of the papers from the name of the purchase. */
  readonly titled: (name: string) => string;
  /** `size` is the side of the sheet, as printed. */
  readonly grainAlong: (size: string) => string;
  readonly noSupplier: string;
  readonly bought: (day: string) => string;
  readonly orders: string;
  /** Order, title, panels, begun. */
  readonly ordersColumns: readonly string[];
  readonly ways: string;
  readonly waysIntro: string;
  readonly way: { readonly together: string; readonly apart: string };
  /** Board and finish, panels; then for each way sheets, least, within. */
  readonly waysColumns: readonly [board: string, panels: string];
  readonly wayColumns: (way: 'together' | 'apart' | null) => readonly [string, string, string];
  readonly offcuts: (sheets: number, offcuts: number) => string;
  readonly best: string;
  readonly within: (percent: string) => string;
  readonly all: string;
  readonly cost: (way: 'together' | 'apart', goods: string, delivery: string, total: string) => string;
  readonly waste: (way: 'together' | 'apart', ofSheets: string, ofPanels: string) => string;
  readonly chosen: (
    way: 'together' | 'apart',
    other: 'together' | 'apart',
    difference: string,
    than: 'less' | 'more' | 'same',
  ) => string;
  readonly spareNone: string;
  readonly spare: (amount: string, why: string) => string;
  readonly sparePercent: (percent: string, of: 'need' | 'bought') => string;
  readonly spareSheets: (count: number) => string;
  readonly from: (supplier: string) => string;
  /** What, needed, spare, from the store, on order already, ordered, each, price. */
  readonly lineColumns: readonly string[];
  readonly sum: string;
  readonly delivery: string;
  readonly total: string;
  readonly packs: (packs: number, pack: number) => string;
  readonly rolls: (rolls: number) => string;
  readonly lastDay: (day: string, there: string) => string;
  readonly noDay: string;
  readonly tooLate: (lastDay: string, orders: string, canBegin: string) => string;
  readonly belowLeast: (missing: string, least: string) => string;
  readonly beyond: (units: number, fewest: number, what: string, from: number, saved: string) => string;
  readonly store: string;
  readonly storeIntro: string;
  /** What, needed, spare, taken, on order already, when that is expected, kept for others. */
  readonly storeColumns: readonly string[];
  readonly comesLate: (what: string, expected: string, thereBy: string, orders: string) => string;
  readonly overdue: (amount: string, what: string, expected: string) => string;
  readonly requestIntro: (there: string | null, late: boolean) => string;
  /** Position, article, what, how many, each, price. */
  readonly requestColumns: readonly string[];
  readonly prices: string;
  readonly confirm: string;
  readonly signature: string;
}
