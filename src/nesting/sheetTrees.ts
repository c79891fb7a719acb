import { type Facts, rootLevel } from './facts.ts';
import { freeCornerValue, slackValue } from './slackValue.ts';
import * as at from './treeLayout.ts';

const { NODE_SIZE, FREE, PIECE, STACK_W, STACK_H } = at;

/** Numbers kept for each sheet in `SheetTrees.sums`. */
export const SUMS = 3;
/** Free area of an open sheet, −1 of a closed one. */
export const FREE_AREA = 0;
/** Sum of the values of all its free rectangles. */
export const VALUE = 1;
/** Changes whenever the tree does, and never comes back with another tree. */
export const VERSION = 2;

/**
 * The trees of a number of sheets, with adding and taking away of pieces, and with going back to the state at the
 * last `begin`. Places for sheets are numbered from 0; a place is open (a sheet lies there) or closed.
 *
 * Nothing is allocated after the constructor.
 */
export class SheetTrees {
  readonly facts: Facts;
  readonly places: number;
  readonly nodes: Int32Array;
  readonly sums: Float64Array;
  /** Length of a region. */
  readonly region: number;
  /** Open sheets of each kind. */
  readonly usedOfKind: Int32Array;
  openSheets = 0;
  openCost = 0;
  /** Sum over the open sheets. */
  totalValue = 0;

  private lastVersion = 0;
  private readonly backup: number;
  private readonly sumsBackup: number;
  private readonly touched: Int32Array;
  private readonly isTouched: Uint8Array;
  private touchedCount = 0;
  private costAtBegin = 0;
  private valueAtBegin = 0;

  /** Room for `places` sheets with at most `piecesPerSheet` pieces each. */
  constructor(facts: Facts, places: number, piecesPerSheet: number) {
    this.facts = facts;
    this.places = places;
    this.region = NODE_SIZE * (2 * piecesPerSheet + 1);
    this.backup = this.region * places;
    this.nodes = new Int32Array(2 * this.backup);
    this.sumsBackup = SUMS * places;
    this.sums = new Float64Array(2 * this.sumsBackup);
    this.usedOfKind = new Int32Array(facts.sheetKinds);
    this.touched = new Int32Array(places);
    this.isTouched = new Uint8Array(places);
    for (let place = 0; place < places; place++) this.clear(place);
  }

  placeOf(node: number): number {
    return (node / this.region) | 0;
  }

  /** From here on `rollBack` leads back to this state. */
  begin(): void {
    for (let i = 0; i < this.touchedCount; i++) this.isTouched[this.touched[i]!] = 0;
    this.touchedCount = 0;
    this.costAtBegin = this.openCost;
    this.valueAtBegin = this.totalValue;
  }

  rollBack(): void {
    const { nodes, region, backup, sums, sumsBackup } = this;
    for (let i = 0; i < this.touchedCount; i++) {
      const place = this.touched[i]!;
      const base = place * region;
      if (nodes[base + at.OPEN] === 1) this.countSheet(nodes[base + at.SHEET]!, -1);
      const from = backup + base;
      nodes.copyWithin(base, from, backup + nodes[from + at.USED_END]!);
      const sum = place * SUMS;
      sums.copyWithin(sum, sumsBackup + sum, sumsBackup + sum + SUMS);
      if (nodes[base + at.OPEN] === 1) this.countSheet(nodes[base + at.SHEET]!, 1);
    }
    this.openCost = this.costAtBegin;
    this.totalValue = this.valueAtBegin;
  }

  private countSheet(sheet: number, by: number): void {
    this.usedOfKind[sheet] = this.usedOfKind[sheet]! + by;
    this.openSheets += by;
  }

  /** Keeps a copy of the sheet for `rollBack`; to be called before anything of it changes. */
  touch(place: number): void {
    if (this.isTouched[place] === 1) return;
    this.isTouched[place] = 1;
    this.touched[this.touchedCount++] = place;
    const base = place * this.region;
    this.nodes.copyWithin(this.backup + base, base, this.nodes[base + at.USED_END]!);
    const sum = place * SUMS;
    this.sums.copyWithin(this.sumsBackup + sum, sum, sum + SUMS);
  }

  /** Sheets touched since `begin`, as `touchedPlace(0 …)`. */
  get touchedPlaces(): number {
    return this.touchedCount;
  }

