/** A piece in whole units, and whether it may be turned. */
export interface PlainPiece {
  readonly w: number;
  readonly h: number;
  readonly turns: boolean;
}

/**
 * By set of pieces (bit i: piece i) every rectangle, none larger both ways than another, in which they lie by guillotine
 * cuts: all ways to part a set in two, and all rectangles of both beside and above each other. For ten pieces or so.
 */
export function everyRectangle(pieces: readonly PlainPiece[]): readonly (readonly [number, number])[][] {
  const all: [number, number][][] = [[]];
  for (let set = 1; set < 1 << pieces.length; set++) {
    const found: [number, number][] = [];
    const single = pieces.findIndex((_, i) => set === 1 << i);
    if (single >= 0) {
      const { w, h, turns } = pieces[single]!;
      found.push([w, h], ...(turns ? [[h, w] as [number, number]] : []));
    }
    for (let part = (set - 1) & set; part > set - part; part = (part - 1) & set) {
      for (const [w, h] of all[part]!) {
        for (const [w2, h2] of all[set - part]!) {
          found.push([w + w2, Math.max(h, h2)], [Math.max(w, w2), h + h2]);
        }
      }
    }
    found.sort(([w, h], [w2, h2]) => w - w2 || h - h2);
    const kept: [number, number][] = [];
    for (const [w, h] of found) if (kept.length === 0 || h < kept.at(-1)![1]) kept.push([w, h]);
    all.push(kept);
  }
  return all;
}

export function liesIn(rectangles: readonly (readonly [number, number])[], w: number, h: number): boolean {
  return rectangles.length === 0 || rectangles.some(([a, b]) => a <= w && b <= h);
}
