import type { EdgeHole, Panel } from '../model/furniture.ts';
import type { Axis, Extent, Face, Um } from '../model/geometry.ts';
import type { Edging } from '../model/library.ts';
import { axisFaces, extentSize, sharedBox } from './boxes.ts';
import { onSoundCorner } from './zeroCorner.ts';

/** The sides of a panel as it lies before the person who works on it. */
export type BenchSide = 'left' | 'right' | 'near' | 'far';

/** A point on the bench, from the near left corner of the finished panel. */
export interface BenchPoint {
  readonly leftUm: Um;
  readonly nearUm: Um;
}

/** Round holes, straight on the bench: the middle from the near left corner. */
export interface BenchHole extends BenchPoint {
  readonly name: string;
  readonly diameterUm: Um;
  /** Null right through. */
  readonly depthUm: Um | null;
  /** The face of the unit's frame that the drill enters. */
  readonly face: Face;
  /** Seen from above the bench. */
  readonly goes: 'in from above' | 'in from below' | 'through';
}

/** A round hole in an edge, square to it: where the drill enters, and how far below the face that is up. */
export interface BenchEdgeHole extends BenchPoint {
  readonly name: string;
  readonly side: BenchSide;
  readonly belowUm: Um;
  readonly diameterUm: Um;
  readonly depthUm: Um;
  /** The edge in the unit's frame. */
  readonly face: Face;
}

export interface BenchRect {
  readonly left: Extent;
  readonly near: Extent;
}

/** A groove that another panel is let into. */
export interface BenchGroove extends BenchRect {
  /** Name of the panel that is let in, without its number. */
  readonly holds: string;
  readonly depthUm: Um;
  readonly face: Face;
  readonly goes: 'in from above' | 'in from below';
}

/**
 * A finished panel lying on the bench with the face up that has the most to be worked on: its length from left to right,
 * its width away from the person. Distances are from its near left corner, which no wall and no scribing takes away, as long as
 * the panel has such a corner. Nothing is mirrored: where the unit's frame would show the width running towards the person,
 * it is counted from the other edge.
 */
export interface BenchPanel {
  readonly lengthUm: Um;
  readonly widthUm: Um;
  /** Faces of the unit's frame. */
  readonly faceUp: Face;
  readonly sides: Readonly<Record<BenchSide, Face>>;
  readonly edging: Readonly<Record<BenchSide, string | null>>;
  /** Counter-clockwise; of a rectangle its four corners. */
  readonly outline: readonly BenchPoint[];
  readonly shaped: boolean;
  readonly cutOuts: readonly (BenchRect & { readonly name: string })[];
  readonly holes: readonly BenchHole[];
  readonly edgeHoles: readonly BenchEdgeHole[];
  readonly grooves: readonly BenchGroove[];
  /** Where the sawn part lies before edging: smaller by the edging, larger by allowances. */
  readonly sawn: BenchRect;
  /** What the sawn part is cut to by hand, scribing allowance still on; null for a rectangle. */
  readonly sawnOutline: readonly BenchPoint[] | null;
  /** What is left on along each edge for scribing. */
  readonly scribing: Readonly<Record<BenchSide, Um>>;
  /**
   * Null where the edge is there to measure from. Where the wall takes it away, and the one across from it as well, marks
   * are made before that: the edge as it is sawn lies so far outside of it.
   */
  readonly marksFromSawn: { readonly left: Um | null; readonly near: Um | null };
}

