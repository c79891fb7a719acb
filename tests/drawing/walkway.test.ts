import { describe, expect, it } from 'vitest';
import { widthAtUm } from '../../src/basics/vehicleSection.ts';
import { unitsBySide, walkway } from '../../src/drawing/layoutMeasures.ts';
import { drawLayout } from '../../src/drawing/vehicleViews.ts';
import type { Furniture, PlacedUnit } from '../../src/model/furniture.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { measure, words } from './drawingTools.ts';

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
  const found = walkway(left, right, [0, widthAtUm(vehicle, 0)]);
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

  it('leads along a bench to the wall across from it', () => {
    const bench = standing('bench', [100, 700], [0, 1190]);
    expect(way(bench, standing('fridge', [1900, 2400], [100, 700]))).toEqual([1190, 1760]);
    expect(way(bench, standing('step', [300, 500], [1500, 1760]))).toEqual([1190, 1500]);
  });

  it('is no gap that nobody goes through', () => {
    expect(
      way(standing('dog space', [2500, 3800], [200, 690]), standing('sink', [2500, 3800], [710, 1500])),
    ).toBeNull();
  });
});

describe('the numbers of units on a layout', () => {
  it('stand on the plan even where only slats are seen of a bed', () => {
    const library = demoLibrary();
    const order = demoOrder(library, 'roof-bed-long');
    const furniture = furnish(order, library).furniture!;
    const options = { measure, words, job: 'demo', titles: new Map<string, string>() };
    const [page] = drawLayout(furniture, vehicle, library.finishes, options);
    const plan = page!.shapes.filter((shape) => shape.kind === 'text' && shape.y < 110 && shape.x < 195);
    const bed = furniture.units.findIndex(({ unit }) => unit === 'slatted-roof-bed') + 1;
    const texts = plan.map((shape) => (shape.kind === 'text' ? shape.text : ''));
    expect(bed).toBeGreaterThan(0);
    expect(texts.some((text) => new RegExp(`^${bed}( |$)`).test(text))).toBe(true);
  });
});
