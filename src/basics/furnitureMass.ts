import type { Furniture } from '../model/furniture.ts';
import type { Box, Extent, Um } from '../model/geometry.ts';
import type { Fitting, Vehicle } from '../model/library.ts';
import { widthAtUm } from './vehicleSection.ts';

/** What the furniture of one vehicle weighs and where; boards, edging and fittings, without appliances and loads. */
export interface FurnitureMass {
  readonly totalKg: number;
  readonly panelsKg: number;
  readonly fittingsKg: number;
  readonly leftKg: number;
  readonly rightKg: number;
  /** Ahead of and behind the middle of the inside length. */
  readonly frontKg: number;
  readonly rearKg: number;
  /** Centre of mass in the vehicle's frame; null when nothing weighs anything. */
  readonly centreUm: { readonly x: Um; readonly y: Um; readonly z: Um } | null;
  readonly perUnit: readonly { readonly unit: string; readonly massKg: number }[];
}

interface Lump {
  readonly box: Box;
  readonly massKg: number;
}

/** The share of an extent below a line. */
function shareBelow(extent: Extent, lineUm: Um): number {
  return Math.min(1, Math.max(0, (lineUm - extent[0]) / (extent[1] - extent[0])));
}

/** Each panel's mass spread evenly over its box, each unit's fittings over its outside box. */
export function furnitureMass(
  furniture: Furniture,
  vehicle: Vehicle,
  fittings: ReadonlyMap<string, Fitting>,
): FurnitureMass {
  const lumps: Lump[] = [];
  let fittingsKg = 0;
  const perUnit = furniture.units.map((unit) => {
    const unitFittingsKg = unit.fittings.reduce(
      (sum, use) => sum + use.count * (fittings.get(use.fitting)?.massKg ?? 0),
      0,
    );
    const panels = unit.panels.map((panel) => ({ box: panel.placeBox, massKg: panel.massKg }));
    lumps.push(...panels, { box: unit.placeOutside, massKg: unitFittingsKg });
    fittingsKg += unitFittingsKg;
    return { unit: unit.name, massKg: unitFittingsKg + sumOf(panels, () => 1) };
  });
  const totalKg = sumOf(lumps, () => 1);
  const middleYUm = widthAtUm(vehicle, 0) / 2;
  const middleXUm = vehicle.insideLengthUm / 2;
  const leftKg = sumOf(lumps, ({ box }) => shareBelow(box.y, middleYUm));
  const frontKg = sumOf(lumps, ({ box }) => shareBelow(box.x, middleXUm));
  const centre = (axis: 'x' | 'y' | 'z') =>
    Math.round(sumOf(lumps, ({ box }) => (box[axis][0] + box[axis][1]) / 2) / totalKg);
  return {
    totalKg,
    panelsKg: totalKg - fittingsKg,
    fittingsKg,
    leftKg,
    rightKg: totalKg - leftKg,
    frontKg,
    rearKg: totalKg - frontKg,
    centreUm: totalKg > 0 ? { x: centre('x'), y: centre('y'), z: centre('z') } : null,
    perUnit,
  };
}

function sumOf(lumps: readonly Lump[], factor: (lump: Lump) => number): number {
  return lumps.reduce((sum, lump) => sum + lump.massKg * factor(lump), 0);
}
