import { z } from 'zod';
import { sawnCopies } from './plan.ts';

/**
 * The store of a workshop as a history of bookings: what came in, what went out, what is reserved for an order, what is on
 * order with a supplier. Lengths
 * are in millimetres with at most three decimals (whole micrometres), edging is in metres with at most three decimals.
 * A booking is never changed once it is written; a wrong one is reversed by a later one that names it.
 */

const threeDecimals = (value: number) => Math.round(value * 1000) / 1000 === value;

const size = z
  .number({ error: 'a length in mm above 0' })
  .gt(0)
  .max(100_000)
  .refine(threeDecimals, { error: 'at most three decimals' })
  .describe('millimetres, at most three decimals');
const thickness = z
  .number({ error: 'a thickness in mm' })
  .min(0)
  .max(1000)
  .refine(threeDecimals, { error: 'at most three decimals' })
  .describe('millimetres; 0 where a plain list names none');
const material = z.string().max(300).describe('id; empty where a plain list names none');
const name = z.string().min(1).max(300);
const count = z.number({ error: 'a whole number from 1' }).int().min(1).max(1_000_000);
const metres = z
  .number({ error: 'metres above 0' })
  .gt(0)
  .max(1_000_000)
  .refine(threeDecimals, { error: 'at most three decimals' })
  .describe('metres, at most three decimals');

const board = {
  board: material,
  finish: material,
  thickness,
  length: size.describe('along x of the sheet or piece'),
  width: size,
  grain: z.enum(['length', 'width', 'none']).describe('which of the two sizes the grain runs along'),
};

/** A size of sheet; any number of them are alike. */
export const sheetItem = z.strictObject({ item: z.literal('sheet'), ...board });
/** One single piece from the rack, known by its label. */
export const offcutItem = z.strictObject({
  item: z.literal('offcut'),
  label: name.describe('what is written on it; case does not count'),
  place: z.string().max(300).describe('where it stands; empty where nobody said'),
  ...board,
});
export const edgingItem = z.strictObject({ item: z.literal('edging'), edging: name });
export const fittingItem = z.strictObject({ item: z.literal('fitting'), fitting: name });

const dayText = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);

/** Under which purchase goods are on order, with whom, and when they are expected. */
export const purchaseMark = z.strictObject({
  purchase: name.describe('what the purchase is called'),
  supplier: name.optional().describe('with whom; absent where nobody said'),
  expected: dayText.optional().describe('the day on which it is expected; absent where nobody said'),
});

const moved = {
  move: z
    .enum(['in', 'out', 'reserve', 'release', 'expect', 'withdraw'])
    .describe(
      'in and out change what is there, reserve and release for whom it is kept, expect and withdraw what is on order with a supplier',
    ),
  onOrder: purchaseMark
    .optional()
    .describe(
      'the goods on order that it is of: what is expected or withdrawn; of what comes in: it was on order; of what goes out: it is so again; of reserve and release: for whom it is kept once it has come',
    ),
  reservedFor: name
    .optional()
    .describe(
      'the order whose reservation it is; of what goes out: it was reserved for that order; of what comes in: it is so again; of what is on order: it will be so when it has come',
    ),
};

export const bookingLine = z.discriminatedUnion('item', [
  sheetItem.extend({ count, ...moved }),
  offcutItem.extend(moved),
  edgingItem.extend({ metres, ...moved }),
  fittingItem.extend({ count, ...moved }),
]);

export const bookingKinds = [
  'receive',
  'correct',
  'issue',
  'reserve',
  'release',
  'put back',
  'cut',
  'reverse',
  'expect',
  'withdraw',
  'postpone',
] as const;

export const booking = z
  .strictObject({
    number: z.number().int().min(1).max(10_000_000).describe('from 1, without gaps'),
    date: dayText.describe('the day it happened; never before that of the booking before'),
    kind: z.enum(bookingKinds),
    who: name,
    why: z.string().max(2000),
    order: name.optional().describe('the order it was for'),
    plan: z
      .string()
      .regex(/^[0-9a-f]{64}$/)
      .optional()
      .describe('of a finished cut: SHA-256 of the plan file'),
    sheets: z
      .array(sawnCopies)
      .min(1)
      .max(100_000)
      .optional()
      .describe('of a finished cut: the sheets of the plan that were sawn; absent: all of them'),
    recut: z
      .strictObject({
        number: z.number().int().min(1).describe('which recut of the job'),
        spoiled: z
          .array(name)
          .min(1)
          .max(100_000)
          .describe('texts of the labels of the panels that were cut anew'),
      })
      .optional()
      .describe('of a cut of spoiled panels'),
    reverses: z.number().int().min(1).optional().describe('number of the booking that it reverses'),
    lines: z.array(bookingLine).min(1).max(100_000),
  })
  .describe('one booking of a plywright store, version 1');

export type SheetItem = z.infer<typeof sheetItem>;
export type OffcutItem = z.infer<typeof offcutItem>;
export type EdgingItem = z.infer<typeof edgingItem>;
export type FittingItem = z.infer<typeof fittingItem>;
export type StoreItem = SheetItem | OffcutItem | EdgingItem | FittingItem;

/** What a person says of an item, with as many words as are needed to tell it from others. Lengths in mm. */
export interface ItemWish {
  readonly item: StoreItem['item'];
  /** Of edging and fittings. */
  readonly name?: string;
  readonly label?: string;
  readonly place?: string;
  readonly board?: string;
  readonly finish?: string;
  readonly thickness?: number;
  readonly length?: number;
  readonly width?: number;
  readonly grain?: SheetItem['grain'];
}

export type PurchaseMark = z.infer<typeof purchaseMark>;
export type BookingLine = z.infer<typeof bookingLine>;
export type BookingKind = (typeof bookingKinds)[number];
export type Booking = z.infer<typeof booking>;
/** A booking as it is asked for: the ledger gives it its number. */
export type Draft = Omit<Booking, 'number'>;

/** What is there of one item. Amounts are pieces; of edging, millimetres. */
export interface StockEntry {
  readonly item: StoreItem;
  /** Above 0. */
  readonly amount: number;
  /** What of it is kept for which order; each above 0, together at most `amount`. */
  readonly reserved: ReadonlyMap<string, number>;
}

/** What is there, by the key of its item. */
export type Stock = ReadonlyMap<string, StockEntry>;

/** Goods of one item that are on order under one purchase, with one supplier, for one day and one order. */
export interface OnOrder extends PurchaseMark {
  readonly item: SheetItem | EdgingItem | FittingItem;
  /** Pieces; of edging, millimetres. Above 0. */
  readonly amount: number;
  /** The order that it is reserved for once it has come; absent where it is free then. */
  readonly reservedFor?: string;
}

/** A history with what it comes to. */
export interface Ledger {
  readonly bookings: readonly Booking[];
  readonly stock: Stock;
  /** What is on order with suppliers, by a key of everything but its amount. It is not there yet. */
  readonly onOrder: ReadonlyMap<string, OnOrder>;
  /** Numbers of bookings that are reversed, with the number of the one that reverses them. */
  readonly reversedBy: ReadonlyMap<number, number>;
}
