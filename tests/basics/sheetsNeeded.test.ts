import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Requirement, sheetsNeeded } from '../../src/basics/sheetsNeeded.ts';
import type { RectangleSheet } from '../../src/model/rectangles.ts';

function sheetOf(costMinor: number, count: number): RectangleSheet {
  return {
    sheet: 0,
    w: 10,
    h: 10,
    costMinor,
    count,
    noGrain: false,
    transposed: false,
    firstBlade: 'either',
  };
}

/** Least cost and fewest sheets over all mixes of at most `most` of each kind; null when none meets everything. */
function byTrying(sheets: readonly RectangleSheet[], requirements: readonly Requirement[], most: number) {
  let cost: number | null = null;
  let fewest: number | null = null;
  const visit = (from: number, mix: readonly number[]): void => {
    if (from < sheets.length) {
      const limit = sheets[from]!.count < 0 ? most : Math.min(most, sheets[from]!.count);
      for (let n = 0; n <= limit; n++) visit(from + 1, [...mix, n]);
      return;
    }
    const meets = requirements.every(
      ({ worth, wanted }) => BigInt(mix.reduce((sum, n, s) => sum + n * worth[s]!, 0)) >= wanted,
    );
    if (!meets) return;
    const price = mix.reduce((sum, n, s) => sum + n * sheets[s]!.costMinor, 0);
    const count = mix.reduce((sum, n) => sum + n, 0);
    if (cost === null || price < cost) cost = price;
    if (fewest === null || count < fewest) fewest = count;
  };
  visit(0, []);
  return { cost, fewest };
}

const cases = fc.integer({ min: 1, max: 3 }).chain((kinds) =>
  fc.record({
    sheets: fc.array(
      fc.record({ cost: fc.integer({ min: 0, max: 12 }), count: fc.integer({ min: -1, max: 3 }) }),
      { minLength: kinds, maxLength: kinds },
    ),
    requirements: fc.array(
      fc.record({
        worth: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: kinds, maxLength: kinds }),
        wanted: fc.integer({ min: 0, max: 25 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
  }),
);

describe('sheetsNeeded', () => {
  it('finds the cheapest and the fewest sheets that meet every requirement', () => {
    let met = 0;
    fc.assert(
      fc.property(cases, (given) => {
        const sheets = given.sheets.map(({ cost, count }) => sheetOf(cost, count));
        const requirements = given.requirements.map(({ worth, wanted }) => ({
          worth,
          wanted: BigInt(wanted),
        }));
        const tried = byTrying(sheets, requirements, 25);
        const need = sheetsNeeded(sheets, requirements);
        if (tried.cost === null) return;
        met++;
        expect(need.enough).toBe(true);
        expect(need.costMinor).toBe(tried.cost);
        expect(need.sheets).toBe(tried.fewest);
        const mix = need.mix!;
        expect(mix.reduce((sum, n, s) => sum + n * sheets[s]!.costMinor, 0)).toBe(need.costMinor);
        for (const { worth, wanted } of requirements) {
          expect(BigInt(mix.reduce((sum, n, s) => sum + n * worth[s]!, 0)) >= wanted).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
    expect(met).toBeGreaterThan(100);
  });

  it('costs more for two requirements together than for either alone where they pull apart', () => {
    const sheets = [sheetOf(5, -1), sheetOf(5, -1)];
    const first = { worth: [2, 1], wanted: 4n };
    const second = { worth: [1, 2], wanted: 4n };
    expect(sheetsNeeded(sheets, [first]).costMinor).toBe(10);
    expect(sheetsNeeded(sheets, [second]).costMinor).toBe(10);
    expect(sheetsNeeded(sheets, [first, second]).costMinor).toBe(15);
  });
});
