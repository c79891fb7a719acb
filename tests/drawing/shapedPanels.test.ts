import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { polygonAreaUm2 } from '../../src/basics/polygons.ts';
import { withinSection } from '../../src/basics/vehicleSection.ts';
import { isometric, seenFaces } from '../../src/drawing/explodedView.ts';
import { outlineTable } from '../../src/drawing/outlineTable.ts';
import { seenFacesOf } from '../../src/drawing/shapedPrism.ts';
import type { Panel } from '../../src/model/furniture.ts';
import type { Axis } from '../../src/model/geometry.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { body } from '../helpers/standing.ts';
import { words } from './drawingTools.ts';

const box = { x: [0, 16_000], y: [0, 500_000], z: [0, 1_400_000] } as const;

function shaped(
  outline: Panel['outline'],
  [lengthAxis, widthAxis, thicknessAxis]: readonly [Axis, Axis, Axis],
): Panel {
  return { lengthAxis, widthAxis, thicknessAxis, ...(outline ? { outline } : {}) } as Panel;
}

const point = (alongLengthUm: number, alongWidthUm: number) => ({ alongLengthUm, alongWidthUm });

function pictureArea(corners: readonly (readonly [number, number])[]): number {
  return Math.abs(polygonAreaUm2(corners));
}

type Place = readonly [number, number];

/** Convex hull, counter-clockwise (monotone chain). */
function hullOf(places: readonly Place[]): Place[] {
  const sorted = places.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (from: readonly Place[]) => {
    const chain: Place[] = [];
    for (const place of from) {
      while (chain.length > 1 && !turnsLeft(chain.at(-2)!, chain.at(-1)!, place)) chain.pop();
      chain.push(place);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

function turnsLeft(a: Place, b: Place, c: Place): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}

const total = (faces: readonly { corners: readonly (readonly [number, number])[] }[]) =>
  faces.reduce((sum, { corners }) => sum + pictureArea(corners), 0);

describe('the faces that are seen of a shaped panel', () => {
  const ways = [
    ['z', 'y', 'x'],
    ['y', 'z', 'x'],
    ['z', 'x', 'y'],
    ['x', 'z', 'y'],
    ['x', 'y', 'z'],
    ['y', 'x', 'z'],
  ] as const satisfies readonly (readonly [Axis, Axis, Axis])[];

  it.each(ways)('are those of its box when it is a rectangle: %s %s %s', (...way) => {
    const [length, width] = [box[way[0]][1], box[way[1]][1]];
    const panel = shaped([point(0, 0), point(length, 0), point(length, width), point(0, width)], way);
    const keys = (faces: ReturnType<typeof seenFaces>) =>
      faces.map(({ corners, tone }) => `${tone}: ${corners.map((at) => at.join(' ')).sort()}`).sort();
    expect(keys(seenFacesOf(panel, box))).toEqual(keys(seenFaces(box)));
  });

  it('cover the whole picture of a convex panel and nothing twice', () => {
    const cuts = fc.tuple(fc.integer({ min: 1, max: 15_000 }), fc.integer({ min: 1, max: 15_000 }));
    fc.assert(
      fc.property(fc.constantFrom(...ways), cuts, (way, [offLength, offWidth]) => {
        const [length, width] = [box[way[0]][1], box[way[1]][1]];
        // A corner is cut off; which one changes what is seen.
        const panel = shaped(
          [
            point(0, 0),
            point(length, 0),
            point(length, width - offWidth),
            point(length - offLength, width),
            point(0, width),
          ],
          way,
        );
        const faces = seenFacesOf(panel, box);
        expect(faces.length).toBeGreaterThanOrEqual(3);
        expect(faces.at(-1)?.corners).toHaveLength(5);
        // The picture of a convex body is the hull of the pictures of its corners.
        const corners = [0, 1].flatMap((end) =>
          panel.outline!.map(({ alongLengthUm, alongWidthUm }) => {
            const at = { x: 0, y: 0, z: 0, [way[0]]: alongLengthUm, [way[1]]: alongWidthUm };
            at[way[2]] = box[way[2]][end]!;
            return isometric(at.x, at.y, at.z);
          }),
        );
        const hull = pictureArea(hullOf(corners));
        expect(Math.abs(total(faces) - hull) / hull).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('what of a unit lies within the section', () => {
  const drawnIn = body([
    [0, 1760],
    [1000, 1760],
    [1500, 1560],
  ]);

  it('is all of it away from the walls, less a corner at one, and nothing behind it', () => {
    expect(withinSection(drawnIn, [100_000, 500_000], [0, 1_400_000])).toEqual([
      [100_000, 0],
      [500_000, 0],
      [500_000, 1_400_000],
      [100_000, 1_400_000],
    ]);
    expect(withinSection(drawnIn, [0, 500_000], [1_000_000, 1_500_000])).toEqual([
      [0, 1_000_000],
      [500_000, 1_000_000],
      [500_000, 1_500_000],
      [100_000, 1_500_000],
    ]);
    expect(withinSection(drawnIn, [-500_000, -100_000], [0, 1_000_000])).toBeNull();
  });
});

describe('the table of outlines', () => {
  const library = demoLibrary();
  const units = furnish(demoOrder(library), library).furniture!.units;
  const options = { words, titles: new Map<string, string>(), job: 'test' };
  const table = (name: string) => outlineTable(units.find((unit) => unit.name === name)!, options as never);

  it('has the corners of both sides of the wardrobe once, with what is left on for scribing', () => {
    const { rows } = table('wardrobe')!;
    expect(rows[0]).toEqual([
      expect.stringMatching(/^\d+, \d+$/),
      'left side, right side: from its bottom edge and its front edge; 15 mm left on along the back for scribing to the wall',
      '1',
      '0',
      '0',
    ]);
    // 646.8 wide at 500 above the floor, where the wall is furthest out, 30 mm less at the floor.
    expect(rows.slice(1).map((row) => row.slice(2).join(' '))).toEqual([
      '2 1750 0',
      '3 1750 546.8',
      '4 1500 596.8',
      '5 1000 641.8',
      '6 500 646.8',
      '7 0 616.8',
    ]);
  });

  it('is not there where every panel is a rectangle', () => {
    expect(table('base cupboard')).toBeNull();
  });
});
