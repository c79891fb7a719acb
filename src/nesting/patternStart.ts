import type { PatternNode, SheetPattern } from '../model/patterns.ts';
import { type Construction, constructRest, isBetter } from './construct.ts';
import { AS_IS, type Facts, TURNED } from './facts.ts';
import { InsertionOrders } from './insertionOrders.ts';
import { encodeTree, type SheetCode, stackOf, type Tree } from './sheetCode.ts';
import { TreeTidier } from './tidyTree.ts';

/** Part of a pattern's area that must still be wanted for a last sheet to be cut so. */
const LEAST_WANTED = 0.85;

interface UsablePattern {
  readonly sheet: number;
  readonly tree: Tree;
  readonly use: number;
}

/**
 * A first plan from the patterns of a linear programme: each as often as it is used in whole, then perhaps once more
 * with what is still wanted of it, the rest piece by piece. Undefined when no pattern can be used.
 */
export function startFromPatterns(facts: Facts, patterns: readonly SheetPattern[]): Construction | undefined {
  const tidier = new TreeTidier(facts, { lengthUm: 0, widthUm: 0 });
  const usable = patterns
    .filter((pattern) => pattern.use > 0)
    .map(({ sheet, tree, use }) => ({
      sheet,
      tree: wantedTree(facts, sheet, tree, facts.problem.items.count),
      use,
    }))
    .filter((p): p is UsablePattern => p.tree !== undefined && fits(facts, p.tree, p.sheet))
    .filter((p) => tidier.canBeSawn(p.tree, p.sheet));
  if (usable.length === 0) return undefined;
  usable.sort((a, b) => b.use - a.use);
  const whole = roundDown(facts, usable, 'whole patterns only', tidier);
  const more = roundDown(facts, usable, 'parts of patterns too', tidier);
  return isBetter(facts, more, whole) ? more : whole;
}

function fits(facts: Facts, tree: Tree, sheet: number): boolean {
  return tree.w <= facts.sheetW[sheet]! && tree.h <= facts.sheetH[sheet]!;
}

/** The pattern with the pieces that are left of each kind and may lie so; undefined when there are none. */
function wantedTree(facts: Facts, sheet: number, pattern: PatternNode, left: Int32Array): Tree | undefined {
  const counts = left.slice();
  const read = (node: PatternNode): Tree | undefined => {
    if (node.kind === 'item') {
      const { item, turned } = node;
      const way = turned && facts.w[item] !== facts.h[item] ? TURNED : AS_IS;
      if (counts[item]! <= 0 || (facts.ways[sheet * facts.kinds + item]! & way) === 0) return undefined;
      counts[item] = counts[item]! - 1;
      const [w, h] = way === TURNED ? [facts.h[item]!, facts.w[item]!] : [facts.w[item]!, facts.h[item]!];
      return { kind: 'piece', item, turned: way === TURNED, w, h };
    }
    return flatStack(node.axis, node.children.map(read));
  };
  return read(pattern);
}

/** A stack of the children that are there; stacks in it along the same axis become one with it, as the search wants them. */
function flatStack(axis: 'w' | 'h', found: readonly (Tree | undefined)[]): Tree | undefined {
  const children = found.flatMap((child) =>
    child === undefined ? [] : child.kind === 'stack' && child.axis === axis ? child.children : [child],
  );
  return children.length < 2 ? children[0] : stackOf(axis, children);
}

function roundDown(
  facts: Facts,
  patterns: readonly UsablePattern[],
  rule: 'whole patterns only' | 'parts of patterns too',
  tidier: TreeTidier,
): Construction {
  const left = Int32Array.from(facts.problem.items.count);
  const used = new Int32Array(facts.sheetKinds);
  const sheets: SheetCode[] = [];
  const cut = ({ sheet, tree }: UsablePattern, copies: number) => {
    const counts = countsOf(tree);
    let times = Math.min(copies, facts.sheetLimit[sheet]! - used[sheet]!);
    for (const [item, count] of counts) times = Math.min(times, Math.floor(left[item]! / count));
    if (times <= 0) return;
    for (const [item, count] of counts) left[item] = left[item]! - times * count;
    used[sheet] = used[sheet]! + times;
    const code = encodeTree(tree, sheet);
    for (let i = 0; i < times; i++) sheets.push(code);
  };
  // A thousandth is what a solver may be out by.
  for (const pattern of patterns) cut(pattern, Math.floor(pattern.use + 0.001));
  if (rule === 'parts of patterns too') {
    const part = (p: UsablePattern) => p.use - Math.floor(p.use + 0.001);
    for (const pattern of [...patterns].sort((a, b) => part(b) - part(a))) {
      const tree = stillWanted(pattern.tree, left);
      if (!tree || areaOf(facts, tree) < LEAST_WANTED * areaOf(facts, pattern.tree)) continue;
      if (tidier.canBeSawn(tree, pattern.sheet)) cut({ ...pattern, tree }, 1);
    }
  }
  return withRest(facts, sheets, left, used);
}

/** Adds the items that are left, in the best of the insertion orders. */
function withRest(facts: Facts, sheets: SheetCode[], left: Int32Array, used: Int32Array): Construction {
  let best: Construction | undefined;
  for (let order = 0; order < InsertionOrders.COUNT; order++) {
    const rest = constructRest(facts, left, used, order);
    if (!best || isBetter(facts, rest, best)) best = rest;
  }
  const all = [...sheets, ...best!.plan.sheets];
  const cost = all.reduce((sum, sheet) => sum + facts.sheetCost[sheet.sheet]!, 0);
  return { plan: { sheets: all, cost }, unplaced: best!.unplaced };
}

function piecesOf(tree: Tree): number[] {
  return tree.kind === 'piece' ? [tree.item] : tree.children.flatMap(piecesOf);
}

function countsOf(tree: Tree): Map<number, number> {
  const counts = new Map<number, number>();
  for (const item of piecesOf(tree)) counts.set(item, (counts.get(item) ?? 0) + 1);
  return counts;
}

function areaOf(facts: Facts, tree: Tree): number {
  return piecesOf(tree).reduce((sum, item) => sum + facts.area[item]!, 0);
}

/** The tree with only as many pieces of a kind as are left. */
function stillWanted(tree: Tree, left: Int32Array): Tree | undefined {
  const counts = left.slice();
  const keep = (node: Tree): Tree | undefined => {
    if (node.kind === 'piece') {
      if (counts[node.item]! <= 0) return undefined;
      counts[node.item] = counts[node.item]! - 1;
      return node;
    }
    return flatStack(node.axis, node.children.map(keep));
  };
  return keep(tree);
}
