/** Words of a bit set that may be gone through; about 10 ms. Beyond that the answer is the side itself, which is safe. */
const MOST_WORDS = 8_000_000;

/**
 * The most of a sheet's side that pieces laid side by side can cover: the greatest sum of any numbers of the given
 * sides that is at most `most`. Every plan can be pushed towards one corner until each piece touches another or the
 * edge, and then all pieces lie within this (J. C. Herz, Recursive computational procedure for two-dimensional stock
 * cutting, IBM Journal of Research and Development 16 (1972) 462–469). Whole numbers above 0.
 */
export function reachableSide(sides: Iterable<number>, most: number): number {
  const distinct = [...new Set(sides)].filter((side) => side <= most).sort((a, b) => a - b);
  const words = (most >>> 5) + 1;
  let steps = 0;
  // Bit n of the set: a sum of n can be reached.
  const reached = new Uint32Array(words);
  reached[0] = 1;
  for (const side of distinct) {
    // Shifted by one piece, then two, four, and so on: any number of pieces.
    for (let shift = side; shift <= most; shift *= 2) {
      steps += words;
      if (steps > MOST_WORDS) return most;
      addShifted(reached, shift);
    }
    if ((reached[most >>> 5]! >>> (most & 31)) & 1) return most;
  }
  for (let sum = most; sum > 0; sum--) {
    if ((reached[sum >>> 5]! >>> (sum & 31)) & 1) return sum;
  }
  return 0;
}

/** set |= set << shift, from the far end so that each sum is shifted once. */
function addShifted(set: Uint32Array, shift: number): void {
  const whole = shift >>> 5;
  const part = shift & 31;
  for (let word = set.length - 1; word >= whole; word--) {
    let bits = set[word - whole]! << part;
    if (part > 0 && word > whole) bits |= set[word - whole - 1]! >>> (32 - part);
    set[word]! |= bits;
  }
}
