import { describe, expect, it } from 'vitest';
import { countsOf, fitsSheet } from '../../src/basics/patternTree.ts';
import { recheckBound } from '../../src/basics/recheckBound.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { functionPairs } from '../../src/bounds/dualFeasibleBound.ts';
import { everySplitBound } from '../../src/bounds/everySplitBound.ts';
import { areaBound, type BoundOptions, lowerBound } from '../../src/bounds/index.ts';
import { hasMixes } from '../../src/bounds/mixCuts.ts';
import { mostOverused } from '../../src/bounds/mostOverused.ts';
import { patternBound } from '../../src/bounds/patternBound.ts';
import { PRICE_DENOMINATOR, priceSheets } from '../../src/bounds/priceSheets.ts';
import { makePricingTables } from '../../src/bounds/pricingTables.ts';
import type { Bound } from '../../src/model/nest.ts';
import type { SheetPattern } from '../../src/model/patterns.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { exactNest } from '../helpers/exactNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { plainGroup, smallGroup } from '../helpers/smallGroups.ts';

/** How much is proved of few groups, each in an instant: a bound that becomes weaker is still true, and only this tells. */

const solver = await loadSolver();
const EFFORT = 20_000_000;
const shapes = [
  { kinds: 3, pieces: 5, sheetKinds: 1, longest: 7, kerfUm: 0 },
  { kinds: 4, pieces: 6, sheetKinds: 3, longest: 6, kerfUm: 0 },
  { kinds: 5, pieces: 6, sheetKinds: 2, longest: 9, kerfUm: 600 },
  { kinds: 2, pieces: 7, sheetKinds: 2, longest: 8, kerfUm: 1000 },
];
/** Groups of which areas do not prove what they cost at least, with that cost. */
const groups: { group: StockGroup; exact: { costMinor: number; sheets: number } }[] = shapes.flatMap(
  (shape, s) =>
    Array.from({ length: 22 }, (_, k) => smallGroup(900 + k + 100_000 * s, shape)).flatMap((group) => {
      const exact = exactNest(group);
      return exact && areaBound(group).costMinor < exact.costMinor ? [{ group, exact }] : [];
    }),
);

const bounded = (group: StockGroup, options: Partial<BoundOptions> = {}) =>
  lowerBound(group, { solver, effort: EFFORT, ...options });

/** Costs and sheets that are proved of all groups together, and of how many of them the truth. */
function strength(prove: (group: StockGroup, truth: number) => { costMinor: number; sheets: number } | null) {
  let [proved, costMinor, sheets, met] = [0, 0, 0, 0];
  for (const { group, exact } of groups) {
    const bound = prove(group, exact.costMinor);
    if (bound === null) continue;
    expect(bound.costMinor).toBeLessThanOrEqual(exact.costMinor);
    expect(bound.sheets).toBeLessThanOrEqual(exact.sheets);
    proved += 1;
    costMinor += bound.costMinor;
    sheets += bound.sheets;
    if (bound.costMinor === exact.costMinor) met += 1;
  }
  return { proved, costMinor, sheets, met };
}

