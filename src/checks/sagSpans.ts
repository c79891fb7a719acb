import { extentSize, inVehicle, sharedUm } from '../basics/boxes.ts';
import { cutOutBox, facing, jointOf } from '../basics/joints.ts';
import type { Furniture, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Box, Extent, Um } from '../model/geometry.ts';

/** A back or another thin board keeps no shelf from sagging. Common practice, no source. */
const LEAST_SUPPORT_UM = 8000;
/** What a panel lies on must reach across at least this share of it. Common practice, no source. */
const LEAST_SHARE = 0.5;

/** A length of a level panel with nothing that carries it, between two supports, in the vehicle's frame. */
export interface FreeSpan {
  /** Along which side of the panel. */
  readonly along: 'length' | 'width';
  readonly axis: Axis;
  readonly extent: Extent;
}

function overlap(a: Box, b: Box): boolean {
  return sharedUm(a.x, b.x) > 0 && sharedUm(a.y, b.y) > 0;
}

/** An upright panel that stands on a level one and reaches up to another, which holds it. Common practice, no source. */
function hangsUp(upright: Panel, panel: Panel, unit: PlacedUnit): boolean {
  if (upright.thicknessAxis === 'z' || upright.box.z[0] !== panel.box.z[1]) return false;
  return unit.panels.some(
    (above) =>
      above.thicknessAxis === 'z' &&
      above.thicknessUm >= LEAST_SUPPORT_UM &&
      above.box.z[0] === upright.box.z[1] &&
      overlap(above.box, upright.box),
  );
}

/**
 * Whether another panel of its unit carries a level panel: it stands under it, its broad face lies against the panel's
 * edge, the panel is let into it, fittings hold the panel to it across a gap, as pins do, or the panel hangs from it.
 */
function carries(other: Panel, panel: Panel, unit: PlacedUnit): boolean {
  if (other.thicknessUm < LEAST_SUPPORT_UM) return false;
  const joint = jointOf(panel, other);
  if (joint.kind === 'let in') return joint.inner === panel;
  const face = facing(panel.box, other.box);
  if (face === null) return false;
  const held = (unit.hangings ?? []).some(
    ({ panels, on, gapUm }) =>
      panels.includes(panel.id) && on.includes(other.id) && gapUm === face.gapUm && face.axis !== 'z',
  );
  if (joint.kind !== 'touching' && !held) return false;
  if (face.axis !== 'z') return other.thicknessAxis === face.axis;
  return other.box.z[1] === panel.box.z[0] || hangsUp(other, panel, unit);
}

/** Whether a panel lies on a panel of another unit, as a worktop does. */
function liesOn(other: Panel, panel: Panel): boolean {
  return (
    other.thicknessUm >= LEAST_SUPPORT_UM &&
    other.placeBox.z[1] === panel.placeBox.z[0] &&
    overlap(other.placeBox, panel.placeBox)
  );
}

/** Where supports lie along an axis of a panel, those that reach across enough of it, joined and in order. */
function supportsAlong(axis: Axis, across: Axis, panel: Panel, supports: readonly Panel[]): Extent[] {
  const least = LEAST_SHARE * extentSize(panel.placeBox[across]);
  const extents = supports
    .filter((other) => sharedUm(other.placeBox[across], panel.placeBox[across]) >= least)
    .map(({ placeBox }) => placeBox[axis])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const joined: [Um, Um][] = [];
  for (const [from, to] of extents) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/** An axis of a unit as it lies in the vehicle. */
function placedAxis(axis: Axis, unit: PlacedUnit): Axis {
  const lengthways = unit.facing === 'left' || unit.facing === 'right';
  if (lengthways || axis === 'z') return axis;
  return axis === 'x' ? 'y' : 'x';
}

/**
 * The free spans of a level panel along its length and along its width; none where fewer than two supports hold it that
 * way. What hangs past the last support is no span.
 */
export function freeSpans(panel: Panel, unit: PlacedUnit, furniture: Furniture): readonly FreeSpan[][] {
  const supports = furniture.units.flatMap((other) =>
    other.panels.filter((candidate) =>
      other.name === unit.name
        ? candidate.id !== panel.id && carries(candidate, panel, unit)
        : liesOn(candidate, panel),
    ),
  );
  const length = placedAxis(panel.lengthAxis, unit);
  const width = placedAxis(panel.widthAxis, unit);
  const ways = [
    { along: 'length', axis: length, across: width },
    { along: 'width', axis: width, across: length },
  ] as const;
  return ways.map(({ along, axis, across }) => {
    const held = supportsAlong(axis, across, panel, supports);
    return held.slice(1).map(([from], index) => ({ along, axis, extent: [held[index]![1], from] }));
  });
}

/** The least width of wood across a span, openings taken off, in µm. */
export function leastWidthAcross(panel: Panel, unit: PlacedUnit, span: FreeSpan): Um {
  const openings = panel.cutOuts.map((cutOut) => {
    const box = inVehicle(cutOutBox(panel, cutOut), unit);
    const wide = span.along === 'length' ? cutOut.alongWidth : cutOut.alongLength;
    return { along: box[span.axis], wideUm: extentSize(wide) };
  });
  // The wood is least where some opening begins.
  const taken = openings
    .filter(({ along }) => sharedUm(along, span.extent) > 0)
    .map(({ along: [start] }) =>
      openings.reduce(
        (sum, other) => (other.along[0] <= start && start < other.along[1] ? sum + other.wideUm : sum),
        0,
      ),
    );
  const whole = span.along === 'length' ? panel.finishedWidthUm : panel.finishedLengthUm;
  return whole - Math.max(0, ...taken);
}
