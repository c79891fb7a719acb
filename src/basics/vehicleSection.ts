import type { Extent, Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';
import { type Corner, type Polygon, rectangle, sharedPolygons } from './polygons.ts';

/** Whether what furniture stands in is a room: it has no payload, since it bears any load and goes nowhere. */
export function isRoom(vehicle: Pick<Vehicle, 'payloadKg'>): boolean {
  return vehicle.payloadKg === null;
}

/** What to call the places that furniture may stand in: `vehicle`, `room`, or both where there are both or none. */
export function placeWord(places: Iterable<Pick<Vehicle, 'payloadKg'>>): string {
  const words = new Set([...places].map((place) => (isRoom(place) ? 'room' : 'vehicle')));
  return words.size === 1 ? [...words][0]! : 'vehicle or room';
}

/** Inner width of a vehicle at a height, straight between the given heights, as at the nearest one beyond them. */
export function widthAtUm(vehicle: Vehicle, heightUm: Um): Um {
  const points = vehicle.widthAtHeight;
  const above = points.findIndex((point) => point.heightUm >= heightUm);
  if (above === 0) return points[0]!.widthUm;
  if (above < 0) return points.at(-1)!.widthUm;
  const low = points[above - 1]!;
  const high = points[above]!;
  const share = (heightUm - low.heightUm) / (high.heightUm - low.heightUm);
  return Math.floor(low.widthUm + share * (high.widthUm - low.widthUm));
}

/** The least inner width between two heights. */
export function leastWidthUm(vehicle: Vehicle, fromUm: Um, toUm: Um): Um {
  const between = vehicle.widthAtHeight.filter((point) => point.heightUm > fromUm && point.heightUm < toUm);
  return Math.min(
    widthAtUm(vehicle, fromUm),
    widthAtUm(vehicle, toUm),
    ...between.map((point) => point.widthUm),
  );
}

/**
 * What is free across the vehicle between two heights, in the vehicle's frame: y is 0 at the left edge of the floor,
 * and the section is the same on both sides of the middle. Where the body is wider than its floor, it starts below 0.
 */
export function freeAcrossUm(vehicle: Vehicle, fromUm: Um, toUm: Um): Extent {
  const floorUm = widthAtUm(vehicle, 0);
  const leastUm = leastWidthUm(vehicle, fromUm, toUm);
  const leftUm = Math.ceil((floorUm - leastUm) / 2);
  return [leftUm, floorUm - leftUm];
}

/** What lies within the body of a rectangle across the vehicle, as [y, height]; null where nothing or several pieces do. */
export function withinSection(vehicle: Vehicle, y: Extent, z: Extent): Polygon | null {
  const bends = vehicle.widthAtHeight.map((point) => point.heightUm);
  const heights = [z[0], ...bends.filter((height) => height > z[0] && height < z[1]), z[1]];
  const wall = (end: 0 | 1): Corner[] =>
    heights.map((height) => [freeAcrossUm(vehicle, height, height)[end], height]);
  const pieces = sharedPolygons(rectangle(y, z), [...wall(1), ...wall(0).reverse()]);
  return pieces.length === 1 ? pieces[0]! : null;
}
