import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fittedPattern } from '../../src/basics/fittedPattern.ts';
import { countsOf, fitsSheet } from '../../src/basics/patternTree.ts';
import type { PatternNode } from '../../src/model/patterns.ts';
import type { RectangleProblem } from '../../src/model/rectangles.ts';

function problemOf(sizes: readonly (readonly [number, number])[], w: number, h: number): RectangleProblem {
  return {
    unitUm: 1000,
    kerf: 0,
    items: {
      kinds: sizes.length,
      w: Int32Array.from(sizes, ([side]) => side),
      h: Int32Array.from(sizes, ([, side]) => side),
      count: new Int32Array(sizes.length).fill(5),
      grained: new Uint8Array(sizes.length),
    },
    sheets: [
      { sheet: 0, w, h, costMinor: 1, count: -1, noGrain: false, transposed: false, firstBlade: 'either' },
    ],
  };
}

const piece = (item: number, turned = false): PatternNode => ({ kind: 'item', item, turned });
const row = (...children: PatternNode[]): PatternNode => ({ kind: 'stack', axis: 'w', children });
const column = (...children: PatternNode[]): PatternNode => ({ kind: 'stack', axis: 'h', children });

function fitted(problem: RectangleProblem, tree: PatternNode, prices: number[]) {
  return fittedPattern(problem, { sheet: 0, counts: countsOf(tree), tree }, prices);
}

const side = fc.integer({ min: 1, max: 9 });
const sizes = fc.array(fc.tuple(side, side), { minLength: 3, maxLength: 3 });
const { tree: anyTree } = fc.letrec<{ tree: PatternNode }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.tuple(fc.nat({ max: 2 }), fc.boolean()).map(([item, turned]) => piece(item, turned)),
    fc
      .tuple(fc.boolean(), fc.array(tie('tree'), { minLength: 2, maxLength: 4 }))
      .map(([across, children]) => (across ? row(...children) : column(...children))),
  ),
}));

describe('fittedPattern', () => {
  it('takes out the piece of least value by which a row fits', () => {
    const problem = problemOf(
      [
        [4, 4],
        [3, 3],
        [2, 2],
      ],
      10,
      4,
    );
    const tree = row(piece(0), piece(1), piece(2), piece(2));
    expect(fitted(problem, tree, [4, 3, 1])?.tree).toEqual(row(piece(0), piece(1), piece(2)));
    expect(fitted(problem, tree, [1, 3, 2])?.tree).toEqual(row(piece(1), piece(2), piece(2)));
    expect(fitted(problem, tree, [1, 3, 2])?.counts).toEqual([
      { item: 1, count: 1 },
      { item: 2, count: 2 },
    ]);
  });

  it('takes it from within a column of the row where that is enough', () => {
    const problem = problemOf(
      [
        [6, 4],
        [5, 3],
        [6, 3],
      ],
      11,
      6,
    );
    const tree = row(piece(0), column(piece(1), piece(2)));
    expect(fitted(problem, tree, [4, 3, 1])?.tree).toEqual(row(piece(0), piece(1)));
    expect(fitted(problem, tree, [1, 3, 9])?.tree).toEqual(column(piece(1), piece(2)));
  });

  it('takes out several where one is too narrow, and all that fit in no way', () => {
    const problem = problemOf(
      [
        [4, 4],
        [2, 3],
        [1, 2],
      ],
      5,
      3,
    );
    const tree = row(piece(1), piece(1), piece(2), piece(2), piece(2));
    expect(fitted(problem, tree, [9, 4, 1])?.tree).toEqual(row(piece(1), piece(1), piece(2)));
    expect(fitted(problem, row(piece(0), piece(0)), [9, 4, 1])).toBeNull();
  });

  it('fits, holds nothing new, and is the pattern itself only where that fits', () => {
    fc.assert(
      fc.property(
        sizes,
        side,
        side,
        anyTree,
        fc.array(fc.nat({ max: 5 }), { minLength: 3, maxLength: 3 }),
        (of, w, h, tree, prices) => {
          const problem = problemOf(of, w, h);
          const pattern = { sheet: 0, counts: countsOf(tree), tree };
          const result = fittedPattern(problem, pattern, prices);
          expect(result === pattern).toBe(fitsSheet(problem, { ...pattern, use: 0 }));
          const held = new Map(pattern.counts.map(({ item, count }) => [item, count]));
          if (result === null) {
            // No single piece of it would have fitted as it lies.
            const lies = (node: PatternNode): PatternNode[] =>
              node.kind === 'item' ? [node] : node.children.flatMap(lies);
            for (const one of lies(tree)) {
              expect(fitsSheet(problem, { sheet: 0, counts: countsOf(one), tree: one, use: 0 })).toBe(false);
            }
            return;
          }
          expect(fitsSheet(problem, { ...result, use: 0 })).toBe(true);
          expect(result.counts).toEqual(countsOf(result.tree));
          for (const { item, count } of result.counts) expect(count).toBeLessThanOrEqual(held.get(item)!);
        },
      ),
    );
  });
});
