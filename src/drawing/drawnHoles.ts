import { axisFaces } from '../basics/boxes.ts';
import type { Hole, Panel } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Stroke } from './drawing.ts';
import { HAIRLINE, NARROW } from './lettering.ts';
import type { Sketch } from './sketch.ts';
import { type Body, faceOf, type Look, shapedFaceOf } from './unitProjection.ts';

/** Line of holes that are hidden (ISO 128, type 02), in short dashes, for the circles are small. */
export const HIDDEN_HOLE: Stroke = { widthMm: HAIRLINE.widthMm, dashMm: [0.7, 0.4] };
/** A centre mark stands out over its circle by this, and is never smaller than the second in all. */
const MARK_OVER_MM = 0.5;
const LEAST_MARK_MM = 1.2;

/** A hole in a view that looks straight into it, in µm across and up. */
export interface ViewHole {
  readonly u: Um;
  readonly v: Um;
  readonly diameterUm: Um;
  readonly seen: boolean;
}

/** Whether a face square to the look lies over a point. */
function covers(body: Body, look: Look, u: Um, v: Um): boolean {
  const shaped = shapedFaceOf(body, look);
  if (shaped?.rings !== undefined) {
    let inside = false;
    for (const ring of shaped.rings) {
      ring.forEach(([x1, y1], index) => {
        const [x0, y0] = ring.at(index - 1)!;
        if (y0 > v !== y1 > v && u < x0 + ((v - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
      });
    }
    return inside;
  }
  return body.solids.some((solid) => {
    const face = faceOf(solid, look);
    return face.u[0] < u && u < face.u[1] && face.v[0] < v && v < face.v[1];
  });
}

/** Whether the hole opens in the face of its panel that is towards the eye. */
function opensTowards(hole: Hole, panel: Panel, look: Look): boolean {
  const [low, high] = axisFaces[panel.thicknessAxis];
  return hole.depthUm === null || hole.face === (look.away[1] === 1 ? low : high);
}

/**
 * The holes of some panels of one frame in a view, each place once: where one is seen and one is hidden at the same place,
 * it is seen. `bodies` are the panels' own, in the same order. Holes that run across the view are left out.
 */
export function viewHoles(panels: readonly Panel[], bodies: readonly Body[], look: Look): ViewHole[] {
  const found = new Map<string, ViewHole>();
  const [away] = look.away;
  panels.forEach((panel, index) => {
    const body = bodies[index];
    if (panel.thicknessAxis !== away || body === undefined) return;
    const nearUm = faceOf(body.box, look).nearUm;
    const before = bodies.filter((other) => other !== body && faceOf(other.box, look).nearUm < nearUm);
    for (const hole of panel.holes) {
      const spot = {
        x: panel.box.x[0],
        y: panel.box.y[0],
        z: panel.box.z[0],
        [panel.lengthAxis]: panel.box[panel.lengthAxis][0] + hole.alongLengthUm,
        [panel.widthAxis]: panel.box[panel.widthAxis][0] + hole.alongWidthUm,
      };
      const u = spot[look.across[0]] * look.across[1];
      const v = spot[look.up[0]] * look.up[1];
      const seen = opensTowards(hole, panel, look) && !before.some((other) => covers(other, look, u, v));
      const key = `${u} ${v} ${hole.diameterUm}`;
      if (seen || !found.has(key)) found.set(key, { u, v, diameterUm: hole.diameterUm, seen });
    }
  });
  return [...found.values()];
}

/** A circle with a centre mark (ISO 128), in short dashes where it is hidden. */
export function drawHole(
  sketch: Sketch,
  x: number,
  y: number,
  radiusMm: number,
  shows: 'seen' | 'hidden',
): void {
  const stroke = shows === 'seen' ? NARROW : HIDDEN_HOLE;
  sketch.circle('holes', x, y, radiusMm, stroke);
  const half = Math.max(radiusMm + MARK_OVER_MM, LEAST_MARK_MM / 2);
  sketch.lines(
    'holes',
    [
      [x - half, y, x + half, y],
      [x, y - half, x, y + half],
    ],
    { widthMm: HAIRLINE.widthMm, dashMm: [] },
  );
}
