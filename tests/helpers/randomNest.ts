import { SeededRandom } from '../../src/basics/random.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { Nest, NestedSheet, NestPiece } from '../../src/model/nest.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply, StockGroup } from '../../src/model/stock.ts';

/**
 * Nests that are right by the way they are made: a sheet is divided at random, and whatever comes out is declared to
 * be what was wanted. All sizes in tenths of a millimetre, so that every case lies on the grid.
 */
export interface RandomNestOptions {
  readonly seed: number;
  readonly kerfTenths: number;
  readonly trimTenths: readonly [left: number, right: number, near: number, far: number];
  readonly grain: 'length' | 'width' | 'none';
  /** Sheets that are cut differently, each with up to this many copies. */
  readonly sheets: number;
  readonly mostCopies: number;
  readonly depth: number;
  /** Share of wanted pieces that are blanks for matched panels, 0 to 1. */
  readonly matched: number;
}

export interface MadeNest {
  readonly group: StockGroup;
  readonly nest: Nest;
}

type Axis = 'x' | 'y';
type Draft =
  | { kind: 'stack'; axis: Axis; x: number; y: number; children: Draft[] }
  | { kind: 'wanted'; x: number; y: number; parts: string[]; lengthAlong: Axis }
  | { kind: 'spare'; x: number; y: number; use: 'offcut' | 'waste' };

const RAW_EDGES = {
  alongLength: [null, null],
  alongWidth: [null, null],
} as const;

class Maker {
  readonly parts = new Map<string, Part>();
  private readonly random: SeededRandom;
  private readonly options: RandomNestOptions;
  private copies = 1;

  constructor(options: RandomNestOptions) {
    this.options = options;
    this.random = new SeededRandom(options.seed);
  }

  drawCopies(): number {
    this.copies = 1 + this.random.below(this.options.mostCopies);
    return this.copies;
  }

  draft(x: number, y: number, depth: number, axis: Axis): Draft {
    const along = axis === 'x' ? x : y;
    const kerf = this.options.kerfTenths;
    if (depth === 0 || along < 1500 + 3 * kerf || this.random.below(6) === 0) return this.leaf(x, y);
    const children: Draft[] = [];
    const equal = this.random.below(3) === 0 ? 300 + this.random.below(Math.ceil(along / 3)) : 0;
    let left = along;
    while (left > 0) {
      const drawn = equal > 0 ? equal : 300 + this.random.below(Math.ceil(along / 2));
      // Sometimes the last piece leaves a little for the blade to scrape off, sometimes nothing.
      const scrape = this.random.below(2) * this.random.below(kerf + 1);
      const size = left - drawn <= kerf ? Math.max(1, left - scrape) : drawn;
      children.push(axis === 'x' ? this.draft(size, y, depth - 1, 'y') : this.draft(x, size, depth - 1, 'x'));
      if (left - size <= kerf) break;
      left -= size + kerf;
    }
    return { kind: 'stack', axis, x, y, children };
  }

  private leaf(x: number, y: number): Draft {
    const chance = this.random.below(10);
    if (chance === 0 || Math.min(x, y) < 20) return { kind: 'spare', x, y, use: 'waste' };
    if (chance === 1) return { kind: 'spare', x, y, use: 'offcut' };
    if (this.random.unit() < this.options.matched) {
      const blank = this.blank(x, y);
      if (blank) return blank;
    }
    const { grain } = this.options;
    const kept = this.random.below(2) === 0;
    const lengthAlong: Axis = kept && grain !== 'none' ? (grain === 'length' ? 'x' : 'y') : this.either();
    const turned = !kept && x < y === (lengthAlong === 'x');
    const demandAlong: Axis = turned ? (lengthAlong === 'x' ? 'y' : 'x') : lengthAlong;
    const [length, width] = lengthAlong === 'x' ? [x, y] : [y, x];
    const part = this.part(length, width, kept ? 'length' : 'none');
    return { kind: 'wanted', x, y, parts: [part], lengthAlong: demandAlong };
  }

  private either(): Axis {
    return this.random.below(2) === 0 ? 'x' : 'y';
  }

  private part(length: number, width: number, grain: 'length' | 'none', match?: Part['match']): string {
    const id = `p${this.parts.size + 1}`;
    // A part may come from several equal pieces, so that counts above one and several names a size both occur.
    const same = match
      ? undefined
      : [...this.parts.values()].find(
          (part) =>
            part.cutLengthUm === length * 100 &&
            part.cutWidthUm === width * 100 &&
            part.grain === grain &&
            part.match === undefined,
        );
    if (same && this.random.below(2) === 0) {
      this.parts.set(same.id, { ...same, count: same.count + this.copies });
      return same.id;
    }
    this.parts.set(id, {
      id,
      name: `panel ${id}`,
      unit: '',
      order: '',
      board: 'ply',
      finish: 'grey',
      thicknessUm: 15_000,
      finishedLengthUm: length * 100,
      finishedWidthUm: width * 100,
      cutLengthUm: length * 100,
      cutWidthUm: width * 100,
      grain,
      edging: RAW_EDGES,
      count: this.copies,
      ...(match ? { match } : {}),
    });
    return id;
  }

