/**
 * Rows that hold every pair of values of two different factors at least once. Greedy, after Cohen, Dalal, Fredman and
 * Patton, “The AETG System: An Approach to Testing Based on Combinatorial Design”, IEEE Transactions on Software
 * Engineering 23 (1997) 437–444: each row begins with a pair not held yet, and every further factor takes the value that
 * adds most new pairs. Always the same rows for the same factors. `factors`: how many values each has, 1 or more; a row
 * holds the index of a value for each factor. A single factor gives each of its values once.
 */
export function pairwise(factors: readonly number[]): number[][] {
  if (factors.length < 2) return Array.from({ length: factors[0] ?? 0 }, (_, value) => [value]);
  const open = new Set(allPairs(factors));
  const rows: number[][] = [];
  for (const first of allPairs(factors)) {
    if (!open.has(first)) continue;
    const row = rowThatBeginsWith(first, factors, open);
    for (const pair of pairsOf(row)) open.delete(pair);
    rows.push(row);
  }
  return rows;
}

/** `factor value factor value`, the lower factor first. */
function pairKey(a: number, valueA: number, b: number, valueB: number): string {
  return a < b ? `${a} ${valueA} ${b} ${valueB}` : `${b} ${valueB} ${a} ${valueA}`;
}

/** Every pair that the rows must hold. */
export function allPairs(factors: readonly number[]): string[] {
  return factors.flatMap((countA, a) =>
    factors
      .slice(a + 1)
      .flatMap((countB, offset) =>
        Array.from({ length: countA * countB }, (_, index) =>
          pairKey(a, Math.floor(index / countB), a + 1 + offset, index % countB),
        ),
      ),
  );
}

/** Every pair that a row holds. */
export function pairsOf(row: readonly number[]): string[] {
  return row.flatMap((valueA, a) =>
    row.slice(a + 1).map((valueB, offset) => pairKey(a, valueA, a + 1 + offset, valueB)),
  );
}

function rowThatBeginsWith(pair: string, factors: readonly number[], open: ReadonlySet<string>): number[] {
  const [a, valueA, b, valueB] = pair.split(' ').map(Number) as [number, number, number, number];
  const row = new Map([
    [a, valueA],
    [b, valueB],
  ]);
  for (const [factor, count] of factors.entries()) {
    if (row.has(factor)) continue;
    const gains = Array.from(
      { length: count },
      (_, value) => [...row].filter(([other, held]) => open.has(pairKey(factor, value, other, held))).length,
    );
    row.set(factor, gains.indexOf(Math.max(...gains)));
  }
  return factors.map((_, factor) => row.get(factor)!);
}
