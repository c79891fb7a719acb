import type { MaterialChange } from '../model/orderChanges.ts';
import type { QuoteFacts } from '../model/quotation.ts';

/** One kind of material as an order takes it. */
export interface Taken {
  readonly item: MaterialChange['item'];
  readonly id: string;
  readonly board: string;
  readonly finish: string;
  readonly amount: number;
  /** Of all of it, in minor units. */
  readonly priceMinor: number;
}

const UM_PER_MM = 1000;
const MM_PER_M = 1000;

/** Edging in whole mm, rounded up, at its price by the metre. */
function edgingPrice(mm: number, minorPerM: number): number {
  return Math.round((mm * minorPerM) / MM_PER_M);
}

/** Everything that an order takes, at the prices of one sheet, metre and piece. */
export function takenBy({
  sheets,
  edgings,
  fittings,
}: Pick<QuoteFacts, 'sheets' | 'edgings' | 'fittings'>): Taken[] {
  return [
    ...sheets.map(
      (row): Taken => ({
        item: row.kind,
        id: row.stock,
        board: row.board,
        finish: row.finish,
        amount: row.count,
        priceMinor: row.kind === 'offcut' ? 0 : row.count * row.priceMinor,
      }),
    ),
    ...edgings.map((row): Taken => {
      const amount = Math.ceil(row.lengthUm / UM_PER_MM);
      const priceMinor = edgingPrice(amount, row.priceMinorPerM);
      return { item: 'edging', id: row.edging, board: '', finish: '', amount, priceMinor };
    }),
    ...fittings.map((row): Taken => {
      const priceMinor = row.count * row.priceMinor;
      return { item: 'fitting', id: row.fitting, board: '', finish: '', amount: row.count, priceMinor };
    }),
  ];
}

function keyOf({ item, id, board, finish }: Taken): string {
  return JSON.stringify([item, id, board, finish]);
}

/** Amounts by what they are of; equal ones of one list are added up. */
function summed(rows: readonly Taken[]): Map<string, Taken> {
  const found = new Map<string, Taken>();
  for (const row of rows) {
    const before = found.get(keyOf(row));
    const amount = row.amount + (before?.amount ?? 0);
    found.set(keyOf(row), { ...row, amount, priceMinor: row.priceMinor + (before?.priceMinor ?? 0) });
  }
  return found;
}

/** How a material is bought. */
export interface Buying {
  /** What is on order of it for this order. */
  readonly coming: (row: Taken) => number;
  /** What an amount above 0 costs as it is sold; null where nobody has so much. */
  readonly costMinor: (row: Taken, amount: number) => number | null;
}

/**
 * What of each material the old order takes and the new one, and what is to be bought. `done` is what the saw has already
 * taken of what the new order takes; `there` says what the store has of one for this order, where there is a store, and
 * `buying` what is on order and what the rest costs. Rows
 * stand in the order of the old order's, then those that only the new one has.
 */
export function materialChanges(
  before: readonly Taken[],
  after: readonly Taken[],
  done: readonly Taken[] = [],
  there: ((row: Taken) => number) | null = null,
  buying: Buying = { coming: () => 0, costMinor: () => null },
): MaterialChange[] {
  const [old, wanted, used] = [summed(before), summed(after), summed(done)];
  return [...new Set([...old.keys(), ...wanted.keys()])].map((key) => {
    const row = (wanted.get(key) ?? old.get(key))!;
    const amount = { before: old.get(key)?.amount ?? 0, after: wanted.get(key)?.amount ?? 0 };
    const doneAmount = used.get(key)?.amount ?? 0;
    const onHand = there?.(row) ?? null;
    // What the old order takes was bought for it, as far as nobody knows otherwise.
    const coming = onHand === null ? null : buying.coming(row);
    const covered = onHand === null ? amount.before : doneAmount + onHand + (coming ?? 0);
    // An offcut is in the rack or not; it is never bought.
    const toBuy = row.item === 'offcut' ? 0 : Math.max(0, amount.after - covered);
    return {
      item: row.item,
      id: row.id,
      board: row.board,
      finish: row.finish,
      ...amount,
      done: doneAmount,
      there: onHand,
      coming,
      toBuy,
      toBuyMinor: toBuy === 0 ? 0 : buying.costMinor(row, toBuy),
      priceBeforeMinor: old.get(key)?.priceMinor ?? 0,
      priceAfterMinor: wanted.get(key)?.priceMinor ?? 0,
    };
  });
}
