import type { RectangleSheet } from '../model/rectangles.ts';

/** Fewest sheets and least cost that can hold a given worth of pieces; `enough` is false when all sheets together cannot. */
export interface SheetNeed {
  readonly enough: boolean;
  readonly sheets: number;
  readonly costMinor: number;
  /** Sheets of each kind in a cheapest mix; null where it is not known. */
  readonly mix: readonly number[] | null;
}

/** What pieces must be worth together, at one set of prices: a sheet of kind s holds at most `worth[s]` of `wanted`. */
export interface Requirement {
  readonly worth: readonly number[];
  readonly wanted: bigint;
}

interface Kind {
  /** Index among the sheets. */
  readonly sheet: number;
  /** Worth by requirement. */
  readonly worths: readonly bigint[];
  readonly cost: bigint;
  /** Sheets of this kind at most; never more than could be needed. */
  readonly most: bigint;
}

/** After so many steps the search for the cheapest mix falls back to its relaxation, which is a bound as well. */
const MOST_STEPS = 20_000;

const ceilDivide = (a: bigint, b: bigint): bigint => (a <= 0n ? 0n : (a + b - 1n) / b);
const smaller = (a: bigint, b: bigint): bigint => (a < b ? a : b);
const larger = (a: bigint, b: bigint): bigint => (a > b ? a : b);

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

/** The cheapest whole numbers of sheets that meet every requirement: knapsacks turned round, by branch and bound. */
class CheapestMix {
  private steps = 0;
  private best: bigint;
  /** Sheets of each kind in the best mix, and in the one looked at; null while there is none. */
  private bestMix: bigint[] | null = null;
  private readonly mix: bigint[];
  private readonly step: bigint;
  private readonly kinds: readonly Kind[];
  private readonly priceOf: (kind: Kind) => bigint;
  /** By requirement, the kinds from the one that meets it for the least money on. */
  private readonly orders: readonly (readonly number[])[];

  /** Mixes that do not hold everything, by kind. */
  private readonly tooFew: readonly (readonly bigint[])[];

  constructor(
    kinds: readonly Kind[],
    requirements: number,
    tooFew: readonly (readonly number[])[],
    priceOf: (kind: Kind) => bigint,
  ) {
    this.priceOf = priceOf;
    this.kinds = kinds.toSorted(cheaperFirst(0, priceOf));
    this.orders = Array.from({ length: requirements }, (_, r) => {
      const order = cheaperFirst(r, priceOf);
      return this.kinds.map((_, k) => k).sort((a, b) => order(this.kinds[a]!, this.kinds[b]!) || a - b);
    });
    this.mix = this.kinds.map(() => 0n);
    this.tooFew = tooFew.map((mix) => this.kinds.map(({ sheet }) => BigInt(mix[sheet] ?? 0)));
    this.step = this.kinds.reduce((g, kind) => greatestCommonDivisor(g, priceOf(kind)), 0n);
    this.best = this.kinds.reduce((sum, kind) => sum + priceOf(kind) * kind.most, 0n) + 1n;
  }

  /** Cost of meeting requirement r with kinds `from` on when one sheet may be taken in part, as a possible sum of prices. */
  private relaxed(from: number, r: number, wanted: bigint): bigint | null {
    let left = wanted;
    let cost = 0n;
    for (const k of this.orders[r]!) {
      if (left <= 0n) break;
      const kind = this.kinds[k]!;
      const worth = kind.worths[r]!;
      if (k < from || worth <= 0n) continue;
      if (kind.most * worth >= left) {
        cost += ceilDivide(this.priceOf(kind) * left, worth);
        left = 0n;
      } else {
        cost += this.priceOf(kind) * kind.most;
        left -= kind.most * worth;
      }
    }
    if (left > 0n) return null;
    return this.step === 0n ? 0n : ceilDivide(cost, this.step) * this.step;
  }

  /** The greatest of the relaxations of all requirements; null when one of them cannot be met. */
  private relaxedOfAll(from: number, wanted: readonly bigint[]): bigint | null {
    let most = 0n;
    for (const [r, want] of wanted.entries()) {
      const cost = this.relaxed(from, r, want);
      if (cost === null) return null;
      most = larger(most, cost);
    }
    return most;
  }

