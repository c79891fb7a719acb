import { type APPLIANCE_FIGURES, applianceName, type LayoutWall } from '../basics/evaluateFormula.ts';
import { FormulaScope } from '../basics/formulaScope.ts';
import type { FormulaValue } from '../basics/formulas.ts';
import { mmToUm, UM_PER_INCH, UM_PER_MM, umToMm } from '../basics/lengths.ts';
import { freeAcrossUm, placeWord, widthAtUm } from '../basics/vehicleSection.ts';
import type { ExpandedOrder } from '../model/expanded.ts';
import type { Checked, Finding } from '../model/finding.ts';
import {
  APPLIANCE_SIDES,
  type Appliance,
  type Formula,
  type LayoutDefinition,
  type Library,
  type ParameterValue,
  type Vehicle,
} from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { cautionsThatHold } from './cautions.ts';
import type { UnitSurroundings } from './expandUnit.ts';
import { checkMusts } from './musts.ts';
import { placeUnits } from './placeUnits.ts';
import { settleParameters } from './settleParameters.ts';

const MOST_SEATS = 100;

/**
 * From an order and its library to units standing in the vehicle, every panel a box in whole µm. Choices of the layout
 * are settled first, then the units it places with the order's changes, then the panels of each and of the units inside
 * them. All findings come at once: wrong formulas and names, parameters out of their range, musts that do not hold.
 */
export function expandOrder(order: Order, library: Library): Checked<ExpandedOrder> {
  const findings: Finding[] = [];
  const layout = library.layouts.get(order.layout);
  const vehicle = library.vehicles.get(order.vehicle);
  if (layout === undefined) findings.push(missing('layout', order.layout, order));
  if (vehicle === undefined) findings.push(missing('vehicle', order.vehicle, order));
  if (layout === undefined || vehicle === undefined) return { ok: false, findings };
  checkVehicle(layout, vehicle, order, findings);

  const constants = unitConstants(order, library);
  const { scope } = settleLayout(order, layout, vehicle, constants, findings);
  checkMusts(layout.musts, scope, `the layout ${layout.id}`);
  const surroundings: UnitSurroundings = { library, constants, findings };
  const units = placeUnits(order, layout, scope, surroundings);
  const seats = ridersOf(layout.seats, 'seats', scope);
  const persons = ridersOf(layout.persons, 'persons', scope);
  const sleepingPlaces =
    layout.sleepingPlaces === undefined ? undefined : scope.count(layout.sleepingPlaces, MOST_SEATS);
  const whole = {
    ...(seats === undefined ? {} : { seats }),
    ...(persons === undefined ? {} : { persons }),
    ...(sleepingPlaces === undefined ? {} : { sleepingPlaces }),
    cautions: cautionsThatHold(layout.cautions, scope),
  };
  if (findings.some((finding) => finding.severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { order: order.id, count: order.count, vehicle, units, ...whole }, findings };
}

/** What the choices of an order's layout come to, by name, defaults included; none where the layout or the vehicle is unknown. */
export function settledChoices(order: Order, library: Library): ReadonlyMap<string, ParameterValue> {
  const layout = library.layouts.get(order.layout);
  const vehicle = library.vehicles.get(order.vehicle);
  if (layout === undefined || vehicle === undefined) return new Map();
  return settleLayout(order, layout, vehicle, unitConstants(order, library), []).values;
}

function applianceFigures(appliance: Appliance): (readonly [(typeof APPLIANCE_FIGURES)[number], number])[] {
  const { clearUm, airCm2, openingUm } = appliance;
  return [
    ['width', umToMm(appliance.widthUm)],
    ['depth', umToMm(appliance.depthUm)],
    ['height', umToMm(appliance.heightUm)],
    ['opening width', umToMm(openingUm?.width ?? appliance.widthUm)],
    ['opening depth', umToMm(openingUm?.depth ?? appliance.depthUm)],
    ...APPLIANCE_SIDES.map((side) => [side, umToMm(clearUm[side])] as const),
    ['air in', airCm2.in],
    ['air out', airCm2.out],
  ];
}

/**
 * What every unit's formulas may use: the inch, the real thickness of the board that the order gives each role, and the
 * figures of appliances.
 */
export function unitConstants(order: Order, library: Library): Map<string, FormulaValue> {
  const constants = new Map<string, FormulaValue>([['inch', UM_PER_INCH / UM_PER_MM]]);
  for (const [role, choice] of order.roles) {
    const board = library.boards.get(choice.board);
    if (board !== undefined) constants.set(`thickness.${role}`, umToMm(board.thicknessUm));
  }
  for (const appliance of library.appliances?.values() ?? []) {
    for (const [figure, value] of applianceFigures(appliance)) {
      constants.set(applianceName(appliance.id, figure), value);
    }
  }
  return constants;
}

/** How many ride or can ride, the driver among them. */
function ridersOf(
  formula: Formula | undefined,
  what: 'seats' | 'persons',
  scope: FormulaScope,
): number | undefined {
  if (formula === undefined) return undefined;
  const count = scope.count(formula, MOST_SEATS);
  if (count !== 0) return count;
  const message = `nobody would drive: the ${what} come to 0`;
  scope.findings.push({ code: 'count-wrong', severity: 'error', message, place: formula.place });
  return undefined;
}

function settleLayout(
  order: Order,
  layout: LayoutDefinition,
  vehicle: Vehicle,
  constants: ReadonlyMap<string, FormulaValue>,
  findings: Finding[],
) {
  const known = new Map(constants)
    .set('vehicle.length', umToMm(vehicle.insideLengthUm))
    .set('vehicle.height', umToMm(vehicle.insideHeightUm))
    .set('vehicle.width', umToMm(widthAtUm(vehicle, 0)))
    .set('vehicle.width_at_top', umToMm(widthAtUm(vehicle, vehicle.insideHeightUm)));
  const wall: LayoutWall = (fromMm, toMm) =>
    umToMm(freeAcrossUm(vehicle, mmToUm(Math.min(fromMm, toMm)), mmToUm(Math.max(fromMm, toMm)))[0]);
  const orderScope = new FormulaScope(known, new Map(), findings, wall);
  const settled = settleParameters(
    {
      owner: `the layout ${layout.id}`,
      definitions: layout.choices,
      asked: [{ set: order.choices, scope: orderScope }],
    },
    known,
    layout.names,
    findings,
    (values, formulas, into) => new FormulaScope(values, formulas, into, wall),
  );
  for (const name of layout.names.keys()) settled.scope.lookUp(name);
  return settled;
}

function checkVehicle(layout: LayoutDefinition, vehicle: Vehicle, order: Order, findings: Finding[]): void {
  if (layout.vehicles.includes(vehicle.id)) return;
  findings.push({
    code: 'vehicle-not-for-layout',
    severity: 'error',
    message: `the layout ${layout.id} is not drawn for the ${placeWord([vehicle])} ${vehicle.id}`,
    place: order.place,
    found: vehicle.id,
    expected: `one of ${layout.vehicles.join(', ')}`,
  });
}

function missing(what: string, id: string, order: Order): Finding {
  const message = `the library has no ${what} “${id}”`;
  return { code: `unknown-${what}`, severity: 'error', message, place: order.place, found: id };
}
