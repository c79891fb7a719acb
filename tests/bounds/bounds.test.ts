import { beforeAll, describe, expect, it } from 'vitest';
import { recheckBound } from '../../src/basics/recheckBound.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { areaBound, lowerBound } from '../../src/bounds/index.ts';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { workshopListByBoard } from '../bench/workshopLists.ts';
import { exactNest } from '../helpers/exactNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { plainGroup, smallGroup, turnedGroup } from '../helpers/smallGroups.ts';

let solver: LinearSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const EFFORT = 20_000_000;
const shapes = [
  { kinds: 3, pieces: 5, sheetKinds: 1, longest: 7, kerfUm: 0 },
  { kinds: 4, pieces: 6, sheetKinds: 3, longest: 6, kerfUm: 0 },
  { kinds: 5, pieces: 6, sheetKinds: 2, longest: 9, kerfUm: 600 },
  { kinds: 2, pieces: 7, sheetKinds: 2, longest: 8, kerfUm: 1000 },
];

function* groups(perShape: number): Generator<StockGroup> {
  for (const [s, shape] of shapes.entries()) {
    for (let k = 0; k < perShape; k++) yield smallGroup(1 + k + 100_000 * s, shape);
  }
}

describe('lowerBound', () => {
  it('never passes the true least cost or number of sheets of 2,000 small groups', () => {
    let withPlan = 0;
    let met = 0;
    let metWithCounting = 0;
    let together = 0;
    for (const group of groups(500)) {
      const exact = exactNest(group);
      if (!exact) continue;
      withPlan++;
      const plain = lowerBound(group, { solver: null, effort: EFFORT }).bound;
      const priced = lowerBound(group, { solver, effort: EFFORT }).bound;
      // Told of a plan that cannot be reached, the bound goes as far as it can.
      const planCost = exact.costMinor + 1;
      const counted = lowerBound(group, { solver, effort: EFFORT, planCost }).bound;
      for (const bound of [plain, priced, counted]) {
        if (bound.costMinor > exact.costMinor || bound.sheets > exact.sheets) {
          expect.fail(`${JSON.stringify(bound)} for ${JSON.stringify(exact)} of ${JSON.stringify(group)}`);
        }
      }
      expect(counted.costMinor).toBeGreaterThanOrEqual(priced.costMinor);
      if (priced.costMinor === exact.costMinor) met++;
      if (counted.costMinor === exact.costMinor) metWithCounting++;
      const { certificate } = counted;
      if (certificate.method === 'together') together++;
      if (
        certificate.method === 'together' ||
        (certificate.method === 'pattern prices' && certificate.limited.length > 0)
      ) {
        const problem = makeRectangleProblem(group);
        expect(recheckBound(problem, certificate)).toEqual({
          costMinor: counted.costMinor,
          sheets: counted.sheets,
        });
      }
    }
    expect(withPlan).toBeGreaterThan(1000);
    // A bound of nothing would pass the test above.
    expect(met / withPlan).toBeGreaterThan(0.75);
    expect(metWithCounting).toBeGreaterThan(met);
    // Ruling out mixes must be what proves some of them.
    expect(together).toBeGreaterThan(4);
  });

  it('is at least the bound by areas, and no worse with a solver than without', () => {
    for (const group of groups(60)) {
      const area = recheckBound(makeRectangleProblem(group), { method: 'area' });
      const plain = lowerBound(group, { solver: null, effort: EFFORT }).bound;
      const priced = lowerBound(group, { solver, effort: EFFORT }).bound;
      expect(plain.costMinor).toBeGreaterThanOrEqual(area.costMinor);
      expect(priced.costMinor).toBeGreaterThanOrEqual(plain.costMinor);
    }
  });

  it('rules out mixes of few sheets for a hundred panels at a modest effort', async () => {
    // Carcasses of the 29th and 30th list of the benchmark, with the cost of the plans that are best.
    for (const [list, planCost, byAreas] of [
      [28, 117_700, 115_500],
      [29, 107_400, 105_200],
    ] as const) {
      const group = workshopListByBoard(list, 0, 'both sizes')[0]!;
      expect(areaBound(group).costMinor).toBe(byAreas);
      const { bound } = lowerBound(group, { solver, effort: 1e9, planCost });
      expect(bound).toMatchObject({ costMinor: planCost, certificate: { method: 'together' } });
      expect(recheckBound(makeRectangleProblem(group), bound.certificate).costMinor).toBe(planCost);
    }
  });

  it('is the same for a group turned by a quarter', () => {
    for (const group of groups(60)) {
      const straight = lowerBound(group, { solver, effort: EFFORT }).bound;
      const turned = lowerBound(turnedGroup(group), { solver, effort: EFFORT }).bound;
      expect([turned.costMinor, turned.sheets]).toEqual([straight.costMinor, straight.sheets]);
    }
  });

  it('gives the same bytes twice', () => {
    for (const group of groups(10)) {
      const [a, b] = [1, 2].map(() => JSON.stringify(lowerBound(group, { solver, effort: EFFORT })));
      expect(a).toBe(b);
    }
  });

  it('counts limited sheets and offcuts at no cost', () => {
    const group = plainGroup({
      pieces: [[10, 10, 7]],
      sheets: [
        { mm: [10, 20], priceMinor: 90 },
        { mm: [20, 20], priceMinor: 100, count: 1 },
        { mm: [10, 10], priceMinor: 0, count: 1, kind: 'offcut' },
      ],
    });
    const { bound } = lowerBound(group, { solver, effort: EFFORT });
    // One offcut and one large sheet leave two pieces for one small sheet.
    expect(bound.costMinor).toBe(190);
    expect(bound.costMinor).toBe(exactNest(group)!.costMinor);
  });

  it('gives a bound for nothing wanted and for no sheets', () => {
    expect(
      lowerBound(plainGroup({ pieces: [], sheets: [{ mm: [9, 9] }] }), { solver, effort: EFFORT }).bound,
    ).toMatchObject({ sheets: 0, costMinor: 0 });
    expect(
      lowerBound(plainGroup({ pieces: [[1, 1, 1]], sheets: [] }), { solver, effort: EFFORT }).bound,
    ).toMatchObject({ sheets: 0, costMinor: 0 });
  });

  it('gives patterns that fit their sheets and hold what they say', () => {
    for (const group of groups(30)) {
      const problem = makeRectangleProblem(group);
      for (const pattern of lowerBound(group, { solver, effort: EFFORT }).patterns) {
        const sheet = problem.sheets[pattern.sheet]!;
        const counts = new Map<number, number>();
        const size = (node: (typeof pattern)['tree']): [number, number] => {
          if (node.kind === 'item') {
            counts.set(node.item, (counts.get(node.item) ?? 0) + 1);
            const [w, h] = [problem.items.w[node.item]!, problem.items.h[node.item]!];
            if (node.turned) expect(sheet.noGrain || problem.items.grained[node.item] === 0).toBe(true);
            return node.turned ? [h, w] : [w, h];
          }
          const sizes = node.children.map(size);
          const sum = (k: 0 | 1): number => sizes.reduce((t, s) => t + s[k], 0);
          const most = (k: 0 | 1): number => Math.max(...sizes.map((s) => s[k]));
          return node.axis === 'w' ? [sum(0), most(1)] : [most(0), sum(1)];
        };
        const [w, h] = size(pattern.tree);
        expect(w).toBeLessThanOrEqual(sheet.w);
        expect(h).toBeLessThanOrEqual(sheet.h);
        expect(pattern.counts).toEqual(
          [...counts].sort(([a], [b]) => a - b).map(([item, count]) => ({ item, count })),
        );
      }
    }
  });
});

