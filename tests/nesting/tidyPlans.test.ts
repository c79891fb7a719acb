import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeRectangleProblem } from '../../src/basics/rectangleProblem.ts';
import type { NestPiece } from '../../src/model/nest.ts';
import { makeFacts } from '../../src/nesting/facts.ts';
import { fewerSettings } from '../../src/nesting/fewerSettings.ts';
import { nest } from '../../src/nesting/index.ts';
import { joinSpares } from '../../src/nesting/joinSpares.ts';
import { largestParted, sawingOf } from '../../src/nesting/sawing.ts';
import { encodeTree, readTree, stackOf, type Tree } from '../../src/nesting/sheetCode.ts';
import { offcutWorth, TreeTidier } from '../../src/nesting/tidyTree.ts';
import { groupOf, readInstances } from '../bench/instances.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { stockGroup } from '../helpers/stockGroups.ts';

const kerfUm = 3;

function spare(xUm: number, yUm: number): NestPiece {
  return { kind: 'spare', xUm, yUm, use: 'offcut' };
}

function demand(xUm: number, yUm: number): NestPiece {
  return { kind: 'demand', xUm, yUm, demand: 0, lengthAlong: 'x' };
}

/** Columns of the given widths, each with a piece and a spare above it, in a row 100 high. */
function columns(given: readonly (readonly [width: number, piece: number])[]): NestPiece & { kind: 'stack' } {
  const children = given.map(([width, piece]): NestPiece => {
    if (piece === 100) return demand(width, 100);
    const rest = 100 - piece - kerfUm;
    const above = rest > 0 ? [spare(width, rest)] : [];
    return { kind: 'stack', axis: 'y', xUm: width, yUm: 100, children: [demand(width, piece), ...above] };
  });
  const xUm = children.reduce((sum, child) => sum + child.xUm + kerfUm, -kerfUm);
  return { kind: 'stack', axis: 'x', xUm, yUm: 100, children };
}

const rules = { kerfUm, useOf: () => 'offcut' as const, worth: offcutWorth, allowed: () => true };

function leavesOf(piece: NestPiece): NestPiece[] {
  return piece.kind === 'stack' ? piece.children.flatMap(leavesOf) : [piece];
}

/** Every stack holds its children, with at most a kerf left, and none lies in one along the same axis. */
function assertStacks(piece: NestPiece, parent: 'x' | 'y' | null): void {
  if (piece.kind !== 'stack') return;
  expect(piece.axis).not.toBe(parent);
  const along = piece.axis === 'x' ? 'xUm' : 'yUm';
  const across = piece.axis === 'x' ? 'yUm' : 'xUm';
  const left = piece.children.reduce((rest, child) => rest - child[along] - kerfUm, piece[along] + kerfUm);
  expect(left).toBeGreaterThanOrEqual(0);
  expect(left).toBeLessThanOrEqual(kerfUm);
  for (const child of piece.children) {
    expect(child[across]).toBe(piece[across]);
    assertStacks(child, piece.axis);
  }
}

describe('joining spares', () => {
  it('makes one offcut of two of the same height side by side', () => {
    const joined = joinSpares(
      columns([
        [50, 100],
        [40, 60],
        [30, 60],
      ]),
      rules,
    );
    expect(joined).toMatchObject({
      children: [
        {
          axis: 'y',
          xUm: 73,
          children: [
            { axis: 'x', yUm: 60, children: [{ xUm: 40 }, { xUm: 30 }] },
            { kind: 'spare', xUm: 73, yUm: 37 },
          ],
        },
        { kind: 'demand', xUm: 50 },
      ],
    });
  });

  it('keeps demands, sizes and the rules of stacks, and never makes offcuts worth less', () => {
    const column = fc.tuple(
      fc.integer({ min: 10, max: 50 }),
      fc.constantFrom(100, 97, 95, 90, 60, 57, 56, 30),
    );
    let joins = 0;
    fc.assert(
      fc.property(fc.array(column, { minLength: 2, maxLength: 6 }), (given) => {
        const before = columns(given);
        const after = joinSpares(before, rules);
        assertStacks(after, null);
        expect([after.xUm, after.yUm]).toEqual([before.xUm, before.yUm]);
        const demands = (tree: NestPiece) =>
          leavesOf(tree)
            .filter((leaf) => leaf.kind === 'demand')
            .map(({ xUm, yUm }) => `${xUm} ${yUm}`)
            .sort();
        expect(demands(after)).toEqual(demands(before));
        expect(offcutWorth(after)).toBeGreaterThanOrEqual(offcutWorth(before));
        if (after !== before) joins++;
      }),
      { numRuns: 500, seed: 1 },
    );
    expect(joins).toBeGreaterThan(100);
  });

  it('is not done where the saw does not allow it', () => {
    const tree = columns([
      [50, 100],
      [40, 60],
      [30, 60],
    ]);
    expect(joinSpares(tree, { ...rules, allowed: () => false })).toBe(tree);
  });
});

