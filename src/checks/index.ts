import type { Finding } from '../model/finding.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { checkAppliances } from './appliances.ts';
import { checkAssembly } from './assembly.ts';
import { checkDrilling } from './drilling.ts';
import { checkEdgeDrilling } from './edgeDrilling.ts';
import { checkFit } from './fit.ts';
import { checkMass } from './mass.ts';
import { checkSag } from './sag.ts';
import { checkSawing } from './sawing.ts';

/**
 * Everything that can be wrong with furniture whose sizes are known: units that cannot be put together, units that do not
 * fit into the vehicle or stand through each other, mass, shelves that sag, appliances
 * without the room that they ask for, and parts too small to be sawn or edged. All findings at once,
 * in sentences with millimetres; none when the furniture can be built.
 */
export function checkFurniture(furniture: Furniture, order: Order, library: Library): Finding[] {
  const vehicle = library.vehicles.get(order.vehicle);
  const saw = library.saws.get(order.saw);
  return [
    ...furniture.units.flatMap(checkAssembly),
    ...furniture.units.flatMap((unit) => unit.panels.flatMap(checkDrilling)),
    ...furniture.units.flatMap((unit) => unit.panels.flatMap(checkEdgeDrilling)),
    ...checkSag(furniture, library),
    ...checkAppliances(furniture, vehicle, library),
    ...(vehicle === undefined ? [] : checkFit(furniture, vehicle)),
    ...(vehicle === undefined ? [] : checkMass(furniture, vehicle, order, library)),
    ...(saw === undefined ? [] : checkSawing(furniture, saw)),
  ];
}
