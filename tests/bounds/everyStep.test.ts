import { describe, expect, it } from 'vitest';
import { countsOf, fitsSheet } from '../../src/basics/patternTree.ts';
import { MOST_RECHECK_WORK, recheckBound } from '../../src/basics/recheckBound.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { everySplitBound } from '../../src/bounds/everySplitBound.ts';
import { areaBound, lowerBound } from '../../src/bounds/index.ts';
import { cutMixes } from '../../src/bounds/mixCuts.ts';
import { type PatternBoundRequest, patternBound } from '../../src/bounds/patternBound.ts';
import { gridsFor, makePricingTables } from '../../src/bounds/pricingTables.ts';
import type { Bound } from '../../src/model/nest.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { plainGroup, smallGroup } from '../helpers/smallGroups.ts';
import { type Watched, watchBound } from '../helpers/watchedBound.ts';

/** What the bound by patterns does within its limits of work, step by step: mostly these decide how much it proves. */

const solver = await loadSolver();
const nothing: Bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } };
/** A certificate that suits no problem: it proves nothing. */
const unsuitable: Bound = {
  ...nothing,
  certificate: {
    method: 'pattern prices',
    denominator: 1,
    prices: [],
    sheetValues: [],
    limited: [],
    grid: 0,
  },
};

/** Tables by grid and counted items, in stretches of rising grids, with the work allowed for all of them together. */
function tablesInWords(seen: Watched): string {
  const tables = seen.tables.filter(({ mostWork }) => mostWork < MOST_RECHECK_WORK);
  const stretches: [string, string][] = [];
  let last = { grid: Number.POSITIVE_INFINITY, counted: '' };
  for (const { grid, limited } of tables) {
    const counted = limited.length > 0 ? ` counting ${limited.join(' ')}` : '';
    if (counted !== last.counted || grid < last.grid || stretches.length === 0) {
      stretches.push([`${grid}`, `${grid}${counted}`]);
    }
    stretches.at(-1)![1] = `${grid}${counted}`;
    last = { grid, counted };
  }
  const within = tables.reduce((sum, { mostWork }) => sum + mostWork, 0);
  const words = stretches.map(([from, to]) => (to.split(' ')[0] === from ? to : `${from} to ${to}`));
  return `${words.join(', ')} within ${Math.round(within)}`;
}

/** Programmes with the sheets that they are limited to, the patterns added each time and how often they were solved. */
function programmesInWords({ models }: Watched): string {
  return models
    .map(({ slack, limits, added, solved }) => {
      const of = slack[0] === 2 ? 'all' : `mix ${limits.join(' ')}`;
      return `${of}: ${added.map((patterns) => patterns.length).join('+')} solved ${solved}`;
    })
    .join(', ');
}

function steps(group: StockGroup, asked: Partial<PatternBoundRequest> & { stopAt?: number } = {}) {
  const problem = makeRectangleProblem(group);
  const { stopAt = Number.POSITIVE_INFINITY, ...more } = asked;
  let stops = 0;
  const { result, seen } = watchBound(solver, (watched) =>
    patternBound(problem, {
      solver: watched,
      known: areaBound(group),
      planCost: 1_000_000,
      effort: 1_000_000,
      patterns: [],
      stop: () => {
        stops += 1;
        return stops > stopAt;
      },
      ...more,
    }),
  );
  // Whatever ends the work, no programme is left behind.
  expect(seen.disposed).toBe(seen.models.length);
  const largest = problem.sheets.reduce((most, { w, h }) => Math.max(most, w * h), 0);
  const { w, h } = problem.items;
  for (const { slack } of seen.models) {
    const dear = slack[0] === 2;
    expect(slack).toEqual(Array.from(w, (side, i) => (dear ? 2 : (side * h[i]!) / largest)));
  }
  if (result === null) return [tablesInWords(seen), 'none'];
  for (const pattern of result.patterns) {
    expect(fitsSheet(problem, pattern)).toBe(true);
    expect(pattern.counts).toEqual(countsOf(pattern.tree));
  }
  const { sheets, costMinor, certificate } = result.bound;
  expect(recheckBound(problem, certificate)).toEqual({ sheets, costMinor });
  const parts = certificate.method === 'together' ? certificate.parts : [certificate];
  const counted = parts.map((part) => ('limited' in part ? part.limited.join(' ') : part.method));
  return [
    tablesInWords(seen),
    programmesInWords(seen),
    `${seen.pricings} pricings of ${seen.work}, ${costMinor} and ${sheets} by ${counted.join(' | ')}`,
  ];
}