/** Lays a panel on the bench. `unit`: all panels of its unit, for grooves; `edgings` of the library, by id. */
export function panelOnBench(
  panel: Panel,
  unit: readonly Panel[],
  edgings: ReadonlyMap<string, Edging>,
): BenchPanel {
  const grooves = groovesIn(panel, unit);
  const faceUp = faceToWorkOn(panel, grooves);
  const flipped = seenMirrored(panel, faceUp);
  const { finishedLengthUm: lengthUm, finishedWidthUm: widthUm } = panel;
  const point = (alongLengthUm: Um, alongWidthUm: Um): BenchPoint => ({
    leftUm: alongLengthUm,
    nearUm: flipped ? widthUm - alongWidthUm : alongWidthUm,
  });
  const rect = (length: Extent, width: Extent): BenchRect => ({
    left: length,
    near: flipped ? [widthUm - width[1], widthUm - width[0]] : width,
  });
  const ring = (points: readonly BenchPoint[]) => (flipped ? points.toReversed() : points);
  const goes = (face: Face) => (face === faceUp ? 'in from above' : 'in from below');
  const [near, far] = flipped ? axisFaces[panel.widthAxis].toReversed() : axisFaces[panel.widthAxis];
  const sides = {
    left: axisFaces[panel.lengthAxis][0],
    right: axisFaces[panel.lengthAxis][1],
    near: near!,
    far: far!,
  };
  const edgingOf = (face: Face) => panel.edges.find((edge) => edge.face === face)?.edging ?? null;
  const over = (face: Face): Um => standsOver(panel, face, edgings.get(edgingOf(face) ?? ''));
  const low = (axis: Axis): Um => 0 - over(axisFaces[axis][0]);
  const sawnLength: Extent = [low(panel.lengthAxis), low(panel.lengthAxis) + panel.cutLengthUm];
  const sawnWidth: Extent = [low(panel.widthAxis), low(panel.widthAxis) + panel.cutWidthUm];
  const sawnOutline = panel.byHand?.outline?.map((corner) =>
    point(corner.alongLengthUm + sawnLength[0], corner.alongWidthUm + sawnWidth[0]),
  );
  const scribingAt = (face: Face) => scribingLeftOn(panel, face);
  return onSoundCorner({
    lengthUm,
    widthUm,
    faceUp,
    sides,
    edging: {
      left: edgingOf(sides.left),
      right: edgingOf(sides.right),
      near: edgingOf(sides.near),
      far: edgingOf(sides.far),
    },
    outline:
      panel.outline === undefined
        ? cornersOf(rect([0, lengthUm], [0, widthUm]))
        : ring(panel.outline.map((corner) => point(corner.alongLengthUm, corner.alongWidthUm))),
    shaped: panel.outline !== undefined,
    cutOuts: panel.cutOuts.map(({ name, alongLength, alongWidth }) => ({
      name,
      ...rect(alongLength, alongWidth),
    })),
    holes: panel.holes.map(({ name, alongLengthUm, alongWidthUm, diameterUm, depthUm, face }) => ({
      name,
      ...point(alongLengthUm, alongWidthUm),
      diameterUm,
      depthUm,
      face,
      goes: depthUm === null ? 'through' : goes(face),
    })),
    edgeHoles: (panel.edgeHoles ?? []).map((hole) => edgeHoleOnBench(hole, panel, faceUp, sides, point)),
    grooves: grooves.map(({ holds, alongLength, alongWidth, depthUm, face }) => ({
      holds,
      ...rect(alongLength, alongWidth),
      depthUm,
      face,
      goes: goes(face),
    })),
    sawn: rect(sawnLength, sawnWidth),
    sawnOutline: sawnOutline === undefined ? null : ring(sawnOutline),
    scribing: {
      left: scribingAt(sides.left),
      right: scribingAt(sides.right),
      near: scribingAt(sides.near),
      far: scribingAt(sides.far),
    },
  });
}

