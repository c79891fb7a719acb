import type { Extent, Um } from '../model/geometry.ts';
import type { Face } from './unitProjection.ts';

/** A face with what it belongs to. */
export interface OwnedFace<T> extends Face {
  readonly owner: T;
}

/** A rectangle of a view and what is seen in it. */
export interface SeenField<T> {
  readonly u: Extent;
  readonly v: Extent;
  readonly owner: T;
}

function cuts(extents: readonly Extent[]): Um[] {
  return [...new Set(extents.flat())].sort((a, b) => a - b);
}

/** The parts of faces that are seen: the view is cut at every border, and each field shows the face nearest to the eye. */
export function seenFields<T>(faces: readonly OwnedFace<T>[]): SeenField<T>[] {
  const us = cuts(faces.map((face) => face.u));
  const vs = cuts(faces.map((face) => face.v));
  const columnOf = new Map(us.map((at, index) => [at, index]));
  const fields: SeenField<T>[] = [];
  vs.slice(1).forEach((top, row) => {
    const bottom = vs[row]!;
    const nearest = new Array<OwnedFace<T> | undefined>(us.length);
    for (const face of faces) {
      if (face.v[0] > bottom || face.v[1] < top) continue;
      const to = columnOf.get(face.u[1])!;
      for (let column = columnOf.get(face.u[0])!; column < to; column++) {
        const there = nearest[column];
        if (there === undefined || face.nearUm < there.nearUm) nearest[column] = face;
      }
    }
    for (let from = 0; from < us.length - 1; ) {
      const owner = nearest[from]?.owner;
      let to = from + 1;
      while (to < us.length - 1 && nearest[to]?.owner === owner) to += 1;
      if (owner !== undefined) fields.push({ u: [us[from]!, us[to]!], v: [bottom, top], owner });
      from = to;
    }
  });
  return joinedUp(fields);
}

/** Fields of one owner that stand on each other with the same width become one. */
function joinedUp<T>(fields: readonly SeenField<T>[]): SeenField<T>[] {
  const open = new Map<string, number>();
  const joined: SeenField<T>[] = [];
  for (const field of fields) {
    const key = `${field.u[0]} ${field.u[1]} ${field.v[0]}`;
    const below = open.get(key);
    const under = below === undefined ? undefined : joined[below];
    const next = `${field.u[0]} ${field.u[1]} ${field.v[1]}`;
    if (below !== undefined && under !== undefined && under.owner === field.owner) {
      joined[below] = { ...under, v: [under.v[0], field.v[1]] };
      open.set(next, below);
    } else {
      joined.push(field);
      open.set(next, joined.length - 1);
    }
  }
  return joined;
}
