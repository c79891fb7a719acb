import { ActivePlaces } from './activePlaces.ts';
import type { Facts } from './facts.ts';
import { Insertion } from './insertion.ts';
import { InsertionOrders } from './insertionOrders.ts';
import type { SearchRandom } from './searchRandom.ts';
import { FREE_AREA, type SheetTrees, SUMS } from './sheetTrees.ts';
import * as at from './treeLayout.ts';

const { NODE_SIZE, PIECE } = at;

/** Late acceptance: a move is kept when it is no worse than the state this many moves ago. */
const HISTORY = 2000;
const MOST_HISTORY = 64_000;
/** Moves without a better state, in lengths of the history, after which the search is stuck. */
const PATIENCE = 25;
/** What the value of the free rectangles counts for beside the area that is not placed. */
const VALUE_WEIGHT = 0.05;
/** When waste is gathered, what area that is not placed counts for beside the worth of the corners. */
const UNPLACED_WEIGHT = 4;
/** Pieces taken out in a move: from 1 to this, each equally often. */
const MOST_RUINED = 11;

/**
 * Ruin and recreate under a budget: pieces are taken out of the trees and put back in another order, with the sheets
 * that the budget allows, until all are placed. After J. Gardeyn and T. Wauters, A goal-driven ruin and recreate
 * heuristic for the 2D variable-sized bin packing problem with guillotine constraints (EJOR 2022), with lazy trees in
 * place of fixed free rectangles, and late acceptance (E. Burke and Y. Bykov, The late acceptance hill-climbing
 * heuristic, EJOR 258, 2017).
 */
export class RuinAndRecreate {
  /** Where moves work. */
  readonly active: ActivePlaces;
  readonly unplaced: Int32Array;
  unplacedCount = 0;
  unplacedArea = 0;
  /** `place all`: find room for what is not placed; `gather waste`: all is placed, make the largest offcuts. */
  aim: 'place all' | 'gather waste' = 'place all';
  /** Greatest cost of the open sheets. */
  budget = 0;

  private readonly facts: Facts;
  private readonly trees: SheetTrees;
  private readonly random: SearchRandom;
  private readonly insertion: Insertion;
  private readonly orders: InsertionOrders;
  private readonly history = new Float64Array(MOST_HISTORY);
  private objectiveAtStart = 0;
  private leastObjective = 0;
  private movesSinceLeast = 0;
  private historyIndex = 0;
  private historyLength = HISTORY;
  /** What moves make less. */
  objective = 0;
  private readonly waiting: Int32Array;
  private readonly openPlaces: Int32Array;

  constructor(trees: SheetTrees, random: SearchRandom) {
    const { facts } = trees;
    this.facts = facts;
    this.trees = trees;
    this.random = random;
    this.insertion = new Insertion(trees, random);
    this.orders = new InsertionOrders(facts);
    this.active = new ActivePlaces(trees.places);
    this.unplaced = new Int32Array(facts.total);
    this.waiting = new Int32Array(facts.total);
    this.openPlaces = new Int32Array(trees.places);
  }

  /** To be called after the state was changed from outside: forgets what was accepted before. */
  restart(history = HISTORY): void {
    this.historyLength = history;
    this.historyIndex = 0;
    this.unplacedArea = 0;
    for (let i = 0; i < this.unplacedCount; i++) this.unplacedArea += this.facts.area[this.unplaced[i]!]!;
    this.objective = this.measure();
    this.objectiveAtStart = this.objective;
    this.leastObjective = this.objective;
    this.movesSinceLeast = 0;
    this.history.fill(this.objective);
  }

  /**
   * To be called before a move: when nothing better was found for long, worse states are accepted again, as at the
   * start, and the way down is made twice as long.
   */
  reheatWhenStuck(): void {
    if (this.objective < this.leastObjective) {
      this.leastObjective = this.objective;
      this.movesSinceLeast = 0;
      return;
    }
    if (++this.movesSinceLeast < PATIENCE * this.historyLength) return;
    this.historyLength = Math.min(this.history.length, 2 * this.historyLength);
    this.historyIndex = 0;
    this.history.fill(this.objectiveAtStart);
    this.leastObjective = this.objectiveAtStart;
    this.movesSinceLeast = 0;
  }

  private measure(): number {
    if (this.aim === 'gather waste') return UNPLACED_WEIGHT * this.unplacedArea - this.cornerWorth();
    return this.unplacedArea - VALUE_WEIGHT * this.trees.totalValue;
  }

