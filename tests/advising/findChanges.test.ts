import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findChanges } from '../../src/advising/index.ts';
import { smallestParts } from '../../src/advising/smallestParts.ts';
import type { ChangeLimit } from '../../src/model/advice.ts';
import { part } from '../helpers/parts.ts';

const NOW = [50, 40];
const limits: ChangeLimit[] = NOW.map((now, index) => ({
  name: `unit.size${index}`,
  kind: 'length',
  now,
  values: Array.from({ length: 31 }, (_, step) => now - 15 + step).filter((value) => value !== now),
}));

/** What some values cost in these tests: a sheet for each step of the weighed sum of two sizes. */
interface World {
  readonly weights: readonly [number, number];
  readonly sheet: number;
  readonly forbidden: ReadonlySet<string>;
}

const worlds: fc.Arbitrary<World> = fc.record({
  weights: fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })),
  sheet: fc.integer({ min: 5, max: 60 }),
  forbidden: fc
    .array(fc.tuple(fc.integer({ min: 35, max: 65 }), fc.integer({ min: 25, max: 55 })), { maxLength: 40 })
    .map((pairs) => new Set(pairs.map(String))),
});

function search({ weights, sheet, forbidden }: World) {
  const amount = (values: readonly number[]) => 1000 + weights[0] * values[0]! + weights[1] * values[1]!;
  const cost = (of: number) => Math.ceil(of / sheet);
  let plans = 0;
  const found = findChanges(limits, cost(amount(NOW)), {
    spent: () => 0,
    mayCostLess: (corners, below) => (cost(Math.min(...corners.map(amount))) < below ? 'yes' : 'no'),
    planBelow: (values, below) => {
      plans++;
      const costMinor = cost(amount(values));
      return costMinor < below && !forbidden.has(String(values)) ? { costMinor, plan: null } : null;
    },
  });
  return { ...found, plans, costOf: (values: readonly number[]) => cost(amount(values)) };
}

/** Every change of both sizes that is allowed, with how large it is. */
function everyChange({ forbidden }: World): { values: number[]; size: number }[] {
  const all = limits.map(({ values, now }) => [now, ...values]);
  return all[0]!.flatMap((first) =>
    all[1]!.flatMap((second) => {
      const size = Math.abs(first - NOW[0]!) + Math.abs(second - NOW[1]!);
      return size === 0 || forbidden.has(`${first},${second}`) ? [] : [{ values: [first, second], size }];
    }),
  );
}

describe('findChanges', () => {
  it('finds the smallest change that saves, and the greatest saving, as trying everything does', () => {
    fc.assert(
      fc.property(worlds, (world) => {
        const { found, costOf, lookedUpTo } = search(world);
        expect(lookedUpTo).toBeNull();
        const saving = everyChange(world).filter(({ values }) => costOf(values) < costOf(NOW));
        const sizes = found.map(({ size }) => size);
        expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
        for (const { values, costMinor } of found) {
          expect(world.forbidden.has(String(values))).toBe(false);
          expect(costMinor).toBe(costOf(values));
        }
        expect(found.length > 0).toBe(saving.length > 0);
        if (saving.length === 0) return;
        expect(Math.min(...sizes)).toBe(Math.min(...saving.map(({ size }) => size)));
        expect(Math.min(...found.map(({ costMinor }) => costMinor))).toBe(
          Math.min(...saving.map(({ values }) => costOf(values))),
        );
      }),
      { numRuns: 150 },
    );
  });

  it('tries few values where only a long way saves', () => {
    const { plans, found } = search({ weights: [1, 0], sheet: 100, forbidden: new Set() });
    expect(found.length).toBe(0);
    expect(plans).toBe(0);
  });

  it('says how far it has come when it is ended', () => {
    let asked = 0;
    const { found, lookedUpTo } = findChanges(limits, 10, {
      spent: () => (asked >= 3 ? 1 : 0),
      mayCostLess: () => {
        asked++;
        return 'yes';
      },
      planBelow: () => ({ costMinor: 1, plan: null }),
    });
    expect(found).toEqual([]);
    expect(lookedUpTo).toBe(1);
  });
});

describe('findChanges that may not try everything', () => {
  const wide: ChangeLimit[] = [300, 200].map((now, index) => ({
    name: `unit.size${index}`,
    kind: 'length',
    now,
    values: Array.from({ length: 201 }, (_, step) => now - 100 + step).filter((value) => value !== now),
  }));

  /** No bound helps; the first size saves a sheet from so many mm less on, both together from fewer of each on. */
  function look(alone: number, together: number, most: number) {
    let plans = 0;
    const outcome = findChanges(wide, 10, {
      spent: () => plans / most,
      mayCostLess: () => 'yes',
      planBelow: ([first, second], below) => {
        plans++;
        const [less, lessToo] = [300 - first!, 200 - second!];
        const costMinor = less >= together && lessToo >= together ? 8 : less >= alone ? 9 : 10;
        return costMinor < below ? { costMinor, plan: null } : null;
      },
    });
    return { ...outcome, plans };
  }

  it('finds far away where saving begins, for one size and for two together', () => {
    const { found, lookedUpTo, plans } = look(37, 61, 400);
    expect(found.map(({ values, costMinor }) => [values, costMinor])).toEqual([
      [[263, 200], 9],
      [[239, 139], 8],
    ]);
    expect(lookedUpTo).toBeLessThan(37);
    expect(plans).toBeLessThanOrEqual(400);
    expect(look(1000, 61, 400).found.map(({ values, costMinor }) => [values, costMinor])).toEqual([
      [[239, 139], 8],
    ]);
    expect(look(1000, 1000, 400).found).toEqual([]);
  });

  it('finds every beginning wherever it lies, as the same search without an end does', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (alone) => {
        const { found } = look(alone, 1000, 300);
        expect(found.map(({ values }) => values)).toEqual([[300 - alone, 200]]);
      }),
      { numRuns: 30 },
    );
  });
});

describe('smallestParts', () => {
  it('takes the least of each size and number, and leaves out what is not everywhere', () => {
    const first = [part('a', 500, 300, { count: 2 }), part('b', 400, 100)];
    const second = [part('a', 480, 320, { count: 3 })];
    expect(smallestParts([first, second])).toMatchObject([
      { id: 'a', cutLengthUm: 480_000, cutWidthUm: 300_000, count: 2 },
    ]);
  });
});
