import { axes, boxAround, extentSize, leastMove, movedBox, sharedUm } from '../basics/boxes.ts';
import type { Axis, Box, Extent, Um } from '../model/geometry.ts';

/** How far panels are drawn apart: the distances of their middles from the unit's middle grow by this part. */
const APART = 0.62;

/**
 * Boxes drawn apart. Each moves away from the middle of all, along every axis in proportion to how far its own middle is
 * out; so two boxes that stand beside each other along an axis do so afterwards, in the same order, and never meet.
 */
export function drawnApart(boxes: readonly Box[], apart = APART): Box[] {
  const around = boxAround(boxes);
  if (around === null) return [];
  const middle = (extent: Extent) => (extent[0] + extent[1]) / 2;
  return boxes.map((box) => {
    const by = (axis: Axis): Um => Math.round(apart * (middle(box[axis]) - middle(around[axis])));
    return movedBox(box, { x: by('x'), y: by('y'), z: by('z') });
  });
}

/** Which end of an axis is nearer to an eye at the front, on the left, above: the low one (1) or the high one (-1). */
const NEARER: Record<Axis, 1 | -1> = { x: 1, y: 1, z: -1 };

/** Isometric outlines are bounded along three directions; these combinations stay the same along the line of sight. */
function bands(box: Box): Extent[] {
  const { x, y, z } = box;
  return [
    [x[0] - y[1], x[1] - y[0]],
    [x[0] + z[0], x[1] + z[1]],
    [y[0] + z[0], y[1] + z[1]],
  ];
}

/** Whether the isometric pictures of two boxes share more than a border. Exact in whole µm. */
export function picturesOverlap(a: Box, b: Box): boolean {
  const others = bands(b);
  return bands(a).every((band, index) => sharedUm(band, others[index]!) > 0);
}

/**
 * Whether `a` can hide some of `b`: their pictures overlap, and along every axis that parts them `a` is on the eye's
 * side. Boxes let into each other are parted along the axis in which they share least.
 */
export function hides(a: Box, b: Box): boolean {
  if (!picturesOverlap(a, b)) return false;
  const parting = axes.filter((axis) => sharedUm(a[axis], b[axis]) <= 0);
  const by = parting.length > 0 ? parting : [leastMove(a, b).axis];
  return by.every((axis) => {
    const towards = a[axis][0] + a[axis][1] - b[axis][0] - b[axis][1];
    return towards * NEARER[axis] < 0;
  });
}

/** Distance of a box's middle along the line of sight, doubled. */
function distance(box: Box): number {
  return axes.reduce((sum, axis) => sum + NEARER[axis] * (box[axis][0] + box[axis][1]), 0);
}

/**
 * The order in which to paint boxes so that each is painted after everything it hides: a topological order of the
 * relation `hides`, the farthest first among those that are free. `circles` counts the times that boxes hide each other in
 * a circle, where the farthest is painted first.
 */
export function paintOrder(boxes: readonly Box[]): {
  readonly order: readonly number[];
  readonly circles: number;
} {
  const behind = boxes.map((box) => {
    const hidden = new Set<number>();
    boxes.forEach((other, index) => {
      if (other !== box && hides(box, other)) hidden.add(index);
    });
    return hidden;
  });
  const left = new Set(boxes.keys());
  const order: number[] = [];
  let circles = 0;
  while (left.size > 0) {
    const free = [...left].filter((index) => behind[index]!.size === 0);
    if (free.length === 0) circles += 1;
    const next = (free.length > 0 ? free : [...left]).reduce((best, index) =>
      distance(boxes[index]!) > distance(boxes[best]!) ? index : best,
    );
    order.push(next);
    left.delete(next);
    for (const hidden of behind) hidden.delete(next);
  }
  return { order, circles };
}

/** A place in the isometric picture in µm of the picture, y down. All three axes are shortened alike (ISO 5456-3). */
export function isometric(x: Um, y: Um, z: Um): readonly [number, number] {
  return [(x - y) * 0.8660254, -(z + (x + y) / 2)];
}

/** The three faces of a box that are seen, each as the corners of its picture, with a tone. */
export function seenFaces(
  box: Box,
): { readonly corners: (readonly [number, number])[]; readonly tone: number }[] {
  const [[x0, x1], [y0, y1], [z0, z1]] = [box.x, box.y, box.z];
  const at = isometric;
  return [
    { corners: [at(x0, y0, z1), at(x1, y0, z1), at(x1, y1, z1), at(x0, y1, z1)], tone: 0 },
    { corners: [at(x0, y0, z0), at(x1, y0, z0), at(x1, y0, z1), at(x0, y0, z1)], tone: 0.06 },
    { corners: [at(x0, y1, z0), at(x0, y0, z0), at(x0, y0, z1), at(x0, y1, z1)], tone: 0.16 },
  ];
}

/** Whether a place in the picture lies on the picture of a box. */
export function inPicture(box: Box, place: readonly [number, number]): boolean {
  const [p, q] = [place[0] / 0.8660254, -place[1]];
  // With x + y free along the sight line: x − y = p and z + (x + y)/2 = q, so x + z = q + p/2 and y + z = q − p/2.
  return [p, q + p / 2, q - p / 2].every((value, index) => {
    const band = bands(box)[index]!;
    return value > band[0] && value < band[1];
  });
}

/** Size of the largest side of a box in µm. */
export function largestUm(box: Box): Um {
  return Math.max(...axes.map((axis) => extentSize(box[axis])));
}
