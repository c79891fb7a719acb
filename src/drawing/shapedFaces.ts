import type { Corner, Polygon } from '../basics/polygons.ts';
import type { Extent, Um } from '../model/geometry.ts';

/** A straight line on the page from a corner on; `by` is not nothing. */
export interface Ray {
  readonly from: Corner;
  readonly by: Corner;
}

/** Which coordinate places along a ray are told by: u, or v where the ray is upright. */
function told({ by }: Ray): 0 | 1 {
  return by[0] === 0 ? 1 : 0;
}

/** Where rings cross the strip just beside a ray, in pairs from outside to inside. */
function besideRay(rings: readonly Polygon[], ray: Ray, side: 'left' | 'right'): Extent[] {
  const { from, by } = ray;
  const along = told(ray);
  const away = ([u, v]: Corner) => by[0] * (v - from[1]) - by[1] * (u - from[0]);
  const isLeft = (distance: number) => (side === 'left' ? distance > 0 : distance >= 0);
  const places: Um[] = [];
  for (const ring of rings) {
    ring.forEach((corner, index) => {
      const next = ring[(index + 1) % ring.length]!;
      const [a, b] = [away(corner), away(next)];
      if (isLeft(a) === isLeft(b)) return;
      places.push(Math.round(corner[along] + ((next[along] - corner[along]) * a) / (a - b)));
    });
  }
  places.sort((a, b) => a - b);
  const extents: Extent[] = [];
  for (let index = 0; index + 1 < places.length; index += 2)
    extents.push([places[index]!, places[index + 1]!]);
  return extents;
}

/**
 * What a face covers of the two strips beside a ray, as extents along u (along v where the ray is upright), rounded to
 * whole µm. The face is what lies within an odd number of rings: an outline less its openings.
 */
export function besideBoth(
  rings: readonly Polygon[],
  ray: Ray,
): { readonly left: readonly Extent[]; readonly right: readonly Extent[] } {
  return { left: besideRay(rings, ray, 'left'), right: besideRay(rings, ray, 'right') };
}
