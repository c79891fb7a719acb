import type { ActivePlaces } from './activePlaces.ts';
import { AS_IS, type Facts, mayBeFirst, rootLevel, TURNED } from './facts.ts';
import { keepsLongestCut } from './longestCut.ts';
import type { SearchRandom } from './searchRandom.ts';
import { FREE_AREA, type SheetTrees, SUMS, VALUE, VERSION } from './sheetTrees.ts';
import { freeCornerValue, slackValue } from './slackValue.ts';
import * as at from './treeLayout.ts';

const { NODE_SIZE, PIECE, STACK_W, STACK_H } = at;

/** One in this many candidates is passed over at random, so that the same gap is not always filled first. */
const BLINK_ONE_IN = 50;

/**
 * Finds the place where a further piece does the least harm to the free rectangles.
 *
 * Candidates are all nodes of all open sheets: the end of a stack, or a new stack around a node and the piece. The
 * cost of a candidate is the loss in value of the free rectangles. Sheets on which no node has room for a kind are
 * remembered until they change.
 */
export class Insertion {
  // The best candidate of the last `find`.
  place = 0;
  node = 0;
  axis = 0;
  w = 0;
  h = 0;
  gain = 0;

  private readonly trees: SheetTrees;
  private readonly facts: Facts;
  private readonly random: SearchRandom | null;
  /** `failedAt[kind * places + place]`: version of the sheet on which the kind found no room. */
  private readonly failedAt: Float64Array;
  private feasible = false;
  private found = false;

  /** Without `random` no candidate is passed over. */
  constructor(trees: SheetTrees, random: SearchRandom | null) {
    this.trees = trees;
    this.facts = trees.facts;
    this.random = random;
    this.failedAt = new Float64Array(trees.facts.kinds * trees.places);
  }

