import { axisFaces, faceAxis, turnedBox } from '../basics/boxes.ts';
import { TENTH_MM_UM } from '../basics/lengths.ts';
import {
  type Corner,
  type Polygon,
  polygonBounds,
  polygonWithout,
  rectangle,
  tidied,
} from '../basics/polygons.ts';
import { freeAcrossUm } from '../basics/vehicleSection.ts';
import type { ExpandedPanel, ExpandedUnit } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Panel } from '../model/furniture.ts';
import type { Axis, Extent, Face, Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';
import type { PanelShape } from './orientPanel.ts';

/** What a wall makes of a panel. All polygons have u along the panel's length and v along its width, from its corner. */
export interface WalledPanel {
  /** The panel with its box shortened to what is left of it. */
  readonly panel: ExpandedPanel;
  /** The shape as it stands, or null where it is the whole rectangle. */
  readonly outline: Polygon | null;
  /** What lies behind the wall and the allowance that is left on for scribing: all that may be cut away. */
  readonly beyond: readonly Polygon[];
  readonly scribed: NonNullable<Panel['scribed']>;
}

/** How far past the panel and behind it the wall is taken away: more than edging and scribing add to the panel. */
const PAST_END_UM = 100_000;

/** Along which axis of a unit the vehicle's y runs, and how to get from one to the other: y = sign · own + shiftUm. */
interface WallFrame {
  readonly axis: 'x' | 'y';
  readonly sign: 1 | -1;
  readonly shiftUm: Um;
  readonly upUm: Um;
}

function wallFrame(unit: ExpandedUnit): WallFrame {
  const axis = unit.facing === 'left' || unit.facing === 'right' ? 'y' : 'x';
  const sign = unit.facing === 'left' || unit.facing === 'rear' ? 1 : -1;
  const turned = turnedBox(unit.outside, unit.facing);
  return {
    axis,
    sign,
    shiftUm: unit.placeOutside.y[0] - turned.y[0],
    upUm: unit.placeOutside.z[0] - turned.z[0],
  };
}

interface Wall {
  readonly face: Face;
  readonly side: 'left' | 'right';
  readonly allowanceUm: Um;
}

/** Where the wall is at a height, in the unit's own frame, moved outwards. */
function wallAt(wall: Wall, heightUm: Extent, vehicle: Vehicle, frame: WallFrame, outwardUm: Um): Um {
  const [left, right] = freeAcrossUm(vehicle, heightUm[0], heightUm[1]);
  const y = wall.side === 'left' ? left - outwardUm : right + outwardUm;
  return frame.sign * (y - frame.shiftUm);
}

/** What lies behind a wall in the plane of the panel, as [along the wall's axis, along the other side]. */
function behind(
  wall: Wall,
  panel: ExpandedPanel,
  other: Axis,
  vehicle: Vehicle,
  frame: WallFrame,
  outwardUm: Um,
): Polygon {
  const from = panel.box[other][0] - PAST_END_UM;
  const to = panel.box[other][1] + PAST_END_UM;
  const border = (): Corner[] => {
    if (other !== 'z') {
      const { z } = panel.box;
      const at = wallAt(wall, [z[0] + frame.upUm, z[1] + frame.upUm], vehicle, frame, outwardUm);
      return [
        [at, from],
        [at, to],
      ];
    }
    const bends = vehicle.widthAtHeight
      .map((point) => point.heightUm - frame.upUm)
      .filter((height) => height > from && height < to);
    return [from, ...bends, to].map((height): Corner => {
      const up = height + frame.upUm;
      return [wallAt(wall, [up, up], vehicle, frame, outwardUm), height];
    });
  };
  const line = border();
  const reached = [...line.map(([at]) => at), ...panel.box[frame.axis]];
  const isLow = axisFaces[frame.axis][0] === wall.face;
  const far = isLow ? Math.min(...reached) - PAST_END_UM : Math.max(...reached) + PAST_END_UM;
  return [...line, [far, to], [far, from]];
}

/** Whether the panel's edge comes up to the wall, at the height where that stands furthest in. */
function reaches(wall: Wall, panel: ExpandedPanel, vehicle: Vehicle, frame: WallFrame): boolean {
  const { z } = panel.box;
  const own = panel.box[frame.axis];
  const ends = own.map((end) => frame.sign * end + frame.shiftUm);
  const [left, right] = freeAcrossUm(vehicle, z[0] + frame.upUm, z[1] + frame.upUm);
  return wall.side === 'left' ? Math.min(...ends) <= left : Math.max(...ends) >= right;
}

function wallsOf(
  panel: ExpandedPanel,
  shape: PanelShape,
  unit: ExpandedUnit,
  vehicle: Vehicle,
  frame: WallFrame,
  findings: Finding[],
): Wall[] {
  return (panel.followsWall ?? []).flatMap(({ face, allowanceUm, place }): Wall[] => {
    if (faceAxis[face] === shape.thickness) {
      findings.push({
        code: 'follows-on-face',
        severity: 'error',
        message: `the ${panel.name} of ${unit.name} cannot follow the wall with its ${face}: that is a broad face, not an edge`,
        place,
        found: face,
        expected: [...axisFaces[shape.length], ...axisFaces[shape.width]]
          .filter((other) => faceAxis[other] !== 'z')
          .join(' or '),
      });
      return [];
    }
    // A unit that stands across the vehicle looks to its ends with the faces that follow walls elsewhere.
    if (faceAxis[face] !== frame.axis) return [];
    const isLow = axisFaces[frame.axis][0] === face;
    const side = isLow === (frame.sign === 1) ? 'left' : 'right';
    const wall: Wall = { face, side, allowanceUm };
    return reaches(wall, panel, vehicle, frame) ? [wall] : [];
  });
}

/** What lies within some walls at every height of the panel, along their axis. */
function withinAll(walls: readonly Wall[], panel: ExpandedPanel, vehicle: Vehicle, frame: WallFrame): Extent {
  const { z } = panel.box;
  const within: [Um, Um] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const wall of walls) {
    const at = wallAt(wall, [z[0] + frame.upUm, z[1] + frame.upUm], vehicle, frame, 0);
    within[axisFaces[frame.axis][0] === wall.face ? 0 : 1] = at;
  }
  return within;
}

