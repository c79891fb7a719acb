import { checkFurniture } from '../checks/index.ts';
import type { Finding } from '../model/finding.ts';
import type { Library, UnitDefinition } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { makePanels } from '../panels/index.ts';
import { unitConstants } from '../units/index.ts';
import { expandUnitAlone, type OtherValue, otherValuesOf } from '../units/unitAlone.ts';

/** Values that do not go together with the other defaults: the unit itself refuses them, which is no fault of it. */
const REFUSALS = new Set(['out-of-range', 'count-wrong', 'must-not-met']);

/** What stops a unit from being built, by itself, of the boards that an order gives its roles. */
function errorsOf(unit: UnitDefinition, other: OtherValue | null, order: Order, library: Library): Finding[] {
  const vehicle = library.vehicles.get(order.vehicle);
  if (vehicle === undefined) return [];
  const expanded = expandUnitAlone(unit, other, library, unitConstants(order, library));
  if (!expanded.ok) {
    const refused = other !== null && expanded.findings.some(({ code }) => REFUSALS.has(code));
    return refused ? [] : [...expanded.findings];
  }
  const whole = { order: order.id, count: 1, vehicle, units: [expanded.value] };
  const furniture = makePanels(whole, order, library);
  if (!furniture.ok) return [...furniture.findings];
  // It stands nowhere, so there is nothing to fit into.
  const nowhere = { ...order, vehicle: '' };
  return checkFurniture(furniture.value, nowhere, library).filter(({ severity }) => severity === 'error');
}

function shown({ parameter, value }: OtherValue): string {
  return `${parameter} = ${typeof value === 'number' ? Math.round(value * 1000) / 1000 : value}`;
}

/**
 * What is wrong with units by themselves, made of the boards that `order` gives the roles: with their defaults, then
 * with the least and the most of each parameter and with each choice, where the unit allows it beside its other
 * defaults. A fault is told once, with the first values that show it.
 */
export function checkUnitsAlone(units: Iterable<UnitDefinition>, order: Order, library: Library): Finding[] {
  const told: Finding[] = [];
  const tell = (unit: UnitDefinition, finding: Finding, values: string) => {
    const place = finding.place ?? { file: unit.file };
    const known = told.some(
      (other) =>
        other.code === finding.code && other.place?.file === place.file && other.place.line === place.line,
    );
    if (!known) told.push({ ...finding, place, message: `${finding.message} (${unit.id} ${values})` });
  };
  for (const unit of units) {
    for (const finding of errorsOf(unit, null, order, library)) tell(unit, finding, 'with its defaults');
    for (const other of otherValuesOf(unit, unitConstants(order, library))) {
      for (const finding of errorsOf(unit, other, order, library))
        tell(unit, finding, `with ${shown(other)}`);
    }
  }
  return told;
}
