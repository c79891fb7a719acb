import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, union, type ViewLine, viewLines } from '../../src/drawing/hiddenLines.ts';
import {
  type Body,
  bodyOf,
  FROM_ABOVE,
  FROM_FRONT,
  FROM_LEFT,
  faceOf,
  type Look,
} from '../../src/drawing/unitProjection.ts';
import type { Box, Extent } from '../../src/model/geometry.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';

function solid(x: Extent, y: Extent, z: Extent): Body {
  const box = { x, y, z };
  return { box, holes: [], solids: [box] };
}

function written(lines: readonly ViewLine[]): string[] {
  return lines.map(({ runs, at, extent }) => `${runs} ${at}: ${extent.join('–')}`).sort();
}

describe('extents', () => {
  it('are joined where they touch and taken away where they are covered', () => {
    expect(
      union([
        [5, 9],
        [0, 3],
        [3, 4],
        [8, 12],
      ]),
    ).toEqual([
      [0, 4],
      [5, 12],
    ]);
    expect(
      difference(
        [[0, 10]],
        [
          [2, 3],
          [8, 20],
        ],
      ),
    ).toEqual([
      [0, 2],
      [3, 8],
    ]);
    expect(difference([[0, 10]], [[0, 10]])).toEqual([]);
  });
});

describe('hidden lines worked out by hand', () => {
  it('of a box behind a smaller one', () => {
    const lines = viewLines([solid([0, 10], [5, 6], [0, 10]), solid([2, 4], [0, 1], [-2, 3])], FROM_FRONT);
    expect(written(lines.visible)).toEqual(
      [
        'level -2: 2–4',
        'level 0: 0–2',
        'level 0: 4–10',
        'level 10: 0–10',
        'level 3: 2–4',
        'upright 0: 0–10',
        'upright 10: 0–10',
        'upright 2: -2–3',
        'upright 4: -2–3',
      ].sort(),
    );
    expect(written(lines.hidden)).toEqual(['level 0: 2–4']);
  });

  it('of an edge behind the joint of two faces, which is hidden though it lies on the border of both', () => {
    const lines = viewLines(
      [solid([0, 5], [0, 1], [0, 9]), solid([5, 9], [0, 1], [0, 9]), solid([5, 7], [3, 4], [2, 4])],
      FROM_FRONT,
    );
    // The edge at 5 runs behind the joint, and the joint is drawn.
    expect(written(lines.visible)).toContain('upright 5: 0–9');
    expect(written(lines.hidden)).toEqual(['level 2: 5–7', 'level 4: 5–7', 'upright 7: 2–4']);
  });

  it('of what is seen through an opening', () => {
    const box: Box = { x: [0, 10], y: [0, 1], z: [0, 10] };
    const hole: Box = { x: [2, 8], y: [0, 1], z: [2, 8] };
    const frame: Body = {
      box,
      holes: [hole],
      solids: [
        { ...box, x: [0, 2] },
        { ...box, x: [8, 10] },
        { ...box, x: [2, 8], z: [0, 2] },
        { ...box, x: [2, 8], z: [8, 10] },
      ],
    };
    const lines = viewLines([frame, solid([4, 20], [3, 4], [5, 6])], FROM_FRONT);
    expect(written(lines.visible)).toEqual(
      expect.arrayContaining(['upright 4: 5–6', 'level 5: 4–8', 'level 6: 4–8', 'level 5: 10–20']),
    );
    expect(written(lines.hidden)).toEqual(['level 5: 8–10', 'level 6: 8–10']);
  });

  it('from the left with the front on the right, and from above with the back at the top', () => {
    const box: Box = { x: [0, 1], y: [2, 5], z: [7, 9] };
    expect(faceOf(box, FROM_LEFT)).toEqual({ u: [-5, -2], v: [7, 9], nearUm: 0 });
    expect(faceOf(box, FROM_ABOVE)).toEqual({ u: [0, 1], v: [2, 5], nearUm: -9 });
  });
});

const extent = fc
  .tuple(fc.nat(12), fc.integer({ min: 1, max: 6 }))
  .map(([from, size]): Extent => [from, from + size]);
const body = fc.tuple(extent, extent, extent).map(([x, y, z]) => solid(x, y, z));
const looks = fc.constantFrom(FROM_FRONT, FROM_LEFT, FROM_ABOVE);