  /** A blank with two or more fronts along x or y, the first of full width so that the row is as wide as the piece. */
  private blank(x: number, y: number): Draft | null {
    const along = this.either();
    const { grain, kerfTenths: kerf } = this.options;
    const lengthAlong: Axis = grain === 'none' ? this.either() : grain === 'length' ? 'x' : 'y';
    const follows = lengthAlong === along ? 'length' : 'width';
    const [row, across] = along === 'x' ? [x, y] : [y, x];
    const fronts = 2 + this.random.below(3);
    const each = Math.floor((row - (fronts - 1) * kerf) / fronts);
    if (each < 20) return null;
    const run = `run ${this.parts.size}`;
    const parts: string[] = [];
    for (let position = 0; position < fronts; position++) {
      const last = position === fronts - 1;
      const size = last ? row - (each + kerf) * (fronts - 1) : each;
      const narrower =
        position > 0 && this.random.below(3) === 0 ? this.random.below(Math.floor(across / 2)) : 0;
      const [length, width] = follows === 'length' ? [size, across - narrower] : [across - narrower, size];
      parts.push(this.part(length, width, 'length', { run, position, follows }));
    }
    return { kind: 'wanted', x, y, parts, lengthAlong };
  }
}

function settle(draft: Draft, demandOf: ReadonlyMap<string, number>): NestPiece {
  const xUm = draft.x * 100;
  const yUm = draft.y * 100;
  switch (draft.kind) {
    case 'stack':
      return {
        kind: 'stack',
        axis: draft.axis,
        xUm,
        yUm,
        children: draft.children.map((child) => settle(child, demandOf)),
      };
    case 'spare':
      return { kind: 'spare', xUm, yUm, use: draft.use };
    case 'wanted':
      return {
        kind: 'demand',
        xUm,
        yUm,
        demand: demandOf.get(draft.parts[0]!)!,
        lengthAlong: draft.lengthAlong,
      };
  }
}

/** A stock group with a nest that cuts it. Throws when the parts it drew do not make one group. */
export function makeRandomNest(options: RandomNestOptions): MadeNest | null {
  const maker = new Maker(options);
  const [left, right, near, far] = options.trimTenths;
  const drafts: { draft: Draft; copies: number; stock: number }[] = [];
  const sizes = [
    { length: 25_000, width: 12_200 },
    { length: 15_250, width: 15_250 },
  ];
  for (let i = 0; i < options.sheets; i++) {
    const stock = i % sizes.length;
    const { length, width } = sizes[stock]!;
    const copies = maker.drawCopies();
    const axis = (options.seed + i) % 2 === 0 ? 'x' : 'y';
    drafts.push({
      draft: maker.draft(length - left - right, width - near - far, options.depth, axis),
      copies,
      stock,
    });
  }
  const supplies: SheetSupply[] = sizes.map((size, index) => ({
    id: `sheet-${index + 1}`,
    board: 'ply',
    finish: 'grey',
    thicknessUm: 15_000,
    lengthUm: size.length * 100,
    widthUm: size.width * 100,
    grain: options.grain,
    priceMinor: 9000 + index,
    count: null,
    kind: 'sheet',
  }));
  if (maker.parts.size === 0) return null;
  const made = makeStockGroups([...maker.parts.values()], supplies, {
    name: 'test saw',
    kerfUm: options.kerfTenths * 100,
    firstCut: 'either',
    turns: null,
    smallestPartUm: 0,
    leastOffcut: { lengthUm: 400_000, widthUm: 200_000 },
    longestCutUm: null,
    cuttingHeightUm: null,
    trimUm: { left: left * 100, right: right * 100, near: near * 100, far: far * 100 },
  });
  const group = made.groups[0];
  if (group === undefined || made.groups.length > 1) {
    throw new Error(`the parts do not make one group: ${JSON.stringify(made.findings)}`);
  }
  const demandOf = new Map<string, number>();
  group.demands.forEach((demand, index) => {
    for (const entry of demand.parts) demandOf.set(entry.part, index);
  });
  const sheets: NestedSheet[] = drafts.map(({ draft, copies, stock }) => ({
    sheet: stock,
    copies,
    root: settle(draft, demandOf),
  }));
  const costMinor = sheets.reduce(
    (sum, sheet) => sum + sheet.copies * group.sheets[sheet.sheet]!.priceMinor,
    0,
  );
  return {
    group,
    nest: {
      sheets,
      costMinor,
      bound: { sheets: 0, costMinor: 0, certificate: { method: 'area' } },
      proved: false,
      moves: 0,
    },
  };
}
