import type { Nest, NestedSheet, NestPiece } from '../../src/model/nest.ts';
import type { StockGroup, StockSheet } from '../../src/model/stock.ts';

/**
 * Checks a nest against its group with code that shares nothing with the nester: sizes, kerf, grain, counts, sheets,
 * cost, first cut, turns and longest cut. Throws with the first thing found wrong.
 */
export function assertNest(group: StockGroup, nest: Nest): void {
  const cut = group.demands.map(() => 0);
  const used = group.sheets.map(() => 0);
  for (const nested of nest.sheets) {
    const sheet = group.sheets[nested.sheet];
    if (!sheet) throw new Error(`no sheet ${nested.sheet} in the group`);
    if (!Number.isInteger(nested.copies) || nested.copies < 1) throw new Error(`copies ${nested.copies}`);
    used[nested.sheet]! += nested.copies;
    checkSheet(group, sheet, nested, cut);
  }
  group.demands.forEach((demand, index) => {
    if (cut[index] !== demand.count)
      throw new Error(`demand ${index} cut ${cut[index]} times of ${demand.count}`);
  });
  group.sheets.forEach((sheet, index) => {
    if (sheet.count !== null && used[index]! > sheet.count)
      throw new Error(`${used[index]} of ${sheet.count} sheets ${index}`);
  });
  const cost = group.sheets.reduce((sum, sheet, index) => sum + used[index]! * sheet.priceMinor, 0);
  if (cost !== nest.costMinor) throw new Error(`cost ${nest.costMinor}, but the sheets cost ${cost}`);
  if (nest.costMinor < nest.bound.costMinor)
    throw new Error(`cost ${cost} is below the bound ${nest.bound.costMinor}`);
  const sheets = used.reduce((sum, n) => sum + n, 0);
  if (sheets < nest.bound.sheets)
    throw new Error(`${sheets} sheets are below the bound ${nest.bound.sheets}`);
  if (nest.proved !== (nest.costMinor === nest.bound.costMinor)) throw new Error(`proved ${nest.proved}`);
}

function checkSheet(group: StockGroup, sheet: StockSheet, nested: NestedSheet, cut: number[]): void {
  const { root } = nested;
  const x = sheet.lengthUm - sheet.trim.left - sheet.trim.right;
  const y = sheet.widthUm - sheet.trim.near - sheet.trim.far;
  if (root.xUm !== x || root.yUm !== y)
    throw new Error(`root ${root.xUm} × ${root.yUm} on a sheet of ${x} × ${y}`);
  if (root.kind === 'stack' && group.saw.firstCut !== 'either') {
    // A rip runs along the length, so it divides the sheet along its width.
    const axis = group.saw.firstCut === 'rip' ? 'y' : 'x';
    if (root.axis !== axis)
      throw new Error(`first cut ${group.saw.firstCut}, but the root is divided along ${root.axis}`);
  }
  checkTrims(group, sheet, root);
  const levels = checkPiece(group, sheet, nested.copies, root, null, cut);
  if (group.saw.turns !== null && levels > group.saw.turns + 1)
    throw new Error(`${levels} levels, ${group.saw.turns} turns`);
}

function checkCut(group: StockGroup, lengthUm: number, what: string): void {
  const longest = group.saw.longestCutUm;
  if (longest !== null && lengthUm > longest)
    throw new Error(`${what} is ${lengthUm} long, the longest cut is ${longest}`);
}

/** The two sides that a first cut runs up to are trimmed first: before rips the ends, before crosscuts the edges. */
function checkTrims(group: StockGroup, sheet: StockSheet, root: NestPiece): void {
  const { left, right, near, far } = sheet.trim;
  const crosscutsFirst = root.kind === 'stack' ? root.axis === 'x' : group.saw.firstCut === 'crosscut';
  const endCut = crosscutsFirst ? sheet.widthUm - near - far : sheet.widthUm;
  const edgeCut = crosscutsFirst ? sheet.lengthUm : sheet.lengthUm - left - right;
  if (left + right > 0) checkCut(group, endCut, 'the trim of an end');
  if (near + far > 0) checkCut(group, edgeCut, 'the trim of an edge');
}

/** Gives the levels of stacks in the piece. */
function checkPiece(
  group: StockGroup,
  sheet: StockSheet,
  copies: number,
  piece: NestPiece,
  parentAxis: 'x' | 'y' | null,
  cut: number[],
): number {
  if (!(piece.xUm > 0 && piece.yUm > 0)) throw new Error(`a piece of ${piece.xUm} × ${piece.yUm}`);
  switch (piece.kind) {
    case 'spare': {
      const { lengthUm, widthUm } = group.saw.leastOffcut;
      const kept =
        (piece.xUm >= lengthUm && piece.yUm >= widthUm) || (piece.yUm >= lengthUm && piece.xUm >= widthUm);
      if (kept !== (piece.use === 'offcut'))
        throw new Error(`spare ${piece.xUm} × ${piece.yUm} marked ${piece.use}`);
      return 0;
    }
    case 'demand':
      checkDemand(group, sheet, piece);
      cut[piece.demand]! += copies;
      return 0;
    case 'stack': {
      if (piece.axis === parentAxis)
        throw new Error(`a stack along ${piece.axis} in one along the same axis`);
      if (piece.children.length === 0) throw new Error('a stack without children');
      const along = piece.axis === 'x' ? 'xUm' : 'yUm';
      const across = piece.axis === 'x' ? 'yUm' : 'xUm';
      checkCut(group, piece[across], `a cut across ${piece.axis}`);
      const kerf = group.saw.kerfUm;
      let sum = kerf * (piece.children.length - 1);
      let levels = 0;
      for (const child of piece.children) {
        if (child[across] !== piece[across])
          throw new Error(`a child ${child[across]} across a stack of ${piece[across]}`);
        sum += child[along];
        levels = Math.max(levels, checkPiece(group, sheet, copies, child, piece.axis, cut));
      }
      const scrape = piece[along] - sum;
      if (scrape < 0 || scrape > kerf) throw new Error(`a scrape of ${scrape} with a kerf of ${kerf}`);
      if (piece.children.length === 1 && scrape === 0) throw new Error('a stack that is not cut at all');
      return levels + 1;
    }
  }
}

function checkDemand(group: StockGroup, sheet: StockSheet, piece: NestPiece & { kind: 'demand' }): void {
  const demand = group.demands[piece.demand];
  if (!demand) throw new Error(`no demand ${piece.demand}`);
  const [length, width] = piece.lengthAlong === 'x' ? [piece.xUm, piece.yUm] : [piece.yUm, piece.xUm];
  if (length !== demand.lengthUm || width !== demand.widthUm) {
    throw new Error(
      `demand ${piece.demand} of ${demand.lengthUm} × ${demand.widthUm} cut ${length} × ${width}`,
    );
  }
  if (demand.grain === 'length' && sheet.grain !== 'none') {
    const grainAlong = sheet.grain === 'length' ? 'x' : 'y';
    if (piece.lengthAlong !== grainAlong) throw new Error(`demand ${piece.demand} cut across the grain`);
  }
}