/** Whether anything nearer than `nearUm` stands before a place: by trying every solid, with no intervals. */
function covered(bodies: readonly Body[], look: Look, u: number, v: number, nearUm: number): boolean {
  return bodies.some((each) =>
    each.solids.some((one) => {
      const face = faceOf(one, look);
      return face.nearUm < nearUm && face.u[0] < u && u < face.u[1] && face.v[0] < v && v < face.v[1];
    }),
  );
}

/** Whether an edge of some body runs through a place of the view and is free on at least one of its sides. */
function seenByRays(bodies: readonly Body[], look: Look, line: ViewLine, along: number): boolean {
  const level = line.runs === 'level';
  return bodies.some((each) =>
    [each.box, ...each.holes].some((box) => {
      const face = faceOf(box, look);
      const [square, length] = level ? [face.v, face.u] : [face.u, face.v];
      const onEdge = square.includes(line.at) && length[0] < along && along < length[1];
      return (
        onEdge &&
        [-0.25, 0.25].some((side) => {
          const [u, v] = level ? [along, line.at + side] : [line.at + side, along];
          return !covered(bodies, look, u, v, face.nearUm);
        })
      );
    }),
  );
}

function halves(line: ViewLine): number[] {
  const [from, to] = line.extent;
  return Array.from({ length: to - from }, (_, index) => from + index + 0.5);
}

function total(lines: readonly ViewLine[]): number {
  return lines.reduce((sum, { extent: [from, to] }) => sum + to - from, 0);
}

