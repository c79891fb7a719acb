/** Figures that come from a solver are compared with this slack. */
export const LEAST_DIFFERENCE = 1e-12;

/** Things that may be laid one behind another, any number of each: lengths in rising order, and what each is worth. */
export class Choices {
  count = 0;
  readonly lengths: Int32Array;
  readonly worths: Float64Array;
  /** What whoever fills the list knows each by. */
  readonly marks: Int32Array;

  constructor(most: number) {
    this.lengths = new Int32Array(most);
    this.worths = new Float64Array(most);
    this.marks = new Int32Array(most);
  }

  /** Adds one no shorter than those before, unless copies of a shorter one are worth as much on its length. */
  offer(length: number, worth: number, mark: number): void {
    const { lengths, worths } = this;
    if (worth <= LEAST_DIFFERENCE) return;
    for (let i = 0; i < this.count; i++) {
      const copies = Math.trunc(length / lengths[i]!);
      if (copies * worths[i]! >= worth - LEAST_DIFFERENCE) return;
    }
    // One of the same length that is worth less stays behind: it is never chosen.
    lengths[this.count] = length;
    worths[this.count] = worth;
    this.marks[this.count++] = mark;
  }
}

/**
 * The knapsack of any number of copies (P. C. Gilmore and R. E. Gomory, The theory and computation of knapsack
 * functions, Operations Research 14 (1966) 1045–1074): `best[x]` becomes the most that fits on a length of x, for x up
 * to `length`; `last[x]`, where given, the choice laid last, or −1 where the end of x stays free. Gives the steps taken.
 */
export function fillKnapsack(
  choices: Choices,
  length: number,
  best: Float64Array,
  last: Int32Array | null,
): number {
  const { count, lengths, worths } = choices;
  best[0] = 0;
  let within = 0;
  for (let x = 1; x <= length; x++) {
    while (within < count && lengths[within]! <= x) within++;
    let most = best[x - 1]!;
    let chosen = -1;
    for (let i = 0; i < within; i++) {
      const worth = best[x - lengths[i]!]! + worths[i]!;
      if (worth > most + LEAST_DIFFERENCE) {
        most = worth;
        chosen = i;
      }
    }
    best[x] = most;
    if (last) last[x] = chosen;
  }
  return length * (count + 1);
}

/** The choices that lie on a length of x, last first, as their indices; `last` as `fillKnapsack` left it. */
export function laidOn(choices: Choices, last: Int32Array, x: number): number[] {
  const laid: number[] = [];
  for (let rest = x; rest > 0; ) {
    const choice = last[rest]!;
    if (choice < 0) rest--;
    else {
      laid.push(choice);
      rest -= choices.lengths[choice]!;
    }
  }
  return laid;
}
