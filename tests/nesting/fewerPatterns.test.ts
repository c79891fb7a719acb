import { describe, expect, it } from 'vitest';
import { SeededRandom } from '../../src/basics/random.ts';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { type Facts, makeFacts } from '../../src/nesting/facts.ts';
import { fewerPatterns } from '../../src/nesting/fewerPatterns.ts';
import { nest } from '../../src/nesting/index.ts';
import { longestCutOf } from '../../src/nesting/longestCut.ts';
import type { Plan } from '../../src/nesting/plan.ts';
import { search } from '../../src/nesting/search.ts';
import { encodeTree, piecesOf, readTree, stackOf, type Tree } from '../../src/nesting/sheetCode.ts';
import { offcutWorth, TreeTidier } from '../../src/nesting/tidyTree.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { stockGroup } from '../helpers/stockGroups.ts';

function problemOf(group: StockGroup): { facts: Facts; tidier: TreeTidier } {
  const problem = makeRectangleProblem(group);
  const facts = makeFacts(problem, group.saw.turns, longestCutOf(group, problem.unitUm));
  return { facts, tidier: new TreeTidier(facts, group.saw.leastOffcut) };
}

/** Sheets that differ once they are tidied, the worth of all offcuts, and how many pieces of each kind there are. */
function measureOf({ facts, tidier }: { facts: Facts; tidier: TreeTidier }, plan: Plan) {
  const pieces = new Int32Array(facts.kinds);
  const kindsOfSheets: number[] = [];
  const forms = new Set<string>();
  let worth = 0;
  for (const { sheet, code } of plan.sheets) {
    const root = tidier.tidy(readTree(code, facts.w, facts.h), sheet);
    forms.add(`${sheet} ${JSON.stringify(root)}`);
    worth += offcutWorth(root);
    kindsOfSheets.push(sheet);
    for (const kind of piecesOf(code)) pieces[kind] = pieces[kind]! + 1;
  }
  return {
    different: forms.size,
    worth,
    pieces: pieces.join(),
    kinds: kindsOfSheets.sort().join(),
    cost: plan.cost,
  };
}

function piece(facts: Facts, item: number): Tree {
  return { kind: 'piece', item, turned: false, w: facts.w[item]!, h: facts.h[item]! };
}

describe('making sheets alike', () => {
  /** Rows of 500 × 100 and 500 × 140 on sheets of 500 × 500: four and one, or one and two, or two and two fit. */
  const group = stockGroup({
    demands: [
      [500, 100, 9, 'length'],
      [500, 140, 9, 'length'],
    ],
    sheets: [{ lengthMm: 500, widthMm: 500 }],
    saw: { leastOffcut: { lengthUm: 500_000, widthUm: 200_000 } },
  });
  const made = problemOf(group);
  const row = (...items: number[]) =>
    encodeTree(
      stackOf(
        'h',
        items.map((item) => piece(made.facts, item)),
      ),
      0,
    );
  const contents = (plan: Plan) =>
    plan.sheets.map(({ code }) => [...piecesOf(code)].sort((a, b) => a - b).join('')).sort();

  it('gives sheets of the same pieces one way to be cut', () => {
    const upright = stockGroup({ demands: [[250, 250, 8]], sheets: [{ lengthMm: 500, widthMm: 500 }] });
    const square = problemOf(upright);
    const four = [0, 0].map(() => piece(square.facts, 0));
    const byRows = stackOf('h', [stackOf('w', four), stackOf('w', four)]);
    const byColumns = stackOf('w', [stackOf('h', four), stackOf('h', four)]);
    const plan = { sheets: [encodeTree(byRows, 0), encodeTree(byColumns, 0)], cost: 2 };
    expect(measureOf(square, plan).different).toBe(2);
    const after = fewerPatterns(square.facts, plan, square.tidier);
    expect(measureOf(square, after)).toEqual({ ...measureOf(square, plan), different: 1 });
  });

  it('gives two sheets the mean of their pieces where it fits', () => {
    const plan = { sheets: [row(0, 0, 0, 0), row(0, 0, 1, 1)], cost: 2 };
    const after = fewerPatterns(made.facts, plan, made.tidier);
    expect(contents(after)).toEqual(['0001', '0001']);
  });

  it('exchanges with a third sheet what one lacks to be like another', () => {
    // No two of the three have a whole mean.
    const plan = { sheets: [row(0, 0, 0, 1), row(0, 0, 1, 1), row(0, 1, 1)], cost: 3 };
    const after = fewerPatterns(made.facts, plan, made.tidier);
    expect(contents(after).length).toBe(3);
    expect(new Set(contents(after)).size).toBeLessThanOrEqual(2);
    expect(measureOf(made, after)).toMatchObject({
      pieces: measureOf(made, plan).pieces,
      cost: 3,
    });
  });

  it('leaves a large offcut in one piece rather than make sheets alike', () => {
    // Alike, both would keep 500 × 300; apart, one keeps 500 × 400, which is worth more together with the other's 200.
    const plan = { sheets: [row(0), row(0, 0, 0)], cost: 2 };
    const after = fewerPatterns(made.facts, plan, made.tidier);
    expect(contents(after)).toEqual(['0', '000']);
  });
});

