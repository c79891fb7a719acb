import type { Extent, Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';

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
