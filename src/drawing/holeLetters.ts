import type { BenchEdgeHole, BenchPanel } from '../basics/panelOnBench.ts';
import type { Extent, Um } from '../model/geometry.ts';
import { type Box, boxesOverlap, type Segment, TEXT_FALL, TEXT_RISE } from './drawing.ts';
import { HAIRLINE, SMALL } from './lettering.ts';
import { edgeHoleKinds, holeKinds } from './panelFigure.ts';
import type { Sketch } from './sketch.ts';

/** Where a panel lies on the page, and how its µm come there. */
export interface OnPage {
  readonly x: (um: Um) => number;
  readonly y: (um: Um) => number;
  readonly box: Box;
  readonly scale: (um: Um) => number;
}

/** What a drill takes out of an edge, as seen from above. */
export function edgeHoleRect({ side, leftUm, nearUm, diameterUm, depthUm }: BenchEdgeHole): {
  left: Extent;
  near: Extent;
} {
  const across = (middle: Um): Extent => [middle - diameterUm / 2, middle + diameterUm / 2];
  switch (side) {
    case 'left':
      return { left: [leftUm, leftUm + depthUm], near: across(nearUm) };
    case 'right':
      return { left: [leftUm - depthUm, leftUm], near: across(nearUm) };
    case 'near':
      return { left: across(leftUm), near: [nearUm, nearUm + depthUm] };
    case 'far':
      return { left: across(leftUm), near: [nearUm - depthUm, nearUm] };
    default:
      return side satisfies never;
  }
}

/** Where a letter may stand about its hole, best first: beside it, above or below, and shifted from there. */
const WAYS = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -0.6],
  [1, 0.6],
  [-1, -0.6],
  [-1, 0.6],
  [-0.7, -1],
  [0.7, -1],
  [-0.7, 1],
  [0.7, 1],
] as const;

/** A hole that gets a letter: its middle, and how far it reaches from there. */
interface Lettered {
  readonly letter: string;
  readonly spots: readonly { readonly leftUm: Um; readonly nearUm: Um; readonly reachUm: Um }[];
}

/** The holes of a panel, each kind with its letter. */
export function letteredHoles(bench: BenchPanel): Lettered[] {
  const inFaces = holeKinds(bench.holes).map(({ letter, holes }) => ({
    letter,
    spots: holes.map(({ leftUm, nearUm, diameterUm }) => ({ leftUm, nearUm, reachUm: diameterUm / 2 })),
  }));
  const inEdges = edgeHoleKinds(bench).map(({ letter, holes }) => ({
    letter,
    spots: holes.map((hole) => {
      const { left, near } = edgeHoleRect(hole);
      const middle = ([from, to]: Extent) => (from + to) / 2;
      return { leftUm: middle(left), nearUm: middle(near), reachUm: hole.depthUm / 2 };
    }),
  }));
  return [...inFaces, ...inEdges];
}

interface LetterPlace {
  readonly box: Box;
  readonly x: number;
  readonly baseline: number;
  /** From the letter to its hole, where it does not stand beside it. */
  readonly leader: Segment | null;
}

const LETTER_HIGH_MM = SMALL * (TEXT_RISE + TEXT_FALL) + 0.02;
/** Between a letter further away and the end of its leader. */
const LEADER_GAP_MM = 0.3;

function placeAt(middle: readonly [number, number], wide: number, leader: Segment | null): LetterPlace {
  const box = {
    x0: middle[0] - wide / 2 - 0.15,
    x1: middle[0] + wide / 2 + 0.15,
    y0: middle[1] - LETTER_HIGH_MM / 2,
    y1: middle[1] + LETTER_HIGH_MM / 2,
  };
  return { box, x: middle[0], baseline: middle[1] + LETTER_HIGH_MM / 2 - TEXT_FALL * SMALL - 0.01, leader };
}

/** Beside the hole, best first. */
function* besideHole(x: number, y: number, reachMm: number, wide: number): Iterable<LetterPlace> {
  const away = Math.max(reachMm + 0.5, 0.6) + 0.3;
  for (const [across, down] of WAYS) {
    yield placeAt([x + across * (away + wide / 2), y + down * (away + LETTER_HIGH_MM / 2)], wide, null);
  }
}

