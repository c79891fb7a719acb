import type { Extent, Um } from '../model/geometry.ts';
import type { BenchPanel, BenchPoint, BenchRect, BenchSide } from './panelOnBench.ts';

/** What a panel on the bench is before it is settled from which corner it is measured. */
export type LaidPanel = Omit<BenchPanel, 'marksFromSawn'>;

const OPPOSITE: Readonly<Record<BenchSide, BenchSide>> = {
  left: 'right',
  right: 'left',
  near: 'far',
  far: 'near',
};

/**
 * Lays a panel so that the edges on the left and near, from which everything is measured, are there as far as they are
 * used: where the wall or scribing takes one of them away, the panel is turned by half a circle. A panel that the wall
 * shapes at both ends has no such corner; then `marksFromSawn` says how far out the edge is before it is cut.
 */
export function onSoundCorner(laid: LaidPanel): BenchPanel {
  const turned = halfTurned(laid);
  const panel = unsound(turned) < unsound(laid) ? turned : laid;
  return {
    ...panel,
    marksFromSawn: {
      left: isSound(panel, 'left') ? null : 0 - panel.sawn.left[0],
      near: isSound(panel, 'near') ? null : 0 - panel.sawn.near[0],
    },
  };
}

function unsound(panel: LaidPanel): number {
  return (['left', 'near'] as const).filter((side) => !isSound(panel, side)).length;
}

/** Whether an edge is straight and unscribed across from all that is measured from it; of an untouched panel, at its corner. */
function isSound(panel: LaidPanel, side: 'left' | 'near'): boolean {
  if (panel.scribing[side] !== 0) return false;
  const straight = straightParts(panel, side);
  const places = placesAlong(panel, side);
  return (places.length === 0 ? [0] : places).every((at) =>
    straight.some(([from, to]) => from <= at && at <= to),
  );
}

/** The parts of the outline that lie on an edge, from the near left corner along it. */
function straightParts({ outline }: LaidPanel, side: 'left' | 'near'): Extent[] {
  const along = ({ leftUm, nearUm }: BenchPoint) => (side === 'left' ? nearUm : leftUm);
  const away = ({ leftUm, nearUm }: BenchPoint) => (side === 'left' ? leftUm : nearUm);
  return outline.flatMap((to, index): Extent[] => {
    const from = outline.at(index - 1)!;
    if (away(from) !== 0 || away(to) !== 0) return [];
    return [[Math.min(along(from), along(to)), Math.max(along(from), along(to))]];
  });
}

/** Where along an edge something lies that is measured from it. */
function placesAlong(panel: LaidPanel, side: 'left' | 'near'): Um[] {
  const points = [...panel.holes, ...panel.edgeHoles];
  const rects = [...panel.cutOuts, ...panel.grooves];
  return side === 'left'
    ? [...points.map(({ nearUm }) => nearUm), ...rects.flatMap(({ near }) => near)]
    : [...points.map(({ leftUm }) => leftUm), ...rects.flatMap(({ left }) => left)];
}

function halfTurned(panel: LaidPanel): LaidPanel {
  const { lengthUm, widthUm, sides, edging, scribing } = panel;
  const point = <P extends BenchPoint>(at: P): P => ({
    ...at,
    leftUm: lengthUm - at.leftUm,
    nearUm: widthUm - at.nearUm,
  });
  const back = ([from, to]: Extent, size: Um): Extent => [size - to, size - from];
  const rect = <R extends BenchRect>(of: R): R => ({
    ...of,
    left: back(of.left, lengthUm),
    near: back(of.near, widthUm),
  });
  const swapped = <T>(of: Readonly<Record<BenchSide, T>>) => ({
    left: of.right,
    right: of.left,
    near: of.far,
    far: of.near,
  });
  return {
    ...panel,
    sides: swapped(sides),
    edging: swapped(edging),
    scribing: swapped(scribing),
    outline: fromNearLeft(panel.outline.map(point)),
    cutOuts: panel.cutOuts.map(rect),
    holes: panel.holes.map(point),
    edgeHoles: panel.edgeHoles.map((hole) => ({ ...point(hole), side: OPPOSITE[hole.side] })),
    grooves: panel.grooves.map(rect),
    sawn: rect(panel.sawn),
    sawnOutline: panel.sawnOutline === null ? null : fromNearLeft(panel.sawnOutline.map(point)),
  };
}

/** A ring that begins with its corner nearest to the near left one. */
function fromNearLeft(ring: readonly BenchPoint[]): readonly BenchPoint[] {
  const far = ring.map(({ leftUm, nearUm }) => leftUm + nearUm);
  const first = far.indexOf(Math.min(...far));
  return [...ring.slice(first), ...ring.slice(0, first)];
}
