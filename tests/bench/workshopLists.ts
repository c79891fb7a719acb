import type { Demand, StockGroup, StockSheet } from '../../src/model/stock.ts';
import { SearchRandom } from '../../src/nesting/searchRandom.ts';

/**
 * Thirty invented cutting lists as a small workshop has them, of 30 to 150 panels in even steps, of one board or of
 * three (carcasses, fronts and backs).
 *
 * Cupboards are drawn until the list is long enough, then the last panels are left off. All sizes are in mm, drawn
 * evenly from the ranges in steps of 5, so that cupboards of one list seldom but sometimes agree:
 *
 * | cupboard | chance | height    | width     | depth   | shelves | front                                    |
 * |----------|--------|-----------|-----------|---------|---------|------------------------------------------|
 * | base     | 4 in 9 | 700–900   | 300–900   | 400–600 | 1–2     | one door, two above 600 wide; or drawers |
 * | wall     | 3 in 9 | 300–420   | 400–1000  | 280–360 | 0–1     | one flap                                 |
 * | tall     | 2 in 9 | 1500–1950 | 300–600   | 450–600 | 2–4     | two doors, one above the other           |
 *
 * Of 16 mm board: two sides height × depth, floor and top between them, shelves 2 mm shorter and 20 mm less deep, a
 * back inside the sides, fronts with 2 mm of air all round. One base cupboard in three has two to four drawers in
 * place of doors, and one cupboard in three is made twice. Every second kind of panel, by chance, has a grain.
 *
 * Sheets of 2800 × 2070 and 2500 × 1250 mm with their grain along the length, the smaller one dearer by the square
 * metre, any number of each; kerf 3.2 mm, 10 mm of trim on each side. The prices are invented.
 */
export const WORKSHOP_LISTS = 30;

const BOARD = 16;

/** Boards of a cupboard where it is not all of one. */
export const BOARDS = ['carcass', 'front', 'back'] as const;

/** Panels of one size, in mm. */
export interface Row {
  readonly board: (typeof BOARDS)[number];
  readonly length: number;
  readonly width: number;
  readonly count: number;
}

export class Draw {
  private readonly random: SearchRandom;

  constructor(seed: number) {
    this.random = new SearchRandom(seed);
    // Neighbouring seeds begin alike.
    for (let i = 0; i < 20; i++) this.random.below(2);
  }

  /** A whole number of `least` to `most`. */
  whole(least: number, most: number): number {
    return least + this.random.below(most - least + 1);
  }

  /** In steps of 5 mm. */
  size(least: number, most: number): number {
    return 5 * this.whole(least / 5, most / 5);
  }
}

function carcass(height: number, width: number, depth: number, shelves: number): Row[] {
  const inside = width - 2 * BOARD;
  return [
    { board: 'carcass', length: height, width: depth, count: 2 },
    { board: 'carcass', length: inside, width: depth, count: 2 },
    { board: 'carcass', length: inside - 2, width: depth - 20, count: shelves },
    { board: 'back', length: height - 2 * BOARD, width: inside, count: 1 },
  ];
}

function baseCupboard(draw: Draw): Row[] {
  const [height, width, depth] = [draw.size(700, 900), draw.size(300, 900), draw.size(400, 600)];
  if (draw.whole(1, 3) === 1) {
    const drawers = draw.whole(2, 4);
    const front = Math.floor((height - 2 - 2 * drawers) / drawers);
    return [
      ...carcass(height, width, depth, 0),
      { board: 'front', length: width - 4, width: front, count: drawers },
    ];
  }
  const doors = width > 600 ? 2 : 1;
  const door = Math.floor((width - 2 - 2 * doors) / doors);
  return [
    ...carcass(height, width, depth, draw.whole(1, 2)),
    { board: 'front', length: height - 4, width: door, count: doors },
  ];
}

function wallCupboard(draw: Draw): Row[] {
  const [height, width, depth] = [draw.size(300, 420), draw.size(400, 1000), draw.size(280, 360)];
  return [
    ...carcass(height, width, depth, draw.whole(0, 1)),
    { board: 'front', length: width - 4, width: height - 4, count: 1 },
  ];
}

