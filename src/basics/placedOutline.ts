import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Um } from '../model/geometry.ts';
import { inVehicle } from './boxes.ts';

/** A place in µm. */
export type Spot = Readonly<Record<Axis, Um>>;

/** The corners of a panel's outline in its unit's frame, at the low end of its thickness; none for a rectangle. */
export function outlineInUnit(panel: Panel): Spot[] {
  const { box, lengthAxis, widthAxis } = panel;
  const corner = { x: box.x[0], y: box.y[0], z: box.z[0] };
  return (panel.outline ?? []).map(({ alongLengthUm, alongWidthUm }) => ({
    ...corner,
    [lengthAxis]: box[lengthAxis][0] + alongLengthUm,
    [widthAxis]: box[widthAxis][0] + alongWidthUm,
  }));
}

/** The same in the vehicle's frame. */
export function outlineInVehicle(panel: Panel, unit: PlacedUnit): Spot[] {
  return outlineInUnit(panel).map(({ x, y, z }) => {
    const point = { x: [x, x], y: [y, y], z: [z, z] } as const;
    const placed = inVehicle(point, unit);
    return { x: placed.x[0], y: placed.y[0], z: placed.z[0] };
  });
}
