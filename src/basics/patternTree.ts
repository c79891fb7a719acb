import type { PatternNode, SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

/** How many of each item a tree holds, in rising order of item. */
export function countsOf(tree: PatternNode): SheetPattern['counts'] {
  const counts = new Map<number, number>();
  const visit = (node: PatternNode): void => {
    if (node.kind === 'item') counts.set(node.item, (counts.get(node.item) ?? 0) + 1);
    else for (const child of node.children) visit(child);
  };
  visit(tree);
  return [...counts].sort(([a], [b]) => a - b).map(([item, count]) => ({ item, count }));
}

/** Least size of a tree, in the problem's units. */
export function leastSize(problem: RectangleProblem, node: PatternNode): { w: number; h: number } {
  if (node.kind === 'item') {
    const w = problem.items.w[node.item]!;
    const h = problem.items.h[node.item]!;
    return node.turned ? { w: h, h: w } : { w, h };
  }
  const sizes = node.children.map((child) => leastSize(problem, child));
  const sum = (axis: 'w' | 'h'): number => sizes.reduce((total, size) => total + size[axis], 0);
  const most = (axis: 'w' | 'h'): number => sizes.reduce((total, size) => Math.max(total, size[axis]), 0);
  return node.axis === 'w' ? { w: sum('w'), h: most('h') } : { w: most('w'), h: sum('h') };
}

/** True when the pattern fits its sheet; one found on a grid may not. */
export function fitsSheet(problem: RectangleProblem, pattern: SheetPattern): boolean {
  const { w, h } = leastSize(problem, pattern.tree);
  const sheet = problem.sheets[pattern.sheet]!;
  return w <= sheet.w && h <= sheet.h;
}

/** A stack of those that are there: itself where there is only one, null where there is none. */
export function stackOfNodes(axis: 'w' | 'h', nodes: readonly (PatternNode | null)[]): PatternNode | null {
  const children = nodes.filter((node) => node !== null);
  return children.length < 2 ? (children[0] ?? null) : { kind: 'stack', axis, children };
}
