/**
 * Seeded random numbers, the same on every machine: 32-bit xorshift (G. Marsaglia, Xorshift RNGs, Journal of
 * Statistical Software 8(14), 2003, the triple 13, 17, 5), started through a mixing step so that near seeds differ.
 */
export class SeededRandom {
  private state: number;

  /** `seed`: any integer; its low 32 bits count. */
  constructor(seed: number) {
    let mixed = (seed ^ 0x9e3779b9) >>> 0;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x45d9f3b) >>> 0;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x45d9f3b) >>> 0;
    this.state = (mixed ^ (mixed >>> 16)) >>> 0 || 1;
  }

  /** Next 32 bits, 1 to 2^32 − 1. */
  next(): number {
    let s = this.state;
    s ^= s << 13;
    s ^= s >>> 17;
    s ^= s << 5;
    this.state = s >>> 0;
    return this.state;
  }

  /** Whole number from 0 to `below` − 1; `below` from 1 to 2^31. */
  below(below: number): number {
    return this.next() % below;
  }

  /** From 0 (included) to 1 (excluded), in steps of 2^-32. */
  unit(): number {
    return this.next() / 4294967296;
  }
}
