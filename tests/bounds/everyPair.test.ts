import { describe, expect, it } from 'vitest';
import {
  type DualFeasibleFunction,
  dualFeasibleFamilies,
  scaledFunction,
} from '../../src/basics/dualFeasible.ts';
import { axisItems, mayTurn } from '../../src/basics/pricesFromFunctions.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { functionPairs } from '../../src/bounds/dualFeasibleBound.ts';
import type { RectangleProblem } from '../../src/model/rectangles.ts';
import { plainGroup, smallGroup } from '../helpers/smallGroups.ts';

/** Pairs of functions held against a plain search that works out every pair from the definition. */

/** Every function that is looked at along sides of at most so many units: all parameters that change anything. */
function everyFunction(whole: number, sides: readonly number[]): DualFeasibleFunction[] {
  const upTo = (last: number) => Array.from({ length: last }, (_, k) => k + 1);
  const short = [...new Set(sides)].filter((side) => 2 * side <= whole).sort((a, b) => a - b);
  const parameters = {
    size: [0],
    'large and small': short,
    steps: upTo(Math.min(60, whole)),
    halves: upTo(Math.floor(whole / 2)),
    rounding: upTo(whole),
    counting: short,
  };
  return dualFeasibleFamilies.flatMap((family) =>
    parameters[family].map((parameter) => ({ family, parameter })),
  );
}

/** Sheets that the items fill under a pair, each counted by the lesser of its ways. */
function sheetsFilled(
  problem: RectangleProblem,
  s: number,
  along: DualFeasibleFunction,
  across: DualFeasibleFunction,
) {
  const sheet = problem.sheets[s]!;
  const u = scaledFunction(along, sheet.w, axisItems(problem, sheet, 'w'));
  const v = scaledFunction(across, sheet.h, axisItems(problem, sheet, 'h'));
  if (!u || !v) return -1;
  const { kinds, w, h, count } = problem.items;
  let total = 0;
  for (let i = 0; i < kinds; i++) {
    const ways = [[w[i]!, h[i]!] as const, ...(mayTurn(problem, i, sheet) ? [[h[i]!, w[i]!] as const] : [])];
    const values = ways
      .filter(([x, y]) => x <= sheet.w && y <= sheet.h)
      .map(([x, y]) => (u.value(x) / u.full) * (v.value(y) / v.full));
    if (values.length > 0) total += count[i]! * Math.min(...values);
  }
  return total;
}

function everyPair(problem: RectangleProblem, s: number) {
  const sheet = problem.sheets[s]!;
  const { w, h, kinds } = problem.items;
  const sides = Array.from({ length: kinds }, (_, i) => {
    const turns = mayTurn(problem, i, sheet);
    const straight = w[i]! <= sheet.w && h[i]! <= sheet.h;
    const turned = turns && h[i]! <= sheet.w && w[i]! <= sheet.h;
    return straight || turned ? [w[i]!, h[i]!] : [];
  }).flat();
  const along = everyFunction(sheet.w, sides);
  const across = everyFunction(sheet.h, sides);
  let best = { total: -1, pair: '' };
  for (const u of along) {
    for (const v of across) {
      const total = sheetsFilled(problem, s, u, v);
      if (total > best.total * (1 + 1e-12)) best = { total, pair: said({ along: u, across: v }) };
    }
  }
  return best;
}

const said = ({ along, across }: { along: DualFeasibleFunction; across: DualFeasibleFunction }) =>
  `${along.family} ${along.parameter}, ${across.family} ${across.parameter}`;