describe('hidden lines of any boxes', () => {
  it('agree with rays sent to every half micrometre', () => {
    fc.assert(
      fc.property(fc.array(body, { minLength: 1, maxLength: 6 }), looks, (bodies, look) => {
        const { visible, hidden } = viewLines(bodies, look);
        for (const line of visible) {
          for (const at of halves(line)) expect(seenByRays(bodies, look, line, at)).toBe(true);
        }
        for (const line of hidden) {
          for (const at of halves(line)) expect(seenByRays(bodies, look, line, at)).toBe(false);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('are as long, seen and hidden together, as all outlines laid over each other', () => {
    fc.assert(
      fc.property(fc.array(body, { minLength: 1, maxLength: 6 }), looks, (bodies, look) => {
        const lines = new Map<string, Extent[]>();
        for (const { box } of bodies) {
          const { u, v } = faceOf(box, look);
          for (const at of v) lines.set(`level ${at}`, [...(lines.get(`level ${at}`) ?? []), u]);
          for (const at of u) lines.set(`upright ${at}`, [...(lines.get(`upright ${at}`) ?? []), v]);
        }
        const outline = [...lines.values()].flatMap(union).reduce((sum, [from, to]) => sum + to - from, 0);
        const { visible, hidden } = viewLines(bodies, look);
        expect(total(visible) + total(hidden)).toBe(outline);
      }),
      { numRuns: 150 },
    );
  });

  it('hide the shelf of the base cupboard behind its door, and show the plinth', () => {
    const library = demoLibrary();
    const unit = alone('base-cupboard', {}, library, demoOrder(library)).unit!;
    const { visible, hidden } = viewLines(unit.panels.map(bodyOf), FROM_FRONT);
    const shelf = unit.panels.find((panel) => panel.name === 'shelf 1')!.box;
    const plinth = unit.panels.find((panel) => panel.name === 'plinth')!.box;
    expect(written(hidden)).toContain(`level ${shelf.z[1]}: ${shelf.x.join('–')}`);
    expect(visible.some(({ runs, at }) => runs === 'level' && at === plinth.z[1])).toBe(true);
  });
});

/** A board seen from the front whose right side slants between two heights; coarse, so that whole µm do not matter. */
const shapedBody = fc.tuple(body, fc.integer({ min: -5, max: 5 })).map(([{ box }, lean]): Body => {
  const grown = (extent: Extent): Extent => [extent[0] * 10_000, extent[1] * 10_000];
  const [x, y, z] = [grown(box.x), grown(box.y), grown(box.z)];
  const at = (across: number, up: number) => ({ x: across, y: y[0], z: up });
  const top = Math.max(x[0] + 5000, x[1] + lean * 10_000);
  const corners = [at(x[0], z[0]), at(x[1], z[0]), at(top, z[1]), at(x[0], z[1])];
  const around = { x: [x[0], Math.max(x[1], top)] as const, y, z };
  return { box: around, holes: [], solids: [around], outline: { corners, through: 'y' } };
});

function within(corners: readonly (readonly [number, number])[], u: number, v: number): boolean {
  return corners.reduce((inside, [au, av], index) => {
    const [bu, bv] = corners[(index + 1) % corners.length]!;
    return av > v !== bv > v && u < au + ((v - av) / (bv - av)) * (bu - au) ? !inside : inside;
  }, false);
}

/** Whether some outline's side runs through a place with nothing nearer on one of its sides at least. */
function sideSeen(bodies: readonly Body[], u: number, v: number, along: readonly [number, number]): boolean {
  const size = Math.hypot(along[0], along[1]);
  const square = [(-along[1] / size) * 40, (along[0] / size) * 40] as const;
  return bodies.some((each) => {
    const corners = each.outline!.corners.map(({ x, z }) => [x, z] as const);
    const onSide = corners.some(([au, av], index) => {
      const [bu, bv] = corners[(index + 1) % corners.length]!;
      const [du, dv] = [bu - au, bv - av];
      const off = Math.abs(du * (v - av) - dv * (u - au)) / Math.hypot(du, dv);
      const part = ((u - au) * du + (v - av) * dv) / (du * du + dv * dv);
      const parallel = Math.abs(du * along[1] - dv * along[0]) / Math.hypot(du, dv) / size < 1e-3;
      return off < 3 && part > 0 && part < 1 && parallel;
    });
    const free = (sign: 1 | -1) =>
      !bodies.some(
        (other) =>
          other.box.y[0] < each.box.y[0] &&
          within(
            other.outline!.corners.map(({ x, z }) => [x, z] as const),
            u + sign * square[0],
            v + sign * square[1],
          ),
      );
    return onSide && (free(1) || free(-1));
  });
}

describe('hidden lines of boards with outlines', () => {
  it('agree with rays sent on both sides of each line', () => {
    let slantedHidden = 0;
    fc.assert(
      fc.property(fc.array(shapedBody, { minLength: 1, maxLength: 5 }), (bodies) => {
        const { visible, hidden, slanted } = viewLines(bodies, FROM_FRONT);
        const check = (lines: readonly (readonly [number, number, number, number])[], seen: boolean) => {
          for (const [u0, v0, u1, v1] of lines) {
            // Where slanted sides meet at a flat angle, rays beside a short line may go astray.
            if (Math.hypot(u1 - u0, v1 - v0) < 2000) continue;
            // Not in the middle, where corners of boxes may meet.
            const place = [u0 + 0.4371 * (u1 - u0), v0 + 0.4371 * (v1 - v0)] as const;
            expect(sideSeen(bodies, ...place, [u1 - u0, v1 - v0])).toBe(seen);
          }
        };
        const straight = ({ runs, at, extent: [from, to] }: ViewLine) =>
          runs === 'level' ? ([from, at, to, at] as const) : ([at, from, at, to] as const);
        check(visible.map(straight), true);
        check(hidden.map(straight), false);
        const ends = (lines: typeof slanted.visible) =>
          lines.map(({ from, to }) => [from[0], from[1], to[0], to[1]] as const);
        check(ends(slanted.visible), true);
        check(ends(slanted.hidden), false);
        slantedHidden += slanted.hidden.length;
      }),
      { numRuns: 200 },
    );
    expect(slantedHidden).toBeGreaterThan(10);
  });

  it('show an opening of a shaped board, and what is behind it', () => {
    const at = (x: number, z: number) => ({ x, y: 0, z });
    const box = { x: [0, 100], y: [0, 5], z: [0, 100] } as const;
    const hole = { x: [20, 60], y: [0, 5], z: [20, 60] } as const;
    const board: Body = {
      box,
      holes: [hole],
      solids: [box],
      outline: { corners: [at(0, 0), at(100, 0), at(80, 100), at(0, 100)], through: 'y' },
    };
    const lines = viewLines([board, solid([0, 95], [10, 11], [40, 41])], FROM_FRONT);
    expect(lines.slanted).toEqual({ visible: [{ from: [80, 100], to: [100, 0] }], hidden: [] });
    expect(written(lines.visible)).toContain('level 40: 20–60');
    // At 40 the slanted side is at 92.
    expect(written(lines.visible)).toContain('level 40: 92–95');
    expect(written(lines.hidden)).toContain('level 40: 0–20');
    expect(written(lines.hidden)).toContain('level 40: 60–92');
  });
});
