/** A number as it was written, exact: whole numbers over whole numbers, never rounded. */
export class Fraction {
  static readonly zero = new Fraction(0n, 1n);

  private readonly above: bigint;
  private readonly below: bigint;

  private constructor(above: bigint, below: bigint) {
    this.above = above;
    this.below = below;
  }

  static of(whole: number | bigint): Fraction {
    return new Fraction(BigInt(whole), 1n);
  }

  /** A number in the notation of JSON (RFC 8259). Null when it is none, or its exponent is beyond reason. */
  static read(text: string): Fraction | null {
    const match = /^(-?)(0|[1-9]\d*)(?:\.(\d+))?(?:[eE]([+-]?\d{1,4}))?$/.exec(text);
    if (match === null) return null;
    const [, sign, whole, decimals = '', exponent = '0'] = match;
    const digits = BigInt(`${sign}${whole}${decimals}`);
    const power = Number(exponent) - decimals.length;
    return power >= 0
      ? new Fraction(digits * 10n ** BigInt(power), 1n)
      : new Fraction(digits, 10n ** BigInt(-power));
  }

  plus(other: Fraction): Fraction {
    if (this.below === other.below) return new Fraction(this.above + other.above, this.below);
    return new Fraction(this.above * other.below + other.above * this.below, this.below * other.below);
  }

  minus(other: Fraction): Fraction {
    return this.plus(other.times(Fraction.of(-1)));
  }

  times(other: Fraction): Fraction {
    return new Fraction(this.above * other.above, this.below * other.below);
  }

  /** Negative, zero or positive, as this is less than, equal to or more than the other. */
  compare(other: Fraction): number {
    const difference = this.above * other.below - other.above * this.below;
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  equals(other: Fraction): boolean {
    return this.compare(other) === 0;
  }

  isMoreThan(other: Fraction): boolean {
    return this.compare(other) > 0;
  }

  isLessThan(other: Fraction): boolean {
    return this.compare(other) < 0;
  }

  isPositive(): boolean {
    return this.above > 0n;
  }

  isWhole(): boolean {
    return this.above % this.below === 0n;
  }

  toString(): string {
    return this.isWhole() ? `${this.above / this.below}` : `${Number(this.above) / Number(this.below)}`;
  }
}
