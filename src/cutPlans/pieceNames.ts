/** 0 → a, 25 → z, 26 → aa. */
function letters(index: number): string {
  let rest = index;
  let word = '';
  do {
    word = String.fromCharCode(97 + (rest % 26)) + word;
    rest = Math.floor(rest / 26) - 1;
  } while (rest >= 0);
  return word;
}

/**
 * Name of the piece at `index` (from 0) that a piece called `parent` is divided into at `depth`: strips of the sheet
 * are A, B, C, their pieces A1, A2, the pieces of those A1a, A1b, and so on. Letters and digits take turns, so that no
 * two pieces of a sheet share a name.
 */
export function pieceName(parent: string, depth: number, index: number): string {
  if (depth === 0) return letters(index).toUpperCase();
  return parent + (depth % 2 === 1 ? String(index + 1) : letters(index));
}

/** What is still in one piece once the ones before have been cut off: `B+` holds B and all after it. */
export function restName(firstInside: string): string {
  return `${firstInside}+`;
}

/** What is still in one piece: the pieces from the first to the last of these names, which alone bears its own. */
export function spanName(first: string, last: string): string {
  return first === last ? first : `${first}-${last}`;
}
