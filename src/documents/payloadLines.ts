import { furnitureAndAppliances, furnitureMass } from '../basics/furnitureMass.ts';
import { printMmShort } from '../basics/lengths.ts';
import {
  LEAST_KG_EACH,
  type PayloadAccount,
  PERSON_KG,
  payloadAccount,
  personsOf,
} from '../basics/payload.ts';
import { unevenMass } from '../basics/unevenMass.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import type { MassWords } from './words/massWords.ts';

/** One line of the sum, its mass in kg as printed; what is taken off has a minus sign. */
export interface PayloadLine {
  readonly what: string;
  readonly kg: string;
}

/** An account of the payload with the title of its vehicle. */
export interface TitledAccount extends PayloadAccount {
  readonly vehicle: string;
}

/** Where the payload of an order's vehicle goes; null for a room. */
export function payloadOf(ordered: {
  readonly order: Order;
  readonly library: Library;
  readonly furniture: Furniture;
}): TitledAccount | null {
  const { order, library, furniture } = ordered;
  const vehicle = library.vehicles.get(order.vehicle);
  const payloadKg = vehicle?.payloadKg ?? null;
  if (vehicle === undefined || payloadKg === null) return null;
  const mass = furnitureAndAppliances(furnitureMass(furniture, vehicle, library));
  const account = payloadAccount({ ...vehicle, payloadKg }, mass, personsOf(order, furniture));
  return { ...account, vehicle: vehicle.title };
}

/** What is to be said where one side carries much more than the other; empty where neither does, and for a room. */
export function unevenText(
  ordered: { readonly order: Order; readonly library: Library; readonly furniture: Furniture },
  words: MassWords,
): string[] {
  const vehicle = ordered.library.vehicles.get(ordered.order.vehicle);
  if (vehicle === undefined || vehicle.payloadKg === null) return [];
  const uneven = unevenMass(furnitureMass(ordered.furniture, vehicle, ordered.library), vehicle);
  if (uneven === null) return [];
  const { heavy, percent, asideUm, evenedByKg } = uneven;
  const aside = `${printMmShort(Math.round(asideUm / 1000) * 1000)} mm`;
  return [words.uneven(heavy, percent, aside, String(Math.round(evenedByKg)))];
}

/**
 * Where the payload goes, line by line. Every mass is rounded to 0.1 kg to the safe side before the sum is done, so that
 * the printed figures add up.
 */
export function payloadLines(account: TitledAccount, words: MassWords): PayloadLine[] {
  const payload = Math.floor(account.payloadKg * 10 + 1e-6);
  const up = (kg: number) => Math.ceil(kg * 10 - 1e-6);
  const furniture = up(account.furnitureKg);
  const appliances = up(account.appliancesKg);
  const passengers = up(account.passengersKg);
  const least = up(account.leastKg);
  const left = payload - furniture - appliances - passengers;
  const print = (tenths: number) => (tenths / 10).toFixed(1).replace('-', '−');
  const lengthM = String(account.overallLengthUm / 1_000_000);
  return [
    { what: words.payload(account.vehicle), kg: print(payload) },
    { what: words.furniture, kg: print(-furniture) },
    ...(appliances === 0 ? [] : [{ what: words.appliances, kg: print(-appliances) }]),
    { what: words.passengers(account.persons - 1, PERSON_KG), kg: print(-passengers) },
    { what: words.left, kg: print(left) },
    { what: words.least(account.persons, lengthM, LEAST_KG_EACH), kg: print(least) },
    { what: words.rest, kg: print(left - least) },
  ];
}
