import type { PatternColumn } from '../basics/patternMaster.ts';
import { countsOf, stackOfNodes } from '../basics/patternTree.ts';
import type { StripPricing } from './stripPricing.ts';

/** Patterns of one pricing at most. */
const MOST_PATTERNS = 3;

/**
 * Patterns of four stages from two pricings of the same sheet at the same prices: one strip of `edge` over the whole
 * sheet, and beside it a block of strips that lie the other way, those of `beside`. Both must have been priced before.
 */
export function blockPatterns(
  edge: StripPricing,
  beside: StripPricing,
  prices: Float64Array,
  least: number,
): PatternColumn[] {
  const strips = edge.wholeStrips();
  const found: { depth: number; worth: number }[] = [];
  // Deeper strips are worth more and leave less beside them: halves that cannot better the best few are left out.
  const look = (from: number, to: number, mostBeside: number): void => {
    if (from > to) return;
    const enough = found.length < MOST_PATTERNS ? least : found[MOST_PATTERNS - 1]!.worth;
    if (strips[to]!.worth + mostBeside <= enough) return;
    const middle = (from + to) >> 1;
    const { depth, worth } = strips[middle]!;
    const besideIt = beside.worthOfBlock(beside.length - depth);
    if (worth + besideIt > least) {
      found.push({ depth, worth: worth + besideIt });
      found.sort((a, b) => b.worth - a.worth);
      found.length = Math.min(found.length, MOST_PATTERNS);
    }
    look(from, middle - 1, mostBeside);
    look(middle + 1, to, besideIt);
  };
  look(0, strips.length - 1, Number.POSITIVE_INFINITY);
  const patterns: PatternColumn[] = [];
  for (const { depth } of found) {
    const block = beside.block(prices, beside.length - depth);
    const tree = stackOfNodes(edge.axis, [edge.wholeStrip(prices, depth), block]);
    if (tree) patterns.push({ sheet: edge.sheet, counts: countsOf(tree), tree });
  }
  return patterns;
}