/** Level with the hole or aslant of it, a few mm away, with a line to it. */
function* furtherAway(x: number, y: number, reachMm: number, wide: number): Iterable<LetterPlace> {
  for (const away of [2.5, 4, 6, 8, 11]) {
    for (const down of [0, -0.7, 0.7]) {
      for (const across of [1, -1]) {
        const middle = [x + across * (reachMm + away), y + down * away] as const;
        const end = middle[0] - across * (wide / 2 + LEADER_GAP_MM);
        yield placeAt(middle, wide, [x + across * Math.min(reachMm, away / 2), y, end, middle[1]]);
      }
    }
  }
}

/** Above the far edge of a panel too narrow for letters, straight over the hole. */
function overFarEdge(x: number, y: number, wide: number, panel: Box): LetterPlace {
  const middle = panel.y0 - 0.4 - LETTER_HIGH_MM / 2;
  return placeAt([x, middle], wide, [x, y - 0.8, x, panel.y0 - 0.4]);
}

/** From the far edge of a panel down to a hole whose letter may stand above that edge. */
const NARROW_MM = 6;

/**
 * Letters beside their holes, or further away with a line where there is no room beside; over the far edge of a narrow
 * panel. One without room is left out: the distances beside the panel have it.
 */
export function drawLetters(
  sketch: Sketch,
  kinds: readonly Lettered[],
  at: OnPage,
  obstacles: readonly Box[],
): void {
  const taken = [...obstacles];
  const isFree = (box: Box) => !taken.some((other) => boxesOverlap(other, box));
  const isInside = ({ x0, x1, y0, y1 }: Box) =>
    x0 > at.box.x0 && x1 < at.box.x1 && y0 > at.box.y0 && y1 < at.box.y1;
  const put = (letter: string, { box, x, baseline, leader }: LetterPlace) => {
    taken.push(box);
    if (leader !== null) sketch.line('holes', ...leader, HAIRLINE);
    sketch.text('holes', letter, x, baseline, { sizeMm: SMALL, weight: 'bold', anchor: 'middle' });
  };
  const without: { letter: string; wide: number; x: number; y: number; reachMm: number }[] = [];
  for (const { letter, spots } of kinds) {
    const wide = sketch.measure(letter, SMALL, 'bold');
    for (const { leftUm, nearUm, reachUm } of spots) {
      const [x, y, reachMm] = [at.x(leftUm), at.y(nearUm), at.scale(reachUm)];
      const place = [...besideHole(x, y, reachMm, wide)].find(({ box }) => isInside(box) && isFree(box));
      if (place !== undefined) put(letter, place);
      else without.push({ letter, wide, x, y, reachMm });
    }
  }
  for (const { letter, wide, x, y, reachMm } of without) {
    const over = overFarEdge(x, y, wide, at.box);
    const further = [...furtherAway(x, y, reachMm, wide)].find(
      ({ box, leader }) => isInside(box) && isFree(box) && leadsFreely(leader!, taken, [x, y]),
    );
    if (further !== undefined) put(letter, further);
    else if (y - at.box.y0 <= NARROW_MM && isFree(over.box)) put(letter, over);
  }
}

/** Whether a leader runs clear of letters and holes, its own hole excepted. */
function leadsFreely(
  [x0, y0, x1, y1]: Segment,
  taken: readonly Box[],
  [holeX, holeY]: readonly [number, number],
): boolean {
  const others = taken.filter(
    (box) => !(box.x0 <= holeX && holeX <= box.x1 && box.y0 <= holeY && holeY <= box.y1),
  );
  return Array.from({ length: 20 }, (_, step) => (step + 1) / 20).every((share) => {
    const [x, y] = [x0 + (x1 - x0) * share, y0 + (y1 - y0) * share];
    const spot = { x0: x - 0.1, x1: x + 0.1, y0: y - 0.1, y1: y + 0.1 };
    return !others.some((box) => boxesOverlap(box, spot));
  });
}