// What is proved may become more, and then these figures are raised; it must not become less.
describe('of small groups', () => {
  it('areas prove so much', () => {
    expect(strength((group) => areaBound(group))).toEqual({
      costMinor: 8665,
      met: 0,
      proved: 18,
      sheets: 42,
    });
  });

  it('pairs of functions prove so much', () => {
    const byPairs = (group: StockGroup, effort: number) => {
      const problem = makeRectangleProblem(group);
      const proofs = functionPairs(problem, effort).map(({ along, across, sheet }) =>
        recheckBound(problem, {
          method: 'dual feasible function',
          function: along.family,
          parameter: along.parameter,
          across: { function: across.family, parameter: across.parameter },
          sheet,
        }),
      );
      expect(proofs).toHaveLength(problem.sheets.length);
      return proofs.reduce((a, b) => (b.costMinor > a.costMinor ? b : a));
    };
    expect(strength((group) => byPairs(group, 1e9))).toEqual({
      costMinor: 12535,
      met: 16,
      proved: 18,
      sheets: 59,
    });
    expect(strength((group) => byPairs(group, 1))).toEqual({
      costMinor: 12535,
      met: 16,
      proved: 18,
      sheets: 59,
    });
    expect(strength((group) => bounded(group, { solver: null }).bound)).toEqual({
      costMinor: 12535,
      met: 16,
      proved: 18,
      sheets: 59,
    });
  });

  it('trying every way to part the pieces proves so much, and finds plans', () => {
    let plans = 0;
    const split = (group: StockGroup, truth: number) => {
      const problem = makeRectangleProblem(group);
      const known = areaBound(group);
      const found = everySplitBound(problem, known, truth + 1, EFFORT);
      if (found === null) return null;
      if (found.patterns.length > 0) plans += 1;
      expect(recheckBound(problem, found.bound.certificate)).toEqual({
        sheets: found.bound.sheets,
        costMinor: found.bound.costMinor,
      });
      for (const pattern of found.patterns) {
        expect(fitsSheet(problem, pattern)).toBe(true);
        expect(pattern.counts).toEqual(countsOf(pattern.tree));
      }
      return found.bound;
    };
    expect(strength(split)).toEqual({
      costMinor: 11870,
      met: 16,
      proved: 17,
      sheets: 50,
    });
    expect(plans).toEqual(13);
    // No dearer than the plan, nothing is tried; with no work nothing is said.
    expect(
      strength(
        (group) => everySplitBound(makeRectangleProblem(group), areaBound(group), 0, EFFORT)?.bound ?? null,
      ),
    ).toEqual({
      costMinor: 0,
      met: 0,
      proved: 0,
      sheets: 0,
    });
    expect(
      strength(
        (group, truth) =>
          everySplitBound(makeRectangleProblem(group), areaBound(group), truth + 1, 1)?.bound ?? null,
      ),
    ).toEqual({
      costMinor: 0,
      met: 0,
      proved: 0,
      sheets: 0,
    });
  });

  it('patterns prove so much, and more of them where a plan is known', () => {
    const methods = new Map<string, number>();
    let patterns = 0;
    const priced = (group: StockGroup, options: Partial<BoundOptions>) => {
      const lower = bounded(group, options);
      const { certificate } = lower.bound;
      methods.set(certificate.method, (methods.get(certificate.method) ?? 0) + 1);
      patterns += lower.patterns.length;
      const problem = makeRectangleProblem(group);
      for (const pattern of lower.patterns) expect(fitsSheet(problem, pattern)).toBe(true);
      return lower.bound;
    };
    expect(strength((group) => priced(group, {}))).toEqual({
      costMinor: 12690,
      met: 18,
      proved: 18,
      sheets: 59,
    });
    expect([Object.fromEntries(methods), patterns]).toEqual([
      {
        'dual feasible function': 16,
        'pattern prices': 2,
      },
      70,
    ]);
    methods.clear();
    expect(strength((group, truth) => priced(group, { planCost: truth + 1 }))).toEqual({
      costMinor: 12690,
      met: 18,
      proved: 18,
      sheets: 59,
    });
    expect(Object.fromEntries(methods)).toEqual({
      'dual feasible function': 16,
      together: 2,
    });
  });

  it('patterns count copies and rule out mixes where nothing else is tried', () => {
    const methods = new Map<string, number>();
    let limited = 0;
    const priced = (group: StockGroup, truth: number) => {
      const problem = makeRectangleProblem(group);
      const found = patternBound(problem, {
        solver,
        known: areaBound(group),
        planCost: truth + 1,
        effort: EFFORT,
        patterns: [],
        stop: () => false,
      });
      if (found === null) return null;
      const { certificate } = found.bound;
      methods.set(certificate.method, (methods.get(certificate.method) ?? 0) + 1);
      const parts = certificate.method === 'together' ? certificate.parts : [certificate];
      for (const part of parts) if (part.method === 'pattern prices' && part.limited.length > 0) limited += 1;
      const own = recheckBound(problem, certificate);
      expect(own).toEqual({ sheets: found.bound.sheets, costMinor: found.bound.costMinor });
      // None of several proofs could be left out.
      for (const part of parts.length > 1 ? parts : []) {
        const others = { method: 'together' as const, parts: parts.filter((other) => other !== part) };
        expect(recheckBound(problem, others)).not.toEqual(own);
      }
      return found.bound;
    };
    expect(strength(priced)).toEqual({
      costMinor: 12690,
      met: 18,
      proved: 18,
      sheets: 59,
    });
    expect([Object.fromEntries(methods), limited]).toEqual([
      {
        'pattern prices': 18,
      },
      2,
    ]);
  });
});