  touchedPlace(index: number): number {
    return this.touched[index]!;
  }

  private clear(place: number): void {
    const { nodes, sums } = this;
    const base = place * this.region;
    nodes.fill(0, base, base + NODE_SIZE);
    nodes[base + at.USED_END] = base + NODE_SIZE;
    sums[place * SUMS + FREE_AREA] = -1;
    sums[place * SUMS + VALUE] = 0;
    sums[place * SUMS + VERSION] = ++this.lastVersion;
  }

  /** Lays an empty sheet of the kind on a closed place. */
  open(place: number, sheet: number): void {
    this.touch(place);
    this.clear(place);
    const base = place * this.region;
    this.nodes[base + at.SHEET] = sheet;
    this.nodes[base + at.OPEN] = 1;
    this.sums[place * SUMS + FREE_AREA] = this.facts.sheetArea[sheet]!;
    this.countSheet(sheet, 1);
    this.openCost += this.facts.sheetCost[sheet]!;
    this.setValue(place, this.emptyValue(sheet));
  }

  /** Takes an empty sheet away. */
  close(place: number): void {
    this.touch(place);
    const sheet = this.nodes[place * this.region + at.SHEET]!;
    this.countSheet(sheet, -1);
    this.openCost -= this.facts.sheetCost[sheet]!;
    this.setValue(place, 0);
    this.clear(place);
  }

  emptyValue(sheet: number): number {
    return slackValue(this.facts.sheetArea[sheet]!, this.facts.greatestSheet);
  }

  isOpen(place: number): boolean {
    return this.nodes[place * this.region + at.OPEN] === 1;
  }

  root(place: number): number {
    return this.nodes[place * this.region + at.ROOT]!;
  }

  sheetOf(place: number): number {
    return this.nodes[place * this.region + at.SHEET]!;
  }

  pieces(place: number): number {
    return this.nodes[place * this.region + at.PIECES]!;
  }

  /** First closed place, or −1. */
  closedPlace(): number {
    for (let place = 0; place < this.places; place++) {
      if (this.nodes[place * this.region + at.OPEN] === 0) return place;
    }
    return -1;
  }

  setValue(place: number, value: number): void {
    const index = place * SUMS + VALUE;
    this.totalValue += value - this.sums[index]!;
    this.sums[index] = value;
  }

  /** A fresh node of the place; the caller has made sure that there is room (see `hasRoom`). */
  private allocate(base: number): number {
    const { nodes } = this;
    const free = nodes[base + at.FREE_LIST]!;
    if (free !== 0) {
      nodes[base + at.FREE_LIST] = nodes[free + at.FIRST]!;
      return free;
    }
    const node = nodes[base + at.USED_END]!;
    nodes[base + at.USED_END] = node + NODE_SIZE;
    return node;
  }

  private release(base: number, node: number): void {
    const { nodes } = this;
    nodes[node] = FREE;
    nodes[node + at.ROOM_W] = -1;
    nodes[node + at.ROOM_H] = -1;
    nodes[node + at.FIRST] = nodes[base + at.FREE_LIST]!;
    nodes[base + at.FREE_LIST] = node;
  }

  /** Whether a further piece (and a stack around it) finds nodes. */
  hasRoom(place: number): boolean {
    return (this.nodes[place * this.region + at.PIECES]! + 1) * 2 * NODE_SIZE < this.region;
  }

  /**
   * Adds a piece w × h of the kind at a node: to the end of the stack when it is one along `axis`, else both are put
   * in a new stack along `axis`. Node 0 stands for the empty sheet. Updates sizes, not the value.
   */
  add(place: number, node: number, axis: number, w: number, h: number, kind: number): void {
    this.touch(place);
    const { nodes } = this;
    if (node === 0) {
      this.hang(place, 0, PIECE, w, h, kind);
      return;
    }
    const stack = nodes[node] === axis ? node : this.wrap(place * this.region, node, axis);
    this.hang(place, stack, PIECE, w, h, kind);
    this.resizeUpwards(stack);
  }

