/**
 * Copies left of a few items that are counted while a sheet is divided: a whole number that stands for one count per
 * counted item, from 0 up to its limit, in mixed radix. A state with fewer copies has a smaller number.
 */
export class LimitedCopies {
  /** Number of states; the last one, `states − 1`, has every item at its limit. */
  readonly states: number;
  private readonly radix: readonly number[];
  private readonly known = new Map<number, readonly (readonly [number, number])[]>();

  /** `limits`: how many of each counted item there may be. */
  constructor(limits: readonly number[]) {
    const radix: number[] = [];
    let states = 1;
    for (const limit of limits) {
      radix.push(states);
      states *= limit + 1;
    }
    this.radix = radix;
    this.states = states;
  }

  /** How many of counted item `t` a state has. */
  copies(state: number, t: number): number {
    const next = t + 1 < this.radix.length ? this.radix[t + 1]! : this.states;
    return Math.floor((state % next) / this.radix[t]!);
  }

  /** The state with the given copies. */
  stateOf(copies: readonly number[]): number {
    return copies.reduce((state, n, t) => state + n * this.radix[t]!, 0);
  }

  /** For each counted item the smaller of two states' copies. */
  least(a: number, b: number): number {
    return this.stateOf(this.radix.map((_, t) => Math.min(this.copies(a, t), this.copies(b, t))));
  }

  /**
   * The ways to deal out a state's copies to two parts that have room for `roomFirst` and `roomSecond`: pairs of
   * states, none of which is less in both than another.
   */
  shares(state: number, roomFirst: number, roomSecond: number): readonly (readonly [number, number])[] {
    const key = (state * this.states + roomFirst) * this.states + roomSecond;
    const before = this.known.get(key);
    if (before) return before;
    let found: [number, number][] = [[0, 0]];
    for (const [t, weight] of this.radix.entries()) {
      const all = this.copies(state, t);
      const second = this.copies(roomSecond, t);
      const most = Math.min(all, this.copies(roomFirst, t));
      const least = Math.min(most, Math.max(0, all - second));
      const next: [number, number][] = [];
      for (let n = least; n <= most; n++) {
        for (const [a, b] of found) next.push([a + n * weight, b + Math.min(all - n, second) * weight]);
      }
      found = next;
    }
    this.known.set(key, found);
    return found;
  }
}
