import type { RectangleProblem } from '../model/rectangles.ts';

/**
 * Selections of the pieces of a problem as numbers in mixed radix: a digit for each kind of item says how many of it are
 * chosen. 0 is the empty selection, `count − 1` holds everything; a part of a selection taken off it is a subtraction.
 */
export class Selections {
  /** How many there are; not exact beyond 2^53. */
  readonly count: number;
  /** Area of everything. */
  readonly area: number;
  readonly kinds: number;
  readonly most: Int32Array;
  /** What one item more of a kind adds to the number, and to the area. */
  readonly strides: Float64Array;
  readonly areas: Float64Array;

  constructor({ items }: RectangleProblem) {
    this.kinds = items.kinds;
    this.most = items.count;
    this.strides = new Float64Array(items.kinds);
    this.areas = new Float64Array(items.kinds);
    let stride = 1;
    let area = 0;
    for (let item = 0; item < items.kinds; item++) {
      this.strides[item] = stride;
      this.areas[item] = items.w[item]! * items.h[item]!;
      area += this.areas[item]! * items.count[item]!;
      stride *= items.count[item]! + 1;
    }
    this.count = stride;
    this.area = area;
  }

  areaOf(selection: number): number {
    let rest = selection;
    let area = 0;
    for (let item = 0; item < this.kinds; item++) {
      const radix = this.most[item]! + 1;
      const others = Math.floor(rest / radix);
      area += (rest - others * radix) * this.areas[item]!;
      rest = others;
    }
    return area;
  }
}

/**
 * The parts of a selection up to a given area, the empty one and the whole included, in rising order of their numbers: a
 * counter that only counts as far as each digit of the selection, and leaves a digit as soon as the area is passed.
 */
export class Parts {
  /** Pieces of the selection. */
  pieces = 0;
  /** Digits of the selection. */
  readonly digits: Int32Array;
  /** Area of the part. */
  area = 0;

  private readonly of: Selections;
  private readonly part: Int32Array;
  private value = 0;
  private mostArea = 0;

  constructor(of: Selections) {
    this.of = of;
    this.digits = new Int32Array(of.kinds);
    this.part = new Int32Array(of.kinds);
  }

  /** Begins with the empty part, which is 0. */
  first(selection: number, mostArea: number): number {
    const { digits, of } = this;
    let rest = selection;
    let pieces = 0;
    for (let item = 0; item < of.kinds; item++) {
      const radix = of.most[item]! + 1;
      const others = Math.floor(rest / radix);
      digits[item] = rest - others * radix;
      pieces += digits[item]!;
      rest = others;
    }
    this.part.fill(0);
    this.pieces = pieces;
    this.value = 0;
    this.area = 0;
    this.mostArea = mostArea;
    return 0;
  }

  /** The next part; −1 after the last one. */
  next(): number {
    const { digits, part, mostArea } = this;
    const { strides, areas, kinds } = this.of;
    let { value, area } = this;
    for (let item = 0; item < kinds; item++) {
      const n = part[item]!;
      if (n < digits[item]!) {
        const larger = area + areas[item]!;
        if (larger <= mostArea) {
          part[item] = n + 1;
          this.area = larger;
          this.value = value + strides[item]!;
          return this.value;
        }
      }
      if (n === 0) continue;
      value -= n * strides[item]!;
      area -= n * areas[item]!;
      part[item] = 0;
    }
    return -1;
  }
}