  private visit(from: number, wanted: readonly bigint[], spent: bigint): void {
    if (wanted.every((want) => want <= 0n) && !this.isTooFew(from)) {
      if (spent >= this.best) return;
      this.best = spent;
      this.bestMix = this.mix.map((n, k) => (k < from ? n : 0n));
      return;
    }
    this.steps++;
    if (from === this.kinds.length) return;
    const rest = this.relaxedOfAll(from, wanted);
    if (rest === null || spent + rest >= this.best || this.steps > MOST_STEPS) return;
    const kind = this.kinds[from]!;
    const forWorth = wanted.reduce(
      (most, want, r) => (kind.worths[r]! > 0n ? larger(most, ceilDivide(want, kind.worths[r]!)) : most),
      0n,
    );
    const enough = this.tooFew.reduce((most, few) => larger(most, few[from]! + 1n), forWorth);
    for (let n = smaller(kind.most, enough); n >= 0n; n--) {
      this.mix[from] = n;
      const left = wanted.map((want, r) => want - n * kind.worths[r]!);
      this.visit(from + 1, left, spent + n * this.priceOf(kind));
      if (this.steps > MOST_STEPS) return;
    }
  }

  /** Whether the mix so far, with no sheets of kinds `from` on, is within one that is known not to hold everything. */
  private isTooFew(from: number): boolean {
    return this.tooFew.some((few) => few.every((n, k) => (k < from ? this.mix[k]! : 0n) <= n));
  }

  /** Cost, and the sheets of each kind where the search came to its end. */
  solve(wanted: readonly bigint[], sheets: number): { cost: bigint; mix: number[] | null } {
    const relaxed = this.relaxedOfAll(0, wanted) ?? this.best - 1n;
    this.visit(0, wanted, 0n);
    if (this.steps > MOST_STEPS || !this.bestMix) return { cost: relaxed, mix: null };
    const mix = new Array<number>(sheets).fill(0);
    for (const [k, kind] of this.kinds.entries()) mix[kind.sheet] = Number(this.bestMix[k]);
    return { cost: this.best, mix };
  }
}

/** Order by cost for worth in requirement r; kinds that are worth nothing in it come last. */
function cheaperFirst(r: number, priceOf: (kind: Kind) => bigint): (a: Kind, b: Kind) => number {
  return (a, b) => {
    const [worthA, worthB] = [a.worths[r]!, b.worths[r]!];
    if (worthA <= 0n || worthB <= 0n) return worthA > 0n ? -1 : worthB > 0n ? 1 : 0;
    const left = priceOf(a) * worthB;
    const right = priceOf(b) * worthA;
    return left < right ? -1 : left > right ? 1 : 0;
  };
}

/**
 * Fewest sheets, and least cost in minor units, of any plan that meets all requirements: for each, when a sheet of kind
 * s can hold pieces worth at most `worth[s]` (whole numbers up to 2^53), pieces worth `wanted` must be cut. Limited
 * counts of sheets are kept to, and costs are sums of whole prices. Exact up to a fixed number of steps; after that the
 * cost is that of the dearest relaxation of one requirement in which one sheet may be bought in part, rounded up to a
 * multiple of the prices' common divisor. `tooFew`: mixes, as numbers of sheets by kind, that are known not to hold
 * everything; neither does what is within one of them. `mix`: the sheets of each kind in a cheapest mix, null where it is not known.
 */
export function sheetsNeeded(
  sheets: readonly RectangleSheet[],
  requirements: readonly Requirement[],
  tooFew: readonly (readonly number[])[] = [],
): SheetNeed {
  const kinds: Kind[] = [];
  for (const [s, sheet] of sheets.entries()) {
    const worths = requirements.map(({ worth }) => larger(0n, BigInt(worth[s]!)));
    const enough = requirements.reduce(
      (most, { wanted }, r) => (worths[r]! > 0n ? larger(most, ceilDivide(wanted, worths[r]!)) : most),
      0n,
    );
    const beyond = tooFew.reduce((most, mix) => larger(most, BigInt(mix[s] ?? 0) + 1n), enough);
    if (beyond === 0n) continue;
    const most = sheet.count < 0 ? beyond : smaller(BigInt(sheet.count), beyond);
    kinds.push({ sheet: s, worths, cost: BigInt(sheet.costMinor), most });
  }
  const all = requirements.map((_, r) => kinds.reduce((sum, kind) => sum + kind.most * kind.worths[r]!, 0n));
  const enough = requirements.every(({ wanted }, r) => all[r]! >= wanted);
  const reached = requirements.map(({ wanted }, r) => smaller(wanted, all[r]!));
  const cheapest = new CheapestMix(kinds, requirements.length, tooFew, (kind) => kind.cost);
  const fewest = new CheapestMix(kinds, requirements.length, tooFew, () => 1n);
  const { cost, mix } = cheapest.solve(reached, sheets.length);
  return {
    enough,
    sheets: Number(fewest.solve(reached, sheets.length).cost),
    costMinor: Number(cost),
    mix,
  };
}