describe('of groups of which a mix that is ruled out proves more than the area', () => {
  const mixed = [225, 238, 249, 318, 344, 346, 619, 648, 839, 1257, 1356, 1516].map((seed) =>
    smallGroup(seed, shapes[1]!),
  );
  const ruledOut = (
    group: StockGroup,
    more: { effort?: number; stop?: () => boolean; dearer?: number } = {},
  ) => {
    const problem = makeRectangleProblem(group);
    const known = areaBound(group);
    const { dearer = 1, ...request } = more;
    const planCost = exactNest(group)!.costMinor + dearer;
    const options = { solver, known, planCost, effort: EFFORT, patterns: [], stop: () => false, ...request };
    const found = patternBound(problem, options);
    if (found === null) return [null];
    const { bound } = found;
    expect(bound.costMinor).toBeLessThan(planCost - dearer + 1);
    expect(recheckBound(problem, bound.certificate)).toEqual({
      sheets: bound.sheets,
      costMinor: bound.costMinor,
    });
    const { certificate } = bound;
    if (certificate.method !== 'together') return [bound.costMinor, certificate.method];
    // None of several proofs could be left out.
    for (const part of certificate.parts.length > 1 ? certificate.parts : []) {
      const parts = certificate.parts.filter((other) => other !== part);
      const less = recheckBound(problem, { method: 'together', parts });
      expect(less.costMinor < bound.costMinor || less.sheets < bound.sheets).toBe(true);
    }
    return [bound.costMinor, certificate.parts.length];
  };

  it('so much is proved, and less with less work', () => {
    expect(mixed.map((group) => ruledOut(group))).toEqual([
      [515, 2],
      [410, 1],
      [250, 2],
      [435, 2],
      [315, 2],
      [410, 1],
      [445, 1],
      [220, 'pattern prices'],
      [540, 2],
      [610, 'pattern prices'],
      [405, 'pattern prices'],
      [715, 1],
    ]);
    expect(mixed.map((group) => ruledOut(group, { dearer: 0 })[0])).toEqual([
      515, 410, 250, 435, 315, 410, 445, 220, 540, 610, 405, 715,
    ]);
    expect(mixed.map((group) => ruledOut(group, { effort: 20_000 })[0])).toEqual([
      515,
      null,
      null,
      435,
      null,
      null,
      445,
      null,
      null,
      610,
      null,
      null,
    ]);
    expect(mixed.map((group) => ruledOut(group, { effort: 200_000 })[0])).toEqual([
      515, 410, 250, 435, 315, 410, 445, 220, 540, 610, 405, 715,
    ]);
    expect(mixed.map((group) => ruledOut(group, { effort: 1_000_000 })[0])).toEqual([
      515, 410, 250, 435, 315, 410, 445, 220, 540, 610, 405, 715,
    ]);
    expect(mixed.map((group) => ruledOut(group, { stop: () => true })[0])).toEqual([
      305, 350, 180, 330, 210, 215, 430, 210, 440, 395, 270, 470,
    ]);
  });
});

