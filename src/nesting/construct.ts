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
  let places = Math.min(facts.total, 2 * Math.ceil(facts.totalArea / facts.greatestSheet) + 20);
  let best: Construction | undefined;
  const trials = facts.total > 1000 ? 1 : InsertionOrders.COUNT;
  for (let order = 0; order < trials; ) {
    const builder = new Builder(facts, places);
    const found = builder.build(order);
    if (found === 'out of places') {
      places = Math.min(facts.total, 4 * places);
      continue;
    }
    if (!best || isBetter(facts, found, best)) best = found;
    order++;
  }
  return best!;
}

function isBetter(facts: Facts, a: Construction, b: Construction): boolean {
  const area = (c: Construction) => c.unplaced.reduce((sum, kind) => sum + facts.area[kind]!, 0);
  const difference = area(a) - area(b);
  return difference < 0 || (difference === 0 && a.plan.cost < b.plan.cost);
}

class Builder {
  private readonly facts: Facts;
  private readonly trees: SheetTrees;
  private readonly insertion: Insertion;
  private remaining: Int32Array;
  private count = 0;

  constructor(facts: Facts, places: number) {
    this.facts = facts;
    this.trees = new SheetTrees(facts, places, piecesPerSheet(facts, places));
    this.insertion = new Insertion(this.trees, null);
    this.remaining = new Int32Array(facts.total);
    for (let kind = 0; kind < facts.kinds; kind++) {
      for (let n = facts.problem.items.count[kind]!; n > 0; n--) this.remaining[this.count++] = kind;
    }
  }

  /** Fills one sheet after the other, each time the kind of sheet that takes the most area for its cost. */
  build(order: number): Construction | 'out of places' {
    const { facts, trees } = this;
    new InsertionOrders(facts).sort(this.remaining, this.count, order);
    while (this.count > 0) {
      const place = trees.closedPlace();
      const sheet = this.bestSheet(place);
      if (sheet < 0) break;
      if (place < 0) return 'out of places';
      trees.begin();
      this.fill(place, sheet, true);
    }
    return { plan: takePlan(trees), unplaced: [...this.remaining.subarray(0, this.count)] };
  }

  /** The kind of sheet to be opened next; −1 when none is left that takes anything. */
  private bestSheet(place: number): number {
    const { facts, trees } = this;
    const takes = (sheet: number) => {
      if (trees.usedOfKind[sheet]! >= facts.sheetLimit[sheet]!) return false;
      for (let i = 0; i < this.count; i++) {
        if (facts.ways[sheet * facts.kinds + this.remaining[i]!] !== 0) return true;
      }
      return false;
    };
    const candidates = Array.from({ length: facts.sheetKinds }, (_, sheet) => sheet).filter(takes);
    if (candidates.length <= 1 || place < 0) return candidates[0] ?? -1;
    const trials = candidates.map((sheet) => {
      trees.begin();
      const left = this.fill(place, sheet, false);
      const filled = facts.sheetArea[sheet]! - trees.sums[place * SUMS + FREE_AREA]!;
      trees.rollBack();
      return { sheet, left, filled, cost: facts.sheetCost[sheet]! };
    });
    const best = trials.reduce((a, b) => (b.filled * a.cost > a.filled * b.cost ? b : a));
    const ends = trials.filter((t) => t.left === 0 && t.cost <= best.cost);
    return (ends.length === 0 ? best : ends.reduce((a, b) => (b.cost < a.cost ? b : a))).sheet;
  }

  /** Opens the sheet and puts on it what finds room; gives how many items are left, and keeps that when told so. */
  private fill(place: number, sheet: number, keep: boolean): number {
    const { trees, insertion, remaining } = this;
    trees.open(place, sheet);
    let left = 0;
    for (let i = 0; i < this.count; i++) {
      const kind = remaining[i]!;
      if (insertion.findOnly(place, kind)) insertion.insert(kind);
      else if (keep) remaining[left++] = kind;
      else left++;
    }
    if (keep) this.count = left;
    return left;
  }
}