  /**
   * Hangs a new node as the first child of `parent` (0: as the root). For a piece `what` is PIECE and `kind` its item;
   * for a stack `what` is its axis, to be sized with `resizeUpwards` when it is full. For building a known tree node by node.
   */
  hang(place: number, parent: number, what: number, w: number, h: number, kind: number): number {
    this.touch(place);
    const { nodes } = this;
    const base = place * this.region;
    const node = this.allocate(base);
    nodes[node] = what;
    nodes[node + at.FIRST] = kind;
    nodes[node + at.NEXT] = 0;
    nodes[node + at.PREVIOUS] = 0;
    nodes[node + at.PARENT] = 0;
    nodes[node + at.LEAST_W] = w;
    nodes[node + at.LEAST_H] = h;
    if (parent === 0) nodes[base + at.ROOT] = node;
    else this.pushChild(parent, node);
    if (what === PIECE) this.countPiece(place, w * h);
    return node;
  }

  private countPiece(place: number, area: number): void {
    const base = place * this.region;
    this.nodes[base + at.STALE] = 1;
    this.nodes[base + at.PIECES] = this.nodes[base + at.PIECES]! + 1;
    const sum = place * SUMS;
    this.sums[sum + FREE_AREA] = this.sums[sum + FREE_AREA]! - area;
    this.sums[sum + VERSION] = ++this.lastVersion;
  }

  private pushChild(stack: number, child: number): void {
    const { nodes } = this;
    const first = nodes[stack + at.FIRST]!;
    nodes[child + at.PARENT] = stack;
    nodes[child + at.PREVIOUS] = 0;
    nodes[child + at.NEXT] = first;
    if (first !== 0) nodes[first + at.PREVIOUS] = child;
    nodes[stack + at.FIRST] = child;
  }

  /** Puts a new stack in the place of the node, with the node as its only child. */
  private wrap(base: number, node: number, axis: number): number {
    const { nodes } = this;
    const stack = this.allocate(base);
    nodes[stack] = axis;
    nodes[stack + at.FIRST] = 0;
    nodes[stack + at.LEAST_W] = nodes[node + at.LEAST_W]!;
    nodes[stack + at.LEAST_H] = nodes[node + at.LEAST_H]!;
    this.replace(base, node, stack);
    this.pushChild(stack, node);
    return stack;
  }

  /** Hangs `next` where `node` hangs. */
  private replace(base: number, node: number, next: number): void {
    const { nodes } = this;
    const parent = nodes[node + at.PARENT]!;
    const before = nodes[node + at.PREVIOUS]!;
    const after = nodes[node + at.NEXT]!;
    nodes[next + at.PARENT] = parent;
    nodes[next + at.PREVIOUS] = before;
    nodes[next + at.NEXT] = after;
    if (before !== 0) nodes[before + at.NEXT] = next;
    if (after !== 0) nodes[after + at.PREVIOUS] = next;
    if (parent === 0) nodes[base + at.ROOT] = next;
    else if (before === 0) nodes[parent + at.FIRST] = next;
  }

  /** Works the least sizes out again from a stack upwards, as far as they change. */
  resizeUpwards(from: number): void {
    const { nodes } = this;
    for (let node = from; node !== 0; node = nodes[node + at.PARENT]!) {
      const along = nodes[node] === STACK_W ? at.LEAST_W : at.LEAST_H;
      const across = nodes[node] === STACK_W ? at.LEAST_H : at.LEAST_W;
      let sum = 0;
      let most = 0;
      for (let child = nodes[node + at.FIRST]!; child !== 0; child = nodes[child + at.NEXT]!) {
        sum += nodes[child + along]!;
        if (nodes[child + across]! > most) most = nodes[child + across]!;
      }
      if (nodes[node + along] === sum && nodes[node + across] === most) return;
      nodes[node + along] = sum;
      nodes[node + across] = most;
    }
  }

  /**
   * Takes a node with all that hangs on it off its sheet; its pieces' kinds are written to `removed` from index
   * `count`. Gives the new count. Updates sizes, not the value. An emptied sheet stays open.
   */
  remove(node: number, removed: Int32Array, count: number): number {
    const place = this.placeOf(node);
    this.touch(place);
    const { nodes } = this;
    const base = place * this.region;
    const parent = nodes[node + at.PARENT]!;
    nodes[base + at.STALE] = 1;
    if (parent === 0) nodes[base + at.ROOT] = 0;
    else this.unlink(base, node, parent);
    this.sums[place * SUMS + VERSION] = ++this.lastVersion;
    return this.dissolve(base, node, removed, count);
  }

