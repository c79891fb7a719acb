import { EverySplit, type SheetSelection } from '../basics/everySplit.ts';
import { countsOf } from '../basics/patternTree.ts';
import { MOST_PARTS, MOST_SPLIT_WORK, requirementOfCertificate } from '../basics/recheckBound.ts';
import { sheetsNeeded } from '../basics/sheetsNeeded.ts';
import type { Bound, PriceCertificate } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

export interface EverySplitBound {
  readonly bound: Bound;
  /** A plan at the cost of the bound, where one was found: one pattern a sheet. */
  readonly patterns: readonly SheetPattern[];
}

/**
 * Settles small groups: the cheapest mix of sheets that the bound allows is tried with every way to part the pieces.
 * Either they have room, and the mix is the cheapest there is; or the mix is too few, and the next one is tried, until
 * the mix costs as much as the plan that is known. Null when there are too many pieces, sheets or steps to say anything.
 * `stop`: asked now and then; true ends the work.
 */
export function everySplitBound(
  problem: RectangleProblem,
  known: Bound,
  planCost: number,
  effort: number,
  stop: () => boolean = () => false,
): EverySplitBound | null {
  const parts = partsOf(known);
  const requirements = parts.flatMap((part) => requirementOfCertificate(problem, part) ?? []);
  if (requirements.length === 0) return null;
  const tooFew: (readonly number[])[] = [];
  let left = Math.min(effort, MOST_SPLIT_WORK);
  let need = sheetsNeeded(problem.sheets, requirements);
  while (need.enough && need.mix !== null && need.costMinor < planCost && tooFew.length < MOST_PARTS) {
    const { mix } = need;
    const table = EverySplit.make(problem, mix, left, stop);
    if (!table) break;
    const divided = table.divide();
    left -= table.steps;
    if (table.isSpent) break;
    if (divided) {
      return { bound: boundOf(known, parts, tooFew, need), patterns: patternsOf(table, divided) };
    }
    tooFew.push(mix);
    need = sheetsNeeded(problem.sheets, requirements, tooFew);
  }
  return tooFew.length === 0 ? null : { bound: boundOf(known, parts, tooFew, need), patterns: [] };
}

function partsOf({ certificate }: Bound): readonly PriceCertificate[] {
  return certificate.method === 'together' ? certificate.parts : [certificate];
}

function boundOf(
  known: Bound,
  parts: readonly PriceCertificate[],
  tooFew: readonly (readonly number[])[],
  { sheets, costMinor }: { readonly sheets: number; readonly costMinor: number },
): Bound {
  if (tooFew.length === 0) return known;
  return { sheets, costMinor, certificate: { method: 'together', parts, tooFew } };
}

function patternsOf(table: EverySplit, divided: readonly SheetSelection[]): SheetPattern[] {
  return divided.flatMap(({ sheet, selection }) => {
    const tree = table.tree(selection, sheet);
    return tree ? [{ sheet, counts: countsOf(tree), tree, use: 1 }] : [];
  });
}
