/**
 * Published best values of one sheet.
 *
 * - J. E. Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, Journal of the Operational Research
 *   Society 36 (1985) 297–306: gcut1 to gcut13, value = area, any number of each piece. Values for fixed and for
 *   turnable pieces as listed on a university's page "Unconstrained two-dimensional guillotine cutting" (São Paulo).
 * - N. Christofides and C. Whitlock, An algorithm for two-dimensional cutting problems, Operations Research 25 (1977)
 *   30–44: three problems with limited counts, 244, 2892 and 1860; without limits 249, 3076 and 2240 (M. Hifi and
 *   V. Zissimopoulos, European Journal of Operational Research 91 (1996) 553–564). Fixed pieces.
 *
 * Instances: the OR-Library's, as kept in tests/data/benchmarks/knapsack.json with their source.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { GuillotineTable } from '../../src/basics/guillotineTable.ts';
import { countsOf } from '../../src/basics/patternTree.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import type { RectangleProblem } from '../../src/model/rectangles.ts';
import { plainGroup } from '../helpers/smallGroups.ts';

interface Instance {
  readonly id: string;
  readonly sheet: readonly [number, number];
  readonly items: readonly (readonly [number, number, number | null, number])[];
}

const file = new URL('../data/benchmarks/knapsack.json', import.meta.url);
const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: Instance[] };

function instance(id: string): Instance {
  const found = instances.find((one) => one.id.toLowerCase() === id);
  if (!found) throw new Error(`no instance ${id}`);
  return found;
}

interface Sawing {
  readonly turning: 'fixed' | 'turnable';
  readonly counts: 'any' | 'limited';
  /** Taken off every side and sawn with, which leaves the best value as it is. */
  readonly kerf: number;
}

function problemOf({ sheet, items }: Instance, { turning, counts, kerf }: Sawing): RectangleProblem {
  return makeRectangleProblem(
    plainGroup({
      pieces: items.map(([w, h, count]) => [
        w - kerf,
        h - kerf,
        counts === 'any' ? Math.floor(sheet[0] / w) * Math.floor(sheet[1] / h) + 1 : count!,
      ]),
      sheets: [{ mm: [sheet[0] - kerf, sheet[1] - kerf] }],
      grain: turning === 'fixed' ? 'length' : 'none',
      kerfUm: kerf * 1000,
    }),
  );
}

function bestValue(one: Instance, sawing: Sawing): number {
  const problem = problemOf(one, sawing);
  const prices = Float64Array.from(one.items, (item) => item[3]);
  const limited: number[] = [];
  for (;;) {
    const table = GuillotineTable.make(problem, { sheet: 0, grid: 1, limited, mostWork: 2e10 })!;
    const value = table.evaluate(prices);
    if (sawing.counts === 'any') return value;
    const counts = countsOf(table.pattern(prices)!);
    const tooMany = counts.filter((c) => c.count > problem.items.count[c.item]!);
    if (tooMany.length === 0) return value;
    limited.push(...tooMany.map((c) => c.item));
  }
}

const beasley: readonly (readonly [id: string, fixed: number, turnable: number])[] = [
  ['gcut1', 56460, 58136],
  ['gcut2', 60536, 60611],
  ['gcut3', 61036, 61626],
  ['gcut4', 61698, 62265],
  ['gcut5', 246000, 246000],
  ['gcut6', 238998, 240951],
  ['gcut7', 242567, 245866],
  ['gcut8', 246633, 247787],
  ['gcut9', 971100, 971100],
  ['gcut10', 982025, 982025],
  ['gcut11', 980096, 980096],
  ['gcut12', 979986, 988694],
  ['gcut13', 8997780, 9000000],
];

describe('best value of one sheet, any number of each piece (Beasley 1985)', () => {
  it.each(beasley)('%s: %i fixed, %i turnable', (id, fixed, turnable) => {
    expect(bestValue(instance(id), { turning: 'fixed', counts: 'any', kerf: 0 })).toBe(fixed);
    expect(bestValue(instance(id), { turning: 'turnable', counts: 'any', kerf: 0 })).toBe(turnable);
  });

  it.each([3, 5])('gcut1 less %i on every side, sawn with that kerf: the same', (kerf) => {
    expect(bestValue(instance('gcut1'), { turning: 'fixed', counts: 'any', kerf })).toBe(56460);
  });
});

describe('best value of one sheet, limited counts (Christofides and Whitlock 1977)', () => {
  it.each([
    ['cgcut1', 244, 249],
    ['cgcut2', 2892, 3076],
    ['cgcut3', 1860, 2240],
  ] as const)('%s: %i with counts, %i without', (id, limited, any) => {
    expect(bestValue(instance(id), { turning: 'fixed', counts: 'limited', kerf: 0 })).toBe(limited);
    expect(bestValue(instance(id), { turning: 'fixed', counts: 'any', kerf: 0 })).toBe(any);
  });

  it('cgcut2 less 2 on every side, sawn with that kerf: the same', () => {
    expect(bestValue(instance('cgcut2'), { turning: 'fixed', counts: 'any', kerf: 2 })).toBe(3076);
  });
});