function clampedTo(extent: Extent, within: Extent): Extent {
  return [Math.max(extent[0], within[0]), Math.min(extent[1], within[1])];
}

/**
 * A panel whose edges follow the wall, as the section of the vehicle leaves it: its rectangle less what lies behind the
 * wall at the height at which the unit stands. A level panel takes the least width between its faces. Where an edge does
 * not come up to the wall, or looks along the vehicle, it stays straight. Null with a finding where nothing is left, or
 * more than one piece.
 */
export function followWall(
  panel: ExpandedPanel,
  shape: PanelShape,
  unit: ExpandedUnit,
  vehicle: Vehicle,
  findings: Finding[],
): WalledPanel | null {
  const frame = wallFrame(unit);
  const walls = wallsOf(panel, shape, unit, vehicle, frame, findings);
  if (walls.length === 0) return { panel, outline: null, beyond: [], scribed: [] };
  const other = shape.length === frame.axis ? shape.width : shape.length;
  const whole = rectangle(panel.box[frame.axis], panel.box[other]);
  const pieces = polygonWithout(
    whole,
    walls.map((wall) => behind(wall, panel, other, vehicle, frame, 0)),
  );
  const left = pieces[0];
  if (left === undefined || pieces.length > 1) {
    const message =
      left === undefined
        ? `the ${panel.name} of ${unit.name} lies wholly behind the wall`
        : `the wall cuts the ${panel.name} of ${unit.name} into ${pieces.length} pieces`;
    const advice = `move the ${unit.name} away from the wall, or make the panel smaller`;
    findings.push({ code: 'nothing-left', severity: 'error', message, place: panel.place, advice });
    return null;
  }
  const innermost = withinAll(walls, panel, vehicle, frame);
  const around = polygonBounds(left);
  // What is less than a tenth of a millimetre is no work for a jigsaw: the panel ends where the wall stands furthest in.
  const straight = innermost[0] - around.u[0] < TENTH_MM_UM && around.u[1] - innermost[1] < TENTH_MM_UM;
  const bounds = straight ? { u: clampedTo(around.u, innermost), v: around.v } : around;
  const box = { ...panel.box, [frame.axis]: bounds.u, [other]: bounds.v };
  const inPlane = (polygon: Polygon): Polygon => {
    const own = polygon.map(([u, v]): Corner => [u - bounds.u[0], v - bounds.v[0]]);
    return tidied(shape.length === frame.axis ? own : own.map(([u, v]): Corner => [v, u]));
  };
  return {
    panel: { ...panel, box },
    outline: straight ? null : inPlane(left),
    beyond: walls.map((wall) => inPlane(behind(wall, panel, other, vehicle, frame, wall.allowanceUm))),
    scribed: walls.map(({ face, allowanceUm }) => ({ face, allowanceUm })),
  };
}
