import type { StockGroup } from '../model/stock.ts';
import type { SheetTrees } from './sheetTrees.ts';
import * as at from './treeLayout.ts';

const { STACK_H, STACK_W } = at;

/**
 * What the longest cut of a saw leaves of the ways to cut a sheet. No cut is longer than it: neither a trim, as long
 * as the sheet is where the trim is sawn (raw, or less by the trims sawn before), nor the cuts of a stack, as long as
 * the piece that they divide is across the stack, trims and kerf off, nor the parting of a matched blank, which may be
 * as long as the blank.
 *
 * It follows for the lazy trees of the search: a stack is cut in its least size across, or, where it is the first of a
 * sheet, in the size of the trimmed sheet. And a piece longer than the longest cut comes only from a sheet that is as
 * wide as the piece, between two first cuts.
 */
export interface LongestCut {
  /** In the problem's units, kerf added as to every size. */
  readonly most: number;
  /** For every sheet: bit 1 when a stack along w may be cut first, bit 2 when one along h may. */
  readonly firstStacks: readonly number[];
  /** For every sheet, whether it can be trimmed when nothing else is cut. */
  readonly whole: readonly boolean[];
  /** For every demand, whether it is parted after it has been cut free, and so must itself be within the longest cut. */
  readonly parted: readonly boolean[];
}

/** Null when the saw has no longest cut, or none of its sheets is longer. */
export function longestCutOf(group: StockGroup, unitUm: number): LongestCut | null {
  const { longestCutUm, kerfUm, firstCut } = group.saw;
  if (longestCutUm === null) return null;
  if (group.sheets.every((sheet) => Math.max(sheet.lengthUm, sheet.widthUm) <= longestCutUm)) return null;
  const fits = (cutUm: number) => cutUm <= longestCutUm;
  const rules = group.sheets.map(({ lengthUm, widthUm, trim, grain }) => {
    const ends = trim.left > 0 || trim.right > 0;
    const edges = trim.near > 0 || trim.far > 0;
    const trimmedLength = lengthUm - trim.left - trim.right;
    const trimmedWidth = widthUm - trim.near - trim.far;
    // Trims across the way of the first cuts are sawn first, while the sheet is raw.
    const trimsForRips = !(ends && !fits(widthUm)) && !(edges && !fits(trimmedLength));
    const trimsForCrosscuts = !(edges && !fits(lengthUm)) && !(ends && !fits(trimmedWidth));
    const rips = trimsForRips && fits(trimmedLength);
    const crosscuts = trimsForCrosscuts && fits(trimmedWidth);
    const [stackAlongX, stackAlongY] = grain === 'width' ? [2, 1] : [1, 2];
    return {
      first: (crosscuts ? stackAlongX : 0) | (rips ? stackAlongY : 0),
      whole: firstCut === 'crosscut' ? trimsForCrosscuts : trimsForRips,
    };
  });
  return {
    most: Math.floor((longestCutUm + kerfUm) / unitUm),
    firstStacks: rules.map(({ first }) => first),
    whole: rules.map(({ whole }) => whole),
    parted: group.demands.map(({ blank }) => blank !== undefined),
  };
}

/** Whether the stacks of a place still have cuts of at most `most` with a piece w × h added at a node along `axis`. */
export function keepsLongestCut(
  trees: SheetTrees,
  place: number,
  from: number,
  axis: number,
  w: number,
  h: number,
  most: number,
): boolean {
  const { nodes, facts } = trees;
  const sheet = trees.sheetOf(place);
  const root = trees.root(place);
  // A piece longer than the longest cut must lie between two first cuts: beside the others on a root along its short side.
  if (w > most && !(from === root && axis === STACK_W && h === facts.sheetH[sheet]!)) return false;
  if (h > most && !(from === root && axis === STACK_H && w === facts.sheetW[sheet]!)) return false;
  let newW = nodes[from + at.LEAST_W]!;
  let newH = nodes[from + at.LEAST_H]!;
  if (axis === STACK_W) {
    newW += w;
    newH = Math.max(newH, h);
  } else {
    newH += h;
    newW = Math.max(newW, w);
  }
  for (let node = from, stack = axis; ; ) {
    if ((stack === STACK_W ? newH : newW) > most) return false;
    if (node === root) return true;
    const parent = nodes[node + at.PARENT]!;
    const parentW = nodes[parent + at.LEAST_W]!;
    const parentH = nodes[parent + at.LEAST_H]!;
    stack = nodes[parent]!;
    const along = stack === STACK_W;
    newW = along ? parentW + newW - nodes[node + at.LEAST_W]! : Math.max(parentW, newW);
    newH = along ? Math.max(parentH, newH) : parentH + newH - nodes[node + at.LEAST_H]!;
    node = parent;
  }
}
