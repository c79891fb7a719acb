import type { Facts } from './facts.ts';

/** Orders in which pieces are put back: by area, longest side, width (w) or height (h), largest first. */
export class InsertionOrders {
  static readonly COUNT = 4;
  /** `ranks[order][kind]`. */
  private readonly ranks: readonly Int32Array[];

  constructor(facts: Facts) {
    const { w, h, area, kinds } = facts;
    const sizes: ((kind: number) => number)[] = [
      (kind) => area[kind]!,
      (kind) => Math.max(w[kind]!, h[kind]!),
      (kind) => w[kind]!,
      (kind) => h[kind]!,
    ];
    this.ranks = sizes.map((size) => {
      const order = Array.from({ length: kinds }, (_, kind) => kind);
      order.sort((a, b) => size(b) - size(a) || area[b]! - area[a]! || a - b);
      const rank = new Int32Array(kinds);
      order.forEach((kind, index) => {
        rank[kind] = index;
      });
      return rank;
    });
  }

  /** Sorts the first `count` of a list of kinds in place (insertion sort with the gaps of M. Ciura, 2001). */
  sort(list: Int32Array, count: number, order: number): void {
    const rank = this.ranks[order]!;
    for (const gap of GAPS) {
      if (gap >= count && gap > 1) continue;
      for (let i = gap; i < count; i++) {
        const kind = list[i]!;
        const own = rank[kind]!;
        let j = i;
        while (j >= gap && rank[list[j - gap]!]! > own) {
          list[j] = list[j - gap]!;
          j -= gap;
        }
        list[j] = kind;
      }
    }
  }
}

const GAPS = [3001, 1321, 701, 301, 132, 57, 23, 10, 4, 1] as const;
