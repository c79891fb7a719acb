import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Hole, Panel } from '../../src/model/furniture.ts';
import { readOrder } from '../../src/order/index.ts';
import { demoLibrary, furnish, must } from '../helpers/demoVan.ts';

/**
 * Cup hinges, from the reference page of a hinge catalogue: cup 35 mm wide and 13 deep; two fixing holes 45 apart, 8 wide,
 * 9.5 behind the cup's middle; the middle of the cup is 17.5 mm more than the boring distance of 3 to 8 mm from the
 * door's edge; the distance between top and bottom hinge is greater than the door is wide. Mounting plates sit on the row
 * of the 32 mm system, from two cabinetmakers' pages about it: holes 5 mm wide at a pitch of 32, 37 from the front edge;
 * the cups as far from the top as from the bottom of the front.
 */
const library = demoLibrary();
const folder = 'parts-libraries/demo-van/orders';
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.yaml'),
);
const panels = files.flatMap((file) => {
  const order = must(readOrder(readFileSync(`${folder}/${file}`, 'utf8'), `${folder}/${file}`, library));
  const { furniture } = furnish(order, library);
  return furniture!.units.flatMap((unit) => unit.panels);
});

const isCup = (hole: Hole) => hole.diameterUm === 35_000;
const doors = panels.filter((panel) => panel.holes.some(isCup));

/** Distances of a hole from the four edges of its finished panel: along the length and along the width. */
function fromEdges(panel: Panel, hole: Hole) {
  return {
    length: [hole.alongLengthUm, panel.finishedLengthUm - hole.alongLengthUm],
    width: [hole.alongWidthUm, panel.finishedWidthUm - hole.alongWidthUm],
  };
}

/** The axis square to the edge that carries the hinges, and how far the cups are from that edge. */
function hinged(panel: Panel) {
  const cups = panel.holes.filter(isCup);
  const least = (axis: 'length' | 'width') =>
    Math.max(...cups.map((cup) => Math.min(...fromEdges(panel, cup)[axis])));
  return least('width') <= least('length')
    ? ({ square: 'width', along: 'length' } as const)
    : ({ square: 'length', along: 'width' } as const);
}

const at = (hole: Hole, axis: 'length' | 'width') =>
  axis === 'length' ? hole.alongLengthUm : hole.alongWidthUm;
const name = (panel: Panel) => `${panel.name} of the ${panel.unit} of ${panel.order}`;

describe('cup hinges of the demonstration orders', () => {
  it('are bored into many fronts', () => {
    expect(doors.length).toBeGreaterThan(30);
  });

  it('have cups 35 wide and 13 deep, 20.5 to 25.5 mm from the edge, with their fixing holes', () => {
    for (const door of doors) {
      const { square, along } = hinged(door);
      for (const cup of door.holes.filter(isCup)) {
        expect(cup.depthUm, name(door)).toBe(13_000);
        const fromEdgeUm = Math.min(...fromEdges(door, cup)[square]);
        expect(
          [3, 4, 5, 6, 7, 8].map((boring) => (boring + 17.5) * 1000),
          name(door),
        ).toContain(fromEdgeUm);
        const inward = fromEdges(door, cup)[square][0]! < fromEdges(door, cup)[square][1]! ? 1 : -1;
        const fixings = door.holes.filter(
          (hole) => hole.diameterUm === 8000 && at(hole, square) === at(cup, square) + inward * 9500,
        );
        const offsets = fixings.map((hole) => at(hole, along) - at(cup, along));
        expect(offsets, name(door)).toEqual(expect.arrayContaining([-22_500, 22_500]));
      }
    }
  });

  it('are further apart than the door is wide, and as far from its top as from its bottom', () => {
    for (const door of doors) {
      const { along, square } = hinged(door);
      const places = door.holes
        .filter(isCup)
        .map((cup) => at(cup, along))
        .sort((a, b) => a - b);
      expect(places.length, name(door)).toBeGreaterThanOrEqual(2);
      const wide = square === 'width' ? door.finishedWidthUm : door.finishedLengthUm;
      const long = along === 'width' ? door.finishedWidthUm : door.finishedLengthUm;
      // Flaps and lift-up fronts hang from their bottom or top, and stays hold them.
      if (/door/.test(door.name)) expect(places.at(-1)! - places[0]!, name(door)).toBeGreaterThan(wide);
      expect(places[0]! + places.at(-1)!, name(door)).toBe(long);
    }
  });

  it('have plates on two holes of 5 mm at a pitch of 32, 37 mm from the front edge', () => {
    const plates = panels.flatMap((panel) => {
      const holes = panel.holes.filter(
        (hole) => /hinge plate|plate/.test(hole.name) && hole.diameterUm === 5000,
      );
      return holes.length === 0 ? [] : [{ panel, holes }];
    });
    expect(plates.length).toBeGreaterThan(20);
    for (const { panel, holes } of plates) {
      const edges = holes.map((hole) => {
        const { length, width } = fromEdges(panel, hole);
        return [...length, ...width];
      });
      for (const distances of edges) expect(distances, name(panel)).toContain(37_000);
      const pairs = holes.filter((hole) =>
        holes.some(
          (other) =>
            Math.abs(at(other, 'length') - at(hole, 'length')) +
              Math.abs(at(other, 'width') - at(hole, 'width')) ===
            32_000,
        ),
      );
      expect(pairs.length, name(panel)).toBe(holes.length);
    }
  });
});
