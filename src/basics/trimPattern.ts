import type { PatternNode } from '../model/patterns.ts';
import type { PatternColumn } from './patternMaster.ts';
import { stackOfNodes } from './patternTree.ts';

/** The pattern with no more pieces of an item than are left; itself where it has none too many, null for nothing. */
export function trimPattern(pattern: PatternColumn, left: Int32Array): PatternColumn | null {
  if (pattern.counts.every(({ item, count }) => count <= left[item]!)) return pattern;
  const still = Int32Array.from(left);
  const keep = (node: PatternNode): PatternNode | null => {
    if (node.kind === 'item') {
      if (still[node.item]! <= 0) return null;
      still[node.item]!--;
      return node;
    }
    return stackOfNodes(node.axis, node.children.map(keep));
  };
  const tree = keep(pattern.tree);
  const counts = pattern.counts
    .map(({ item }) => ({ item, count: left[item]! - still[item]! }))
    .filter(({ count }) => count > 0);
  return tree && { sheet: pattern.sheet, counts, tree };
}
