import { furnitureMass } from '../basics/furnitureMass.ts';
import { payloadOf } from '../documents/payloadLines.ts';
import { toldCautions } from '../documents/toldCautions.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { OrderedFurniture } from './job.ts';

/** What a checked order is told to have, beside its findings. Masses in kg, for one vehicle or room. */
export interface AboutOrder {
  /** Cautions that apply, by title, with the units that bring them. */
  readonly cautions: readonly {
    readonly caution: string;
    readonly title: string;
    readonly units: readonly string[];
  }[];
  readonly mass: {
    /** With the appliances whose mass is known. */
    readonly furnitureKg: number;
    readonly appliancesKg: number;
    readonly leftKg: number;
    readonly rightKg: number;
    readonly frontKg: number;
    readonly rearKg: number;
    /** Absent for a room. */
    readonly payload?: {
      readonly payloadKg: number;
      readonly persons: number;
      readonly leftKg: number;
      readonly leastKg: number;
    };
  };
}

/** Cautions and mass of an order whose furniture is worked out. Throws when its vehicle is not in the library. */
export function aboutOrder(ordered: OrderedFurniture): AboutOrder {
  const { order, library, furniture } = ordered;
  const vehicle = library.vehicles.get(order.vehicle);
  if (vehicle === undefined) throw new Error(`the vehicle ${order.vehicle} is not in the library`);
  const { totalKg, appliancesKg, leftKg, rightKg, frontKg, rearKg } = furnitureMass(
    furniture,
    vehicle,
    library,
  );
  const account = payloadOf(ordered);
  const payload = account && {
    payloadKg: account.payloadKg,
    persons: account.persons,
    leftKg: account.leftKg,
    leastKg: account.leastKg,
  };
  return {
    cautions: toldCautions(ordered, wordsOf('en').cautions).map(({ caution, title, units }) => ({
      caution,
      title,
      units,
    })),
    mass: {
      furnitureKg: totalKg,
      appliancesKg,
      leftKg,
      rightKg,
      frontKg,
      rearKg,
      ...(payload === null ? {} : { payload }),
    },
  };
}
