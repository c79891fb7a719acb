import { outlineInVehicle, type Spot } from '../basics/placedOutline.ts';
import { freeAcrossUm } from '../basics/vehicleSection.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';

/** Corners of an outline and the free width are rounded to whole µm, each on its own. */
const ROUNDING_UM: Um = 2;

/** The free width at a height, or just beside it, where a corner may have been rounded to. */
function freeNear(vehicle: Vehicle, height: Um): readonly [left: Um, right: Um] {
  const near = [height - 1, height, height + 1].map((at) => freeAcrossUm(vehicle, at, at));
  return [Math.min(...near.map(([left]) => left)), Math.max(...near.map(([, right]) => right))];
}

/** Where an outline crosses a height, least and greatest y. */
function acrossAt(outline: readonly Spot[], height: Um): readonly [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  outline.forEach((from, index) => {
    const to = outline[(index + 1) % outline.length]!;
    if (height < Math.min(from.z, to.z) || height > Math.max(from.z, to.z)) return;
    const share = from.z === to.z ? null : (height - from.z) / (to.z - from.z);
    const ys = share === null ? [from.y, to.y] : [from.y + share * (to.y - from.y)];
    least = Math.min(least, ...ys);
    most = Math.max(most, ...ys);
  });
  return [least, most];
}

/**
 * How far a panel with an outline stands through the left and the right wall, in µm, 0 or less where it does not: held
 * against the section at every height where either of them bends.
 */
export function outlineThroughWalls(
  panel: Panel,
  unit: PlacedUnit,
  vehicle: Vehicle,
): { readonly leftUm: Um; readonly rightUm: Um } {
  const outline = outlineInVehicle(panel, unit);
  const heights = [...outline.map(({ z }) => z), ...vehicle.widthAtHeight.map((point) => point.heightUm)];
  const over = { leftUm: Number.NEGATIVE_INFINITY, rightUm: Number.NEGATIVE_INFINITY };
  for (const height of heights) {
    const [least, most] = acrossAt(outline, height);
    if (least > most) continue;
    const [left, right] = freeNear(vehicle, height);
    over.leftUm = Math.max(over.leftUm, Math.ceil(left - least - ROUNDING_UM));
    over.rightUm = Math.max(over.rightUm, Math.ceil(most - right - ROUNDING_UM));
  }
  return over;
}