/** Lists of few sizes with many copies, on one or two sizes of sheet, with all kinds of saws. */
function repetitiveGroup(seed: number): StockGroup {
  const random = new SeededRandom(seed);
  const kinds = 3 + random.below(4);
  const times = 3 + random.below(6);
  const demands = Array.from({ length: kinds }, () => {
    const size = [300 + 5 * random.below(100), 200 + 5 * random.below(80)] as const;
    const grain = random.below(2) === 0 ? ('length' as const) : ('none' as const);
    return [size[0], size[1], times * (1 + random.below(3)), grain] as const;
  });
  const large = { lengthMm: 2500, widthMm: 1250, priceMinor: 8000 };
  const small = { lengthMm: 1500, widthMm: 1250, priceMinor: 5100 };
  return stockGroup({
    demands,
    sheets: seed % 2 === 0 ? [large] : [large, small],
    saw: {
      kerfUm: [0, 3200][random.below(2)]!,
      turns: [null, 2, 3][random.below(3)]!,
      firstCut: (['either', 'rip', 'crosscut'] as const)[random.below(3)]!,
      longestCutUm: [null, null, 2200_000][random.below(3)]!,
      leastOffcut: { lengthUm: 400_000, widthUm: 200_000 },
    },
  });
}

describe('plans of lists with many copies', () => {
  it('get fewer different sheets, of the same cost and pieces, with offcuts worth no less, that the saw can cut', () => {
    let [before, after] = [0, 0];
    for (let seed = 0; seed < 16; seed++) {
      const group = repetitiveGroup(seed);
      const made = problemOf(group);
      const limits = {
        seed,
        workLimit: 300,
        stop: () => false,
        patterns: [],
        gathers: true,
        isBest: () => false,
        improved: () => {},
      };
      const found = search(made.facts, limits);
      if (found.unplaced.length > 0) continue;
      const changed = fewerPatterns(made.facts, found.plan, made.tidier);
      const [was, is] = [measureOf(made, found.plan), measureOf(made, changed)];
      expect({ seed, ...is }).toMatchObject({ pieces: was.pieces, kinds: was.kinds, cost: was.cost });
      expect(is.different).toBeLessThanOrEqual(was.different);
      expect(is.worth).toBeGreaterThanOrEqual(was.worth * (1 - 1e-12));
      before += was.different;
      after += is.different;
      const bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' as const } };
      const outcome = nest(group, bound, { seed, workLimit: 300 });
      if (outcome.ok) assertNest(group, outcome.nest);
    }
    expect(before).toBeGreaterThan(50);
    expect(after).toBeLessThan(0.85 * before);
  });

  it('are the same whenever they are made', () => {
    const made = problemOf(repetitiveGroup(3));
    const limits = {
      seed: 1,
      workLimit: 200,
      stop: () => false,
      patterns: [],
      gathers: true,
      isBest: () => false,
      improved: () => {},
    };
    const { plan } = search(made.facts, limits);
    const codes = () => fewerPatterns(made.facts, plan, made.tidier).sheets.map(({ code }) => code.join());
    expect(codes()).toEqual(codes());
  });
});
