import type { Furniture } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Order } from '../model/order.ts';

/** Mass of the driver and of each passenger in kg: (EU) 1230/2012, Annex I, A 2.6.2.1. */
export const PERSON_KG = 75;

/** Least pay-mass in kg for every person, and for every metre of overall length; see `leastPayMassKg`. */
export const LEAST_KG_EACH = 10;

const UM_PER_M = 1_000_000;

/**
 * The least pay-mass of a motor caravan in kg, for what its persons bring: 10 · (n + L), where n counts the persons with
 * the driver and L is the overall length in m. Source: (EU) 1230/2012, Annex I, part A, 2.6.4.1.2; the handbook rule of
 * EN 1646-2 is the same. The regulation was replaced by (EU) 2021/535 from July 2022: an inspector says what holds.
 */
export function leastPayMassKg(persons: number, overallLengthUm: Um): number {
  return (LEAST_KG_EACH * (persons * UM_PER_M + overallLengthUm)) / UM_PER_M;
}

/** Whose count of persons it is: the order's, the layout's choices, its seats, or nobody's, so that only the driver is certain. */
export type PersonsFrom = 'order' | 'choices' | 'seats' | 'driver alone';

export interface Persons {
  /** With the driver, at least 1. */
  readonly count: number;
  readonly from: PersonsFrom;
}

/**
 * Who rides: as the order says, or else as was chosen of the layout, or else as many as the layout has seats for, or else
 * the driver.
 */
export function personsOf(
  order: Pick<Order, 'persons'>,
  furniture: Pick<Furniture, 'persons' | 'seats'>,
): Persons {
  if (order.persons !== undefined) return { count: order.persons, from: 'order' };
  if (furniture.persons !== undefined) return { count: furniture.persons, from: 'choices' };
  if (furniture.seats !== undefined) return { count: furniture.seats, from: 'seats' };
  return { count: 1, from: 'driver alone' };
}

/** Where the payload of a vehicle goes, in kg. A vehicle in running order has its driver in it already. */
export interface PayloadAccount {
  readonly payloadKg: number;
  readonly furnitureKg: number;
  /** Those whose mass the library has. */
  readonly appliancesKg: number;
  /** With the driver, at least 1. */
  readonly persons: number;
  readonly personsFrom: PersonsFrom;
  /** All persons but the driver. */
  readonly passengersKg: number;
  /** Payload less furniture, appliances and passengers: for the rest of the conversion and what is loaded; negative where it is overdrawn. */
  readonly leftKg: number;
  readonly overallLengthUm: Um;
  /** What must be kept of it for what the persons bring. */
  readonly leastKg: number;
  /** Left for the rest of the conversion once that is kept; negative where it cannot be kept. */
  readonly restKg: number;
}

/** Holds furniture, its appliances and persons against the payload that the vehicle's file states. */
export function payloadAccount(
  vehicle: { readonly payloadKg: number; readonly overallLengthUm: Um },
  mass: { readonly furnitureKg: number; readonly appliancesKg: number },
  persons: Persons,
): PayloadAccount {
  const { payloadKg, overallLengthUm } = vehicle;
  const { furnitureKg, appliancesKg } = mass;
  const passengersKg = PERSON_KG * (persons.count - 1);
  const leftKg = payloadKg - furnitureKg - appliancesKg - passengersKg;
  const leastKg = leastPayMassKg(persons.count, overallLengthUm);
  return {
    payloadKg,
    furnitureKg,
    appliancesKg,
    persons: persons.count,
    personsFrom: persons.from,
    passengersKg,
    leftKg,
    overallLengthUm,
    leastKg,
    restKg: leftKg - leastKg,
  };
}
