import type { Axis, Box, Extent, Face, Facing, Um } from '../model/geometry.ts';

export const axes = ['x', 'y', 'z'] as const satisfies readonly Axis[];

/** The axis each face is square to. */
export const faceAxis: Record<Face, Axis> = {
  left: 'x',
  right: 'x',
  front: 'y',
  back: 'y',
  bottom: 'z',
  top: 'z',
};

/** The face at the low and at the high end of each axis. */
export const axisFaces: Record<Axis, readonly [low: Face, high: Face]> = {
  x: ['left', 'right'],
  y: ['front', 'back'],
  z: ['bottom', 'top'],
};

export function extentSize(extent: Extent): Um {
  return extent[1] - extent[0];
}

/** What two extents share, in µm: negative is the gap between them, 0 means that they touch. */
export function sharedUm(a: Extent, b: Extent): Um {
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
}

/** The box that two boxes share, or null when they only touch or stand apart. */
export function sharedBox(a: Box, b: Box): Box | null {
  const shared = (axis: Axis): Extent => [Math.max(a[axis][0], b[axis][0]), Math.min(a[axis][1], b[axis][1])];
  const box = { x: shared('x'), y: shared('y'), z: shared('z') };
  return axes.every((axis) => extentSize(box[axis]) > 0) ? box : null;
}

/** The least that one of two overlapping boxes would have to move along an axis to leave the other, and that axis. */
export function leastMove(a: Box, b: Box): { readonly axis: Axis; readonly um: Um } {
  const moves = axes.map((axis) => ({
    axis,
    um: Math.min(a[axis][1] - b[axis][0], b[axis][1] - a[axis][0]),
  }));
  return moves.reduce((least, move) => (move.um < least.um ? move : least));
}

export function movedBox(box: Box, by: { readonly x: Um; readonly y: Um; readonly z: Um }): Box {
  const moved = (axis: Axis): Extent => [box[axis][0] + by[axis], box[axis][1] + by[axis]];
  return { x: moved('x'), y: moved('y'), z: moved('z') };
}

/**
 * A box of a unit turned about z by quarters, so that the unit's front looks to a side of the vehicle. A unit's x runs
 * to its right and y to its back; in the vehicle x runs to the rear and y to the right side. Both frames are
 * right-handed, so a front that looks to the left side leaves the axes as they are:
 *
 *     left: (x, y)    rear: (−y, x)    right: (−x, −y)    front: (y, −x)
 */
export function turnedBox(box: Box, facing: Facing): Box {
  const back = (extent: Extent): Extent => [0 - extent[1], 0 - extent[0]];
  switch (facing) {
    case 'left':
      return box;
    case 'rear':
      return { x: back(box.y), y: box.x, z: box.z };
    case 'right':
      return { x: back(box.x), y: back(box.y), z: box.z };
    case 'front':
      return { x: box.y, y: back(box.x), z: box.z };
  }
}

/** What of a unit says where it stands: its outside box in its own frame and in the vehicle's, and where its front looks. */
export interface Standing {
  readonly outside: Box;
  readonly placeOutside: Box;
  readonly facing: Facing;
}

/** A box of a unit in the vehicle's frame. */
export function inVehicle(box: Box, { outside, placeOutside, facing }: Standing): Box {
  const turned = turnedBox(box, facing);
  const from = turnedBox(outside, facing);
  return movedBox(turned, {
    x: placeOutside.x[0] - from.x[0],
    y: placeOutside.y[0] - from.y[0],
    z: placeOutside.z[0] - from.z[0],
  });
}

/** The smallest box around some boxes; null around none. */
export function boxAround(boxes: readonly Box[]): Box | null {
  if (boxes.length === 0) return null;
  const around = (axis: Axis): Extent => [
    boxes.reduce((least, box) => Math.min(least, box[axis][0]), Number.POSITIVE_INFINITY),
    boxes.reduce((most, box) => Math.max(most, box[axis][1]), Number.NEGATIVE_INFINITY),
  ];
  return { x: around('x'), y: around('y'), z: around('z') };
}
