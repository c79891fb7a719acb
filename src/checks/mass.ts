import { type FurnitureMass, furnitureMass } from '../basics/furnitureMass.ts';
import { UM_PER_MM } from '../basics/lengths.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Fitting, Vehicle } from '../model/library.ts';

/** One side with more than this share of the furniture's mass is worth a word. Common practice, no source. */
const UNEVEN_SHARE = 0.6;
const UM_PER_M = 1000 * UM_PER_MM;

/**
 * Mass against the vehicle's payload, and side to side. The least pay-mass is 10 kg for every person and for every metre
 * of overall length: (EU) 1230/2012 Annex I, A 2.6.4.1.2; taken here for the driver alone, as no order says how many ride.
 */
export function checkMass(
  furniture: Furniture,
  vehicle: Vehicle,
  fittings: ReadonlyMap<string, Fitting>,
  place: Place,
): Finding[] {
  // A room stands still and bears what is put into it.
  if (vehicle.payloadKg === null) return [];
  const mass = furnitureMass(furniture, vehicle, fittings);
  return [...payloadFindings(mass, vehicle, vehicle.payloadKg, place), ...sideFindings(mass, place)];
}

function kg(massKg: number): string {
  return `${massKg.toFixed(1)} kg`;
}

function payloadFindings(mass: FurnitureMass, vehicle: Vehicle, payloadKg: number, place: Place): Finding[] {
  const leftOverKg = payloadKg - mass.totalKg;
  if (leftOverKg < 0) {
    const message = `the furniture weighs ${kg(mass.totalKg)}, which is ${kg(-leftOverKg)} more than the payload of ${vehicle.title}`;
    return [
      {
        code: 'over-payload',
        severity: 'error',
        message,
        place,
        advice: 'leave units out or take lighter boards',
      },
    ];
  }
  const leastKg = 10 * (1 + vehicle.overallLengthUm / UM_PER_M);
  if (leftOverKg >= leastKg) return [];
  const message = `the furniture weighs ${kg(mass.totalKg)} and leaves ${kg(leftOverKg)} of the payload of ${vehicle.title}; a motor caravan must keep at least ${kg(leastKg)} for the driver's load alone`;
  return [{ code: 'little-payload', severity: 'warning', message, place }];
}

function sideFindings(mass: FurnitureMass, place: Place): Finding[] {
  if (mass.totalKg === 0) return [];
  const heavy = mass.leftKg > mass.rightKg ? 'left' : 'right';
  const heavyKg = Math.max(mass.leftKg, mass.rightKg);
  if (heavyKg / mass.totalKg <= UNEVEN_SHARE) return [];
  const percent = Math.round((100 * heavyKg) / mass.totalKg);
  const message = `the ${heavy} side carries ${kg(heavyKg)} of ${kg(mass.totalKg)}, ${percent} % of the furniture`;
  const advice = 'place the water tank, battery and other heavy things on the other side';
  return [{ code: 'uneven-mass', severity: 'caution', message, place, advice }];
}
