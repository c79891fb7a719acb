import { describe, expect, it } from 'vitest';
import { unitsBySide, walkway } from '../../src/drawing/layoutMeasures.ts';
import type { Furniture, PlacedUnit } from '../../src/model/furniture.ts';
import { demoLibrary } from '../helpers/demoVan.ts';

const vehicle = demoLibrary().vehicles.get('van-long')!;

/** A unit that is nothing but its place: x and y in mm, from the floor to 800 mm. */
function standing(name: string, x: readonly [number, number], y: readonly [number, number]): PlacedUnit {
  const um = ([from, to]: readonly [number, number]) => [from * 1000, to * 1000] as const;
  const box = { x: um(x), y: um(y), z: um([0, 800]) };
  return {
    name,
    unit: name,
    facing: 'left',
    parameters: new Map(),
    outside: box,
    placeOutside: box,
    panels: [],
    fittings: [],
  };
}

function way(...units: PlacedUnit[]): readonly [number, number] | null {
  const furniture: Furniture = { order: 'test', count: 1, units };
  const { left, right } = unitsBySide(furniture, vehicle);
  const found = walkway(left, right);
  return found === null ? null : [found.across[0] / 1000, found.across[1] / 1000];
}

const bed = standing('bed', [2000, 3850], [0, 640]);
const otherBed = standing('other bed', [2000, 3850], [1120, 1760]);

describe('the walkway of a layout', () => {
  it('is the narrowest way between the two sides', () => {
    const cupboard = standing('cupboard', [500, 1900], [0, 540]);
    const fridge = standing('fridge', [1150, 1640], [1190, 1690]);
    expect(way(cupboard, fridge)).toEqual([540, 1190]);
    expect(way(cupboard, fridge, bed, otherBed)).toEqual([640, 1120]);
  });

  it('does not lead through what stands in it', () => {
    expect(way(bed, otherBed, standing('bridge', [2100, 3800], [640, 1120]))).toBeNull();
  });

  it('is no gap that nobody goes through', () => {
    expect(
      way(standing('dog space', [2500, 3800], [200, 690]), standing('sink', [3300, 3850], [710, 1500])),
    ).toBeNull();
  });
});
