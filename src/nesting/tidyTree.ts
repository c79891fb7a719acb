import type { Um } from '../model/geometry.ts';
import type { NestPiece } from '../model/nest.ts';
import type { RectangleSheet } from '../model/rectangles.ts';
import type { Facts } from './facts.ts';
import { mayBeFirst } from './facts.ts';
import { asChildren, joinSpares, type SpareRules } from './joinSpares.ts';
import { largestParted, sawingOf } from './sawing.ts';
import type { Tree } from './sheetCode.ts';
import { STACK_H, STACK_W } from './treeLayout.ts';

type Spare = { readonly lengthUm: Um; readonly widthUm: Um };

/**
 * Turns the lazy trees of the search into trees in which every piece has its final size: the slack of each stack
 * becomes a spare piece at its end, the slack across a piece a spare piece beside it, and the corner of the sheet is
 * divided so that its offcuts are of most use; spares side by side are joined. Between trees with offcuts of equal
 * worth the one with fewer turns, then with fewer fence settings, then the one that parts the sheet nearer its middle, is
 * taken; large pieces come first in every stack, so that a heavy sheet is divided early.
 */
export class TreeTidier {
  private readonly facts: Facts;
  private readonly leastOffcut: Spare;
  private readonly kerf: number;
  private readonly unitUm: number;

  constructor(facts: Facts, leastOffcut: Spare) {
    this.facts = facts;
    this.leastOffcut = leastOffcut;
    this.kerf = facts.problem.kerf;
    this.unitUm = facts.problem.unitUm;
  }

  /** The tree on the sheet (an index into the problem's), in the sheet's own axes and without trims. */
  tidy(tree: Tree, sheetIndex: number): NestPiece {
    const sheet = this.facts.problem.sheets[sheetIndex]!;
    const allowed = this.candidates(tree, sheet).filter((root) => this.obeysSaw(root, sheetIndex, sheet));
    if (allowed.length === 0) {
      throw new Error(
        `no way to cut a tree within the saw's turns on sheet ${sheetIndex}: ${JSON.stringify(tree)}`,
      );
    }
    const joined = allowed.map((root) => joinSpares(root, this.spareRules(sheetIndex, sheet)));
    return joined.reduce((a, b) => (this.isBetter(b, a) ? b : a));
  }

  private spareRules(sheetIndex: number, sheet: RectangleSheet): SpareRules {
    return {
      kerfUm: this.kerf * this.unitUm,
      useOf: (xUm, yUm) => this.useOf(xUm, yUm),
      worth: offcutWorth,
      allowed: (root) => this.obeysSaw(root, sheetIndex, sheet),
    };
  }

  /** Whether the saw's first cut and turns allow the tree on the sheet. */
  canBeSawn(tree: Tree, sheetIndex: number): boolean {
    const sheet = this.facts.problem.sheets[sheetIndex]!;
    return this.candidates(tree, sheet).some((root) => this.obeysSaw(root, sheetIndex, sheet));
  }

  private isBetter(a: NestPiece, b: NestPiece): boolean {
    const difference = offcutWorth(a) - offcutWorth(b);
    if (difference !== 0) return difference > 0;
    const [ofA, ofB] = [sawingOf(a), sawingOf(b)];
    if (ofA.levels !== ofB.levels) return ofA.levels < ofB.levels;
    if (ofA.fenceSettings !== ofB.fenceSettings) return ofA.fenceSettings < ofB.fenceSettings;
    return this.heaviest(a) < this.heaviest(b);
  }

  /** Area of the larger piece after the first parting: all trees of a sheet are as large as it. */
  private heaviest(root: NestPiece): number {
    if (root.kind !== 'stack') return root.xUm * root.yUm;
    return largestParted(root, this.kerf * this.unitUm) * (root.axis === 'x' ? root.yUm : root.xUm);
  }

  private obeysSaw(root: NestPiece, sheetIndex: number, sheet: RectangleSheet): boolean {
    if (levels(root) > this.facts.mostLevels) return false;
    if (root.kind !== 'stack') return true;
    if (this.facts.longestCut > 0 && longestCutIn(root) > (this.facts.longestCut - this.kerf) * this.unitUm)
      return false;
    const alongW = (root.axis === 'x') !== sheet.transposed;
    return mayBeFirst(this.facts, sheetIndex, alongW ? STACK_W : STACK_H);
  }

  /** All ways to divide the corner beside and above the tree. */
  private candidates(tree: Tree, sheet: RectangleSheet): NestPiece[] {
    const { w: W, h: H } = sheet;
    const strip = this.stack('h', W, H, [this.fit(tree, W, tree.h, sheet)], sheet);
    const side = this.stack('w', W, H, [this.fit(tree, tree.w, H, sheet)], sheet);
    if (tree.kind === 'piece') return [strip, side];
    const straight = this.fit(tree, W, H, sheet);
    const inner =
      tree.axis === 'w'
        ? this.stack(
            'w',
            W,
            H,
            [this.stack('h', tree.w, H, [this.fit(tree, tree.w, tree.h, sheet)], sheet)],
            sheet,
          )
        : this.stack(
            'h',
            W,
            H,
            [this.stack('w', W, tree.h, [this.fit(tree, tree.w, tree.h, sheet)], sheet)],
            sheet,
          );
    return [straight, tree.axis === 'w' ? strip : side, inner];
  }

