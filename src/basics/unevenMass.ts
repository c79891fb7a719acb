import type { Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';
import type { MassShares } from './furnitureMass.ts';
import { widthAtUm } from './vehicleSection.ts';

/** One side with more than this share of the furniture's mass is worth a word. Common practice, no source. */
const UNEVEN_SHARE = 0.6;

/** Furniture that is heavier on one side, with its appliances. */
export interface UnevenMass {
  readonly heavy: 'left' | 'right';
  readonly heavyKg: number;
  readonly totalKg: number;
  readonly percent: number;
  /** How far the centre of mass lies from the middle line. */
  readonly asideUm: Um;
  /** As much as this, half-way between the middle line and the other wall, brings the centre to the middle, in kg. */
  readonly evenedByKg: number;
}

/** Whether one side of a vehicle carries much more than the other, and what would even it out; null where it does not. */
export function unevenMass(mass: MassShares, vehicle: Vehicle): UnevenMass | null {
  const { totalKg, leftKg, rightKg, centreUm } = mass;
  const heavyKg = Math.max(leftKg, rightKg);
  if (centreUm === null || heavyKg / totalKg <= UNEVEN_SHARE) return null;
  const widthUm = widthAtUm(vehicle, 0);
  const asideUm = Math.round(Math.abs(centreUm.y - widthUm / 2));
  return {
    heavy: leftKg > rightKg ? 'left' : 'right',
    heavyKg,
    totalKg,
    percent: Math.round((100 * heavyKg) / totalKg),
    asideUm,
    evenedByKg: (totalKg * asideUm) / (widthUm / 4),
  };
}
