/**
 * Lengths that matter along one axis of a sheet, and for each the pairs of shorter ones into which it is worth cutting:
 * pairs of length p at `starts[p]` and on, as indices into `lengths`.
 */
export interface UsefulCuts {
  /** In rising order; 0 first, the last is the longest position that fits the sheet. */
  readonly lengths: Int32Array;
  readonly starts: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
}

/**
 * Leaves of all cut positions only those that cutting the longest one can lead to, when at every cut both parts are as
 * long as positions can be without changing what fits (raster points: G. Scheithauer and J. Terno, The G4-heuristic
 * for the pallet loading problem, Journal of the Operational Research Society 47 (1996) 511–522). The best value stays,
 * as long as a piece may lie in any length that is not shorter.
 */
export function usefulCuts(positions: Int32Array): UsefulCuts {
  const count = positions.length;
  const below = indexBelow(positions);
  const useful = new Uint8Array(count);
  useful[0] = 1;
  useful[count - 1] = 1;
  const pairs: number[][] = new Array(count);
  for (let p = count - 1; p > 0; p--) {
    if (useful[p] === 0) continue;
    const found = pairsOf(positions, below, p);
    for (const part of found) useful[part] = 1;
    pairs[p] = found;
  }
  const lengths = positions.filter((_, p) => useful[p] === 1);
  const index = new Int32Array(count);
  for (let p = 1; p < count; p++) index[p] = index[p - 1]! + useful[p]!;
  const kept = pairs.filter((found) => found !== undefined);
  const starts = new Int32Array(lengths.length + 1);
  for (const [k, found] of kept.entries()) starts[k + 2] = starts[k + 1]! + found.length / 2;
  const first = new Int32Array(starts[lengths.length]!);
  const second = new Int32Array(first.length);
  let at = 0;
  for (const found of kept) {
    for (let k = 0; k < found.length; k += 2, at++) {
      first[at] = index[found[k]!]!;
      second[at] = index[found[k + 1]!]!;
    }
  }
  return { lengths, starts, first, second };
}

/** For every length up to the longest position the index of the longest position in it. */
function indexBelow(positions: Int32Array): Int32Array {
  const below = new Int32Array(positions[positions.length - 1]! + 1);
  for (let x = 0, p = 0; x < below.length; x++) {
    if (p + 1 < positions.length && positions[p + 1] === x) p++;
    below[x] = p;
  }
  return below;
}

/** Cuts of one position: the shorter part and the longest position that fits beside it, one after the other. */
function pairsOf(positions: Int32Array, below: Int32Array, p: number): number[] {
  const whole = positions[p]!;
  const found: number[] = [];
  for (let a = 1; a <= p && 2 * positions[a]! <= whole; a++) {
    const b = below[whole - positions[a]!]!;
    // A longer first part with the same rest beside it is never worse.
    if (2 * positions[a + 1]! <= whole && below[whole - positions[a + 1]!] === b) continue;
    found.push(a, b);
  }
  return found;
}