function tallCupboard(draw: Draw): Row[] {
  const [height, width, depth] = [draw.size(1500, 1950), draw.size(300, 600), draw.size(450, 600)];
  const lower = draw.size(600, 900);
  return [
    ...carcass(height, width, depth, draw.whole(2, 4)),
    { board: 'front', length: lower, width: width - 4, count: 1 },
    { board: 'front', length: height - lower - 6, width: width - 4, count: 1 },
  ];
}

function cupboard(draw: Draw): Row[] {
  const kind = draw.whole(1, 9);
  const rows = kind <= 4 ? baseCupboard(draw) : kind <= 7 ? wallCupboard(draw) : tallCupboard(draw);
  const times = draw.whole(1, 3) === 1 ? 2 : 1;
  return rows.filter((row) => row.count > 0).map((row) => ({ ...row, count: times * row.count }));
}

/** Panels of cupboards drawn until there are so many. */
export function rowsOf(draw: Draw, panels: number): Row[] {
  const rows: Row[] = [];
  let left = panels;
  while (left > 0) {
    for (const row of cupboard(draw)) {
      const count = Math.min(row.count, left);
      if (count > 0) rows.push({ ...row, count });
      left -= count;
    }
  }
  return rows;
}

function sheet(lengthMm: number, widthMm: number, priceMinor: number): StockSheet {
  return {
    id: `${lengthMm} × ${widthMm}`,
    lengthUm: lengthMm * 1000,
    widthUm: widthMm * 1000,
    grain: 'length',
    priceMinor,
    count: null,
    kind: 'sheet',
    trim: { left: 10_000, right: 10_000, near: 10_000, far: 10_000 },
  };
}

/** Number of panels of a list, 0 to WORKSHOP_LISTS − 1. */
export function panelsOfList(index: number): number {
  return 30 + Math.round((120 * index) / (WORKSHOP_LISTS - 1));
}

/** Which sheets a list may be cut from: both sizes, or even lists from the larger one and odd ones from the smaller. */
export type SheetChoice = 'both sizes' | 'one size a list';

/** A list as one stock group; `series` 0 is the one whose figures are stated, others are for comparison. */
export function workshopList(index: number, series = 0, choice: SheetChoice = 'both sizes'): StockGroup {
  const demands = demandsOf(index, series).map(({ demand }) => demand);
  return groupOf(`list ${index + 1}`, demands, sheetsFor(index, choice));
}

/**
 * The same list where carcasses, fronts and backs are of a board each, as they mostly are: three stock groups, or two
 * where a list has no fronts yet.
 */
export function workshopListByBoard(
  index: number,
  series = 0,
  choice: SheetChoice = 'both sizes',
): StockGroup[] {
  const rows = demandsOf(index, series);
  return BOARDS.map((board) => ({
    board,
    demands: rows.filter((row) => row.board === board).map(({ demand }) => demand),
  }))
    .filter(({ demands }) => demands.length > 0)
    .map(({ board, demands }) => groupOf(`list ${index + 1}, ${board}`, demands, sheetsFor(index, choice)));
}

function demandsOf(index: number, series: number): { board: Row['board']; demand: Demand }[] {
  const draw = new Draw(1000 * series + index + 1);
  return rowsOf(draw, panelsOfList(index)).map(({ board, length, width, count }) => ({
    board,
    demand: {
      lengthUm: length * 1000,
      widthUm: width * 1000,
      count,
      grain: draw.whole(0, 1) === 0 ? 'length' : 'none',
      parts: [],
    },
  }));
}

function sheetsFor(index: number, choice: SheetChoice): StockSheet[] {
  const sheets = [sheet(2800, 2070, 17_900), sheet(2500, 1250, 10_300)];
  return choice === 'both sizes' ? sheets : [sheets[index % 2]!];
}

function groupOf(id: string, demands: readonly Demand[], sheets: readonly StockSheet[]): StockGroup {
  return {
    id,
    board: 'test board',
    finish: 'plain',
    thicknessUm: BOARD * 1000,
    parts: [],
    demands,
    sheets,
    saw: {
      name: 'panel saw',
      kerfUm: 3200,
      firstCut: 'either',
      turns: null,
      smallestPartUm: 0,
      leastOffcut: { lengthUm: 600_000, widthUm: 250_000 },
      longestCutUm: null,
      cuttingHeightUm: null,
    },
  };
}
