import { CAUTIONS, type KnownCaution } from '../model/cautions.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { isRoom } from './vehicleSection.ts';

/** A caution that applies to a job. */
export interface AppliedCaution {
  /** A word of the program, or of the library. */
  readonly caution: string;
  /** Units that bring it, as placed and in their order; none where the job, its vehicle or its layout brings it. */
  readonly units: readonly string[];
}

const EVERY_JOB: readonly KnownCaution[] = ['saw', 'dust', 'edges'];
const EVERY_VEHICLE: readonly KnownCaution[] = ['fixing', 'latches', 'overloading'];

/** What an order is made of, as far as its cautions go. */
export interface CautionedOrder {
  readonly order: Pick<Order, 'vehicle'>;
  readonly furniture: Furniture;
  readonly library: Pick<Library, 'vehicles' | 'fittings' | 'cautions'>;
}

/**
 * The cautions that apply to a job, each once, in the order of the program's list and then of the library's: those of
 * every job, those of every vehicle where the order is for one, and those that its units, their fittings and its layout
 * bring. A plain list has no order.
 */
export function cautionsOf(ordered: CautionedOrder | undefined): AppliedCaution[] {
  const applied = new Map<string, string[]>(EVERY_JOB.map((caution) => [caution, []]));
  const bring = (caution: string, unit?: string) => {
    const units = applied.get(caution) ?? [];
    if (unit !== undefined && !units.includes(unit)) units.push(unit);
    applied.set(caution, units);
  };
  if (ordered !== undefined) {
    const { order, furniture, library } = ordered;
    const vehicle = library.vehicles.get(order.vehicle);
    if (vehicle !== undefined && !isRoom(vehicle)) for (const caution of EVERY_VEHICLE) bring(caution);
    for (const caution of furniture.cautions ?? []) bring(caution);
    for (const unit of furniture.units) {
      for (const caution of unit.cautions ?? []) bring(caution, unit.name);
      for (const { fitting } of unit.fittings) {
        for (const caution of library.fittings.get(fitting)?.cautions ?? []) bring(caution, unit.name);
      }
    }
  }
  const known = new Set([...CAUTIONS, ...(ordered?.library.cautions?.keys() ?? []), ...applied.keys()]);
  return [...known].flatMap((caution) => {
    const units = applied.get(caution);
    return units === undefined ? [] : [{ caution, units }];
  });
}
