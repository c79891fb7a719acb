import fc from 'fast-check';
import type { Demand, SawRules, StockGroup, StockSheet } from '../../src/model/stock.ts';

/** A group for tests: sizes in mm, everything else plain unless given. */
export function stockGroup(given: {
  demands: readonly (readonly [length: number, width: number, count: number, grain?: 'length' | 'none'])[];
  sheets?: readonly Partial<StockSheet & { lengthMm: number; widthMm: number }>[];
  saw?: Partial<SawRules>;
}): StockGroup {
  const sheets = (given.sheets ?? [{}]).map((sheet, index): StockSheet => {
    const { lengthMm = 2800, widthMm = 2070, ...rest } = sheet;
    return {
      id: `sheet ${index + 1}`,
      lengthUm: lengthMm * 1000,
      widthUm: widthMm * 1000,
      grain: 'length',
      priceMinor: 1,
      count: null,
      kind: 'sheet',
      trim: { left: 0, right: 0, near: 0, far: 0 },
      ...rest,
    };
  });
  return {
    id: 'test board',
    board: 'test board',
    finish: 'plain',
    thicknessUm: 15_000,
    parts: [],
    demands: given.demands.map(
      ([length, width, count, grain = 'none']): Demand => ({
        lengthUm: Math.round(length * 1000),
        widthUm: Math.round(width * 1000),
        count,
        grain,
        parts: [],
      }),
    ),
    sheets,
    saw: {
      name: 'test saw',
      kerfUm: 0,
      firstCut: 'either',
      turns: null,
      smallestPartUm: 0,
      leastOffcut: { lengthUm: 500_000, widthUm: 200_000 },
      longestCutUm: null,
      cuttingHeightUm: null,
      ...given.saw,
    },
  };
}

const tenths = (from: number, to: number) => fc.integer({ min: from, max: to }).map((n) => n * 100);

const sheet: fc.Arbitrary<StockSheet> = fc.record({
  id: fc.constant('sheet'),
  lengthUm: tenths(80, 160),
  widthUm: tenths(80, 160),
  grain: fc.constantFrom('length' as const, 'width' as const, 'none' as const),
  priceMinor: fc.integer({ min: 0, max: 5 }),
  count: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 3 })),
  kind: fc.constant('sheet' as const),
  trim: fc.record({ left: tenths(0, 8), right: tenths(0, 8), near: tenths(0, 8), far: tenths(0, 8) }),
});

const demand: fc.Arbitrary<Demand> = fc.record({
  lengthUm: tenths(5, 90),
  widthUm: tenths(5, 90),
  count: fc.integer({ min: 0, max: 4 }),
  grain: fc.constantFrom('length' as const, 'none' as const),
  parts: fc.constant([]),
});

const saw: fc.Arbitrary<SawRules> = fc.record({
  name: fc.constant('saw'),
  kerfUm: tenths(0, 5),
  firstCut: fc.constantFrom('rip' as const, 'crosscut' as const, 'either' as const),
  turns: fc.constantFrom(null, 0, 1, 2, 3),
  smallestPartUm: fc.constant(0),
  leastOffcut: fc.record({ lengthUm: tenths(10, 60), widthUm: tenths(10, 60) }),
  longestCutUm: fc.option(tenths(40, 165), { nil: null }),
  cuttingHeightUm: fc.constant(null),
});

/** Small groups with every rule in play: sizes of 0.5 to 16 mm in tenths, so that near misses are frequent. */
export const smallStockGroup: fc.Arbitrary<StockGroup> = fc
  .record({
    demands: fc.array(demand, { minLength: 1, maxLength: 7 }),
    sheets: fc.array(sheet, { minLength: 1, maxLength: 3 }),
    saw,
  })
  .map(({ demands, sheets, saw }) => ({
    id: 'small',
    board: 'small',
    finish: 'plain',
    thicknessUm: 1000,
    parts: [],
    demands,
    sheets,
    saw,
  }));