const pieces = [
  [131, 69, 5],
  [90.5, 64.5, 2],
  [59.8, 39.8, 3],
  [17.5, 41.2, 4],
  [37.7, 76.5, 1],
] as const;
const fine = (kerfUm: number, kinds: number, times = 1) =>
  plainGroup({
    pieces: pieces.map(([length, width, count]) => [length, width, count * times]),
    kerfUm,
    grain: 'length',
    sheets: [
      { mm: [251, 125] as const, priceMinor: 90 },
      { mm: [280, 207] as const, priceMinor: 160, count: 2 },
    ].slice(0, kinds),
  });
const small = (seed: number) =>
  smallGroup(seed, { kinds: 4, pieces: 6, sheetKinds: 3, longest: 6, kerfUm: 0 });

describe('the bound by patterns, step by step', () => {
  it('takes finer grids and counts copies as the effort allows', () => {
    const by = [3e4, 1e5, 3e5, 1e6].map((effort) => steps(fine(300, 1), { effort }));
    expect(by).toEqual([
      ['1 to 1000 within 3188', 'none'],
      [
        '1 to 150, 1, 1 counting 2, 1 counting 2 4 within 22208',
        'all: 4 solved 1, all: 4+4+3+4 solved 4, all: 15 solved 1',
        '11 pricings of 7698, 450 and 5 by ',
      ],
      [
        '1, 1 counting 3, 1 counting 2 3 within 41875',
        'all: 4+3+2 solved 3, all: 9 solved 1',
        '9 pricings of 8748, 450 and 5 by ',
      ],
      [
        '1, 1 counting 3, 1 counting 2 3 within 139583',
        'all: 4+3+2 solved 3, all: 9 solved 1',
        '9 pricings of 8748, 450 and 5 by ',
      ],
    ]);
    expect([1e5, 3e5, 1e6].map((effort) => steps(fine(1300, 2), { effort }))).toEqual([
      ['1 to 1000 within 10777', 'none'],
      [
        '1 to 150, 1 to 50, 1, 1 counting 3, 1 counting 2 within 187286',
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, all: 16 solved 1, mix 1 1: 16+4+2 solved 3',
        '19 pricings of 50155, 250 and 2 by area',
      ],
      [
        '1 to 50, 1, 1 counting 2, 1 counting 2 3, 1 counting 2 4 within 374823',
        'all: 3+3+3+9 solved 4, all: 15 solved 1, all: 15 solved 1, mix 1 1: 15+2+5 solved 3',
        '17 pricings of 148328, 250 and 2 by area',
      ],
    ]);
    expect([2e5, 3e5, 2e6].map((effort) => steps(fine(3200, 2), { effort }))).toEqual([
      [
        '1 to 200, 1 to 5, 1, 1 counting 3, 1 counting 2 within 105676',
        'all: 3 solved 1, all: 3+5+3+4+10+1+3+3 solved 8, all: 32 solved 1, mix 1 1: 32 solved 1, mix 0 2: 32 solved 1',
        '20 pricings of 23500, 320 and 2 by ',
      ],
      [
        '1 to 200, 1, 1 counting 3, 1 counting 2 within 106065',
        'all: 3 solved 1, all: 3+5+3+4+10+1+3+3 solved 8, mix 1 1: 32 solved 1, mix 0 2: 32 solved 1',
        '20 pricings of 23500, 320 and 2 by ',
      ],
      [
        '1, 1 counting 3, 1 counting 1 3, 1 counting 1 2 3 within 612262',
        'all: 2+3+7+1+2+1+5 solved 7, all: 21+2 solved 2, all: 22+3 solved 2, mix 1 1: 25+2 solved 2, mix 0 2: 27 solved 1',
        '25 pricings of 422944, 320 and 2 by 1 3',
      ],
    ]);
  });

  it('goes no further than the plan, and counts nothing where there is none', () => {
    const group = fine(3200, 2);
    const costs = [null, 0, 200, 250, 310, 320, 321];
    expect(costs.map((planCost) => steps(group, { planCost, known: nothing }))).toEqual([
      ['1 within 12148', 'all: 2+3+7+1+2+1+5 solved 7', '17 pricings of 24464, 250 and 2 by '],
      ['1 within 12148', 'all: 2+3 solved 1', '5 pricings of 9152, 160 and 1 by '],
      ['1 within 12148', 'all: 2+3+7+1 solved 3', '11 pricings of 16808, 250 and 2 by '],
      ['1 within 12148', 'all: 2+3+7+1 solved 3', '11 pricings of 16808, 250 and 2 by '],
      [
        '1, 1 counting 3, 1 counting 1 3 within 260247',
        'all: 2+3+7+1+2+1+5 solved 7, all: 21+2 solved 2, mix 1 1: 23+4 solved 2',
        '25 pricings of 123772, 320 and 2 by 3',
      ],
      [
        '1, 1 counting 3, 1 counting 1 3 within 260247',
        'all: 2+3+7+1+2+1+5 solved 7, all: 21+2 solved 2, mix 1 1: 23+4 solved 2',
        '25 pricings of 123772, 320 and 2 by 3',
      ],
      [
        '1, 1 counting 3, 1 counting 1 3 within 321393',
        'all: 2+3+7+1+2+1+5 solved 7, all: 21+2 solved 2, mix 1 1: 23+4 solved 2, mix 0 2: 27 solved 1',
        '25 pricings of 123772, 320 and 2 by 3',
      ],
    ]);
  });

  it('rules out mixes with counted copies, as far as the effort goes', () => {
    expect([1807, 238, 1516, 2612, 632].map((seed) => steps(small(seed)))).toEqual([
      [
        '1, 1 counting 1, 1 counting 0 1, 1 counting 0 1 2, 1 counting 0 1 2 3 within 913665',
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, all: 9+2 solved 2, all: 11 solved 1, mix 2 0 0: 11+2+5+4+1 solved 5, mix 1 0 1: 23 solved 1',
        '40 pricings of 105640, 65 and 2 by 0 1 2 3',
      ],
      [
        '1, 1 counting 3, 1 counting 0 3 within 532221',
        'all: 3 solved 1, all: 3+15+4 solved 3, all: 16+2 solved 2, mix 0 2 0: 18 solved 1, mix 1 1 0: 18 solved 1, mix 2 0 0: 18 solved 1',
        '22 pricings of 12582, 410 and 2 by 0 3',
      ],
      [
        '1, 1 counting 1, 1 counting 1 2 within 532959',
        'all: 2+5+1+2 solved 4, all: 10 solved 1, all: 7 solved 1, mix 1 0 2: 7 solved 1, mix 2 0 1: 7+3 solved 2',
        '27 pricings of 5502, 715 and 3 by 1 2',
      ],
      [
        '1, 1 counting 1 within 337223',
        'all: 2 solved 1, all: 2 solved 1, mix 0 2 0: 2 solved 1, mix 1 1 0: 2+3 solved 2',
        '9 pricings of 1362, 460 and 2 by 1',
      ],
      [
        '1, 1 counting 2, 1 counting 0 2, 1 counting 0 2 3, 1 counting 0 1 2 3 within 611409',
        'all: 3+4+2 solved 3, all: 9+2 solved 2, all: 11 solved 1, all: 11 solved 1, all: 10+2 solved 2, mix 2 0: 12 solved 1',
        '14 pricings of 29498, 280 and 2 by 0 1 2 3',
      ],
    ]);
    const efforts = [7_000, 12_000, 20_000, 40_000, 80_000];
    expect(efforts.map((effort) => steps(small(1807), { effort }))).toEqual([
      ['1 to 1000 within 735', 'none'],
      ['1 to 1000 within 1360', 'none'],
      ['1 to 1000 within 2485', 'none'],
      [
        '1, 1 counting 1, 1 counting 0 1, 1 counting 0 1 2 within 22599',
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, mix 2 0 0: 9+4+7 solved 3',
        '28 pricings of 6820, 60 and 2 by 1',
      ],
      [
        '1, 1 counting 1, 1 counting 0 1, 1 counting 0 1 2, 1 counting 0 1 2 3 within 57020',
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, all: 9+2 solved 2, mix 2 0 0: 11+2+6+3+1 solved 5, mix 1 0 1: 23 solved 1',
        '40 pricings of 31780, 65 and 2 by 1 | 0 1 2',
      ],
    ]);
    expect(efforts.map((effort) => steps(small(318), { effort }).at(-1))).toEqual([
      'none',
      'none',
      '17 pricings of 3389, 435 and 3 by  | 1 3',
      '17 pricings of 7258, 435 and 3 by  | 1 2 3',
      '17 pricings of 7258, 435 and 3 by  | 1 2 3',
    ]);
  });

  it('ends at once when it is told to stop', () => {
    const stops = [0, 1, 2, 4, 8, 12, 16, 20, 24];
    expect(stops.map((stopAt) => steps(small(1807), { stopAt }).slice(1))).toEqual([
      ['all: 3 solved 1, mix 0 0 1: 3 solved 1', '4 pricings of 404, 35 and 1 by area'],
      ['all: 3+4 solved 2, mix 0 0 1: 7 solved 1', '7 pricings of 604, 35 and 1 by area'],
      ['all: 3+4 solved 2, mix 0 0 1: 7 solved 1', '10 pricings of 804, 35 and 1 by area'],
      ['all: 3+4+3 solved 3, mix 0 0 1: 10 solved 1', '16 pricings of 1204, 35 and 1 by area'],
      [
        'all: 3+4+3 solved 3, all: 10 solved 1, mix 0 0 1: 10 solved 1',
        '16 pricings of 1204, 35 and 1 by area',
      ],
      [
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, mix 2 0 0: 9 solved 1',
        '22 pricings of 2908, 60 and 2 by 1',
      ],
      [
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, all: 9+2 solved 2, all: 11 solved 1, mix 2 0 0: 11 solved 1',
        '25 pricings of 7720, 60 and 2 by 1',
      ],
      [
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, all: 9+2 solved 2, all: 11 solved 1, mix 2 0 0: 11+2+5 solved 3',
        '31 pricings of 46888, 60 and 2 by 1',
      ],
      [
        'all: 3+4+3 solved 3, all: 10 solved 1, all: 9 solved 1, all: 9+2 solved 2, all: 11 solved 1, mix 2 0 0: 11+2+5+4+1 solved 5, mix 1 0 1: 23 solved 1',
        '40 pricings of 105640, 65 and 2 by 0 1 2 3',
      ],
    ]);
    expect(stops.map((stopAt) => steps(fine(1300, 2), { stopAt, effort: 3e5 }).slice(1))).toEqual([
      ['all: 4 solved 1, mix 1 1: 4 solved 1', '5 pricings of 6425, 250 and 2 by area'],
      ['all: 4 solved 1, mix 1 1: 4 solved 1', '5 pricings of 6425, 250 and 2 by area'],
      ['all: 4 solved 1, all: 4 solved 1, mix 1 1: 4 solved 1', '5 pricings of 6425, 250 and 2 by area'],
      ['all: 4 solved 1, all: 4+5 solved 2, mix 1 1: 9 solved 1', '9 pricings of 18037, 250 and 2 by area'],
      [
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, mix 1 1: 22 solved 1',
        '15 pricings of 35455, 250 and 2 by area',
      ],
      [
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, all: 16 solved 1, mix 1 1: 16+4 solved 2',
        '17 pricings of 42805, 250 and 2 by area',
      ],
      [
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, all: 16 solved 1, mix 1 1: 16+4+2 solved 3',
        '19 pricings of 50155, 250 and 2 by area',
      ],
      [
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, all: 16 solved 1, mix 1 1: 16+4+2 solved 3',
        '19 pricings of 50155, 250 and 2 by area',
      ],
      [
        'all: 4 solved 1, all: 4+5+2+3+8 solved 5, all: 16 solved 1, mix 1 1: 16+4+2 solved 3',
        '19 pricings of 50155, 250 and 2 by area',
      ],
    ]);
  });

  it('asks nothing of no sheets, and takes prices of nothing for what they are', () => {
    expect(steps(plainGroup({ pieces: [[1, 1, 1]], sheets: [] }))).toEqual([' within 0', 'none']);
    const offcuts = plainGroup({
      pieces: [[60, 60, 5]],
      sheets: [{ mm: [100, 100], priceMinor: 0, count: 9, kind: 'offcut' }],
    });
    expect(steps(offcuts, { planCost: null, known: nothing })).toEqual([
      '1 within 6250',
      'all: 1 solved 1',
      '3 pricings of 12, 0 and 5 by ',
    ]);
  });

  it('starts from so many sheets filled by area as are likely to be used, the first of the largest ones', () => {
    // Each kind takes a sheet for itself, so that the start needs a pattern for each.
    const kinds = (n: number) => Array.from({ length: n }, (_, k) => [600 + k, 600, 1 + (k % 3)] as const);
    const started = (n: number, known: Bound, effort: number) => {
      const group = plainGroup({
        pieces: kinds(n),
        sheets: [{ mm: [700, 700] }, { mm: [1000, 490] }, { mm: [700, 700] }],
      });
      const problem = makeRectangleProblem(group);
      const request = { known, effort, planCost: null, patterns: [], stop: () => true };
      const { seen } = watchBound(solver, (watched) =>
        patternBound(problem, { solver: watched, ...request }),
      );
      return seen.models[0]?.added[0]?.length;
    };
    expect(started(4, nothing, 1e9)).toBe(4);
    expect(started(15, nothing, 1e9)).toBe(10);
    expect(started(15, { ...nothing, sheets: 2 }, 1e9)).toBe(14);
    const { work, bySheet } = makePricingTables(
      makeRectangleProblem(
        plainGroup({ pieces: kinds(60), sheets: [{ mm: [700, 700] }, { mm: [1000, 490] }] }),
      ),
      [],
      1e9,
      null,
    )!;
    // A quarter of the effort goes into it at most, of which a pricing takes a hundred and sixtieth.
    const own = bySheet[0]!.work;
    const most = Math.ceil((40 * work) / own);
    expect(started(60, { ...nothing, sheets: 30 }, 4 * most * own)).toBe(most);
  });

  it('starts from the patterns that are given, and from no others', () => {
    const group = fine(3200, 2);
    const first = lowerBound(group, { solver, effort: 1e6 }).patterns;
    expect(steps(group, { patterns: first, planCost: null, known: nothing })).toEqual([
      '1 within 12148',
      'all: 21+6 solved 2',
      '2 pricings of 2552, 250 and 2 by ',
    ]);
    expect(steps(group, { patterns: first.slice(0, 3), planCost: null, known: nothing })).toEqual([
      '1 within 12148',
      'all: 3+4+4+3+2+5 solved 6',
      '14 pricings of 17864, 250 and 2 by ',
    ]);
  });

  it('is what it was where nothing suits or all are one kind of sheet', () => {
    const problem = makeRectangleProblem(small(1807));
    const tables = makePricingTables(problem, [], 1e9, null)!;
    const cut = (known: Bound, planCost: number, effort = 1e6) => {
      const { result, seen } = watchBound(solver, (watched) =>
        cutMixes(
          problem,
          tables,
          { bound: known, patterns: [] },
          { solver: watched, planCost, effort, stop: () => false },
        ),
      );
      expect(seen.disposed).toBe(seen.models.length);
      return [result.sheets, result.costMinor, result.certificate.method, programmesInWords(seen)];
    };
    const area = areaBound(small(1807));
    const together: Bound = { ...area, certificate: { method: 'together', parts: [{ method: 'area' }] } };
    expect([
      cut(area, 1e6),
      cut(area, 0),
      cut(area, area.costMinor),
      cut(area, area.costMinor + 1),
      cut(area, 60),
      cut(together, 1e6),
      cut(unsuitable, 1e6),
      cut(area, 1e6, 0),
      cut(area, 1e6, tables.work),
      cut(area, 1e6, 2 * tables.work),
      cut(area, 1e6, 3 * tables.work),
      cut(area, 1e6, 1000 * tables.work),
    ]).toEqual([
      [
        2,
        65,
        'together',
        'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1, mix 2 0 0: 19+5+1 solved 3, mix 2 0 0: 23+7+1 solved 3, mix 1 0 1: 31 solved 1, mix 1 0 1: 31 solved 1, mix 1 0 1: 28 solved 1',
      ],
      [1, 35, 'area', ''],
      [1, 35, 'area', ''],
      [2, 60, 'together', 'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1'],
      [2, 60, 'together', 'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1'],
      [
        2,
        65,
        'together',
        'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1, mix 2 0 0: 19+5+1 solved 3, mix 2 0 0: 23+7+1 solved 3, mix 1 0 1: 31 solved 1, mix 1 0 1: 31 solved 1, mix 1 0 1: 28 solved 1',
      ],
      [
        2,
        65,
        'together',
        'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1, mix 2 0 0: 19+5+1 solved 3, mix 2 0 0: 23+7+1 solved 3, mix 1 0 1: 31 solved 1, mix 1 0 1: 31 solved 1, mix 1 0 1: 28 solved 1',
      ],
      [1, 35, 'area', 'mix 0 0 1:  solved 1'],
      [1, 35, 'area', 'mix 0 0 1: 9 solved 2'],
      [1, 35, 'area', 'mix 0 0 1: 9+5 solved 3'],
      [1, 35, 'area', 'mix 0 0 1: 9+5+5 solved 4'],
      [
        2,
        65,
        'together',
        'mix 0 0 1: 9+5+5 solved 4, mix 0 0 1: 19 solved 1, mix 2 0 0: 19+5+1 solved 3, mix 2 0 0: 23+7+1 solved 3, mix 1 0 1: 31 solved 1, mix 1 0 1: 31 solved 1',
      ],
    ]);
    const one = makeRectangleProblem(fine(300, 1));
    const { result, seen } = watchBound(solver, (watched) =>
      cutMixes(
        one,
        makePricingTables(one, [], 1e9, null)!,
        { bound: nothing, patterns: [] },
        { solver: watched, planCost: 1e6, effort: 1e6, stop: () => false },
      ),
    );
    expect([result, seen.models]).toEqual([nothing, []]);
  });

  it('goes to a finer grid where no copies are to be counted in a mix', () => {
    const cut = (group: StockGroup, grid: number, effort: number) => {
      const problem = makeRectangleProblem(group);
      const tables = makePricingTables(problem, [], 1e9, grid)!;
      const { result, seen } = watchBound(solver, (watched) =>
        cutMixes(
          problem,
          tables,
          { bound: areaBound(group), patterns: [] },
          { solver: watched, planCost: 1e6, effort, stop: () => false },
        ),
      );
      const parts = result.certificate.method === 'together' ? result.certificate.parts : [];
      const grids = parts.map((part) =>
        'grid' in part ? `${part.grid} counting ${part.limited.join(' ')}` : part.method,
      );
      return [tablesInWords(seen), programmesInWords(seen), `${result.costMinor} by ${grids.join(' | ')}`];
    };
    expect([
      cut(fine(3200, 2, 100), 150, 1e6),
      cut(fine(3200, 2, 100), 150, 3e5),
      cut(fine(1300, 2, 100), 100, 3e6),
      cut(fine(3200, 2), 150, 1e6),
      cut(fine(3200, 2), 1, 1e6),
    ]).toEqual([
      [
        '1 within 159414',
        'mix 240 2: 2+8+7 solved 4, mix 240 2: 14 solved 1, mix 257 1: 14+8 solved 2, mix 301 2: 22 solved 1, mix 324 2: 22+6 solved 2, mix 492 2: 28 solved 1',
        '44600 by 1 counting ',
      ],
      [
        '1 to 5, 1 to 5 within 142242',
        'mix 240 2: 2+8+7 solved 4, mix 240 2: 14 solved 1, mix 257 1: 14+8 solved 2, mix 301 2: 22 solved 1, mix 324 2: 22+6 solved 2, mix 492 2: 28 solved 1',
        '44600 by 5 counting ',
      ],
      [
        '1 within 475728',
        'mix 226 1: 2+6 solved 3, mix 492 2: 8+3+3+9+2 solved 5, mix 492 2: 20+1+3 solved 3',
        '44600 by 100 counting ',
      ],
      [
        '150 counting 3, 150 counting 2 3 within 113755',
        'mix 1 1: 2+8+7 solved 4, mix 1 1: 17+6 solved 2',
        '250 by ',
      ],
      [
        '1 counting 3, 1 counting 3 4 within 144544',
        'mix 1 1: 8+5+6 solved 4, mix 0 2: 19 solved 1, mix 0 2: 17 solved 1',
        '320 by 1 counting ',
      ],
    ]);
  });
});

