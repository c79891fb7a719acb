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
  // What promises most comes first, so that most of the blocks need not be filled.
  const promising = edge
    .wholeStrips()
    .map(({ depth, worth }) => ({ depth, worth, most: worth + beside.mostOfBlock(beside.length - depth) }))
    .sort((a, b) => b.most - a.most);
  const filled: { depth: number; worth: number }[] = [];
  const found: { depth: number; worth: number }[] = [];
  for (const { depth, worth, most } of promising) {
    const enough = found.length < MOST_PATTERNS ? least : found[MOST_PATTERNS - 1]!.worth;
    if (most <= enough) break;
    // Beside a deeper strip there is no more room than beside a shallower one.
    if (filled.some((block) => block.depth < depth && worth + block.worth <= enough)) continue;
    const block = beside.worthOfBlock(beside.length - depth, enough - worth);
    filled.push({ depth, worth: block });
    if (worth + block <= enough) continue;
    found.push({ depth, worth: worth + block });
    found.sort((a, b) => b.worth - a.worth);
    found.length = Math.min(found.length, MOST_PATTERNS);
  }
  const patterns: PatternColumn[] = [];
  for (const { depth } of found) {
    const block = beside.block(prices, beside.length - depth);
    const tree = stackOfNodes(edge.axis, [edge.wholeStrip(prices, depth), block]);
    if (tree) patterns.push({ sheet: edge.sheet, counts: countsOf(tree), tree });
  }
  return patterns;
}
