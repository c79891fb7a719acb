/** The store: its ledger's text, its rules, and what books in it. */
export {
  allSheets,
  joinedSheets,
  sheetsInWords,
  sheetsMeant,
  sheetsWithout,
} from '../changes/sheetsOfPlan.ts';
export type { ItemWish } from '../model/store.ts';
export { reservedAmount } from '../store/applyLine.ts';
export { book as bookDraft, isDay, reversal } from '../store/book.ts';
export { changeOffcutLines, correctionLines, issueLines } from '../store/draftLines.ts';
export { changedOffcut, itemComingIn, itemInStore, itemOnOrder } from '../store/findItem.ts';
export { ledgerAfter, ledgerOnDay } from '../store/index.ts';
export {
  amountInWords,
  amountOf,
  itemInWords,
  itemKey,
  itemOf,
  lineOf,
  markInWords,
  markOf,
  onOrderLine,
} from '../store/items.ts';
export {
  bookingText,
  type LedgerText,
  newLedgerText,
  readLedgerText,
} from '../store/ledgerText.ts';
export { offcutsFor } from '../store/offcutsFor.ts';
export {
  goodsOnOrder,
  nearestPurchase,
  type OnOrderWish,
  postponedLines,
  receivedLines,
} from '../store/onOrder.ts';
export {
  bookingsOfPlan,
  planIsBooked,
  recutsBooked,
  sheetsBooked,
  sheetsFor,
} from '../store/planBookings.ts';
export { sheetsOnHand } from '../store/sheetsOnHand.ts';