function edgeHoleOnBench(
  { name, face, alongUm, acrossUm, diameterUm, depthUm }: EdgeHole,
  panel: Panel,
  faceUp: Face,
  sides: Readonly<Record<BenchSide, Face>>,
  point: (alongLengthUm: Um, alongWidthUm: Um) => BenchPoint,
): BenchEdgeHole {
  const [lowLength, highLength] = axisFaces[panel.lengthAxis];
  const [, highWidth] = axisFaces[panel.widthAxis];
  const inEnd = face === lowLength || face === highLength;
  const at = inEnd
    ? point(face === highLength ? panel.finishedLengthUm : 0, alongUm)
    : point(alongUm, face === highWidth ? panel.finishedWidthUm : 0);
  const side = (['left', 'right', 'near', 'far'] as const).find((each) => sides[each] === face);
  if (side === undefined) throw new Error(`${face} is no edge of ${panel.id}`);
  const highUp = axisFaces[panel.thicknessAxis][1] === faceUp;
  const belowUm = highUp ? panel.thicknessUm - acrossUm : acrossUm;
  return { name, ...at, side, belowUm, diameterUm, depthUm, face };
}

function scribingLeftOn(panel: Panel, face: Face): Um {
  return panel.scribed?.find((scribed) => scribed.face === face)?.allowanceUm ?? 0;
}

/** How far the sawn part stands out over the finished panel at a face; less where edging makes up for it. */
function standsOver(panel: Panel, face: Face, edging: Edging | undefined): Um {
  const scribing = scribingLeftOn(panel, face);
  if (edging === undefined) return scribing;
  return scribing + edging.preMillingUm - (edging.deducted ? edging.thicknessUm : 0);
}

/** Corners of a rectangle, counter-clockwise from the near left. */
function cornersOf({ left: [x0, x1], near: [y0, y1] }: BenchRect): BenchPoint[] {
  const corner = (leftUm: Um, nearUm: Um) => ({ leftUm, nearUm });
  return [corner(x0, y0), corner(x1, y0), corner(x1, y1), corner(x0, y1)];
}

interface Groove {
  readonly holds: string;
  readonly alongLength: Extent;
  readonly alongWidth: Extent;
  readonly depthUm: Um;
  readonly face: Face;
}

/** What other panels of the unit reach into this one by. */
function groovesIn(panel: Panel, unit: readonly Panel[]): Groove[] {
  const { box, lengthAxis, widthAxis, thicknessAxis } = panel;
  return unit.flatMap((inner): Groove[] => {
    if (!inner.housings.some((housing) => housing.into === panel.id)) return [];
    const shared = sharedBox(inner.box, box);
    if (shared === null) return [];
    const along = (axis: Axis): Extent => [shared[axis][0] - box[axis][0], shared[axis][1] - box[axis][0]];
    const [lowFace, highFace] = axisFaces[thicknessAxis];
    return [
      {
        holds: inner.baseName,
        alongLength: along(lengthAxis),
        alongWidth: along(widthAxis),
        depthUm: extentSize(shared[thicknessAxis]),
        face: shared[thicknessAxis][0] === box[thicknessAxis][0] ? lowFace : highFace,
      },
    ];
  });
}

/** The broad face with the most blind holes and grooves, or that which shows the panel as its coordinates run. */
function faceToWorkOn(panel: Panel, grooves: readonly Groove[]): Face {
  const [lowFace, highFace] = axisFaces[panel.thicknessAxis];
  const blind = [...panel.holes.filter((hole) => hole.depthUm !== null), ...grooves];
  const high = blind.filter(({ face }) => face === highFace).length;
  if (2 * high > blind.length) return highFace;
  if (2 * high < blind.length) return lowFace;
  return seenMirrored(panel, highFace) ? lowFace : highFace;
}

/**
 * Whether the panel's length and width, laid to the right and away, show the back of what is seen from a face. The
 * frame is right-handed: seen from its high end, x runs to the right when y runs away, and so on round x, y, z.
 */
function seenMirrored(panel: Panel, face: Face): boolean {
  const next: Record<Axis, Axis> = { x: 'y', y: 'z', z: 'x' };
  const fromHigh = axisFaces[panel.thicknessAxis][1] === face;
  return (next[panel.lengthAxis] === panel.widthAxis) !== fromHigh;
}