  private unlink(base: number, node: number, parent: number): void {
    const { nodes } = this;
    const before = nodes[node + at.PREVIOUS]!;
    const after = nodes[node + at.NEXT]!;
    if (before !== 0) nodes[before + at.NEXT] = after;
    else nodes[parent + at.FIRST] = after;
    if (after !== 0) nodes[after + at.PREVIOUS] = before;
    const only = nodes[parent + at.FIRST]!;
    if (nodes[only + at.NEXT] !== 0) {
      this.resizeUpwards(parent);
      return;
    }
    const above = nodes[parent + at.PARENT]!;
    if (above !== 0 && nodes[only] === nodes[above]) {
      this.spliceChildren(parent, only, above);
      this.release(base, only);
    } else {
      this.replace(base, parent, only);
    }
    this.release(base, parent);
    this.resizeUpwards(above);
  }

  /** Moves the children of `stack` into `above`, where `place` hangs and goes. Both stacks have one axis. */
  private spliceChildren(place: number, stack: number, above: number): void {
    const { nodes } = this;
    const before = nodes[place + at.PREVIOUS]!;
    const after = nodes[place + at.NEXT]!;
    const first = nodes[stack + at.FIRST]!;
    let last = first;
    for (let child = first; child !== 0; child = nodes[child + at.NEXT]!) {
      nodes[child + at.PARENT] = above;
      last = child;
    }
    nodes[first + at.PREVIOUS] = before;
    nodes[last + at.NEXT] = after;
    if (before !== 0) nodes[before + at.NEXT] = first;
    else nodes[above + at.FIRST] = first;
    if (after !== 0) nodes[after + at.PREVIOUS] = last;
  }

  /** Frees a hanging subtree. */
  private dissolve(base: number, top: number, removed: Int32Array, count: number): number {
    const { nodes } = this;
    let node = top;
    nodes[top + at.PARENT] = 0;
    for (;;) {
      if (nodes[node] !== PIECE) {
        const child = nodes[node + at.FIRST]!;
        if (child !== 0) {
          nodes[node + at.FIRST] = nodes[child + at.NEXT]!;
          node = child;
          continue;
        }
      } else {
        const kind = nodes[node + at.FIRST]!;
        removed[count++] = kind;
        nodes[base + at.PIECES] = nodes[base + at.PIECES]! - 1;
        const sum = (base / this.region) * SUMS + FREE_AREA;
        this.sums[sum] = this.sums[sum]! + this.facts.area[kind]!;
      }
      const parent = nodes[node + at.PARENT]!;
      this.release(base, node);
      if (node === top) return count;
      node = parent;
    }
  }

  /** Works out for each node how large it may grow and what may be added to it; needed where STALE is 1. */
  refreshRooms(place: number): void {
    const { nodes } = this;
    const base = place * this.region;
    const root = nodes[base + at.ROOT]!;
    nodes[base + at.STALE] = 0;
    if (root === 0) {
      nodes[base + at.NEED] = 0;
      return;
    }
    const sheet = nodes[base + at.SHEET]!;
    const sheetW = this.facts.sheetW[sheet]!;
    const sheetH = this.facts.sheetH[sheet]!;
    nodes[root + at.MOST_W] = sheetW;
    nodes[root + at.MOST_H] = sheetH;
    // The root can be wrapped along both axes.
    let mostShort = Math.max(
      Math.min(sheetW - nodes[root + at.LEAST_W]!, sheetH),
      Math.min(sheetH - nodes[root + at.LEAST_H]!, sheetW),
    );
    let node = root;
    for (;;) {
      const kind = nodes[node]!;
      if (kind === PIECE) this.roomsOfPiece(node);
      else this.passDown(node, kind);
      const roomW = nodes[node + at.ROOM_W]!;
      const roomH = nodes[node + at.ROOM_H]!;
      const short = Math.min(roomW, roomH);
      if (short > mostShort) mostShort = short;
      if (kind !== PIECE) {
        node = nodes[node + at.FIRST]!;
        continue;
      }
      while (node !== root && nodes[node + at.NEXT] === 0) node = nodes[node + at.PARENT]!;
      if (node === root) break;
      node = nodes[node + at.NEXT]!;
    }
    nodes[base + at.MOST_SHORT] = mostShort;
    if (this.facts.limited) this.refreshLevels(base, root, sheet);
  }