  /** Sum of the squared shares of the largest rectangle beside or above the tree of each sheet, as areas. */
  cornerWorth(of: 'active sheets' | 'all sheets' = 'active sheets'): number {
    const { trees, facts, active } = this;
    const count = of === 'all sheets' ? trees.places : active.count;
    let worth = 0;
    for (let i = 0; i < count; i++) {
      const place = of === 'all sheets' ? i : active.list[i]!;
      const root = trees.root(place);
      if (root === 0) continue;
      const sheet = trees.sheetOf(place);
      const w = facts.sheetW[sheet]!;
      const h = facts.sheetH[sheet]!;
      const beside = (w - trees.nodes[root + at.LEAST_W]!) * h;
      const above = w * (h - trees.nodes[root + at.LEAST_H]!);
      const largest = Math.max(beside, above);
      worth += largest * (largest / facts.greatestSheet);
    }
    return worth;
  }

  /** One move; true when all pieces are placed after it. */
  move(): boolean {
    const { trees, unplaced, waiting } = this;
    const countBefore = this.unplacedCount;
    const areaBefore = this.unplacedArea;
    trees.begin();
    for (let i = 0; i < countBefore; i++) waiting[i] = unplaced[i]!;
    let waitingCount = this.ruin(countBefore);
    for (let i = 0; i < trees.touchedPlaces; i++) this.settleRuined(trees.touchedPlace(i));
    this.orders.sort(waiting, waitingCount, this.random.below(InsertionOrders.COUNT));
    waitingCount = this.recreate(waitingCount);
    const objective = this.measure();
    if (objective <= this.objective || objective <= this.history[this.historyIndex]!) {
      this.objective = objective;
      for (let i = 0; i < waitingCount; i++) unplaced[i] = waiting[i]!;
    } else {
      trees.rollBack();
      this.unplacedCount = countBefore;
      this.unplacedArea = areaBefore;
    }
    this.history[this.historyIndex] = this.objective;
    this.historyIndex = this.historyIndex + 1 >= this.historyLength ? 0 : this.historyIndex + 1;
    return this.unplacedCount === 0;
  }

  /** After pieces were taken off: closes the sheet when it is empty, else works out its value. */
  private settleRuined(place: number): void {
    const { trees } = this;
    if (trees.root(place) === 0) {
      trees.close(place);
      return;
    }
    trees.refreshValue(place);
  }

  /** Takes pieces out; they are added to `waiting` from index `from`. Gives the new count. */
  private ruin(from: number): number {
    const { random, trees, openPlaces, active } = this;
    let open = 0;
    for (let i = 0; i < active.count; i++) {
      const place = active.list[i]!;
      if (trees.pieces(place) > 0) openPlaces[open++] = place;
    }
    if (open === 0) return from;
    let target = 1 + random.below(MOST_RUINED);
    let count = from;
    while (target > 0 && open > 0) {
      const index = random.below(open);
      const place = openPlaces[index]!;
      const before = count;
      count = this.ruinSheet(place, target, count);
      target -= count - before;
      if (trees.pieces(place) === 0) openPlaces[index] = openPlaces[--open]!;
    }
    return count;
  }

  /** Takes out neighbouring pieces of one sheet, at most `target`, or the whole sheet when it has not many more. */
  private ruinSheet(place: number, target: number, from: number): number {
    const { trees, random, waiting } = this;
    const pieces = trees.pieces(place);
    if (pieces <= target + 2 && random.oneIn(2)) return trees.remove(trees.root(place), waiting, from);
    let count = from;
    let left = target;
    do {
      const node = this.growSubtree(this.randomPiece(place), left);
      const before = count;
      count = trees.remove(node, waiting, count);
      left -= count - before;
    } while (left > 0 && trees.pieces(place) > 0 && !random.oneIn(3));
    return count;
  }

  private randomPiece(place: number): number {
    const { trees, random } = this;
    const { nodes } = trees;
    const base = place * trees.region;
    const nodesUsed = (nodes[base + at.USED_END]! - base) / NODE_SIZE - 1;
    for (;;) {
      const node = base + NODE_SIZE * (1 + random.below(nodesUsed));
      if (nodes[node] === PIECE) return node;
    }
  }

  /** From a piece up to a subtree of at most `most` pieces, stopping at random. */
  private growSubtree(piece: number, most: number): number {
    const { nodes } = this.trees;
    let node = piece;
    for (;;) {
      const parent = nodes[node + at.PARENT]!;
      if (parent === 0 || this.random.oneIn(2) || this.piecesBelow(parent) > most) return node;
      node = parent;
    }
  }

  private piecesBelow(top: number): number {
    const { nodes } = this.trees;
    if (nodes[top] === PIECE) return 1;
    let count = 0;
    for (let child = nodes[top + at.FIRST]!; child !== 0; child = nodes[child + at.NEXT]!) {
      count += this.piecesBelow(child);
    }
    return count;
  }

  /** Puts back the first `count` of `waiting`, in order; those without a place are kept there. Gives their number. */
  private recreate(count: number): number {
    const { waiting, insertion, facts } = this;
    let left = 0;
    let leftArea = 0;
    for (let i = 0; i < count; i++) {
      const kind = waiting[i]!;
      if (insertion.find(kind, this.active) || this.openSheetFor(kind)) {
        insertion.insert(kind);
        continue;
      }
      waiting[left++] = kind;
      leftArea += facts.area[kind]!;
    }
    this.unplacedCount = left;
    this.unplacedArea = leftArea;
    return left;
  }

