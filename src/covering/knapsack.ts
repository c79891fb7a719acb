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

  /** Adds one no shorter than those before, if it is worth anything. */
  offer(length: number, worth: number, mark: number): void {
    if (worth <= LEAST_DIFFERENCE) return;
    this.lengths[this.count] = length;
    this.worths[this.count] = worth;
    this.marks[this.count++] = mark;
  }

  /** True when copies of a shorter one are worth as much on the same length. */
  isOutdone(length: number, worth: number): boolean {
    for (let i = 0; i < this.count; i++) {
      const copies = Math.trunc(length / this.lengths[i]!);
      if (copies * this.worths[i]! >= worth - LEAST_DIFFERENCE) return true;
    }
    return false;
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
  best.fill(0, 0, length + 1);
  last?.fill(-1, 0, length + 1);
  let steps = length;
  for (let i = 0; i < count && lengths[i]! <= length; i++) {
    const step = lengths[i]!;
    const worth = worths[i]!;
    // Shorter ones are worth as much on its length, and so on every greater one.
    if (best[step]! >= worth - LEAST_DIFFERENCE) continue;
    steps += length - step;
    if (last) {
      for (let x = step, from = 0; x <= length; x++, from++) {
        const most = best[from]! + worth;
        if (most <= best[x]! + LEAST_DIFFERENCE) continue;
        best[x] = most;
        last[x] = i;
      }
    } else lay(best, length, step, worth);
  }
  return steps;
}

/**
 * Allows one more kind of thing, `step` long, in a knapsack that has been filled: `best` becomes what `fillKnapsack`
 * makes of all of them. Gives the steps taken; 0 when shorter ones are worth as much on its length.
 */
export function allowAsWell(best: Float64Array, length: number, step: number, worth: number): number {
  if (step > length || best[step]! >= worth - LEAST_DIFFERENCE) return 0;
  lay(best, length, step, worth);
  return length - step + 1;
}

function lay(best: Float64Array, length: number, step: number, worth: number): void {
  for (let x = step, from = 0; x <= length; x++, from++) {
    const most = best[from]! + worth;
    if (most > best[x]!) best[x] = most;
  }
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
