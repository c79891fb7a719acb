import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axes, boxAround, extentSize, inVehicle, sharedBox, turnedBox } from '../../src/basics/boxes.ts';
import { freeAcrossUm, leastWidthUm, widthAtUm } from '../../src/basics/vehicleSection.ts';
import type { Box, Extent, Facing } from '../../src/model/geometry.ts';
import { demoLibrary } from '../helpers/demoVan.ts';

const extent = fc
  .tuple(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: 1, max: 1000 }))
  .map(([from, size]): Extent => [from, from + size]);
const box: fc.Arbitrary<Box> = fc.record({ x: extent, y: extent, z: extent });
const facings = fc.constantFrom<Facing>('left', 'right', 'front', 'rear');

describe('boxes', () => {
  it('are as large after turning, and come back after four quarters', () => {
    fc.assert(
      fc.property(box, facings, (one, facing) => {
        const turned = turnedBox(one, facing);
        expect(axes.map((axis) => extentSize(turned[axis])).sort()).toEqual(
          axes.map((axis) => extentSize(one[axis])).sort(),
        );
        const quarter = (b: Box) => turnedBox(b, 'rear');
        expect(quarter(quarter(quarter(quarter(one))))).toEqual(one);
        expect(quarter(quarter(one))).toEqual(turnedBox(one, 'right'));
        expect(quarter(quarter(quarter(one)))).toEqual(turnedBox(one, 'front'));
      }),
    );
  });

  it('overlap after turning just as before', () => {
    fc.assert(
      fc.property(box, box, facings, (a, b, facing) => {
        const shared = sharedBox(a, b);
        const turned = sharedBox(turnedBox(a, facing), turnedBox(b, facing));
        expect(turned).toEqual(shared === null ? null : turnedBox(shared, facing));
      }),
    );
  });

  it('stand in the vehicle inside their unit', () => {
    fc.assert(
      fc.property(box, box, facings, (outside, at, facing) => {
        const size = turnedBox(outside, facing);
        const standing = (axis: 'x' | 'y' | 'z'): Extent => [
          at[axis][0],
          at[axis][0] + extentSize(size[axis]),
        ];
        const placeOutside = { x: standing('x'), y: standing('y'), z: standing('z') };
        expect(inVehicle(outside, { outside, placeOutside, facing })).toEqual(placeOutside);
      }),
    );
  });

  it('have a box around them', () => {
    expect(boxAround([])).toBeNull();
    const one: Box = { x: [0, 1], y: [0, 1], z: [5, 9] };
    expect(boxAround([one, { x: [3, 4], y: [-2, 0], z: [6, 7] }])).toEqual({
      x: [0, 4],
      y: [-2, 1],
      z: [5, 9],
    });
  });
});

describe('the section of a vehicle', () => {
  const van = demoLibrary().vehicles.get('van-long')!;

  it('is straight between its heights', () => {
    expect(widthAtUm(van, 0)).toBe(1_760_000);
    expect(widthAtUm(van, 250_000)).toBe(1_790_000);
    expect(widthAtUm(van, 1_650_000)).toBe(1_660_000);
    expect(widthAtUm(van, 2_500_000)).toBe(1_500_000);
  });

  it('leaves the least width of a range of heights, the same on both sides', () => {
    expect(leastWidthUm(van, 0, 1_000_000)).toBe(1_760_000);
    expect(leastWidthUm(van, 1_000_000, 1_650_000)).toBe(1_660_000);
    expect(freeAcrossUm(van, 1_000_000, 1_650_000)).toEqual([50_000, 1_710_000]);
    // Wider than its floor at the waist.
    expect(freeAcrossUm(van, 500_000, 500_000)).toEqual([-30_000, 1_790_000]);
  });
});
