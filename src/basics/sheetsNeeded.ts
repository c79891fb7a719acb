import type { RectangleSheet } from '../model/rectangles.ts';

/** Fewest sheets and least cost that can hold a given worth of pieces; `enough` is false when all sheets together cannot. */
export interface SheetNeed {
  readonly enough: boolean;
  readonly sheets: number;
  readonly costMinor: number;
}

interface Kind {
  readonly worth: bigint;
  readonly cost: bigint;
  /** Sheets of this kind at most; never more than could be needed. */
  readonly most: bigint;
}

/** After so many steps the search for the cheapest mix falls back to its relaxation, which is a bound as well. */
const MOST_STEPS = 20_000;

const ceilDivide = (a: bigint, b: bigint): bigint => (a <= 0n ? 0n : (a + b - 1n) / b);
const smaller = (a: bigint, b: bigint): bigint => (a < b ? a : b);

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

function fewest(kinds: readonly Kind[], wanted: bigint): bigint {
  let left = wanted;
  let sheets = 0n;
  for (const kind of kinds.toSorted((a, b) => (a.worth > b.worth ? -1 : a.worth < b.worth ? 1 : 0))) {
    if (left <= 0n) break;
    const taken = smaller(kind.most, ceilDivide(left, kind.worth));
    sheets += taken;
    left -= taken * kind.worth;
  }
  return sheets;
}

/** The cheapest whole numbers of sheets that reach `wanted`: a knapsack turned round, by branch and bound. */
class CheapestMix {
  private steps = 0;
  private best: bigint;
  private readonly step: bigint;
  private readonly kinds: readonly Kind[];

  constructor(kinds: readonly Kind[]) {
    this.kinds = kinds.toSorted((a, b) => {
      const left = a.cost * b.worth;
      const right = b.cost * a.worth;
      return left < right ? -1 : left > right ? 1 : 0;
    });
    this.step = this.kinds.reduce((g, kind) => greatestCommonDivisor(g, kind.cost), 0n);
    this.best = this.kinds.reduce((sum, kind) => sum + kind.cost * kind.most, 0n);
  }

  /** Cost of reaching `wanted` from kind `from` on when the last kind may be taken in part, as a possible sum of prices. */
  private relaxed(from: number, wanted: bigint): bigint | null {
    let left = wanted;
    let cost = 0n;
    for (let k = from; k < this.kinds.length && left > 0n; k++) {
      const { worth, cost: price, most } = this.kinds[k]!;
      if (most * worth >= left) {
        cost += ceilDivide(price * left, worth);
        left = 0n;
      } else {
        cost += price * most;
        left -= most * worth;
      }
    }
    if (left > 0n) return null;
    return this.step === 0n ? 0n : ceilDivide(cost, this.step) * this.step;
  }

  private visit(from: number, wanted: bigint, spent: bigint): void {
    if (wanted <= 0n) {
      if (spent < this.best) this.best = spent;
      return;
    }
    this.steps++;
    const rest = this.relaxed(from, wanted);
    if (rest === null || spent + rest >= this.best || this.steps > MOST_STEPS) return;
    const { worth, cost, most } = this.kinds[from]!;
    for (let n = smaller(most, ceilDivide(wanted, worth)); n >= 0n; n--) {
      this.visit(from + 1, wanted - n * worth, spent + n * cost);
      if (this.steps > MOST_STEPS) return;
    }
  }

  solve(wanted: bigint): bigint {
    const relaxed = this.relaxed(0, wanted) ?? this.best;
    this.visit(0, wanted, 0n);
    return this.steps > MOST_STEPS ? relaxed : this.best;
  }
}

/**
 * Fewest sheets, and least cost in minor units, of any plan, when a sheet of kind s can hold pieces worth at most
 * `worth[s]` (whole numbers up to 2^53) and pieces worth `wanted` must be cut. Limited counts of sheets are kept to,
 * and costs are sums of whole prices. Exact up to a fixed number of steps; after that the cost is that of the
 * relaxation in which one sheet may be bought in part, rounded up to a multiple of the prices' common divisor.
 */
export function sheetsNeeded(
  sheets: readonly RectangleSheet[],
  worth: readonly number[],
  wanted: bigint,
): SheetNeed {
  const kinds: Kind[] = [];
  let all = 0n;
  for (const [s, sheet] of sheets.entries()) {
    const value = BigInt(worth[s]!);
    if (value <= 0n) continue;
    const enough = ceilDivide(wanted, value);
    const most = sheet.count < 0 ? enough : smaller(BigInt(sheet.count), enough);
    kinds.push({ worth: value, cost: BigInt(sheet.costMinor), most });
    all += most * value;
  }
  const enough = all >= wanted;
  const reached = enough ? wanted : all;
  return {
    enough,
    sheets: Number(fewest(kinds, reached)),
    costMinor: Number(new CheapestMix(kinds).solve(reached)),
  };
}
