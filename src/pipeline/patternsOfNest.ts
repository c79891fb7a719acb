import { countsOf, stackOfNodes } from '../basics/patternTree.ts';
import type { Nest, NestPiece } from '../model/nest.ts';
import type { PatternNode, SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

/**
 * The sheets of a nest as patterns, each used as often as it is cut, for a search to start from. `itemOf` gives the
 * problem's item for a demand of the nest's own group, which may hold a part of the demands only.
 */
export function patternsOfNest(
  problem: RectangleProblem,
  nest: Nest,
  itemOf: (demand: number) => number,
): SheetPattern[] {
  const patterns: SheetPattern[] = [];
  for (const { sheet, copies, root } of nest.sheets) {
    const index = problem.sheets.findIndex((one) => one.sheet === sheet);
    const lengthwise = problem.sheets[index]!.transposed ? 'y' : 'x';
    const tree = nodeOf(root, lengthwise, itemOf);
    if (tree) patterns.push({ sheet: index, counts: countsOf(tree), tree, use: copies });
  }
  return patterns;
}

/** A piece as a node, w running along the sheet's `lengthwise` axis; null for what holds no demand. */
function nodeOf(
  piece: NestPiece,
  lengthwise: 'x' | 'y',
  itemOf: (demand: number) => number,
): PatternNode | null {
  switch (piece.kind) {
    case 'spare':
      return null;
    case 'demand':
      return { kind: 'item', item: itemOf(piece.demand), turned: piece.lengthAlong !== lengthwise };
    case 'stack':
      return stackOfNodes(
        piece.axis === lengthwise ? 'w' : 'h',
        piece.children.map((child) => nodeOf(child, lengthwise, itemOf)),
      );
  }
}
