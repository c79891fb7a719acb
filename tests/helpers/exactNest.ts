import type { StockGroup, StockSheet } from '../../src/model/stock.ts';

/**
 * The true least cost and the true least number of sheets of a small stock group, by looking at every way to divide its
 * pieces among sheets. It shares nothing with the program: it works on the group as it is, kerf and trim included, and
 * knows cuts only as "two groups of pieces side by side with a kerf between".
 */
export interface ExactNest {
  readonly sheets: number;
  readonly costMinor: number;
}

interface Shape {
  readonly x: number;
  readonly y: number;
}

/** Shapes of which none fits into another. */
function undominated(shapes: Shape[]): Shape[] {
  const sorted = shapes.sort((a, b) => a.x - b.x || a.y - b.y);
  const kept: Shape[] = [];
  for (const shape of sorted) if (!kept.some((k) => k.y <= shape.y)) kept.push(shape);
  return kept;
}

/** For every set of pieces (a bit each) the least rectangles that it can be cut from, on a sheet of the given grain. */
export function shapesOfSets(group: StockGroup, grain: StockSheet['grain']): Shape[][] {
  const pieces = group.demands.flatMap((demand) => Array.from({ length: demand.count }, () => demand));
  const kerf = group.saw.kerfUm;
  const shapes: Shape[][] = [[]];
  for (let set = 1; set < 1 << pieces.length; set++) {
    const found: Shape[] = [];
    if ((set & (set - 1)) === 0) {
      const piece = pieces[31 - Math.clz32(set)]!;
      const along = { x: piece.lengthUm, y: piece.widthUm };
      const across = { x: piece.widthUm, y: piece.lengthUm };
      const free = piece.grain === 'none' || grain === 'none';
      if (free || grain === 'length') found.push(along);
      if (free || grain === 'width') found.push(across);
    }
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
      const rest = set ^ part;
      if (part < rest) break;
      for (const a of shapes[part]!) {
        for (const b of shapes[rest]!) {
          found.push({ x: a.x + kerf + b.x, y: Math.max(a.y, b.y) });
          found.push({ x: Math.max(a.x, b.x), y: a.y + kerf + b.y });
        }
      }
    }
    shapes[set] = undominated(found);
  }
  return shapes;
}

/** For every kind of sheet, whether it can hold each set of pieces. */
export function setsThatFit(group: StockGroup): boolean[][] {
  const byGrain = new Map<StockSheet['grain'], Shape[][]>();
  return group.sheets.map((sheet) => {
    const shapes = byGrain.get(sheet.grain) ?? shapesOfSets(group, sheet.grain);
    byGrain.set(sheet.grain, shapes);
    const x = sheet.lengthUm - sheet.trim.left - sheet.trim.right;
    const y = sheet.widthUm - sheet.trim.near - sheet.trim.far;
    return shapes.map((list) => list.some((shape) => shape.x <= x && shape.y <= y));
  });
}

/** Null when no plan exists. Sensible up to about nine pieces. */
export function exactNest(group: StockGroup): ExactNest | null {
  const pieces = group.demands.reduce((sum, demand) => sum + demand.count, 0);
  const fits = setsThatFit(group);
  const cost = leastOf(group, fits, pieces, (sheet) => sheet.priceMinor);
  const sheets = leastOf(group, fits, pieces, () => 1);
  return cost === null || sheets === null ? null : { sheets, costMinor: cost };
}

function leastOf(
  group: StockGroup,
  fits: boolean[][],
  pieces: number,
  priceOf: (sheet: StockSheet) => number,
): number | null {
  const known = new Map<string, number | null>();
  const solve = (left: number, counts: readonly number[]): number | null => {
    if (left === 0) return 0;
    const key = `${left} ${counts.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const lowest = left & -left;
    let best: number | null = null;
    for (let set = left; set > 0; set = (set - 1) & left) {
      if ((set & lowest) === 0) continue;
      for (const [s, sheet] of group.sheets.entries()) {
        if (counts[s] === 0 || !fits[s]![set]) continue;
        const rest = solve(
          left ^ set,
          counts.map((n, k) => (k === s && n > 0 ? n - 1 : n)),
        );
        if (rest !== null && (best === null || rest + priceOf(sheet) < best)) best = rest + priceOf(sheet);
      }
    }
    known.set(key, best);
    return best;
  };
  return solve(
    (1 << pieces) - 1,
    group.sheets.map((sheet) => Math.min(sheet.count ?? pieces, pieces)),
  );
}