describe('recheckBound', () => {
  it('derives what the bound claims from its certificate alone', () => {
    for (const group of groups(60)) {
      for (const helper of [null, solver]) {
        const { bound } = lowerBound(group, { solver: helper, effort: EFFORT });
        const { sheets, costMinor } = recheckBound(
          makeRectangleProblem(group),
          JSON.parse(JSON.stringify(bound.certificate)),
        );
        expect([sheets, costMinor]).toEqual([bound.sheets, bound.costMinor]);
      }
    }
  });

  it('never passes the truth, whatever a certificate says', () => {
    let tried = 0;
    for (const group of groups(60)) {
      const exact = exactNest(group);
      if (!exact) continue;
      const { certificate } = lowerBound(group, { solver, effort: EFFORT }).bound;
      const problem = makeRectangleProblem(group);
      const forged = [
        {
          method: 'dual feasible function',
          function: 'steps',
          parameter: 3,
          across: { function: 'counting', parameter: 2 },
          sheet: 0,
        },
        {
          method: 'dual feasible function',
          function: 'halves',
          parameter: 1e9,
          across: { function: 'size', parameter: 0 },
          sheet: 7,
        },
        {
          method: 'pattern prices',
          denominator: 1,
          prices: group.demands.map((_, d) => 1 + d),
          sheetValues: [1],
          limited: [],
          grid: 1,
        },
        {
          method: 'pattern prices',
          denominator: 1,
          prices: group.demands.map(() => 1),
          sheetValues: [1],
          limited: [],
          grid: 15,
        },
        {
          method: 'pattern prices',
          denominator: 1,
          prices: group.demands.map(() => -1),
          sheetValues: [1],
          limited: [],
          grid: 1,
        },
        { method: 'pattern prices', denominator: 1, prices: [0.5], sheetValues: [1], limited: [], grid: 0 },
        certificate.method === 'pattern prices'
          ? {
              ...certificate,
              prices: certificate.prices.map((p) => 2 * p + 1),
              sheetValues: certificate.sheetValues.map(() => 1),
            }
          : certificate,
      ] as const;
      for (const one of forged) {
        tried++;
        const { sheets, costMinor } = recheckBound(problem, one);
        if (costMinor > exact.costMinor || sheets > exact.sheets) {
          expect.fail(`${JSON.stringify(one)} claims ${costMinor} where ${exact.costMinor} is possible`);
        }
      }
    }
    expect(tried).toBeGreaterThan(500);
  });
});