  /** Opens a sheet that the budget allows and finds the kind's place on it; false when there is none. */
  private openSheetFor(kind: number): boolean {
    const { trees, facts } = this;
    let chosen = -1;
    let choices = 0;
    for (let sheet = 0; sheet < facts.sheetKinds; sheet++) {
      if (facts.ways[sheet * facts.kinds + kind] === 0) continue;
      if (trees.usedOfKind[sheet]! >= facts.sheetLimit[sheet]!) continue;
      if (trees.openCost + facts.sheetCost[sheet]! > this.budget) continue;
      choices++;
      if (choices === 1 || this.random.oneIn(choices)) chosen = sheet;
    }
    if (chosen < 0) return false;
    const place = trees.closedPlace();
    if (place < 0) return false;
    trees.open(place, chosen);
    if (this.insertion.findOnly(place, kind)) {
      this.active.include(place);
      return true;
    }
    trees.close(place);
    return false;
  }

  /** Lets moves work on about this many of the open sheets only: by chance, but those with more free area rather. */
  chooseWindow(size: number): void {
    const { trees, random, active, openPlaces } = this;
    active.clear();
    let open = 0;
    for (let place = 0; place < trees.places; place++) {
      if (trees.pieces(place) > 0) openPlaces[open++] = place;
      else if (!trees.isOpen(place)) active.include(place);
    }
    const free = (place: number) => trees.sums[place * SUMS + FREE_AREA]!;
    if (this.aim === 'gather waste') active.include(this.emptiest(open));
    for (let i = 0; i < size; i++) {
      const a = openPlaces[random.below(open)]!;
      const b = openPlaces[random.below(open)]!;
      active.include(free(a) > free(b) ? a : b);
    }
  }

  private emptiest(open: number): number {
    const { sums } = this.trees;
    let best = this.openPlaces[0]!;
    for (let i = 1; i < open; i++) {
      const place = this.openPlaces[i]!;
      if (sums[place * SUMS + FREE_AREA]! > sums[best * SUMS + FREE_AREA]!) best = place;
    }
    return best;
  }

  /** Kinds of the items that have no place, one entry an item. */
  setUnplaced(kinds: readonly number[]): void {
    this.unplaced.set(kinds);
    this.unplacedCount = kinds.length;
  }

  /** Sets the budget, and takes sheets off until it is kept: those with the least placed area for their cost. */
  lowerBudget(budget: number): void {
    const { trees } = this;
    this.budget = budget;
    while (trees.openCost > budget) {
      const place = this.worstPlace();
      this.unplacedCount = trees.remove(trees.root(place), this.unplaced, this.unplacedCount);
      trees.close(place);
    }
  }

  /** Takes some open sheets off, every one with the chance 1 in `oneIn`, and at least one where there is one. */
  takeOffSome(oneIn: number): void {
    const { trees, random } = this;
    const certain = random.below(Math.max(1, trees.openSheets));
    let seen = 0;
    for (let place = 0; place < trees.places; place++) {
      if (!trees.isOpen(place)) continue;
      if (seen++ !== certain && !random.oneIn(oneIn)) continue;
      this.unplacedCount = trees.remove(trees.root(place), this.unplaced, this.unplacedCount);
      trees.close(place);
    }
  }

  /** Opens a sheet of each of the kinds, as far as there are places, and puts on them what is not placed. */
  openAndFill(sheets: readonly number[]): void {
    const { trees, unplaced, waiting } = this;
    for (const sheet of sheets) {
      const place = trees.closedPlace();
      if (place >= 0) trees.open(place, sheet);
    }
    for (let i = 0; i < this.unplacedCount; i++) waiting[i] = unplaced[i]!;
    this.orders.sort(waiting, this.unplacedCount, this.random.below(InsertionOrders.COUNT));
    const left = this.recreate(this.unplacedCount);
    for (let i = 0; i < left; i++) unplaced[i] = waiting[i]!;
    for (let place = 0; place < trees.places; place++) {
      if (trees.isOpen(place) && trees.root(place) === 0) trees.close(place);
    }
  }

  private worstPlace(): number {
    const { trees, facts } = this;
    let worst = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let place = 0; place < trees.places; place++) {
      const cost = facts.sheetCost[trees.sheetOf(place)]!;
      if (!trees.isOpen(place) || cost === 0) continue;
      const placed = facts.sheetArea[trees.sheetOf(place)]! - trees.sums[place * SUMS + FREE_AREA]!;
      if (placed / cost < least) {
        least = placed / cost;
        worst = place;
      }
    }
    return worst;
  }
}
