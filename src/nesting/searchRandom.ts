import { SeededRandom } from '../basics/random.ts';

/** The xorshift of `SeededRandom` on 31 bits without a detour over floating point: it is drawn millions of times. */
export class SearchRandom {
  private state: number;

  constructor(seed: number) {
    this.state = new SeededRandom(seed).next() | 0;
  }

  private next(): number {
    let s = this.state;
    s ^= s << 13;
    s ^= s >>> 17;
    s ^= s << 5;
    this.state = s;
    return s >>> 1;
  }

  /** Whole number from 0 to `below` − 1; `below` from 1 to 2^30. */
  below(below: number): number {
    return this.next() % below;
  }

  /** True once in `n` on average. */
  oneIn(n: number): boolean {
    return this.next() % n === 0;
  }
}
