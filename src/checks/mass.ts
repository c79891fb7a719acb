import { type FurnitureMass, furnitureAndAppliances, furnitureMass } from '../basics/furnitureMass.ts';
import { printMmShort } from '../basics/lengths.ts';
import {
  LEAST_KG_EACH,
  type PayloadAccount,
  PERSON_KG,
  payloadAccount,
  personsOf,
} from '../basics/payload.ts';
import { unevenMass } from '../basics/unevenMass.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Library, Vehicle } from '../model/library.ts';
import type { Order } from '../model/order.ts';

/**
 * Mass against the vehicle's payload, with those who ride and what must be kept for what they bring (see
 * `payloadAccount`), and side to side.
 */
export function checkMass(furniture: Furniture, vehicle: Vehicle, order: Order, library: Library): Finding[] {
  const { payloadKg } = vehicle;
  const onRoof = roofFindings(order, vehicle);
  // A room stands still and bears what is put into it.
  if (payloadKg === null) return onRoof;
  const mass = furnitureMass(furniture, vehicle, library);
  const account = payloadAccount(
    { ...vehicle, payloadKg },
    furnitureAndAppliances(mass),
    personsOf(order, furniture),
  );
  const found = [
    ...seatFindings(account, furniture),
    ...payloadFindings(account, vehicle),
    ...onRoof,
    ...roofLoadFindings(account, order, vehicle),
    ...sideFindings(mass, vehicle),
  ];
  return found.map((finding) => ({ ...finding, place: order.place }));
}

/** What is to lie on the roof against what it bears. */
function roofFindings(order: Order, vehicle: Vehicle): Finding[] {
  const { onRoofKg, place } = order;
  const { roofBearsKg: bearsKg, title } = vehicle;
  if (onRoofKg === undefined) return [];
  if (bearsKg === undefined) {
    const message = `${kg(onRoofKg)} are to lie on the roof, and the file of ${title} does not say what it bears`;
    const advice =
      'write `roof bears` into that file, as the papers of the vehicle, its roof or its carriers have it';
    return [{ code: 'roof-unknown', severity: 'warning', message, place, advice }];
  }
  if (onRoofKg <= bearsKg) return [];
  const message = `${kg(onRoofKg)} are to lie on the roof, which is ${kg(onRoofKg - bearsKg)} more than that of ${title} bears`;
  return [
    {
      code: 'over-roof',
      severity: 'error',
      message,
      place,
      advice: 'leave things at home or stow them inside',
    },
  ];
}

/** What lies on the roof is a part of the load and must find room in what is left of the payload. */
function roofLoadFindings({ leftKg }: PayloadAccount, { onRoofKg }: Order, { title }: Vehicle): Finding[] {
  if (onRoofKg === undefined || leftKg < 0 || onRoofKg <= leftKg) return [];
  const message = `${kg(onRoofKg)} are to lie on the roof, and only ${kg(leftKg)} are left of the payload of ${title}`;
  return [{ code: 'little-payload', severity: 'warning', message, advice: 'leave things at home' }];
}

function kg(massKg: number): string {
  return `${massKg.toFixed(1)} kg`;
}

function ridersPhrase(account: PayloadAccount): string {
  const passengers = account.persons - 1;
  if (passengers === 0) return 'with the driver alone';
  const each =
    passengers === 1 ? `1 passenger of ${PERSON_KG} kg` : `${passengers} passengers of ${PERSON_KG} kg each`;
  return `with the driver and ${each}`;
}

function seatFindings({ persons }: PayloadAccount, { seats }: Furniture): Finding[] {
  if (seats === undefined || persons <= seats) return [];
  const message = `${persons} persons ride, the driver included, and the layout has seats for ${seats}`;
  const advice =
    'only a seat whose belts are proved with the vehicle is a seat for the road; let fewer persons ride';
  return [{ code: 'few-seats', severity: 'warning', message, advice }];
}

/** `the furniture weighs 40.8 kg`, or with the appliances whose mass is known. */
function weighs({ furnitureKg, appliancesKg }: PayloadAccount): string {
  return appliancesKg === 0
    ? `the furniture weighs ${kg(furnitureKg)}`
    : `the furniture weighs ${kg(furnitureKg + appliancesKg)}, its appliances included`;
}

function payloadFindings(account: PayloadAccount, vehicle: Vehicle): Finding[] {
  const { payloadKg, furnitureKg, appliancesKg, leftKg, leastKg, persons } = account;
  const overKg = furnitureKg + appliancesKg - payloadKg;
  if (overKg > 0) {
    const message = `${weighs(account)}, which is ${kg(overKg)} more than the payload of ${vehicle.title}`;
    const advice = 'leave units out or take lighter boards';
    return [{ code: 'over-payload', severity: 'error', message, advice }];
  }
  if (leftKg >= leastKg) return [];
  const lengthMm = printMmShort(account.overallLengthUm);
  const rule = `${LEAST_KG_EACH} kg for each of ${persons} ${persons === 1 ? 'person' : 'persons'} and for each metre of its ${lengthMm} mm`;
  const outcome =
    leftKg < 0
      ? `${kg(-leftKg)} are missing of the payload of ${vehicle.title}`
      : `${kg(leftKg)} are left of the payload of ${vehicle.title}`;
  const message = `${weighs(account)}; ${ridersPhrase(account)}, ${outcome}, where at least ${kg(leastKg)} must be kept: ${rule}`;
  const advice =
    'furniture is not all of the conversion: other appliances, battery, tanks, insulation and cushions weigh too; leave units out, take lighter boards, or let fewer persons ride';
  return [{ code: 'little-payload', severity: 'warning', message, advice }];
}

function sideFindings(mass: FurnitureMass, vehicle: Vehicle): Finding[] {
  const uneven = unevenMass(mass, vehicle);
  if (uneven === null) return [];
  const { heavy, heavyKg, totalKg, percent, asideUm, evenedByKg } = uneven;
  const what = mass.appliancesKg === 0 ? 'the furniture' : 'furniture and appliances';
  const aside = printMmShort(Math.round(asideUm / 1000) * 1000);
  const message = `the ${heavy} side carries ${kg(heavyKg)} of ${kg(totalKg)}, ${percent} % of ${what}; ${mass.appliancesKg === 0 ? 'its' : 'their'} centre of mass lies ${aside} mm ${heavy} of the middle`;
  const advice = `place the water tank, battery and other heavy things on the other side: ${Math.round(evenedByKg)} kg half-way to its wall even it out`;
  return [{ code: 'uneven-mass', severity: 'caution', message, advice }];
}
