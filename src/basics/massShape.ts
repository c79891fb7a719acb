import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Box, Um } from '../model/geometry.ts';
import type { OutlinePoint } from '../model/part.ts';
import { axes } from './boxes.ts';
import { outlineInVehicle, type Spot } from './placedOutline.ts';

/** How mass that is spread evenly over something lies in the vehicle's frame. */
export interface MassShape {
  /** Centre along an axis, in µm, not rounded. */
  readonly centre: (axis: Axis) => number;
  /** The share of it that lies below a line across an axis, 0 to 1. */
  readonly shareBelow: (axis: Axis, lineUm: Um) => number;
}

/** Spread over a whole box. */
export function boxShape(box: Box): MassShape {
  return {
    centre: (axis) => (box[axis][0] + box[axis][1]) / 2,
    shareBelow: (axis, lineUm) => {
      const [from, to] = box[axis];
      return Math.min(1, Math.max(0, (lineUm - from) / (to - from)));
    },
  };
}

type Ring = readonly Spot[];

/** Twice the area of a ring seen along the axis square to `u` and `v`, and its first moment along `u` times six. */
function moments(
  ring: Ring,
  u: Axis,
  v: Axis,
  origin: Spot,
): { readonly area2: number; readonly moment6: number } {
  let area2 = 0;
  let moment6 = 0;
  ring.forEach((a, index) => {
    const b = ring[(index + 1) % ring.length]!;
    const [au, av] = [a[u] - origin[u], a[v] - origin[v]];
    const [bu, bv] = [b[u] - origin[u], b[v] - origin[v]];
    const cross = au * bv - bu * av;
    area2 += cross;
    moment6 += (au + bu) * cross;
  });
  // Which way round a ring runs says nothing about its mass.
  return area2 < 0 ? { area2: -area2, moment6: -moment6 } : { area2, moment6 };
}

/** What of a ring lies below a line across an axis. */
function below(ring: Ring, axis: Axis, lineUm: Um): Ring {
  return ring.flatMap((a, index) => {
    const b = ring[(index + 1) % ring.length]!;
    const kept = a[axis] <= lineUm ? [a] : [];
    if (a[axis] <= lineUm === b[axis] <= lineUm) return kept;
    const share = (lineUm - a[axis]) / (b[axis] - a[axis]);
    const between = (of: Axis) => a[of] + share * (b[of] - a[of]);
    return [...kept, { x: between('x'), y: between('y'), z: between('z') }];
  });
}

function corners(u: readonly [Um, Um], v: readonly [Um, Um]): OutlinePoint[] {
  const at = (alongLengthUm: Um, alongWidthUm: Um) => ({ alongLengthUm, alongWidthUm });
  return [at(u[0], v[0]), at(u[1], v[0]), at(u[1], v[1]), at(u[0], v[1])];
}

/** The axis of the vehicle that a panel's thickness lies along, as its outline shows it. */
function squareTo(ring: Ring): Axis {
  const flat = axes.find((axis) => ring.every((spot) => spot[axis] === ring[0]![axis]));
  if (flat === undefined) throw new Error('the outline of a panel does not lie in a plane');
  return flat;
}

/** Spread over a panel as it stands: its outline where the wall shapes it, openings taken off. */
export function panelShape(panel: Panel, unit: PlacedUnit): MassShape {
  const box = boxShape(panel.placeBox);
  if (panel.outline === undefined && panel.cutOuts.length === 0) return box;
  const placed = (outline: readonly OutlinePoint[]) => outlineInVehicle({ ...panel, outline }, unit);
  const whole = placed(panel.outline ?? corners([0, panel.finishedLengthUm], [0, panel.finishedWidthUm]));
  const openings = panel.cutOuts.map((cutOut) => placed(corners(cutOut.alongLength, cutOut.alongWidth)));
  const square = squareTo(whole);
  const origin = whole[0]!;
  const across = (axis: Axis): Axis => axes.find((other) => other !== axis && other !== square)!;
  const sum = (axis: Axis, cut: (ring: Ring) => Ring) => {
    const parts = [whole, ...openings].map((ring) => moments(cut(ring), axis, across(axis), origin));
    const [first, ...rest] = parts;
    return rest.reduce(
      (left, part) => ({ area2: left.area2 - part.area2, moment6: left.moment6 - part.moment6 }),
      first!,
    );
  };
  return {
    centre: (axis) => {
      if (axis === square) return box.centre(axis);
      const { area2, moment6 } = sum(axis, (ring) => ring);
      return origin[axis] + moment6 / (3 * area2);
    },
    shareBelow: (axis, lineUm) => {
      if (axis === square) return box.shareBelow(axis, lineUm);
      return sum(axis, (ring) => below(ring, axis, lineUm)).area2 / sum(axis, (ring) => ring).area2;
    },
  };
}