describe('of a list as in a workshop', () => {
  const list = plainGroup({
    pieces: [
      [1310, 690, 5],
      [905, 645, 7],
      [598, 398, 12],
      [1755, 412, 4],
      [377, 765, 9],
      [530, 290, 6],
    ],
    sheets: [
      { mm: [2500, 1250], priceMinor: 9_000 },
      { mm: [2800, 2070], priceMinor: 16_000, count: 2 },
    ],
    grain: 'length',
    kerfUm: 3200,
  });

  it('so much is proved with little work and with more', () => {
    const proof = (options: Partial<BoundOptions>) => {
      const { bound, patterns } = bounded(list, options);
      return [bound.costMinor, bound.sheets, bound.certificate.method, patterns.length];
    };
    expect(areaBound(list).costMinor).toEqual(52000);
    expect(proof({ solver: null, effort: 100 })).toEqual([52000, 5, 'area', 0]);
    expect(proof({ solver: null, effort: 1e9 })).toEqual([52000, 5, 'area', 0]);
    expect(proof({ effort: 1e5 })).toEqual([52000, 5, 'area', 0]);
    expect(proof({ effort: 3e7 })).toEqual([59000, 5, 'pattern prices', 41]);
  });
});

describe('a lower bound', () => {
  const group = plainGroup({
    pieces: [
      [60, 60, 3],
      [30, 40, 4],
    ],
    sheets: [{ mm: [100, 100] }],
  });

  it('goes on from what is known, and stops when asked or when the plan is reached', () => {
    const { bound: whole, patterns } = bounded(group);
    expect(whole.costMinor).toBe(300);
    const known: Bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } };
    expect(bounded(group, { known, solver: null })).toEqual({ bound: known, patterns: [] });
    expect(bounded(group, { known, stop: () => true }).bound.costMinor).toBeLessThan(300);
    const reached: Bound = { ...known, sheets: 3, costMinor: 300 };
    expect(bounded(group, { known: reached, planCost: 300 })).toEqual({ bound: reached, patterns: [] });
    expect(bounded(group, { known: reached, planCost: 301 }).bound.costMinor).toBe(300);
    const again = bounded(group, { patterns });
    expect(again.bound.costMinor).toBe(300);
    expect(bounded(group, { effort: 1 }).patterns).toEqual([]);
    const one = bounded(group, { planCost: 400 });
    expect(one.patterns.length).toBeGreaterThan(0);
  });
});