  /** Rooms of a stack, and how far its children may grow. */
  private passDown(node: number, kind: number): void {
    const { nodes } = this;
    const mostW = nodes[node + at.MOST_W]!;
    const mostH = nodes[node + at.MOST_H]!;
    const first = nodes[node + at.FIRST]!;
    if (kind === STACK_W) {
      const spare = mostW - nodes[node + at.LEAST_W]!;
      nodes[node + at.ROOM_W] = spare;
      nodes[node + at.ROOM_H] = mostH;
      for (let child = first; child !== 0; child = nodes[child + at.NEXT]!) {
        nodes[child + at.MOST_W] = nodes[child + at.LEAST_W]! + spare;
        nodes[child + at.MOST_H] = mostH;
      }
    } else {
      const spare = mostH - nodes[node + at.LEAST_H]!;
      nodes[node + at.ROOM_W] = mostW;
      nodes[node + at.ROOM_H] = spare;
      for (let child = first; child !== 0; child = nodes[child + at.NEXT]!) {
        nodes[child + at.MOST_W] = mostW;
        nodes[child + at.MOST_H] = nodes[child + at.LEAST_H]! + spare;
      }
    }
  }

  /** A piece in a stack along w can be wrapped along h; one in a stack along h, or alone, along w. */
  private roomsOfPiece(node: number): void {
    const { nodes } = this;
    const parent = nodes[node + at.PARENT]!;
    if (parent !== 0 && nodes[parent] === STACK_W) {
      nodes[node + at.ROOM_W] = nodes[node + at.MOST_W]!;
      nodes[node + at.ROOM_H] = nodes[node + at.MOST_H]! - nodes[node + at.LEAST_H]!;
    } else {
      nodes[node + at.ROOM_W] = nodes[node + at.MOST_W]! - nodes[node + at.LEAST_W]!;
      nodes[node + at.ROOM_H] = nodes[node + at.MOST_H]!;
    }
  }

  /** Levels of all nodes, and how many the root needs; only asked for when they are limited. */
  private refreshLevels(base: number, root: number, sheet: number): void {
    const { nodes } = this;
    const top = nodes[root] === PIECE ? 0 : rootLevel(this.facts, sheet, nodes[root]!);
    nodes[root + at.LEVEL] = top;
    let deepest = top;
    let node = root;
    for (;;) {
      const level = nodes[node + at.LEVEL]!;
      if (nodes[node] !== PIECE) {
        const across = nodes[node] === STACK_W ? at.LEAST_H : at.LEAST_W;
        for (let child = nodes[node + at.FIRST]!; child !== 0; child = nodes[child + at.NEXT]!) {
          const isPiece = nodes[child] === PIECE;
          nodes[child + at.LEVEL] = isPiece ? level : level + 1;
          const deep = isPiece && nodes[child + across] === nodes[node + across] ? level : level + 1;
          if (deep > deepest) deepest = deep;
        }
        node = nodes[node + at.FIRST]!;
        continue;
      }
      while (node !== root && nodes[node + at.NEXT] === 0) node = nodes[node + at.PARENT]!;
      if (node === root) break;
      node = nodes[node + at.NEXT]!;
    }
    nodes[base + at.NEED] = deepest - top + 1;
  }

  /** Adds up the values of all free rectangles of a sheet. */
  refreshValue(place: number): void {
    const { nodes, facts } = this;
    const base = place * this.region;
    const root = nodes[base + at.ROOT]!;
    const sheet = nodes[base + at.SHEET]!;
    if (root === 0) {
      this.setValue(place, this.emptyValue(sheet));
      return;
    }
    const scale = facts.greatestSheet;
    let value = freeCornerValue(
      facts.sheetW[sheet]!,
      facts.sheetH[sheet]!,
      nodes[root + at.LEAST_W]!,
      nodes[root + at.LEAST_H]!,
      scale,
    );
    const end = nodes[base + at.USED_END]!;
    for (let node = base + NODE_SIZE; node < end; node += NODE_SIZE) {
      if (nodes[node] === FREE || node === root) continue;
      const parent = nodes[node + at.PARENT]!;
      const w = nodes[node + at.LEAST_W]!;
      const h = nodes[node + at.LEAST_H]!;
      value +=
        nodes[parent] === STACK_H
          ? slackValue(h * (nodes[parent + at.LEAST_W]! - w), scale)
          : slackValue(w * (nodes[parent + at.LEAST_H]! - h), scale);
    }
    this.setValue(place, value);
  }
}