describe('pairs of dual feasible functions', () => {
  const shapes = [
    { kinds: 3, pieces: 5, sheetKinds: 1, longest: 7, kerfUm: 0 },
    { kinds: 4, pieces: 6, sheetKinds: 2, longest: 6, kerfUm: 0 },
    { kinds: 5, pieces: 9, sheetKinds: 2, longest: 12, kerfUm: 0 },
  ];
  const problems = shapes
    .flatMap((shape, s) =>
      Array.from({ length: 5 }, (_, k) => makeRectangleProblem(smallGroup(40 + k + 1000 * s, shape))),
    )
    .filter(({ sheets }) => sheets.every(({ w, h }) => w <= 30 && h <= 30));

  it('fill the most sheets of each kind, and are the plainest that do', () => {
    expect(problems.length).toBeGreaterThan(7);
    let fuller = 0;
    for (const problem of problems) {
      const pairs = functionPairs(problem, 1e9);
      expect(pairs.map(({ sheet }) => sheet)).toEqual(problem.sheets.map((_, s) => s));
      for (const pair of pairs) {
        const best = everyPair(problem, pair.sheet);
        expect(said(pair)).toBe(best.pair);
        if (best.pair !== 'size 0, size 0') fuller += 1;
      }
    }
    expect(fuller).toBeGreaterThan(7);
  });

  it('count a kind by the ways in which it lies on each sheet: only turned, either way, not at all', () => {
    // Upright sheets hold the long kinds only turned, the last holds some of them not at all.
    const sheets = [{ mm: [11, 23] }, { mm: [23, 11] }, { mm: [12, 12] }] as const;
    const lists: (readonly (readonly [number, number, number])[])[] = [
      [
        [14, 5, 2],
        [9, 20, 2],
        [5, 14, 3],
        [13, 9, 3],
        [11, 11, 1],
        [7, 5, 4],
      ],
      [
        [19, 8, 3],
        [12, 7, 2],
        [12, 4, 5],
        [9, 9, 2],
        [23, 3, 1],
      ],
      [
        [16, 11, 4],
        [11, 6, 3],
        [5, 4, 7],
        [23, 11, 1],
      ],
    ];
    for (const grain of ['none', 'length'] as const) {
      for (const pieces of lists) {
        const problem = makeRectangleProblem(plainGroup({ pieces, sheets, grain }));
        expect(problem.sheets.map(({ w, h }) => [w, h])).toEqual(sheets.map(({ mm }) => [...mm]));
        for (const pair of functionPairs(problem, 1e9)) {
          expect(said(pair)).toBe(everyPair(problem, pair.sheet).pair);
        }
      }
    }
  });

  it('are looked for among more functions with more effort', () => {
    const grained = (kerfUm: number) =>
      makeRectangleProblem(
        plainGroup({
          pieces: [
            [131, 69, 5],
            [90.5, 64.5, 2],
            [59.8, 39.8, 3],
            [17.5, 41.2, 4],
            [37.7, 76.5, 1],
            [137.7, 61.3, 7],
            [300, 10, 1],
          ],
          sheets: [{ mm: [251, 125] }, { mm: [280, 207], count: 2, grain: 'none' }, { mm: [70, 135] }],
          grain: 'length',
          kerfUm,
        }),
      );
    const efforts = [1, 4e3, 2e4, 1e5, 1e6, 1e7];
    const by = (problem: RectangleProblem) =>
      efforts.map((effort) => functionPairs(problem, effort).map(said).join('; '));
    expect(by(grained(300))).toEqual([
      'steps 1, counting 601; size 0, size 0; steps 3, steps 3',
      'steps 1, counting 601; size 0, size 0; steps 3, steps 3',
      'steps 1, counting 601; size 0, size 0; steps 3, steps 3',
      'steps 1, halves 602; size 0, size 0; steps 3, steps 3',
      'steps 1, halves 561; rounding 648, steps 6; steps 3, steps 3',
      'steps 1, halves 561; rounding 649, steps 6; steps 3, steps 3',
    ]);
    expect(by(grained(3200))).toEqual([
      'steps 1, steps 1; size 0, size 0; steps 3, steps 3',
      'steps 1, steps 1; size 0, size 0; steps 3, steps 3',
      'steps 1, steps 1; size 0, size 0; steps 3, steps 3',
      'steps 1, steps 1; rounding 322, steps 6; steps 3, steps 3',
      'steps 1, steps 1; rounding 323, rounding 645; steps 3, steps 3',
      'steps 1, steps 1; rounding 322, rounding 645; steps 3, steps 3',
    ]);
    expect(
      by(
        makeRectangleProblem(
          smallGroup(77, { kinds: 30, pieces: 90, sheetKinds: 2, longest: 40, kerfUm: 700 }),
        ),
      ),
    ).toEqual([
      'size 0, size 0; size 0, size 0',
      'size 0, size 0; size 0, size 0',
      'size 0, size 0; size 0, size 0',
      'steps 32, steps 16; steps 16, steps 16',
      'steps 32, steps 16; steps 16, steps 16',
      'steps 32, steps 16; steps 16, steps 16',
    ]);
  });

  it('are none of sheets that hold nothing, but for the plainest', () => {
    const none = makeRectangleProblem(plainGroup({ pieces: [[9, 9, 1]], sheets: [{ mm: [5, 5] }] }));
    expect(functionPairs(none, 1e6).map(said)).toEqual(['size 0, size 0']);
    expect(functionPairs(makeRectangleProblem(plainGroup({ pieces: [], sheets: [] })), 1e6)).toEqual([]);
  });
});