  /** Looks on the active sheets for the best place for a piece of the kind; false when there is none. */
  find(kind: number, active: ActivePlaces): boolean {
    const { trees, facts, failedAt } = this;
    const { sums } = trees;
    const { list, count } = active;
    const area = facts.area[kind]!;
    const row = kind * trees.places;
    this.found = false;
    this.gain = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const place = list[i]!;
      const sum = place * SUMS;
      if (sums[sum + FREE_AREA]! < area) continue;
      const version = sums[sum + VERSION]!;
      if (failedAt[row + place] === version) continue;
      if (!this.findOn(place, kind)) failedAt[row + place] = version;
    }
    return this.found;
  }

  /** Looks on one open sheet only. */
  findOnly(place: number, kind: number): boolean {
    const failed = kind * this.trees.places + place;
    const version = this.trees.sums[place * SUMS + VERSION]!;
    this.found = false;
    this.gain = Number.NEGATIVE_INFINITY;
    if (this.trees.sums[place * SUMS + FREE_AREA]! < this.facts.area[kind]!) return false;
    if (this.failedAt[failed] === version) return false;
    if (!this.findOn(place, kind)) this.failedAt[failed] = version;
    return this.found;
  }

  /** Puts the piece of the last successful `find` where it was found. */
  insert(kind: number): void {
    const { trees, place } = this;
    const value = trees.sums[place * SUMS + VALUE]!;
    trees.add(place, this.node, this.axis, this.w, this.h, kind);
    trees.setValue(place, value + this.gain);
  }

  /** Looks on one sheet, keeping the best so far of all sheets; true when there is any room, passed over or not. */
  private findOn(place: number, kind: number): boolean {
    const { trees, facts } = this;
    const { nodes } = trees;
    const base = place * trees.region;
    const sheet = nodes[base + at.SHEET]!;
    const ways = facts.ways[sheet * facts.kinds + kind]!;
    const root = nodes[base + at.ROOT]!;
    if (nodes[base + at.STALE] === 1) trees.refreshRooms(place);
    if (ways === 0 || (root !== 0 && facts.short[kind]! > nodes[base + at.MOST_SHORT]!)) return false;
    if (!trees.hasRoom(place)) return false;
    const w = facts.w[kind]!;
    const h = facts.h[kind]!;
    this.feasible = false;
    if (root === 0) {
      if ((ways & AS_IS) !== 0) this.considerEmpty(place, sheet, w, h);
      if ((ways & TURNED) !== 0) this.considerEmpty(place, sheet, h, w);
      return this.feasible;
    }
    if ((ways & AS_IS) !== 0) this.scan(place, base, w, h);
    if ((ways & TURNED) !== 0) this.scan(place, base, h, w);
    return this.feasible;
  }

  private scan(place: number, base: number, w: number, h: number): void {
    const { nodes } = this.trees;
    const end = nodes[base + at.USED_END]!;
    for (let node = base + NODE_SIZE; node < end; node += NODE_SIZE) {
      if (w <= nodes[node + at.ROOM_W]! && h <= nodes[node + at.ROOM_H]!) {
        this.consider(place, node, this.axisAt(node), w, h);
      }
    }
    // The root may also be wrapped along the axis that the scan did not try.
    const root = nodes[base + at.ROOT]!;
    const axis = nodes[root] === STACK_H ? STACK_W : STACK_H;
    const spareW = nodes[root + at.MOST_W]! - (axis === STACK_W ? nodes[root + at.LEAST_W]! : 0);
    const spareH = nodes[root + at.MOST_H]! - (axis === STACK_H ? nodes[root + at.LEAST_H]! : 0);
    if (w <= spareW && h <= spareH) this.consider(place, root, axis, w, h);
  }

  /** The axis along which a piece is added at the node: its own for a stack, across its parent's for a piece. */
  private axisAt(node: number): number {
    const { nodes } = this.trees;
    const kind = nodes[node]!;
    if (kind !== PIECE) return kind;
    const parent = nodes[node + at.PARENT]!;
    return parent !== 0 && nodes[parent] === STACK_W ? STACK_H : STACK_W;
  }

  private considerEmpty(place: number, sheet: number, w: number, h: number): void {
    const { facts, trees } = this;
    this.feasible = true;
    if (this.random?.oneIn(BLINK_ONE_IN)) return;
    const after = freeCornerValue(facts.sheetW[sheet]!, facts.sheetH[sheet]!, w, h, facts.greatestSheet);
    this.keepBest(place, 0, 0, w, h, after - trees.emptyValue(sheet));
  }

  private consider(place: number, node: number, axis: number, w: number, h: number): void {
    if (this.facts.limited && !this.obeysSaw(place, node, axis, w, h)) return;
    this.feasible = true;
    if (this.random?.oneIn(BLINK_ONE_IN)) return;
    this.keepBest(place, node, axis, w, h, this.gainAt(place, node, axis, w, h));
  }

  private keepBest(place: number, node: number, axis: number, w: number, h: number, gain: number): void {
    if (gain <= this.gain) return;
    this.found = true;
    this.gain = gain;
    this.place = place;
    this.node = node;
    this.axis = axis;
    this.w = w;
    this.h = h;
  }

  /** Change of the value of the sheet's free rectangles when the piece is added. */
  private gainAt(place: number, node: number, axis: number, w: number, h: number): number {
    const { nodes } = this.trees;
    const scale = this.facts.greatestSheet;
    const oldW = nodes[node + at.LEAST_W]!;
    const oldH = nodes[node + at.LEAST_H]!;
    let gain: number;
    let newW: number;
    let newH: number;
    if (axis === STACK_W) {
      newW = oldW + w;
      newH = Math.max(h, oldH);
      gain = slackValue(w * (newH - h), scale);
      if (newH > oldH) {
        gain +=
          nodes[node] === STACK_W
            ? this.gainOfHigher(node, 0, newH)
            : slackValue(oldW * (newH - oldH), scale);
      }
    } else {
      newH = oldH + h;
      newW = Math.max(w, oldW);
      gain = slackValue(h * (newW - w), scale);
      if (newW > oldW) {
        gain +=
          nodes[node] === STACK_H ? this.gainOfWider(node, 0, newW) : slackValue(oldH * (newW - oldW), scale);
      }
    }
    return gain + this.gainAbove(place, node, newW, newH);
  }

  /** Gain in the free rectangles above the children of a stack along w that becomes higher, one child left out. */
  private gainOfHigher(stack: number, except: number, newH: number): number {
    const { nodes } = this.trees;
    const scale = this.facts.greatestSheet;
    const oldH = nodes[stack + at.LEAST_H]!;
    let gain = 0;
    for (let child = nodes[stack + at.FIRST]!; child !== 0; child = nodes[child + at.NEXT]!) {
      if (child === except) continue;
      const w = nodes[child + at.LEAST_W]!;
      const h = nodes[child + at.LEAST_H]!;
      gain += slackValue(w * (newH - h), scale) - slackValue(w * (oldH - h), scale);
    }
    return gain;
  }

  private gainOfWider(stack: number, except: number, newW: number): number {
    const { nodes } = this.trees;
    const scale = this.facts.greatestSheet;
    const oldW = nodes[stack + at.LEAST_W]!;
    let gain = 0;
    for (let child = nodes[stack + at.FIRST]!; child !== 0; child = nodes[child + at.NEXT]!) {
      if (child === except) continue;
      const w = nodes[child + at.LEAST_W]!;
      const h = nodes[child + at.LEAST_H]!;
      gain += slackValue(h * (newW - w), scale) - slackValue(h * (oldW - w), scale);
    }
    return gain;
  }

  /** Change outside a node that grows to newW × newH: its own free end, then each level above until it is absorbed. */
  private gainAbove(place: number, from: number, fromW: number, fromH: number): number {
    const { nodes } = this.trees;
    const scale = this.facts.greatestSheet;
    let gain = 0;
    let node = from;
    let newW = fromW;
    let newH = fromH;
    for (;;) {
      const oldW = nodes[node + at.LEAST_W]!;
      const oldH = nodes[node + at.LEAST_H]!;
      if (newW === oldW && newH === oldH) return gain;
      const parent = nodes[node + at.PARENT]!;
      if (parent === 0) return gain + this.gainOfCorner(place, oldW, oldH, newW, newH);
      const parentW = nodes[parent + at.LEAST_W]!;
      const parentH = nodes[parent + at.LEAST_H]!;
      if (nodes[parent] === STACK_W) {
        const across = Math.max(newH, parentH);
        gain += slackValue(newW * (across - newH), scale) - slackValue(oldW * (parentH - oldH), scale);
        if (across > parentH) gain += this.gainOfHigher(parent, node, across);
        newW = parentW + newW - oldW;
        newH = across;
      } else {
        const across = Math.max(newW, parentW);
        gain += slackValue(newH * (across - newW), scale) - slackValue(oldH * (parentW - oldW), scale);
        if (across > parentW) gain += this.gainOfWider(parent, node, across);
        newH = parentH + newH - oldH;
        newW = across;
      }
      node = parent;
    }
  }

  private gainOfCorner(place: number, oldW: number, oldH: number, newW: number, newH: number): number {
    const { facts } = this;
    const sheet = this.trees.sheetOf(place);
    const w = facts.sheetW[sheet]!;
    const h = facts.sheetH[sheet]!;
    const scale = facts.greatestSheet;
    return freeCornerValue(w, h, newW, newH, scale) - freeCornerValue(w, h, oldW, oldH, scale);
  }

  private obeysSaw(place: number, node: number, axis: number, w: number, h: number): boolean {
    const { longestCut } = this.facts;
    if (longestCut > 0 && !keepsLongestCut(this.trees, place, node, axis, w, h, longestCut)) return false;
    return this.keepsLevels(place, node, axis, w, h);
  }

  /** Whether the tree still has at most the allowed number of levels with the piece added. */
  private keepsLevels(place: number, node: number, axis: number, w: number, h: number): boolean {
    const { facts } = this;
    const { nodes } = this.trees;
    const base = place * this.trees.region;
    const sheet = nodes[base + at.SHEET]!;
    const across = axis === STACK_W ? nodes[node + at.LEAST_H]! : nodes[node + at.LEAST_W]!;
    const own = axis === STACK_W ? h : w;
    let level: number;
    if (nodes[node] === axis) {
      level = nodes[node + at.LEVEL]!;
    } else if (node === nodes[base + at.ROOT]) {
      level = rootLevel(facts, sheet, axis);
      if (nodes[node] !== PIECE && level + nodes[base + at.NEED]! > facts.mostLevels) return false;
    } else {
      level = nodes[node + at.LEVEL]! + 1;
    }
    if (!this.leavesFirstCut(place, sheet, node, axis, w, h)) return false;
    if (level < facts.mostLevels) return true;
    if (level > facts.mostLevels || own !== across) return false;
    // A stack on the last level that is also the first must be as wide or high as the sheet itself.
    if (level > 1) return true;
    return own === (axis === STACK_W ? facts.sheetH[sheet]! : facts.sheetW[sheet]!);
  }

  /** Whether a root along the axis that must not be cut first stays smaller across than the sheet. */
  private leavesFirstCut(
    place: number,
    sheet: number,
    from: number,
    axis: number,
    w: number,
    h: number,
  ): boolean {
    const { facts } = this;
    if (mayBeFirst(facts, sheet, STACK_W) && mayBeFirst(facts, sheet, STACK_H)) return true;
    const { nodes } = this.trees;
    const root = this.trees.root(place);
    const rootAxis = from === root ? axis : nodes[root]!;
    if (mayBeFirst(facts, sheet, rootAxis)) return true;
    // Sizes of the node with the piece, then of each stack above it.
    let newW = axis === STACK_W ? nodes[from + at.LEAST_W]! + w : Math.max(nodes[from + at.LEAST_W]!, w);
    let newH = axis === STACK_H ? nodes[from + at.LEAST_H]! + h : Math.max(nodes[from + at.LEAST_H]!, h);
    for (let node = from; node !== root; ) {
      const parent = nodes[node + at.PARENT]!;
      const parentW = nodes[parent + at.LEAST_W]!;
      const parentH = nodes[parent + at.LEAST_H]!;
      const along = nodes[parent] === STACK_W;
      newW = along ? parentW + newW - nodes[node + at.LEAST_W]! : Math.max(parentW, newW);
      newH = along ? Math.max(parentH, newH) : parentH + newH - nodes[node + at.LEAST_H]!;
      node = parent;
    }
    return rootAxis === STACK_W ? newH < facts.sheetH[sheet]! : newW < facts.sheetW[sheet]!;
  }
}
