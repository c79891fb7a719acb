import { extentSize, sharedUm } from '../basics/boxes.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Extent, Um } from '../model/geometry.ts';
import { facing, jointOf } from './joints.ts';

/** A back or another thin board keeps no shelf from sagging. Common practice, no source. */
const LEAST_SUPPORT_UM = 8000;
/** What a panel lies on must reach across at least this share of it. */
const LEAST_SHARE = 0.5;

/** A length of a level panel with nothing under it, between two supports. */
export interface FreeSpan {
  readonly axis: Axis;
  readonly extent: Extent;
}

/**
 * Whether `other` carries a level panel: it stands under it, its broad face lies against the panel's edge, the panel is
 * let into it, or fittings hold the panel to it across a gap, as pins do.
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
  if (face.axis === 'z') return other.box.z[1] === panel.box.z[0];
  return other.thicknessAxis === face.axis;
}

/** Where supports lie along an axis of a panel, those that reach across enough of it, joined and in order. */
function supportsAlong(axis: Axis, across: Axis, panel: Panel, supports: readonly Panel[]): Extent[] {
  const least = LEAST_SHARE * extentSize(panel.box[across]);
  const extents = supports
    .filter((other) => sharedUm(other.box[across], panel.box[across]) >= least)
    .map(({ box }) => box[axis])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const joined: [Um, Um][] = [];
  for (const [from, to] of extents) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/**
 * The free spans of a level panel along its two sides, by axis; an axis along which fewer than two supports hold it has
 * none. What hangs past the last support is no span.
 */
export function freeSpans(panel: Panel, unit: PlacedUnit): ReadonlyMap<Axis, readonly FreeSpan[]> {
  const supports = unit.panels.filter((other) => other !== panel && carries(other, panel, unit));
  const spans = new Map<Axis, FreeSpan[]>();
  for (const [axis, across] of [
    [panel.lengthAxis, panel.widthAxis],
    [panel.widthAxis, panel.lengthAxis],
  ] as const) {
    const along = supportsAlong(axis, across, panel, supports);
    spans.set(
      axis,
      along.slice(1).map((support, index) => ({ axis, extent: [along[index]![1], support[0]] })),
    );
  }
  return spans;
}

/** The least width of wood across a span, openings taken off, in µm. */
export function leastWidthAcross(panel: Panel, span: FreeSpan): Um {
  const lengthwise = span.axis === panel.lengthAxis;
  const across = lengthwise ? panel.widthAxis : panel.lengthAxis;
  const from = panel.box[span.axis][0];
  const openings = panel.cutOuts.map(({ alongLength, alongWidth }) => {
    const [along, wide] = lengthwise ? [alongLength, alongWidth] : [alongWidth, alongLength];
    return { along: [from + along[0], from + along[1]] as Extent, wideUm: extentSize(wide) };
  });
  const taken = openings
    .filter(({ along }) => sharedUm(along, span.extent) > 0)
    .map(({ along }) =>
      openings.reduce(
        (sum, other) => (sharedUm(other.along, [along[0], along[0] + 1]) > 0 ? sum + other.wideUm : sum),
        0,
      ),
    );
  return extentSize(panel.box[across]) - Math.max(0, ...taken);
}