describe('parts of the bound by patterns', () => {
  const group = plainGroup({
    pieces: [
      [50, 50, 3],
      [20, 30, 2],
    ],
    sheets: [
      { mm: [100, 100], priceMinor: 100 },
      { mm: [60, 60], priceMinor: 50 },
      { mm: [100, 100], priceMinor: 80, count: 1 },
    ],
  });
  const problem = makeRectangleProblem(group);

  it('of patterns in use the item is found that they hold too much of', () => {
    const pattern = (use: number, ...counts: [number, number][]): SheetPattern =>
      ({ sheet: 0, use, counts: counts.map(([item, count]) => ({ item, count })), tree: {} }) as never;
    const wanted = Int32Array.from([2, 2, 2]);
    expect(mostOverused([], wanted)).toBe(-1);
    expect(mostOverused([pattern(1, [0, 2], [1, 1])], wanted)).toBe(-1);
    expect(mostOverused([pattern(1, [0, 3], [1, 4])], wanted)).toBe(1);
    expect(mostOverused([pattern(1, [0, 4], [1, 3])], wanted)).toBe(0);
    expect(mostOverused([pattern(0.1, [0, 9]), pattern(1, [1, 3])], wanted)).toBe(1);
    expect(mostOverused([pattern(1, [0, 1], [2, 3]), pattern(1, [0, 3])], wanted)).toBe(0);
    expect(mostOverused([pattern(0, [0, 9])], wanted)).toBe(-1);
    expect(mostOverused([pattern(1e-6, [0, 3])], wanted)).toBe(-1);
  });

  it('tables are shared by sheets that are alike, and are on the finest grid that the work allows', () => {
    const tables = makePricingTables(problem, [], 1e9, null)!;
    expect([tables.grid, tables.distinct, tables.limited]).toEqual([1, [0, 1], []]);
    expect(tables.bySheet).toHaveLength(3);
    expect(tables.bySheet[2]).toBe(tables.bySheet[0]);
    expect(tables.work).toBe(tables.bySheet[0]!.work + tables.bySheet[1]!.work);
    expect(makePricingTables(problem, [0], 1e9, null)!.limited).toEqual([0]);
    expect(makePricingTables(problem, [], tables.work, null)!.grid).toBe(1);
    expect(makePricingTables(problem, [], tables.work - 1, 1)).toBeNull();
    expect(makePricingTables(problem, [], 1, null)).toBeNull();
    const fine = makeRectangleProblem(
      plainGroup({
        pieces: [
          [517, 311, 9],
          [223, 190, 4],
        ],
        sheets: [{ mm: [2501, 1249] }],
        kerfUm: 3100,
      }),
    );
    const grids = [1e9, 1e5, 3e4, 1e4, 3e3, 1e3].map((work) => makePricingTables(fine, [], work, null)?.grid);
    expect(grids).toEqual([1, 1, 300, 700, undefined, undefined]);
    const coarse = makeRectangleProblem(plainGroup({ pieces: [[10, 20, 2]], sheets: [{ mm: [100, 100] }] }));
    // Sizes are in whole cm: rounding to 1 cm or a part of it is no use.
    const found = new Set(
      [1e9, 1e3, 300, 100, 30].map((work) => makePricingTables(coarse, [], work, null)?.grid),
    );
    expect([...found]).toEqual([1, undefined]);
  });

  it('prices are whole, each kind of sheet is worth what it can hold, and patterns gain', () => {
    const tables = makePricingTables(problem, [], 1e9, null)!;
    const price = (costs: number[], rents = [0, 0, 0]) =>
      priceSheets(
        problem,
        tables,
        { prices: Float64Array.from([0.3, 0.1000000009]), rents: Float64Array.from(rents) },
        Float64Array.from(costs),
      );
    const { prices, worth, found } = price([1, 1, 1]);
    expect(prices).toEqual([0.3 * PRICE_DENOMINATOR, 0.1 * PRICE_DENOMINATOR]);
    expect(worth[2]).toBe(worth[0]);
    expect(worth).toEqual([1600000000, 600000000, 1600000000]);
    const gains = (pattern: (typeof found)[number]) =>
      pattern.counts.reduce((sum, { item, count }) => sum + prices[item]! * count, 0) / PRICE_DENOMINATOR;
    expect(new Set(found.map(({ sheet }) => sheet))).toEqual(new Set([0, 2]));
    for (const one of found) {
      expect(gains(one)).toBeGreaterThan(1);
      expect(one.counts).toEqual(countsOf(one.tree));
    }
    expect(found.length).toBeLessThanOrEqual(24);
    // At just its worth a sheet gains nothing; what one more of it would save counts as its cost.
    const most = worth[0]! / PRICE_DENOMINATOR;
    expect(price([most, 9, 9]).found).toEqual([]);
    expect(price([most - 0.05, 9, 9]).found.map(({ sheet }) => sheet)).toContain(0);
    expect(price([most - 0.05, 9, 9], [0.05, 0, 0]).found).toEqual([]);
  });

  it('kinds of sheet are mixed where they differ in size or price', () => {
    const mixes = (...sheets: Parameters<typeof plainGroup>[0]['sheets']) =>
      hasMixes(makeRectangleProblem(plainGroup({ pieces: [[1, 1, 1]], sheets })));
    expect(mixes({ mm: [9, 9] })).toBe(false);
    expect(mixes({ mm: [9, 9] }, { mm: [9, 9] })).toBe(false);
    expect(mixes({ mm: [9, 9] }, { mm: [9, 8] })).toBe(true);
    expect(mixes({ mm: [9, 9] }, { mm: [8, 9] })).toBe(true);
    expect(mixes({ mm: [9, 9] }, { mm: [9, 9], priceMinor: 90 })).toBe(true);
  });
});
