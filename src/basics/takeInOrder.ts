/** What is taken of some parts, what is left of them, and how much of the amount they have not got. */
export interface TakenInOrder<Part> {
  readonly taken: readonly Part[];
  readonly rest: readonly Part[];
  readonly missing: number;
}

/**
 * Takes an amount out of parts, one after the other; the last that is touched may be split. Parts of nothing are left out.
 * Amounts are 0 or more and all in one unit.
 */
export function takeInOrder<Part extends { readonly amount: number }>(
  parts: readonly Part[],
  amount: number,
): TakenInOrder<Part> {
  const taken: Part[] = [];
  const rest: Part[] = [];
  let missing = amount;
  for (const part of parts) {
    const share = Math.min(part.amount, missing);
    missing -= share;
    if (share > 0) taken.push({ ...part, amount: share });
    if (share < part.amount) rest.push({ ...part, amount: part.amount - share });
  }
  return { taken, rest, missing };
}
