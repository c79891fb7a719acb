import type { Facts } from './facts.ts';
import { Insertion } from './insertion.ts';
import { InsertionOrders } from './insertionOrders.ts';
import { type Plan, piecesPerSheet, takePlan } from './plan.ts';
import { FREE_AREA, SheetTrees, SUMS } from './sheetTrees.ts';

export interface Construction {
  readonly plan: Plan;
  /** Kinds of the items for which no sheet was left, one entry per item. */
  readonly unplaced: readonly number[];
}

/**
 * A first plan: items in each of the insertion orders, each put where it does the least harm. The cheapest of the
 * plans that place the most area.
 */
export function construct(facts: Facts): Construction {
  let best: Construction | undefined;
  const trials = facts.total > 1000 ? 1 : InsertionOrders.COUNT;
  const none = new Int32Array(facts.sheetKinds);
  for (let order = 0; order < trials; order++) {
    const found = constructRest(facts, facts.problem.items.count, none, order);
    if (!best || isBetter(facts, found, best)) best = found;
  }
  return best!;
}

/** Whether `a` leaves less area without a place, or is cheaper with as much. */
export function isBetter(facts: Facts, a: Construction, b: Construction): boolean {
  const area = (c: Construction) => c.unplaced.reduce((sum, kind) => sum + facts.area[kind]!, 0);
  const difference = area(a) - area(b);
  return difference < 0 || (difference === 0 && a.plan.cost < b.plan.cost);
}

/**
 * Plans the items of `left` (a count for each kind) in one of the insertion orders, beside `used` sheets of each kind
 * that are taken already.
 */
export function constructRest(facts: Facts, left: Int32Array, used: Int32Array, order: number): Construction {
  const rest: Facts = {
    ...facts,
    problem: { ...facts.problem, items: { ...facts.problem.items, count: left } },
    sheetLimit: facts.sheetLimit.map((limit, sheet) => limit - used[sheet]!),
    total: left.reduce((sum, n) => sum + n, 0),
    totalArea: left.reduce((sum, n, kind) => sum + n * facts.area[kind]!, 0),
  };
  let places = Math.min(rest.total, 2 * Math.ceil(rest.totalArea / rest.greatestSheet) + 20);
  for (;;) {
    const found = new Builder(rest, places, order).build();
    if (found !== 'out of places') return found;
    places = Math.min(rest.total, 4 * places);
  }
}

class Builder {
  private readonly facts: Facts;
  private readonly trees: SheetTrees;
  private readonly insertion: Insertion;
  /** Kinds in the order in which they are placed, and how many of each are left. */
  private readonly order: Int32Array;
  private readonly left: Int32Array;

  constructor(facts: Facts, places: number, order: number) {
    this.facts = facts;
    this.trees = new SheetTrees(facts, places, piecesPerSheet(facts, places));
    this.insertion = new Insertion(this.trees, null);
    this.order = Int32Array.from({ length: facts.kinds }, (_, kind) => kind);
    new InsertionOrders(facts).sort(this.order, facts.kinds, order);
    this.left = Int32Array.from(facts.problem.items.count);
  }

  /** Fills one sheet after the other, each time the kind of sheet that takes the most area for its cost. */
  build(): Construction | 'out of places' {
    const { facts, trees } = this;
    for (let place = 0; this.left.some((count) => count > 0); place++) {
      const sheet = this.bestSheet(place);
      if (sheet < 0) break;
      if (place >= trees.places) return 'out of places';
      trees.begin();
      this.fill(place, sheet, this.left);
    }
    const unplaced: number[] = [];
    for (let kind = 0; kind < facts.kinds; kind++) {
      for (let n = this.left[kind]!; n > 0; n--) unplaced.push(kind);
    }
    return { plan: takePlan(trees), unplaced };
  }

  /** The kind of sheet to be opened next; −1 when none is left that takes anything. */
  private bestSheet(place: number): number {
    const { facts, trees } = this;
    const takes = (sheet: number) =>
      trees.usedOfKind[sheet]! < facts.sheetLimit[sheet]! &&
      this.left.some((count, kind) => count > 0 && facts.ways[sheet * facts.kinds + kind] !== 0);
    const candidates = Array.from({ length: facts.sheetKinds }, (_, sheet) => sheet).filter(takes);
    if (candidates.length <= 1 || place >= trees.places) return candidates[0] ?? -1;
    const trials = candidates.map((sheet) => {
      const left = this.left.slice();
      trees.begin();
      this.fill(place, sheet, left);
      const filled = facts.sheetArea[sheet]! - trees.sums[place * SUMS + FREE_AREA]!;
      trees.rollBack();
      return { sheet, ends: left.every((count) => count === 0), filled, cost: facts.sheetCost[sheet]! };
    });
    const best = trials.reduce((a, b) => (b.filled * a.cost > a.filled * b.cost ? b : a));
    const ends = trials.filter((t) => t.ends && t.cost <= best.cost);
    return (ends.length === 0 ? best : ends.reduce((a, b) => (b.cost < a.cost ? b : a))).sheet;
  }

  /** Opens the sheet, puts on it what finds room, and takes that off `left`. */
  private fill(place: number, sheet: number, left: Int32Array): void {
    const { trees, insertion, order } = this;
    trees.open(place, sheet);
    for (let i = 0; i < order.length; i++) {
      const kind = order[i]!;
      while (left[kind]! > 0 && insertion.findOnly(place, kind)) {
        insertion.insert(kind);
        left[kind] = left[kind]! - 1;
      }
    }
  }
}
