import type { Extent, Um } from '../model/geometry.ts';
import { type Body, type Face, faceOf, type Look } from './unitProjection.ts';

/** A straight line of a view in µm, level (`at` is its height) or upright (`at` is its place across). */
export interface ViewLine {
  readonly runs: 'level' | 'upright';
  readonly at: Um;
  readonly extent: Extent;
}

/** The lines of a view. Where a visible and a hidden line fall together, it is visible (ISO 128). */
export interface ViewLines {
  readonly visible: readonly ViewLine[];
  readonly hidden: readonly ViewLine[];
}

/** Extents that lie apart, in order, covering just what the given ones cover. */
export function union(extents: readonly Extent[]): Extent[] {
  const sorted = extents.filter(([from, to]) => from < to).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const joined: [Um, Um][] = [];
  for (const [from, to] of sorted) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** What some extents cover and others do not. */
export function difference(extents: readonly Extent[], taken: readonly Extent[]): Extent[] {
  const gone = union(taken);
  return union(extents).flatMap(([from, to]) => {
    const left: Extent[] = [];
    let start = from;
    for (const [a, b] of gone) {
      if (b <= start || a >= to) continue;
      if (a > start) left.push([start, a]);
      start = Math.max(start, b);
    }
    if (start < to) left.push([start, to]);
    return left;
  });
}

function intersection(one: readonly Extent[], other: readonly Extent[]): Extent[] {
  return difference(one, difference(one, other));
}

interface Edge extends ViewLine {
  readonly nearUm: Um;
}

function edgesOf({ u, v, nearUm }: Face): Edge[] {
  return [
    { runs: 'level', at: v[0], extent: u, nearUm },
    { runs: 'level', at: v[1], extent: u, nearUm },
    { runs: 'upright', at: u[0], extent: v, nearUm },
    { runs: 'upright', at: u[1], extent: v, nearUm },
  ];
}

/**
 * The part of an edge that is hidden. A face nearer to the eye hides the strip on the low or the high side of the edge,
 * or both; the edge is hidden where both sides are. So an edge along the border of a face before it stays visible, and
 * one behind the joint of two faces does not.
 */
function hiddenOf(edge: Edge, faces: readonly Face[]): Extent[] {
  const low: Extent[] = [];
  const high: Extent[] = [];
  for (const face of faces) {
    if (face.nearUm >= edge.nearUm) continue;
    const [square, length] = edge.runs === 'level' ? [face.v, face.u] : [face.u, face.v];
    if (square[0] < edge.at && edge.at <= square[1]) low.push(length);
    if (square[0] <= edge.at && edge.at < square[1]) high.push(length);
  }
  return intersection([edge.extent], intersection(low, high));
}

/**
 * The lines of a view of some bodies, with what hides what worked out in whole µm: edges of the near faces and of the
 * openings, less the extents that nearer faces cover. The far edges of a box fall on its near ones.
 */
export function viewLines(bodies: readonly Body[], look: Look): ViewLines {
  const faces = bodies.flatMap((body) => body.solids.map((solid) => faceOf(solid, look)));
  const edges = bodies.flatMap((body) =>
    [body.box, ...body.holes].flatMap((box) => edgesOf(faceOf(box, look))),
  );
  const lines = new Map<string, { edge: Edge; visible: Extent[]; hidden: Extent[] }>();
  for (const edge of edges) {
    const key = `${edge.runs} ${edge.at}`;
    const line = lines.get(key) ?? { edge, visible: [], hidden: [] };
    const hidden = hiddenOf(edge, faces);
    line.hidden.push(...hidden);
    line.visible.push(...difference([edge.extent], hidden));
    lines.set(key, line);
  }
  const sorted = [...lines.values()].sort(
    (a, b) => a.edge.runs.localeCompare(b.edge.runs, 'en') || a.edge.at - b.edge.at,
  );
  const as = (edge: Edge) => (extent: Extent) => ({ runs: edge.runs, at: edge.at, extent });
  return {
    visible: sorted.flatMap(({ edge, visible }) => union(visible).map(as(edge))),
    hidden: sorted.flatMap(({ edge, visible, hidden }) => difference(hidden, visible).map(as(edge))),
  };
}
