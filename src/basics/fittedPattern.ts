import type { PatternNode } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import type { PatternColumn } from './patternMaster.ts';
import { countsOf, leastSize, stackOfNodes } from './patternTree.ts';

/**
 * A pattern that fits its sheet as it is: one found with sizes rounded down loses the pieces that do not, those of least
 * value at `prices` (of one piece of each item). Itself where it fits; null where nothing is left.
 */
export function fittedPattern(
  problem: RectangleProblem,
  pattern: PatternColumn,
  prices: ArrayLike<number>,
): PatternColumn | null {
  const { sheet } = pattern;
  const room = problem.sheets[sheet]!;
  const tree = new Fitting(problem, prices).fit(pattern.tree, room.w, room.h);
  if (tree === pattern.tree) return pattern;
  return tree && { sheet, counts: countsOf(tree), tree };
}

class Fitting {
  private readonly problem: RectangleProblem;
  private readonly prices: ArrayLike<number>;

  constructor(problem: RectangleProblem, prices: ArrayLike<number>) {
    this.problem = problem;
    this.prices = prices;
  }

  fit(node: PatternNode, w: number, h: number): PatternNode | null {
    const size = leastSize(this.problem, node);
    if (size.w <= w && size.h <= h) return node;
    if (node.kind === 'item') return null;
    const { axis } = node;
    const [along, across] = axis === 'w' ? [w, h] : [h, w];
    const within = (child: PatternNode, room: number) =>
      axis === 'w' ? this.fit(child, room, across) : this.fit(child, across, room);
    const kept = node.children.map((child) => within(child, along)).filter((child) => child !== null);
    for (let over = this.sum(kept, axis) - along; over > 0; over = this.sum(kept, axis) - along) {
      this.narrowOne(kept, axis, over, within);
    }
    return stackOfNodes(axis, kept);
  }

  private sum(nodes: readonly PatternNode[], axis: 'w' | 'h'): number {
    return nodes.reduce((total, node) => total + leastSize(this.problem, node)[axis], 0);
  }

  /** Takes `over` off one child, that which loses least by it; where none is so wide, one child as a whole. */
  private narrowOne(
    kept: PatternNode[],
    axis: 'w' | 'h',
    over: number,
    within: (child: PatternNode, room: number) => PatternNode | null,
  ): void {
    let chosen = 0;
    let instead: PatternNode | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const [index, child] of kept.entries()) {
      const size = leastSize(this.problem, child)[axis];
      const narrower = size > over ? within(child, size - over) : null;
      // One that is not wide enough is worth so many times as much as it would take of them.
      const loss = (this.value(child) - this.value(narrower)) * Math.max(1, over / size);
      if (loss >= least) continue;
      [chosen, instead, least] = [index, narrower, loss];
    }
    if (instead) kept[chosen] = instead;
    else kept.splice(chosen, 1);
  }

  private value(node: PatternNode | null): number {
    if (node === null) return 0;
    if (node.kind === 'item') return this.prices[node.item]!;
    return node.children.reduce((sum, child) => sum + this.value(child), 0);
  }
}
