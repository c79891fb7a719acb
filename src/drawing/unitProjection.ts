import { inVehicle } from '../basics/boxes.ts';
import { outlineInUnit, outlineInVehicle, type Spot } from '../basics/placedOutline.ts';
import { type Corner, type Polygon, rectangle } from '../basics/polygons.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Box, Extent, Um } from '../model/geometry.ts';

/** An axis of space taken as it runs (1) or against it (-1). */
type Way = readonly [axis: Axis, sign: 1 | -1];

/** Which way space is looked at: what runs across the page, what runs up it, and what runs away from the eye. */
export interface Look {
  readonly across: Way;
  readonly up: Way;
  readonly away: Way;
}

/** Views of a unit in its own frame. Seen from the left, its front is on the right. */
export const FROM_FRONT: Look = { across: ['x', 1], up: ['z', 1], away: ['y', 1] };
export const FROM_LEFT: Look = { across: ['y', -1], up: ['z', 1], away: ['x', 1] };
export const FROM_ABOVE: Look = { across: ['x', 1], up: ['y', 1], away: ['z', -1] };

/** Views inside a vehicle or room in its frame, besides that from above. */
export const TO_LEFT_WALL: Look = { across: ['x', -1], up: ['z', 1], away: ['y', -1] };
export const TO_RIGHT_WALL: Look = { across: ['x', 1], up: ['z', 1], away: ['y', 1] };
export const TO_FRONT_END: Look = { across: ['y', 1], up: ['z', 1], away: ['x', -1] };

/** A face square to the look, in µm: its two extents on the page, and how far it is from the eye. */
export interface Face {
  readonly u: Extent;
  readonly v: Extent;
  readonly nearUm: Um;
  /** The outline and the openings of a face that is no rectangle. */
  readonly rings?: readonly Polygon[];
}

function along(box: Box, [axis, sign]: Way): Extent {
  const [from, to] = box[axis];
  return sign === 1 ? [from, to] : [0 - to, 0 - from];
}

/** The near face of a box. */
export function faceOf(box: Box, look: Look): Face {
  return { u: along(box, look.across), v: along(box, look.up), nearUm: along(box, look.away)[0] };
}

/** A panel as what is solid of it and what is cut out of it, all boxes of one frame. */
export interface Body {
  readonly box: Box;
  readonly holes: readonly Box[];
  /** The box without the holes, in boxes that do not share more than faces. */
  readonly solids: readonly Box[];
  /** The corners of a panel that is no rectangle, and the axis through its thickness. */
  readonly outline?: { readonly corners: readonly Spot[]; readonly through: Axis };
}

/** The shaped face of a body that is seen square to its outline; null for any other. */
export function shapedFaceOf(body: Body, look: Look): Face | null {
  const { outline } = body;
  if (outline === undefined || outline.through !== look.away[0]) return null;
  const onPage = (spot: Spot): Corner => [
    spot[look.across[0]] * look.across[1],
    spot[look.up[0]] * look.up[1],
  ];
  const openings = body.holes.map((hole) => {
    const { u, v } = faceOf(hole, look);
    return rectangle(u, v);
  });
  return { ...faceOf(body.box, look), rings: [outline.corners.map(onPage), ...openings] };
}

function holesOf(panel: Panel): Box[] {
  const { box, lengthAxis, widthAxis } = panel;
  return panel.cutOuts.map((cutOut) => {
    const shifted = (axis: Axis, [from, to]: Extent): Extent => [box[axis][0] + from, box[axis][0] + to];
    return {
      ...box,
      [lengthAxis]: shifted(lengthAxis, cutOut.alongLength),
      [widthAxis]: shifted(widthAxis, cutOut.alongWidth),
    };
  });
}

/** What is left of a box when another is taken out that runs right through it along its third axis. */
function without(box: Box, hole: Box, first: Axis, second: Axis): Box[] {
  const low = (axis: Axis) => Math.max(box[axis][0], hole[axis][0]);
  const high = (axis: Axis) => Math.min(box[axis][1], hole[axis][1]);
  if (low(first) >= high(first) || low(second) >= high(second)) return [box];
  const middle: Extent = [low(first), high(first)];
  const pieces = [
    { ...box, [first]: [box[first][0], middle[0]] },
    { ...box, [first]: [middle[1], box[first][1]] },
    { ...box, [first]: middle, [second]: [box[second][0], low(second)] },
    { ...box, [first]: middle, [second]: [high(second), box[second][1]] },
  ];
  return pieces.filter((piece) => piece[first][0] < piece[first][1] && piece[second][0] < piece[second][1]);
}

/** A panel's body in its unit's frame. */
export function bodyOf(panel: Panel): Body {
  const holes = holesOf(panel);
  let solids: Box[] = [panel.box];
  for (const hole of holes) {
    solids = solids.flatMap((solid) => without(solid, hole, panel.lengthAxis, panel.widthAxis));
  }
  const corners = outlineInUnit(panel);
  const shape = corners.length === 0 ? {} : { outline: { corners, through: panel.thicknessAxis } };
  return { box: panel.box, holes, solids, ...shape };
}

/** A panel's body where it stands in the vehicle. */
export function placedBodyOf(panel: Panel, unit: PlacedUnit): Body {
  const own = bodyOf(panel);
  const place = (box: Box) => inVehicle(box, unit);
  const corners = outlineInVehicle(panel, unit);
  const turned = unit.facing === 'front' || unit.facing === 'rear';
  const { thicknessAxis } = panel;
  const through = turned && thicknessAxis !== 'z' ? (thicknessAxis === 'x' ? 'y' : 'x') : thicknessAxis;
  const shape = corners.length === 0 ? {} : { outline: { corners, through } as const };
  return { box: place(own.box), holes: own.holes.map(place), solids: own.solids.map(place), ...shape };
}
