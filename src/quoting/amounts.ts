/**
 * Amounts in whole minor units from figures in whole thousandths. Halves are rounded up, as a price list is worked out by
 * hand: 8.5 × 2.75 = 23.375 is 23.38. Whole-number arithmetic throughout, so that no figure depends on the machine.
 */
function rounded(numerator: bigint, denominator: bigint): number {
  return Number((2n * numerator + denominator) / (2n * denominator));
}

const whole = (value: number) => BigInt(value);

/** A quantity in thousandths × a price in minor units. */
export function priceOf(quantityMilli: number, priceMinor: number): number {
  return rounded(whole(quantityMilli) * whole(priceMinor), 1000n);
}

/** A quantity in thousandths × the time of one in ms × the price of an hour in minor units. */
export function workPriceOf(quantityMilli: number, timeMs: number, hourMinor: number): number {
  return rounded(whole(quantityMilli) * whole(timeMs) * whole(hourMinor), 1000n * 3_600_000n);
}

/** A percentage, in hundredths of a percent, of an amount in minor units. */
export function percentOf(amountMinor: number, percent: number): number {
  return rounded(whole(amountMinor) * whole(percent), 10_000n);
}

/** The time of a quantity in thousandths, in whole ms. */
export function timeOf(quantityMilli: number, timeMs: number): number {
  return rounded(whole(quantityMilli) * whole(timeMs), 1000n);
}

/** A part of a number of sheets in thousandths, rounded up so that it is never less than what is taken. */
export function shareMilli(count: number, takenUm2: bigint, wholeUm2: bigint): number {
  return Number((whole(count) * 1000n * takenUm2 + wholeUm2 - 1n) / wholeUm2);
}
