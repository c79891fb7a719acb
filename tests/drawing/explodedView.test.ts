import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axes, sharedUm } from '../../src/basics/boxes.ts';
import { drawnApart, hides, inPicture, isometric, paintOrder } from '../../src/drawing/explodedView.ts';
import type { Box, Extent } from '../../src/model/geometry.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';

const box = (x: Extent, y: Extent, z: Extent): Box => ({ x, y, z });

describe('what hides what', () => {
  const middle = box([0, 10], [0, 10], [0, 10]);
  it.each([
    ['before', box([0, 10], [-9, -1], [0, 10])],
    ['on the left', box([-9, -1], [0, 10], [0, 10])],
    ['above', box([0, 10], [0, 10], [11, 20])],
  ])('a box %s is painted after', (_where, other) => {
    expect(hides(other, middle)).toBe(true);
    expect(hides(middle, other)).toBe(false);
    expect(paintOrder([other, middle]).order).toEqual([1, 0]);
  });

  it('boxes far apart on the page do not hide each other', () => {
    const other = box([100, 110], [-110, -100], [0, 10]);
    expect(hides(other, middle) || hides(middle, other)).toBe(false);
  });

  it('three bars that hide each other in a circle are told, and each is still painted once', () => {
    const bars = [box([7, 16], [5, 6], [6, 7]), box([7, 8], [1, 10], [5, 6]), box([10, 11], [3, 4], [1, 8])];
    const { order, circles } = paintOrder(bars);
    expect(circles).toBe(1);
    expect([...order].sort()).toEqual([0, 1, 2]);
  });
});

const extent = fc
  .tuple(fc.nat(30), fc.integer({ min: 1, max: 8 }))
  .map(([from, size]): Extent => [from, from + size]);
const any = fc.tuple(extent, extent, extent).map(([x, y, z]) => box(x, y, z));

describe('boxes drawn apart', () => {
  const scaled = (each: Box): Box => {
    const grown = ([from, to]: Extent): Extent => [from * 1000, to * 1000];
    return { x: grown(each.x), y: grown(each.y), z: grown(each.z) };
  };

  it('keep their sizes and, along every axis that parts them, their order', () => {
    fc.assert(
      fc.property(fc.array(any, { minLength: 2, maxLength: 8 }), (boxes) => {
        const before = boxes.map(scaled);
        const after = drawnApart(before);
        before.forEach((one, i) => {
          for (const axis of axes) {
            expect(after[i]![axis][1] - after[i]![axis][0]).toBe(one[axis][1] - one[axis][0]);
            before.forEach((other, j) => {
              // Rounding to whole µm may close a joint by no more than one.
              if (one[axis][1] <= other[axis][0])
                expect(sharedUm(after[i]![axis], after[j]![axis])).toBeLessThanOrEqual(1);
            });
          }
        });
      }),
      { numRuns: 100 },
    );
  });

  it('are painted so that along every line of sight the nearest comes last', () => {
    fc.assert(
      fc.property(fc.array(any, { minLength: 2, maxLength: 6 }), fc.nat(40), fc.nat(40), (boxes, a, b) => {
        const apart = boxes.filter((one, i) =>
          boxes.slice(0, i).every((other) => axes.some((axis) => sharedUm(one[axis], other[axis]) <= 0)),
        );
        const { order, circles } = paintOrder(apart);
        if (circles > 0) return;
        const point = isometric(a + 0.37, b + 0.21, 10.13);
        const hit = order.filter((index) => inPicture(apart[index]!, point));
        // Along the sight line x and y grow and z falls; where a ray enters tells which box is nearer.
        const enters = (index: number) => {
          const { x, y, z } = apart[index]!;
          return Math.max(x[0] - (a + 0.37), y[0] - (b + 0.21), 10.13 - z[1]);
        };
        for (let i = 1; i < hit.length; i++) expect(enters(hit[i]!)).toBeLessThanOrEqual(enters(hit[i - 1]!));
      }),
      { numRuns: 300 },
    );
  });
});

describe('the demonstration furniture drawn apart', () => {
  const library = demoLibrary();
  it.each(['demo-long', 'demo-short'] as const)(
    'of %s has an order without circles, true pair by pair',
    (name) => {
      const units = furnish(demoOrder(library, name), library).furniture!.units;
      for (const unit of units) {
        const boxes = drawnApart(unit.panels.map((panel) => panel.box));
        const { order, circles } = paintOrder(boxes);
        expect(circles, unit.name).toBe(0);
        order.forEach((later, index) => {
          for (const earlier of order.slice(0, index))
            expect(hides(boxes[earlier]!, boxes[later]!)).toBe(false);
        });
      }
    },
  );
});
