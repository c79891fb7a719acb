import { type Corner, type Polygon, rectangle } from '../basics/polygons.ts';
import type { Extent, Um } from '../model/geometry.ts';
import { besideBoth, type Ray } from './shapedFaces.ts';
import { type Body, type Face, faceOf, type Look, shapedFaceOf } from './unitProjection.ts';

/** A straight line of a view in µm, level (`at` is its height) or upright (`at` is its place across). */
export interface ViewLine {
  readonly runs: 'level' | 'upright';
  readonly at: Um;
  readonly extent: Extent;
}

/** A straight line of a view that is neither level nor upright, from left to right. */
export interface SlantedLine {
  readonly from: Corner;
  readonly to: Corner;
}

/** The lines of a view. Where a visible and a hidden line fall together, it is visible (ISO 128). */
export interface ViewLines {
  readonly visible: readonly ViewLine[];
  readonly hidden: readonly ViewLine[];
  readonly slanted: { readonly visible: readonly SlantedLine[]; readonly hidden: readonly SlantedLine[] };
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
    if (face.rings !== undefined) {
      const ray: Ray =
        edge.runs === 'level' ? { from: [0, edge.at], by: [1, 0] } : { from: [edge.at, 0], by: [0, 1] };
      const { left, right } = besideBoth(face.rings, ray);
      low.push(...left);
      high.push(...right);
      continue;
    }
    const [square, length] = edge.runs === 'level' ? [face.v, face.u] : [face.u, face.v];
    if (square[0] < edge.at && edge.at <= square[1]) low.push(length);
    if (square[0] <= edge.at && edge.at < square[1]) high.push(length);
  }
  return intersection([edge.extent], intersection(low, high));
}

interface SlantedEdge extends SlantedLine {
  readonly nearUm: Um;
}

/** The sides of an outline: level and upright ones as edges, the others from left to right. */
function sidesOf({ rings, nearUm }: Face): { straight: Edge[]; slanted: SlantedEdge[] } {
  const straight: Edge[] = [];
  const slanted: SlantedEdge[] = [];
  const outline = rings?.[0] ?? [];
  outline.forEach((corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const [from, to] = corner[0] < next[0] ? [corner, next] : [next, corner];
    const upright: Extent = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
    if (from[1] === to[1]) straight.push({ runs: 'level', at: from[1], extent: [from[0], to[0]], nearUm });
    else if (from[0] === to[0]) straight.push({ runs: 'upright', at: from[0], extent: upright, nearUm });
    else slanted.push({ from, to, nearUm });
  });
  return { straight, slanted };
}

function ringsOf(face: Face): readonly Polygon[] {
  return face.rings ?? [rectangle(face.u, face.v)];
}

/** Slanted edges, parted into what is seen and what is hidden. Edges on one line are told once. */
function slantedLines(edges: readonly SlantedEdge[], faces: readonly Face[]): ViewLines['slanted'] {
  const lines = new Map<string, { edge: SlantedEdge; visible: Extent[]; hidden: Extent[] }>();
  for (const edge of edges) {
    const by: Corner = [edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]];
    const extent: Extent = [edge.from[0], edge.to[0]];
    const left: Extent[] = [];
    const right: Extent[] = [];
    for (const face of faces) {
      if (face.nearUm >= edge.nearUm) continue;
      const beside = besideBoth(ringsOf(face), { from: edge.from, by });
      left.push(...beside.left);
      right.push(...beside.right);
    }
    const hidden = intersection([extent], intersection(left, right));
    const key = `${edge.from.join(' ')} ${edge.to.join(' ')}`;
    const line = lines.get(key) ?? { edge, visible: [], hidden: [] };
    line.hidden.push(...hidden);
    line.visible.push(...difference([extent], hidden));
    lines.set(key, line);
  }
  const between = ({ from, to }: SlantedEdge) => {
    const at = (u: Um): Corner => [
      u,
      Math.round(from[1] + ((to[1] - from[1]) * (u - from[0])) / (to[0] - from[0])),
    ];
    return (extent: Extent): SlantedLine => ({ from: at(extent[0]), to: at(extent[1]) });
  };
  return {
    visible: [...lines.values()].flatMap(({ edge, visible }) => union(visible).map(between(edge))),
    hidden: [...lines.values()].flatMap(({ edge, visible, hidden }) =>
      difference(hidden, visible).map(between(edge)),
    ),
  };
}

/**
 * The lines of a view of some bodies, with what hides what worked out in whole µm: edges of the near faces and of the
 * openings, less the extents that nearer faces cover. The far edges of a box fall on its near ones. A panel with an
 * outline shows it where it is seen square to its faces; from elsewhere it is the box that it fills.
 */
export function viewLines(bodies: readonly Body[], look: Look): ViewLines {
  const shaped = bodies.map((body) => shapedFaceOf(body, look));
  const faces = bodies.flatMap(
    (body, index) => shaped[index] ?? body.solids.map((solid) => faceOf(solid, look)),
  );
  const sides = shaped.flatMap((face) => (face === null ? [] : [sidesOf(face)]));
  const edges = [
    ...bodies.flatMap((body, index) =>
      [...(shaped[index] === null ? [body.box] : []), ...body.holes].flatMap((box) =>
        edgesOf(faceOf(box, look)),
      ),
    ),
    ...sides.flatMap(({ straight }) => straight),
  ];
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
    slanted: slantedLines(
      sides.flatMap(({ slanted }) => slanted),
      faces,
    ),
  };
}
