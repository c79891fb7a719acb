import type { Panel } from '../model/furniture.ts';
import type { Axis, Box, Extent, Um } from '../model/geometry.ts';
import { axes, extentSize, leastMove, sharedBox, sharedUm } from './boxes.ts';

/** How two panels of a unit stand to each other. */
export type Joint =
  | { readonly kind: 'apart' }
  /** Face on face, over some area. */
  | { readonly kind: 'touching' }
  /** One passes through an opening of the other and may touch its edge. */
  | { readonly kind: 'through opening' }
  | { readonly kind: 'let in'; readonly inner: Panel; readonly outer: Panel; readonly depthUm: Um }
  | { readonly kind: 'clash'; readonly inner: Panel; readonly outer: Panel; readonly depthUm: Um };

/** Where a cut-out is, in the unit's frame. */
export function cutOutBox(panel: Panel, cutOut: Panel['cutOuts'][number]): Box {
  const along = (axis: Axis): Extent => {
    const from = panel.box[axis][0];
    if (axis === panel.thicknessAxis) return panel.box[axis];
    const extent = axis === panel.lengthAxis ? cutOut.alongLength : cutOut.alongWidth;
    return [from + extent[0], from + extent[1]];
  };
  return { x: along('x'), y: along('y'), z: along('z') };
}

/** Where panels share wood, the one that reaches into the other's broad face is `inner`. */
export function jointOf(a: Panel, b: Panel): Joint {
  const shared = sharedBox(a.box, b.box);
  if (shared === null) return touch(a, b) ? { kind: 'touching' } : { kind: 'apart' };
  if (inOpening(a, shared) || inOpening(b, shared)) return { kind: 'through opening' };
  const declared = housingJoint(a, b, shared) ?? housingJoint(b, a, shared);
  if (declared !== null) return declared;
  const { axis, um: depthUm } = leastMove(a.box, b.box);
  const [outer, inner] = a.thicknessAxis === axis ? [a, b] : b.thicknessAxis === axis ? [b, a] : [a, b];
  return { kind: 'clash', inner, outer, depthUm };
}

/** A declared housing: measured square to the face it goes into, from that face, and not right through. */
function housingJoint(inner: Panel, outer: Panel, shared: Box): Joint | null {
  const housing = inner.housings.find(({ into }) => into === outer.id);
  if (housing === undefined) return null;
  const axis = outer.thicknessAxis;
  const depthUm = extentSize(shared[axis]);
  const fromLow = inner.box[axis][0] < outer.box[axis][0];
  const fromHigh = inner.box[axis][1] > outer.box[axis][1];
  const oneSided = fromLow !== fromHigh && depthUm < extentSize(outer.box[axis]);
  const kind = oneSided && depthUm <= housing.depthUm ? 'let in' : 'clash';
  return { kind, inner, outer, depthUm };
}

function inOpening(panel: Panel, shared: Box): boolean {
  return panel.cutOuts.some((cutOut) => {
    const box = cutOutBox(panel, cutOut);
    return axes.every((axis) => box[axis][0] <= shared[axis][0] && shared[axis][1] <= box[axis][1]);
  });
}

/** The axis along which two boxes face each other, with the gap between them; null when they do not. */
export function facing(a: Box, b: Box): { readonly axis: Axis; readonly gapUm: Um } | null {
  const between = axes.filter((axis) => sharedUm(a[axis], b[axis]) <= 0);
  const axis = between[0];
  return axis === undefined || between.length > 1 ? null : { axis, gapUm: -sharedUm(a[axis], b[axis]) };
}

/** Whether two panels lie face on face over some area that no opening takes away. */
function touch(a: Panel, b: Panel): boolean {
  const face = facing(a.box, b.box);
  if (face === null || face.gapUm > 0) return false;
  const across = axes.filter((axis) => axis !== face.axis);
  const area = across.reduce((product, axis) => product * sharedUm(a.box[axis], b.box[axis]), 1);
  const open = [a, b].flatMap((panel) =>
    panel.thicknessAxis === face.axis ? panel.cutOuts.map((cutOut) => cutOutBox(panel, cutOut)) : [],
  );
  const taken = open.reduce((sum, box) => {
    const sides = across.map((axis) => {
      const from = Math.max(a.box[axis][0], b.box[axis][0], box[axis][0]);
      return Math.max(0, Math.min(a.box[axis][1], b.box[axis][1], box[axis][1]) - from);
    });
    return sum + sides[0]! * sides[1]!;
  }, 0);
  return area > taken;
}
