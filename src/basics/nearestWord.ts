/** Edits that turn `a` into `b`, where swapping two neighbours counts as one (optimal string alignment distance). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, before[j - 2]! + 1);
      }
      current.push(least);
    }
    before = previous;
    previous = current;
  }
  return previous[b.length]!;
}

/**
 * The word a person most likely meant, or undefined when none is near: at most a third of its letters differ.
 * Case, hyphens, underscores and spaces do not count as differences. Ties go to the first in the list.
 */
export function nearestWord(wrong: string, words: Iterable<string>): string | undefined {
  const plain = (text: string) =>
    text
      .slice(0, 60)
      .toLowerCase()
      .replace(/[\s_-]+/g, ' ');
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const word of words) {
    const distance = editDistance(plain(wrong), plain(word));
    if (distance < bestDistance && distance <= Math.max(1, Math.floor(word.length / 3))) {
      best = word;
      bestDistance = distance;
    }
  }
  return best;
}
