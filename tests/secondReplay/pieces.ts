import { Fraction } from './fraction.ts';
import type { Written } from './planAsWritten.ts';

export type Side = 'length' | 'width';

/** A piece of a sheet, where it lay in the raw sheet, and how it was cut free. */
export interface Piece {
  readonly name: string;
  readonly from: Record<Side, Fraction>;
  readonly size: Record<Side, Fraction>;
  /** The pieces it was part of, the sheet first. */
  readonly within: readonly Piece[];
  /** Which side of the sheet the blade of its last cut ran along; trims do not count. */
  readonly blade: Side | null;
  /** Directions in a row in which its cuts were made: the piece was turned between each two. */
  readonly directions: number;
  /** It came out of a blank by parting. */
  readonly parted: boolean;
}

export class NotSawable extends Error {}

export function refuse(why: string): never {
  throw new NotSawable(why);
}

export function other(side: Side): Side {
  return side === 'length' ? 'width' : 'length';
}

export function asSide(text: string): Side {
  return text === 'length' ? 'length' : 'width';
}

/** What the saw can do, as the group states it. */
export class Saw {
  readonly kerf: Fraction;
  readonly firstCut: string;
  private readonly turns: Fraction | null;
  private readonly smallestPart: Fraction | null;
  private readonly longestCut: Fraction | null;
  readonly cuttingHeight: Fraction | null;

  constructor(saw: Written) {
    this.kerf = saw.number('kerf');
    this.firstCut = saw.text('firstCut');
    this.turns = saw.numberOrNull('turns');
    this.smallestPart = saw.numberOrNull('smallestPart');
    this.longestCut = saw.numberOrNull('longestCut');
    this.cuttingHeight = saw.numberOrNull('cuttingHeight');
  }

  holdsTurns(directions: number, what: string): void {
    if (this.turns !== null && Fraction.of(directions - 1).isMoreThan(this.turns))
      refuse(`${what} is turned ${directions - 1} times`);
  }

  holdsCut(cutLength: Fraction, what: string): void {
    if (this.longestCut !== null && cutLength.isMoreThan(this.longestCut))
      refuse(`the cut through ${what} is ${cutLength} long`);
  }

  holdsStrip(width: Fraction, what: string): void {
    if (this.smallestPart !== null && width.isLessThan(this.smallestPart))
      refuse(`${what} is ${width} narrow`);
  }
}
