import { SeededRandom } from '../../src/basics/random.ts';
import type { StockGroup, StockSheet } from '../../src/model/stock.ts';

/** What a small random stock group looks like; sizes are in whole millimetres. */
export interface SmallGroupShape {
  readonly kinds: number;
  readonly pieces: number;
  readonly sheetKinds: number;
  readonly longest: number;
  readonly kerfUm: number;
}

const TRIM = { left: 0, right: 0, near: 0, far: 0 };

/** A stock group without parts: all that nesting and bounds look at. Sizes in mm, prices in minor units. */
export function plainGroup(input: {
  readonly pieces: readonly (readonly [length: number, width: number, count: number])[];
  readonly sheets: readonly (Partial<StockSheet> & { readonly mm: readonly [number, number] })[];
  readonly grain?: 'length' | 'none';
  readonly kerfUm?: number;
}): StockGroup {
  return {
    id: 'plain',
    board: 'board',
    finish: 'plain',
    thicknessUm: 15_000,
    parts: [],
    demands: input.pieces.map(([length, width, count]) => ({
      lengthUm: length * 1000,
      widthUm: width * 1000,
      count,
      grain: input.grain ?? 'none',
      parts: [],
    })),
    sheets: input.sheets.map(({ mm, ...sheet }, index) => ({
      id: `sheet ${index + 1}`,
      lengthUm: mm[0] * 1000,
      widthUm: mm[1] * 1000,
      grain: 'length',
      priceMinor: 100,
      count: null,
      kind: 'sheet',
      trim: TRIM,
      ...sheet,
    })),
    saw: {
      name: 'saw',
      kerfUm: input.kerfUm ?? 0,
      firstCut: 'either',
      turns: null,
      smallestPartUm: 0,
      leastOffcut: { lengthUm: 1_000_000, widthUm: 1_000_000 },
      longestCutUm: null,
      cuttingHeightUm: null,
    },
  };
}

/** The same group with every sheet and piece turned by a quarter: what was length is width. */
export function turnedGroup(group: StockGroup): StockGroup {
  const turned = { length: 'width', width: 'length', none: 'none' } as const;
  return {
    ...group,
    sheets: group.sheets.map((sheet) => ({
      ...sheet,
      lengthUm: sheet.widthUm,
      widthUm: sheet.lengthUm,
      grain: turned[sheet.grain],
      trim: { left: sheet.trim.near, right: sheet.trim.far, near: sheet.trim.left, far: sheet.trim.right },
    })),
  };
}

/** A random group: grain, offcuts at no cost, limited sheets and trims all happen. Same seed, same group. */
export function smallGroup(seed: number, shape: SmallGroupShape): StockGroup {
  const random = new SeededRandom(seed);
  const side = (): number => 1 + random.below(shape.longest);
  const pieces: [number, number, number][] = [];
  let left = shape.pieces;
  for (let kind = 0; kind < shape.kinds && left > 0; kind++) {
    const count = kind === shape.kinds - 1 ? left : 1 + random.below(left);
    pieces.push([side(), side(), count]);
    left -= count;
  }
  const kinds = 1 + random.below(shape.sheetKinds);
  const sheets = Array.from({ length: kinds }, (_, index) => {
    const [length, width] = [shape.longest + random.below(4), shape.longest + random.below(4)];
    const offcut = index > 0 && random.below(4) === 0;
    const trim = random.below(3) === 0 ? { left: 1000, right: 500, near: 0, far: 1000 } : TRIM;
    return {
      mm: [length + (trim === TRIM ? 0 : 2), width + (trim === TRIM ? 0 : 1)] as const,
      grain: (['length', 'length', 'width', 'none'] as const)[random.below(4)]!,
      priceMinor: offcut ? 0 : 20 + 5 * random.below(length * width),
      count: offcut || (index > 0 && random.below(2) === 0) ? 1 + random.below(2) : null,
      kind: offcut ? ('offcut' as const) : ('sheet' as const),
      trim,
    };
  });
  const group = plainGroup({ pieces, sheets, kerfUm: shape.kerfUm });
  return {
    ...group,
    demands: group.demands.map((demand) => ({
      ...demand,
      grain: random.below(2) === 0 ? 'length' : 'none',
    })),
  };
}