describe('exchanging pieces', () => {
  it('brings equal widths together on one sheet', () => {
    const group = stockGroup({
      demands: [
        [500, 300, 2, 'length'],
        [500, 290, 2, 'length'],
      ],
      // Sheets that are not alike, since those would be left alone.
      sheets: [
        { lengthMm: 500, widthMm: 620 },
        { lengthMm: 500, widthMm: 615 },
      ],
    });
    const facts = makeFacts(makeRectangleProblem(group), null, null);
    const tidier = new TreeTidier(facts, group.saw.leastOffcut);
    const piece = (item: number): Tree => ({
      kind: 'piece',
      item,
      turned: false,
      w: facts.w[item]!,
      h: facts.h[item]!,
    });
    const mixed = stackOf('h', [piece(0), piece(1)]);
    const plan = { sheets: [encodeTree(mixed, 0), encodeTree(mixed, 1)], cost: 2 };
    const after = fewerSettings(facts, plan, tidier);
    const settings = (codes: typeof plan.sheets) =>
      codes.map(
        ({ sheet, code }) => sawingOf(tidier.tidy(readTree(code, facts.w, facts.h), sheet)).fenceSettings,
      );
    expect(settings(plan.sheets)).toEqual([2, 2]);
    expect(settings([...after.sheets])).toEqual([1, 1]);
  });
});

describe('the first parting of a sheet', () => {
  it('leaves the larger of its largest strip and the rest', () => {
    // Of 206: 120 and 83 | 60 and 143.
    const first = columns([
      [120, 100],
      [83, 100],
    ]);
    expect(largestParted(first, kerfUm)).toBe(120);
    const even = columns([
      [60, 100],
      [50, 100],
      [90, 100],
    ]);
    expect(even.xUm).toBe(206);
    expect(largestParted(even, kerfUm)).toBe(113);
  });

  it('settles between trees of equal offcuts, turns and settings', () => {
    // 300 × 200 in the corner of 1000 × 700, no offcut worth keeping: 300 off first leaves 700 × 700, 200 leaves 1000 × 500.
    const group = stockGroup({
      demands: [[300, 200, 1, 'length']],
      sheets: [{ lengthMm: 1000, widthMm: 700 }],
      saw: { leastOffcut: { lengthUm: 2_000_000, widthUm: 2_000_000 } },
    });
    const facts = makeFacts(makeRectangleProblem(group), null, null);
    const tidier = new TreeTidier(facts, group.saw.leastOffcut);
    const tree: Tree = { kind: 'piece', item: 0, turned: false, w: facts.w[0]!, h: facts.h[0]! };
    expect(tidier.tidy(tree, 0)).toMatchObject({ kind: 'stack', axis: 'x' });
  });
});

describe('tidying a sheet that is filled right across', () => {
  it('never lays a stack in one along the same axis', () => {
    // A published list of 283 sizes, the first in which it happened.
    const instance = readInstances('variable-sheets').find(({ id }) => id === 'Nice300i4b1')!;
    const group = groupOf(instance, 'fixed');
    const bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } } as const;
    const outcome = nest(group, bound, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error('it can be nested');
    assertNest(group, outcome.nest);
  });
});
