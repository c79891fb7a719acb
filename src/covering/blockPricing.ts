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
  const found = edge
    .wholeStrips()
    .map(({ depth, worth }) => ({ depth, worth: worth + beside.worthOfBlock(beside.length - depth) }))
    .filter(({ worth }) => worth > least)
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST_PATTERNS);
  const patterns: PatternColumn[] = [];
  for (const { depth } of found) {
    const block = beside.block(prices, beside.length - depth);
    const tree = stackOfNodes(edge.axis, [edge.wholeStrip(prices, depth), block]);
    if (tree) patterns.push({ sheet: edge.sheet, counts: countsOf(tree), tree });
  }
  return patterns;
}
