import type { Certificate, PriceCertificate } from '../model/nest.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { type DualFeasibleFamily, type DualFeasibleFunction, dualFeasibleFamilies } from './dualFeasible.ts';
import { EverySplit } from './everySplit.ts';
import { GuillotineTable } from './guillotineTable.ts';
import { type PricesAndWorth, pricesFromAreas, pricesFromFunctions } from './pricesFromFunctions.ts';
import { type Requirement, type SheetNeed, sheetsNeeded } from './sheetsNeeded.ts';

/** No table that takes more steps than this is built for a recheck, and so none for a bound; about ten seconds. */
export const MOST_RECHECK_WORK = 8_000_000_000;

/** The same for trying every way to part the pieces, all mixes of a certificate together; some four seconds. */
export const MOST_SPLIT_WORK = 4_000_000_000;

/** More certificates than this are not looked at together. */
export const MOST_PARTS = 24;

function knownFunction(name: string, parameter: number): DualFeasibleFunction | null {
  const family = dualFeasibleFamilies.find((known): known is DualFeasibleFamily => known === name);
  return family ? { family, parameter } : null;
}

/** Best worth of each kind of sheet at the prices, by the guillotine table; null when that cannot be told. */
function worthByPatterns(
  problem: RectangleProblem,
  { prices, grid, limited }: Extract<PriceCertificate, { method: 'pattern prices' }>,
): number[] | null {
  const table = Float64Array.from(prices);
  const worth: number[] = [];
  for (let s = 0; s < problem.sheets.length; s++) {
    const twin = sameSheetBefore(problem, s);
    if (twin >= 0) {
      worth.push(worth[twin]!);
      continue;
    }
    const request = { sheet: s, grid, limited, mostWork: MOST_RECHECK_WORK };
    const value = GuillotineTable.make(problem, request)?.evaluate(table);
    if (value === undefined || value > Number.MAX_SAFE_INTEGER) return null;
    worth.push(value);
  }
  return worth;
}

/** Index of an earlier sheet on which the same patterns can be cut, or -1. */
export function sameSheetBefore(problem: RectangleProblem, index: number): number {
  const sheet = problem.sheets[index]!;
  return problem.sheets.findIndex(
    (other, o) => o < index && other.w === sheet.w && other.h === sheet.h && other.noGrain === sheet.noGrain,
  );
}

function pricesOf(problem: RectangleProblem, certificate: PriceCertificate): PricesAndWorth | null {
  switch (certificate.method) {
    case 'area':
      return pricesFromAreas(problem);
    case 'dual feasible function': {
      const along = knownFunction(certificate.function, certificate.parameter);
      const across = knownFunction(certificate.across.function, certificate.across.parameter);
      return along && across && pricesFromFunctions(problem, { along, across, sheet: certificate.sheet });
    }
    case 'pattern prices': {
      const { prices, grid, limited } = certificate;
      const whole = prices.every((price) => Number.isSafeInteger(price) && price >= 0);
      if (!whole || prices.length !== problem.items.kinds) return null;
      if (!Number.isSafeInteger(grid) || grid < 1) return null;
      if (limited.some((item, k) => !Number.isInteger(item) || item < 0 || limited.indexOf(item) !== k))
        return null;
      const worth = worthByPatterns(problem, certificate);
      return worth && { prices, worth };
    }
  }
}

/** What all pieces are worth together at the prices, beside what a sheet of each kind can hold. */
export function requirementOf(problem: RectangleProblem, { prices, worth }: PricesAndWorth): Requirement {
  let wanted = 0n;
  for (const [item, price] of prices.entries()) wanted += BigInt(price) * BigInt(problem.items.count[item]!);
  return { worth, wanted };
}

/** Prices and worth of sheets to the least number and cost of sheets. */
export function needFromPrices(problem: RectangleProblem, prices: PricesAndWorth): SheetNeed {
  return sheetsNeeded(problem.sheets, [requirementOf(problem, prices)]);
}

/** What a certificate asks, worked out anew; null when it does not suit the problem. */
export function requirementOfCertificate(
  problem: RectangleProblem,
  certificate: PriceCertificate,
): Requirement | null {
  const prices = pricesOf(problem, certificate);
  return prices && requirementOf(problem, prices);
}

/** Those of the mixes for which trying every way to part the pieces shows that they do not hold all of them. */
function provedTooFew(
  problem: RectangleProblem,
  claimed: readonly (readonly number[])[],
): (readonly number[])[] {
  let work = MOST_SPLIT_WORK;
  return claimed.slice(0, MOST_PARTS).filter((mix) => {
    const suits = mix.length === problem.sheets.length && mix.every((n) => Number.isSafeInteger(n) && n >= 0);
    const table = suits ? EverySplit.make(problem, mix, work) : null;
    if (!table) return false;
    const tooFew = table.divide() === null && !table.isSpent;
    work -= table.steps;
    return tooFew;
  });
}

/**
 * Derives a bound again from its certificate, in whole numbers and without a linear programme or any search: the
 * least number of sheets and the least cost, in minor units, of any plan. What the certificate says a sheet can hold
 * is not believed but worked out. A certificate that does not suit the problem proves nothing: 0 and 0.
 */
export function recheckBound(
  problem: RectangleProblem,
  certificate: Certificate,
): { readonly sheets: number; readonly costMinor: number } {
  const parts = certificate.method === 'together' ? certificate.parts : [certificate];
  const requirements = parts
    .slice(0, MOST_PARTS)
    .map((part) => requirementOfCertificate(problem, part))
    .filter((requirement) => requirement !== null);
  if (requirements.length === 0) return { sheets: 0, costMinor: 0 };
  const tooFew = certificate.method === 'together' ? provedTooFew(problem, certificate.tooFew ?? []) : [];
  const { sheets, costMinor } = sheetsNeeded(problem.sheets, requirements, tooFew);
  return { sheets, costMinor };
}
