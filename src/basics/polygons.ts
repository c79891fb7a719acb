import { difference, FillRule, intersect, type Path64 } from 'clipper2-ts';
import type { Extent, Um } from '../model/geometry.ts';

/** A corner of a shape in a plane, in whole µm. */
export type Corner = readonly [u: Um, v: Um];

/** A simple polygon. Where its sense matters, it runs counter-clockwise with u to the right and v up. */
export type Polygon = readonly Corner[];

/** What rounding to whole µm may leave over where two outlines meet: 1 mm². */
const SLIVER_UM2 = 1_000_000;

export function rectangle(u: Extent, v: Extent): Polygon {
  return [
    [u[0], v[0]],
    [u[1], v[0]],
    [u[1], v[1]],
    [u[0], v[1]],
  ];
}

/**
 * Area in µm², positive for counter-clockwise, by the shoelace formula. Exact while twice the area and its parts stay
 * below 2^53: for shapes of some metres.
 */
export function polygonAreaUm2(polygon: Polygon): number {
  let doubled = 0;
  polygon.forEach(([u, v], index) => {
    const [nextU, nextV] = polygon[(index + 1) % polygon.length]!;
    doubled += u * nextV - nextU * v;
  });
  return doubled / 2;
}

/** The extents of a polygon across and up. */
export function polygonBounds(polygon: Polygon): { readonly u: Extent; readonly v: Extent } {
  const along = (axis: 0 | 1): Extent => [
    polygon.reduce((least, corner) => Math.min(least, corner[axis]), Number.POSITIVE_INFINITY),
    polygon.reduce((most, corner) => Math.max(most, corner[axis]), Number.NEGATIVE_INFINITY),
  ];
  return { u: along(0), v: along(1) };
}

function turn([au, av]: Corner, [bu, bv]: Corner, [cu, cv]: Corner): number {
  return (bu - au) * (cv - av) - (bv - av) * (cu - au);
}

/** The same shape without corners that lie on a straight line, counter-clockwise, from its lowest leftmost corner on. */
export function tidied(polygon: Polygon): Polygon {
  let corners = polygon.filter((corner, index) => {
    const before = polygon[(index + polygon.length - 1) % polygon.length]!;
    return corner[0] !== before[0] || corner[1] !== before[1];
  });
  for (let index = 0; index < corners.length && corners.length > 3; ) {
    const before = corners[(index + corners.length - 1) % corners.length]!;
    const after = corners[(index + 1) % corners.length]!;
    if (turn(before, corners[index]!, after) === 0) {
      corners = corners.filter((_corner, other) => other !== index);
      index = Math.max(0, index - 1);
    } else index += 1;
  }
  if (polygonAreaUm2(corners) < 0) corners.reverse();
  const first = corners.reduce((best, [u, v], index) => {
    const [bestU, bestV] = corners[best]!;
    return v < bestV || (v === bestV && u < bestU) ? index : best;
  }, 0);
  return [...corners.slice(first), ...corners.slice(0, first)];
}

function toPath(polygon: Polygon): Path64 {
  return polygon.map(([x, y]) => ({ x, y }));
}

/** Rounding may put a corner 1 µm past the polygon that was cut; there it cannot be. */
function fromPaths(paths: readonly Path64[], within: Polygon): Polygon[] {
  const { u, v } = polygonBounds(within);
  const at = (place: Um, [from, to]: Extent) => Math.min(to, Math.max(from, place));
  return paths
    .map((path) => tidied(path.map(({ x, y }): Corner => [at(x, u), at(y, v)])))
    .filter((polygon) => polygon.length >= 3 && polygonAreaUm2(polygon) >= SLIVER_UM2);
}

/**
 * What is left of a polygon when others are taken away, in pieces; corners are rounded to whole µm. Holes do not come
 * about where what is taken reaches over the border; where one would, it is lost, so do not take from the middle.
 */
export function polygonWithout(polygon: Polygon, taken: readonly Polygon[]): Polygon[] {
  if (taken.length === 0) return [tidied(polygon)];
  return fromPaths(difference([toPath(polygon)], taken.map(toPath), FillRule.NonZero), polygon);
}

/** What two polygons share, in pieces; corners are rounded to whole µm. */
export function sharedPolygons(a: Polygon, b: Polygon): Polygon[] {
  return fromPaths(intersect([toPath(a)], [toPath(b)], FillRule.NonZero), a);
}

/** Length of a polygon's sides that lie on the line where one of its coordinates is `at`, in µm. */
export function runAlong(polygon: Polygon, axis: 'u' | 'v', at: Um): Um {
  const [square, along] = axis === 'u' ? ([0, 1] as const) : ([1, 0] as const);
  return polygon.reduce((sum, corner, index) => {
    const next = polygon[(index + 1) % polygon.length]!;
    return corner[square] === at && next[square] === at ? sum + Math.abs(next[along] - corner[along]) : sum;
  }, 0);
}