describe('single parts', () => {
  it('grids that round nothing are left out, but for the first', () => {
    const of = (...side: [number, number]) => {
      const problem = makeRectangleProblem(
        plainGroup({ pieces: [[...side, 2]], sheets: [{ mm: [100, 100] }] }),
      );
      return [problem.unitUm, gridsFor(problem).join(' ')];
    };
    expect([of(10, 20), of(7, 9), of(12.3, 45.6)]).toEqual([
      [10000, '1 30 40 70 150 200 300 400 500 700 1000'],
      [1000, '1 20 30 40 50 70 100 150 200 300 400 500 700 1000'],
      [100, '1 2 5 10 20 30 40 50 70 100 150 200 300 400 500 700 1000'],
    ]);
  });
});

describe('every way to part the pieces', () => {
  /** Four boards which only a pinwheel would hold: a square of less than 120 is too small for guillotine cuts. */
  const pinwheel = (...sheets: Parameters<typeof plainGroup>[0]['sheets']) =>
    plainGroup({ pieces: [[60, 40, 4]], sheets });
  const split = (group: StockGroup, planCost: number, effort = 1e8, known = areaBound(group)) => {
    const problem = makeRectangleProblem(group);
    const found = everySplitBound(problem, known, planCost, effort);
    if (found === null) return null;
    const { sheets, costMinor, certificate } = found.bound;
    expect(recheckBound(problem, certificate)).toEqual({ sheets, costMinor });
    const tooFew = certificate.method === 'together' ? certificate.tooFew : [];
    return [costMinor, tooFew?.length, found.patterns.length];
  };

  it('is tried only below the plan, and where the sheets are enough', () => {
    const group = pinwheel({ mm: [100, 100] });
    expect(split(group, 100)).toBeNull();
    expect(split(group, 101)).toEqual([200, 1, 0]);
    expect(split(group, 200)).toEqual([200, 1, 0]);
    expect(split(group, 201)).toEqual([200, 1, 2]);
    expect(split(pinwheel({ mm: [100, 120] }), 200)).toEqual([100, 0, 1]);
    expect(split(pinwheel({ mm: [100, 40], count: 1 }), 1000)).toBeNull();
    expect(split(group, 201, 1e8, unsuitable)).toBeNull();
    const together: Bound = {
      ...areaBound(group),
      certificate: { method: 'together', parts: [{ method: 'area' }] },
    };
    expect(split(group, 201, 1e8, together)).toEqual([200, 1, 2]);
    // More sheets than are tried.
    expect(split(plainGroup({ pieces: [[60, 60, 5]], sheets: [{ mm: [60, 60] }] }), 1000)).toBeNull();
  });

  it('goes through mixes by their cost, as many as the work and a certificate allow', () => {
    const sides = [
      ...Array.from({ length: 20 }, (_, k) => [100, 100 + k] as const),
      ...Array.from({ length: 10 }, (_, k) => [101 + k, 101] as const),
    ];
    const group = pinwheel(...sides.map((mm, k) => ({ mm, priceMinor: 100 + k })));
    expect(split(group, 1000)).toEqual([124, 24, 0]);
    const efforts = [0, 100, 200, 300, 400, 600, 800, 1200, 2000, 5000, 10_000, 20_000];
    expect(efforts.map((effort) => split(group, 1000, effort)?.[1] ?? 0)).toEqual([
      0, 0, 1, 2, 2, 4, 5, 8, 13, 24, 24, 24,
    ]);
  });

  it('says nothing false of mixes for which the work was spent', () => {
    const groups = [1, 2, 3, 4, 5, 6].map((seed) =>
      smallGroup(seed, { kinds: 5, pieces: 9, sheetKinds: 2, longest: 9, kerfUm: 600 }),
    );
    const efforts = [200, 500, 800, 1_200, 2_000, 5_000, 20_000];
    expect(
      groups.map((group) => efforts.map((effort) => split(group, 1e6, effort)?.join(' ') ?? '-').join(', ')),
    ).toEqual([
      '-, -, -, -, -, -, -',
      '-, 1635 1 0, 1635 1 0, 1635 1 0, 1635 1 3, 1635 1 3, 1635 1 3',
      '-, 700 0 4, 700 0 4, 700 0 4, 700 0 4, 700 0 4, 700 0 4',
      '-, 105 1 0, 105 1 0, 105 1 3, 105 1 3, 105 1 3, 105 1 3',
      '-, 1100 0 4, 1100 0 4, 1100 0 4, 1100 0 4, 1100 0 4, 1100 0 4',
      '-, 300 1 0, 300 1 0, 300 1 2, 300 1 2, 300 1 2, 300 1 2',
    ]);
  });

  it('goes into the bound, and its plans with it', () => {
    const group = pinwheel({ mm: [100, 100] });
    const lower = (planCost?: number, effort = 1e8) => {
      const { bound, patterns } = lowerBound(group, {
        solver: null,
        effort,
        ...(planCost === undefined ? {} : { planCost }),
      });
      return [bound.costMinor, bound.certificate.method, patterns.length];
    };
    expect([lower(), lower(200), lower(201), lower(201, 10)]).toEqual([
      [100, 'area', 0],
      [200, 'together', 0],
      [200, 'together', 2],
      [100, 'area', 0],
    ]);
  });
});
