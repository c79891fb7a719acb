import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EverySplit } from '../../src/basics/everySplit.ts';
import { KnownFailures } from '../../src/basics/knownFailures.ts';
import { countsOf, fitsSheet } from '../../src/basics/patternTree.ts';
import { SeededRandom } from '../../src/basics/random.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import { Parts, Selections } from '../../src/basics/selections.ts';
import { StepCount } from '../../src/basics/stepCount.ts';
import type { RectangleProblem } from '../../src/model/rectangles.ts';
import { everyRectangle, liesIn } from '../helpers/everyRectangle.ts';
import { plainGroup } from '../helpers/smallGroups.ts';

type Side = [w: number, h: number];

/** A rectangle cut into so many pieces at random; every second cut is near the middle, so that large parts meet. */
function cutUp(random: SeededRandom, [w, h]: Side, pieces: number): Side[] {
  if (pieces === 1 || Math.max(w, h) < 4) return [[w, h]];
  const alongW = w < 4 ? false : h < 4 ? true : random.below(2) === 0;
  const long = alongW ? w : h;
  const at =
    random.below(2) === 0 ? 1 + random.below(long - 1) : Math.floor(long / 3 + random.below(long) / 3) || 1;
  const part = 1 + random.below(pieces - 1);
  const near: Side = alongW ? [at, h] : [w, at];
  const far: Side = alongW ? [w - at, h] : [w, h - at];
  return [...cutUp(random, near, part), ...cutUp(random, far, pieces - part)];
}

/** Sheets that are cut up, and some pieces then made a little shorter or longer: near what just fits. */
function nearlyFull(seed: number, sheets: readonly Side[], pieces: number): Side[] {
  const random = new SeededRandom(seed);
  const most = Math.floor(pieces / sheets.length);
  return sheets.flatMap((sheet) => {
    const cut = cutUp(random, sheet, 1 + random.below(most));
    return cut.map(([w, h]): Side => {
      const change = random.below(12);
      if (change > 3) return [w, h];
      const by = 1 + random.below(2);
      return change === 0 ? [w + by, h] : change === 1 ? [w, Math.max(1, h - by)] : [Math.max(1, w - by), h];
    });
  });
}

function problemOf(pieces: readonly Side[], sheets: readonly Side[], grains: readonly boolean[]) {
  const kinds = new Map<string, { side: Side; count: number; isGrained: boolean }>();
  pieces.forEach(([w, h], i) => {
    const isGrained = grains[i % grains.length]!;
    const key = `${w} ${h} ${isGrained}`;
    kinds.set(key, { side: [w, h], count: (kinds.get(key)?.count ?? 0) + 1, isGrained });
  });
  const group = plainGroup({
    pieces: [...kinds.values()].map(({ side, count }) => [...side, count] as const),
    sheets: sheets.map((mm) => ({ mm })),
  });
  const demands = group.demands.map((demand, i) => ({
    ...demand,
    grain: [...kinds.values()][i]!.isGrained ? ('length' as const) : ('none' as const),
  }));
  return makeRectangleProblem({ ...group, demands });
}

function plainPieces({ items }: RectangleProblem) {
  return Array.from({ length: items.kinds }, (_, i) =>
    Array.from({ length: items.count[i]! }, () => ({
      w: items.w[i]!,
      h: items.h[i]!,
      turns: items.grained[i] === 0,
    })),
  ).flat();
}

/** Whether a mix of one or two sheets holds all pieces, by everything there is to try. */
function holdsAll(problem: RectangleProblem, sheets: readonly number[]): boolean {
  const rectangles = everyRectangle(plainPieces(problem));
  const all = rectangles.length - 1;
  const fits = (set: number, index: number) => {
    const { w, h } = problem.sheets[sheets[index]!]!;
    return liesIn(rectangles[set]!, w, h);
  };
  if (sheets.length === 1) return fits(all, 0);
  return rectangles.some((_, set) => fits(set, 0) && fits(all - set, 1));
}

function expectWhole(
  problem: RectangleProblem,
  split: EverySplit,
  chosen: ReturnType<EverySplit['divide']>,
  sheets: readonly number[],
) {
  const counts = new Int32Array(problem.items.kinds);
  for (const { sheet, selection } of chosen!) {
    const tree = split.tree(selection, sheet);
    if (!tree) continue;
    expect(fitsSheet(problem, { sheet, counts: countsOf(tree), tree, use: 1 })).toBe(true);
    for (const { item, count } of countsOf(tree)) counts[item]! += count;
  }
  expect(counts).toEqual(problem.items.count);
  expect(chosen!.map(({ sheet }) => sheet).sort()).toEqual([...sheets].sort());
}

