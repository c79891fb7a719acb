import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Corner,
  polygonAreaUm2,
  polygonBounds,
  polygonWithout,
  rectangle,
  runAlong,
  sharedPolygons,
  tidied,
} from '../../src/basics/polygons.ts';

const extent = fc
  .tuple(fc.integer({ min: -2_000_000, max: 2_000_000 }), fc.integer({ min: 10_000, max: 3_000_000 }))
  .map(([from, size]) => [from, from + size] as const);
const box = fc.tuple(extent, extent).map(([u, v]) => rectangle(u, v));
/** A corner of a box cut off, or bent out. */
const shape = fc.tuple(extent, extent, fc.double({ min: 0.1, max: 1.5, noNaN: true })).map(([u, v, lean]) => {
  const [low, , high, side] = rectangle(u, v) as [Corner, Corner, Corner, Corner];
  return [low, [u[1], v[0]], [Math.round(u[0] + lean * (u[1] - u[0])), high[1]], side] as Corner[];
});

const area = (pieces: readonly (readonly Corner[])[]) =>
  pieces.reduce((sum, piece) => sum + polygonAreaUm2(piece), 0);

describe('polygons in whole µm', () => {
  it('are taken from each other so that what is left and what is shared make the whole', () => {
    fc.assert(
      fc.property(shape, box, (one, other) => {
        const left = polygonWithout(one, [other]);
        const shared = sharedPolygons(one, other);
        for (const [u, v] of [...left, ...shared].flat()) {
          expect(Number.isInteger(u) && Number.isInteger(v)).toBe(true);
          const bounds = polygonBounds(one);
          expect(u >= bounds.u[0] && u <= bounds.u[1] && v >= bounds.v[0] && v <= bounds.v[1]).toBe(true);
        }
        // A hole is lost by design, so only cuts that reach over the border are counted.
        const bounds = polygonBounds(one);
        const cut = polygonBounds(other);
        const inside =
          cut.u[0] > bounds.u[0] &&
          cut.u[1] < bounds.u[1] &&
          cut.v[0] > bounds.v[0] &&
          cut.v[1] < bounds.v[1];
        if (inside) return;
        // Rounding of corners: some µm along the border, and slivers of 1 mm² are dropped.
        expect(Math.abs(area(left) + area(shared) - polygonAreaUm2(one))).toBeLessThan(4e7);
      }),
    );
  });

  it('are counter-clockwise from the lowest leftmost corner, without corners on a line', () => {
    const square: Corner[] = [
      [10, 10],
      [10, 0],
      [5, 0],
      [0, 0],
      [0, 4],
      [0, 10],
      [0, 10],
    ];
    expect(tidied(square)).toEqual(rectangle([0, 10], [0, 10]));
    expect(polygonAreaUm2(square)).toBe(-100);
  });

  it('know how long their sides on a line are', () => {
    const notched: Corner[] = [
      [0, 0],
      [100, 0],
      [100, 60],
      [80, 40],
      [60, 60],
      [0, 60],
    ];
    expect(runAlong(notched, 'v', 60)).toBe(60);
    expect(runAlong(notched, 'u', 100)).toBe(60);
    expect(runAlong(notched, 'u', 80)).toBe(0);
  });
});