  /** The tree in a slot, kerf included in both; one of the sizes is the tree's own unless it is a stack. */
  private fit(tree: Tree, w: number, h: number, sheet: RectangleSheet): NestPiece {
    if (tree.kind === 'stack') {
      const children = tree.children.map((child) =>
        tree.axis === 'w' ? this.fit(child, child.w, h, sheet) : this.fit(child, w, child.h, sheet),
      );
      return this.stack(tree.axis, w, h, children, sheet);
    }
    if (tree.w < w) return this.stack('w', w, h, [this.fit(tree, tree.w, h, sheet)], sheet);
    if (tree.h < h) return this.stack('h', w, h, [this.fit(tree, w, tree.h, sheet)], sheet);
    const lengthAlong = tree.turned === sheet.transposed ? 'x' : 'y';
    return { kind: 'demand', ...this.size(w, h, sheet), demand: tree.item, lengthAlong };
  }

  private size(w: number, h: number, sheet: RectangleSheet): { xUm: Um; yUm: Um } {
    const wUm = (w - this.kerf) * this.unitUm;
    const hUm = (h - this.kerf) * this.unitUm;
    return sheet.transposed ? { xUm: hUm, yUm: wUm } : { xUm: wUm, yUm: hUm };
  }

  /** The children side by side, large ones first and equal ones together, and what is left as a spare piece. */
  private stack(
    axis: 'w' | 'h',
    w: number,
    h: number,
    given: readonly NestPiece[],
    sheet: RectangleSheet,
  ): NestPiece {
    const along = (axis === 'w') !== sheet.transposed ? 'xUm' : 'yUm';
    const kerfUm = this.kerf * this.unitUm;
    // A child that fills its slot across may be a stack along this axis itself: it gives up its children.
    const children = given.flatMap(
      (child) => asChildren(child, along === 'xUm' ? 'x' : 'y', kerfUm) ?? [child],
    );
    const used = children.reduce((sum, child) => sum + child[along] + kerfUm, 0);
    const leftUm = (axis === 'w' ? w : h) * this.unitUm - used;
    if (children.length === 1 && leftUm === 0) return children[0]!;
    const keyed = children.map((child) => ({ child, key: JSON.stringify(child) }));
    keyed.sort((a, b) => b.child[along] - a.child[along] || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
    const pieces = keyed.map(({ child }) => child);
    if (leftUm > kerfUm) {
      const left = leftUm / this.unitUm;
      pieces.push(this.spare(axis === 'w' ? left : w, axis === 'w' ? h : left, sheet));
    }
    return { kind: 'stack', axis: along === 'xUm' ? 'x' : 'y', ...this.size(w, h, sheet), children: pieces };
  }

  private spare(w: number, h: number, sheet: RectangleSheet): NestPiece {
    const size = this.size(w, h, sheet);
    return { kind: 'spare', ...size, use: this.useOf(size.xUm, size.yUm) };
  }

  private useOf(xUm: Um, yUm: Um): 'offcut' | 'waste' {
    const { lengthUm, widthUm } = this.leastOffcut;
    const kept =
      Math.max(xUm, yUm) >= Math.max(lengthUm, widthUm) && Math.min(xUm, yUm) >= Math.min(lengthUm, widthUm);
    return kept ? 'offcut' : 'waste';
  }
}

/** Levels of alternating stacks, 0 for a sheet that is used whole. */
export function levels(piece: NestPiece): number {
  if (piece.kind !== 'stack') return 0;
  return 1 + piece.children.reduce((most, child) => Math.max(most, levels(child)), 0);
}

/** Length of the longest cut of a tree, in µm, trims left out; 0 for one that is not cut. */
export function longestCutIn(piece: NestPiece): Um {
  if (piece.kind !== 'stack') return 0;
  const own = piece.axis === 'x' ? piece.yUm : piece.xUm;
  return piece.children.reduce((most, child) => Math.max(most, longestCutIn(child)), own);
}

/** Sum of the squared areas (m⁴) of the offcuts, so that one large offcut is worth more than several small ones. */
export function offcutWorth(piece: NestPiece): number {
  switch (piece.kind) {
    case 'stack':
      return piece.children.reduce((sum, child) => sum + offcutWorth(child), 0);
    case 'spare': {
      const areaM2 = (piece.xUm * piece.yUm) / 1e12;
      return piece.use === 'offcut' ? areaM2 * areaM2 : 0;
    }
    case 'demand':
      return 0;
  }
}