describe('every way to part few pieces', () => {
  it('finds a layout on sheets that are nearly full whenever there is one, and none otherwise', () => {
    const layouts: readonly (readonly [readonly Side[], readonly number[], number])[] = [
      [[[30, 20]], [1], 9],
      [[[13, 10]], [1], 9],
      [
        [
          [26, 18],
          [17, 12],
        ],
        [1, 1],
        9,
      ],
      [[[22, 16]], [2], 9],
      [
        [
          [12, 17],
          [17, 12],
        ],
        [1, 1],
        9,
      ],
    ];
    const seen = layouts.map(() => [0, 0]);
    for (const [index, [sheets, mix, most]] of layouts.entries()) {
      const onSheets = mix.flatMap((n, sheet) => new Array<number>(n).fill(sheet));
      for (let seed = 1; seed <= 120; seed++) {
        const cut = onSheets.map((sheet) => sheets[sheet]!);
        const pieces = nearlyFull(1000 * index + seed, cut, most);
        const problem = problemOf(pieces, sheets, seed % 3 === 0 ? [false] : [true, false, true]);
        const split = EverySplit.make(problem, mix, 1e9)!;
        const chosen = split.divide();
        expect(split.isSpent).toBe(false);
        const said = `${JSON.stringify(pieces)} on ${JSON.stringify(sheets)}`;
        expect([said, chosen !== null]).toEqual([said, holdsAll(problem, onSheets)]);
        seen[index]![chosen ? 0 : 1]!++;
        if (chosen) expectWhole(problem, split, chosen, onSheets);
      }
    }
    // Both happen often.
    expect(seen.flat().every((times) => times > 20)).toBe(true);
  });

  it('says nothing when it is stopped, and says the same again with the same steps', () => {
    const pieces = nearlyFull(7, [[90, 70]], 16);
    const problem = problemOf(pieces, [[90, 70]], [true, false]);
    const split = EverySplit.make(problem, [1], 1e9)!;
    const whole = split.divide();
    const again = EverySplit.make(problem, [1], 1e9)!;
    expect([again.divide(), again.steps]).toEqual([whole, split.steps]);
    const short = EverySplit.make(problem, [1], split.steps - 1)!;
    expect(short.isSpent).toBe(false);
    short.divide();
    expect(short.isSpent).toBe(true);
  });

  it('has no more selections, sheets or steps to do with than it can', () => {
    const of = (kinds: number, mix: readonly number[], steps: number) => {
      const pieces = Array.from({ length: kinds }, (_, i): Side => [10 + i, 9]);
      return EverySplit.make(problemOf(pieces, [[900, 70]], [true]), mix, steps) !== null;
    };
    expect([of(10, [1], 1e9), of(10, [0], 1e9), of(10, [4], 1e9), of(10, [5], 1e9)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect([of(10, [1], 8191), of(10, [1], 8192), of(23, [1], 1e9), of(22, [1], 1e9)]).toEqual([
      false,
      true,
      false,
      true,
    ]);
  });
});

describe('parts of a selection', () => {
  it('are all those up to an area, once each and in rising order', () => {
    const counts = fc.array(fc.record({ count: fc.nat(3), side: fc.integer({ min: 1, max: 9 }) }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(counts, fc.nat(2000), fc.nat(120), (kinds, chosen, most) => {
        const problem = makeRectangleProblem(
          plainGroup({
            pieces: kinds.map(({ count, side }, i) => [side, i + 1, count]),
            sheets: [{ mm: [100, 100] }],
          }),
        );
        const selections = new Selections(problem);
        const selection = chosen % selections.count;
        const digits = (of: number) =>
          kinds.map(({ count }, i) => Math.floor(of / selections.strides[i]!) % (count + 1));
        const isPart = (part: number) => digits(part).every((n, i) => n <= digits(selection)[i]!);
        const expected = Array.from({ length: selection + 1 }, (_, part) => part).filter(
          (part) => isPart(part) && selections.areaOf(part) <= most,
        );
        const parts = new Parts(selections);
        const seen: number[] = [];
        for (let part = parts.first(selection, most); part >= 0; part = parts.next()) {
          expect(parts.area).toBe(selections.areaOf(part));
          seen.push(part);
        }
        expect(seen).toEqual(expected);
        expect(parts.pieces).toBe(digits(selection).reduce((sum, n) => sum + n, 0));
      }),
    );
  });
});

describe('known failures', () => {
  it('are those that were told, and all that is no larger', () => {
    const random = new SeededRandom(5);
    const failures = new KnownFailures();
    const told: [number, number, number][] = [];
    for (let i = 0; i < 3000; i++) {
      const [selection, w, h] = [random.below(900) * 7919, random.below(50), random.below(50)];
      const isKnown = told.some(([s, a, b]) => s === selection && a >= w && b >= h);
      expect(failures.has(selection, w, h)).toBe(isKnown);
      if (random.below(2) === 0) continue;
      failures.add(selection, w, h);
      told.push([selection, w, h]);
    }
  });
});

describe('steps', () => {
  it('are spent when there are too many, or when it is told to stop; some count as none', () => {
    const count = new StepCount(100, () => false);
    count.steps = 100;
    expect(count.isSpent).toBe(false);
    count.free(() => {
      count.steps = 1000;
      expect(count.isSpent).toBe(false);
    });
    expect([count.steps, count.isSpent]).toEqual([100, false]);
    count.steps++;
    expect(count.isSpent).toBe(true);
    let asked = 0;
    const stopped = new StepCount(1e9, () => ++asked === 3);
    const spent = Array.from({ length: 8 }, () => {
      stopped.steps += 6_000_000;
      return stopped.isSpent;
    });
    expect([spent, asked]).toEqual([[false, false, false, false, false, true, true, true], 3]);
  });
});
