import type { Hole, Panel } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';

/**
 * From the middle of a hole to the nearest edge of the finished panel, in µm; negative when the middle lies outside.
 * Where the panel has an outline, that is its edge.
 */
export function holeEdgeDistanceUm(hole: Hole, panel: Panel): Um {
  const { alongLengthUm: x, alongWidthUm: y } = hole;
  const { outline } = panel;
  if (outline === undefined) {
    return Math.min(x, y, panel.finishedLengthUm - x, panel.finishedWidthUm - y);
  }
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  outline.forEach((to, index) => {
    const from = outline.at(index - 1)!;
    const [x0, y0, x1, y1] = [from.alongLengthUm, from.alongWidthUm, to.alongLengthUm, to.alongWidthUm];
    nearest = Math.min(nearest, distanceToLine(x, y, x0, y0, x1, y1));
    // A ray to greater lengths crosses the edge.
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  });
  return inside ? nearest : -nearest;
}

function distanceToLine(x: Um, y: Um, x0: Um, y0: Um, x1: Um, y1: Um): Um {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const squared = dx * dx + dy * dy;
  const along = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / squared));
  const [ex, ey] = [x - x0 - along * dx, y - y0 - along * dy];
  return Math.sqrt(ex * ex + ey * ey);
}
