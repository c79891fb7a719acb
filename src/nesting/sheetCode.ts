import type { SheetTrees } from './sheetTrees.ts';
import * as at from './treeLayout.ts';
import { PIECE, STACK_H, STACK_W } from './treeLayout.ts';

/** A tree taken down to numbers: compact, and comparable. Made by `encodeSheet`, read by `readTree`. */
export interface SheetCode {
  /** Index into the problem's sheets. */
  readonly sheet: number;
  /**
   * Nodes from the root on, each before its children: for a piece, 2 · kind, plus 1 when it is turned; for a stack,
   * −1 − (2 · number of children + axis), axis 0 along w and 1 along h.
   */
  readonly code: Int32Array;
}

/** A search tree as objects, for work outside the search. */
export type Tree =
  | {
      readonly kind: 'piece';
      readonly item: number;
      readonly turned: boolean;
      readonly w: number;
      readonly h: number;
    }
  | {
      readonly kind: 'stack';
      readonly axis: 'w' | 'h';
      /** Least size, as given by the children. */
      readonly w: number;
      readonly h: number;
      readonly children: readonly Tree[];
    };

/** The tree that lies on a place, which must be open and not empty. */
export function encodeSheet(trees: SheetTrees, place: number): SheetCode {
  const { nodes, facts } = trees;
  const code: number[] = [];
  const visit = (node: number): void => {
    if (nodes[node] === PIECE) {
      const item = nodes[node + at.FIRST]!;
      code.push(2 * item + (nodes[node + at.LEAST_W] === facts.w[item] ? 0 : 1));
      return;
    }
    let children = 0;
    for (let c = nodes[node + at.FIRST]!; c !== 0; c = nodes[c + at.NEXT]!) children++;
    code.push(-1 - (2 * children + (nodes[node] === STACK_W ? 0 : 1)));
    for (let c = nodes[node + at.FIRST]!; c !== 0; c = nodes[c + at.NEXT]!) visit(c);
  };
  visit(trees.root(place));
  return { sheet: trees.sheetOf(place), code: Int32Array.from(code) };
}

/** Lays the tree of a code on a closed place. */
export function layOut(trees: SheetTrees, place: number, sheet: SheetCode): void {
  const { facts } = trees;
  const { code } = sheet;
  let next = 0;
  const lay = (parent: number): void => {
    const token = code[next++]!;
    if (token >= 0) {
      const item = token >> 1;
      const turned = (token & 1) === 1;
      const w = turned ? facts.h[item]! : facts.w[item]!;
      const h = turned ? facts.w[item]! : facts.h[item]!;
      trees.hang(place, parent, PIECE, w, h, item);
      return;
    }
    const node = trees.hang(place, parent, (-1 - token) % 2 === 0 ? STACK_W : STACK_H, 0, 0, 0);
    for (let children = (-1 - token) >> 1; children > 0; children--) lay(node);
    trees.resizeUpwards(node);
  };
  trees.open(place, sheet.sheet);
  lay(0);
  trees.refreshValue(place);
}

/** The tree behind a code; `w` and `h` are the sizes of the kinds of items. */
export function readTree(code: Int32Array, w: Int32Array, h: Int32Array): Tree {
  let next = 0;
  const read = (): Tree => {
    const token = code[next++]!;
    if (token >= 0) {
      const item = token >> 1;
      const turned = (token & 1) === 1;
      return {
        kind: 'piece',
        item,
        turned,
        w: turned ? h[item]! : w[item]!,
        h: turned ? w[item]! : h[item]!,
      };
    }
    const axis = (-1 - token) % 2 === 0 ? 'w' : 'h';
    const children = Array.from({ length: (-1 - token) >> 1 }, read);
    return stackOf(axis, children);
  };
  return read();
}

/** A stack of the children along the axis, with its least size. */
export function stackOf(axis: 'w' | 'h', children: readonly Tree[]): Tree {
  const sum = (size: 'w' | 'h') => children.reduce((all, child) => all + child[size], 0);
  const most = (size: 'w' | 'h') => children.reduce((all, child) => Math.max(all, child[size]), 0);
  return {
    kind: 'stack',
    axis,
    w: axis === 'w' ? sum('w') : most('w'),
    h: axis === 'h' ? sum('h') : most('h'),
    children,
  };
}

/** Kinds of the pieces of a code, in its order. */
export function* piecesOf(code: Int32Array): Generator<number> {
  for (const token of code) if (token >= 0) yield token >> 1;
}

/** The code of a tree on a sheet. */
export function encodeTree(tree: Tree, sheet: number): SheetCode {
  const code: number[] = [];
  const visit = (node: Tree): void => {
    if (node.kind === 'piece') {
      code.push(2 * node.item + (node.turned ? 1 : 0));
      return;
    }
    code.push(-1 - (2 * node.children.length + (node.axis === 'w' ? 0 : 1)));
    node.children.forEach(visit);
  };
  visit(tree);
  return { sheet, code: Int32Array.from(code) };
}
