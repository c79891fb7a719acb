import { axes, extentSize, movedBox, turnedBox } from '../basics/boxes.ts';
import type { FormulaScope } from '../basics/formulaScope.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { ExpandedUnit } from '../model/expanded.ts';
import type { Finding, Place } from '../model/finding.ts';
import type { Facing } from '../model/geometry.ts';
import type { Formula, LayoutDefinition, UnitDefinition, UnitUse } from '../model/library.ts';
import type { Order, OrderChange } from '../model/order.ts';
import { expandUnit, type UnitSurroundings, unknownUnit } from './expandUnit.ts';
import { runs } from './repeats.ts';

interface Placing {
  readonly name: string;
  readonly baseName: string;
  readonly unit: string;
  readonly place: Place;
  readonly facing: Facing;
  readonly at: UnitUse['at'];
  readonly set: ReadonlyMap<string, Formula>;
  readonly scope: FormulaScope;
}

type SetChange = OrderChange & { readonly kind: 'set' };

/** Units of the layout and those the order adds, less those it leaves out, each where it stands in the vehicle. */
export function placeUnits(
  order: Order,
  layout: LayoutDefinition,
  scope: FormulaScope,
  surroundings: UnitSurroundings,
): ExpandedUnit[] {
  const fromLayout = layout.units.flatMap((use) => placingsOf(use, scope));
  const added = order.changes.flatMap((change) =>
    change.kind === 'add' ? [addedPlacing(change, scope)] : [],
  );
  const all = [...fromLayout, ...added];
  const known = [...layout.units.map((use) => use.name), ...all.map((placing) => placing.name)];
  for (const change of order.changes) checkTarget(change, known, surroundings.findings);
  checkNames(all, surroundings.findings);
  const leftOut = order.changes.flatMap((change) => (change.kind === 'leave out' ? [change.unit] : []));
  const sets = order.changes.filter((change): change is SetChange => change.kind === 'set');
  return all
    .filter((placing) => !leftOut.some((name) => goesBy(placing, name)))
    .flatMap((placing) => placeUnit(placing, sets, scope, surroundings));
}

function goesBy(placing: Placing, name: string): boolean {
  return placing.name === name || placing.baseName === name;
}

function placingsOf(use: UnitUse, scope: FormulaScope): Placing[] {
  return runs(use.repeat, scope).flatMap((run) => {
    if (run.scope.condition(use.when) !== true) return [];
    const { unit, place, facing, at, set } = use;
    return [
      {
        name: `${use.name}${run.ending}`,
        baseName: use.name,
        unit,
        place,
        facing,
        at,
        set,
        scope: run.scope,
      },
    ];
  });
}

function addedPlacing(change: OrderChange & { readonly kind: 'add' }, scope: FormulaScope): Placing {
  const { name, unit, place, facing, at, set } = change;
  return { name, baseName: name, unit, place, facing, at, set, scope };
}

function placeUnit(
  placing: Placing,
  sets: readonly SetChange[],
  scope: FormulaScope,
  surroundings: UnitSurroundings,
): ExpandedUnit[] {
  const definition: UnitDefinition | undefined = surroundings.library.units.get(placing.unit);
  if (definition === undefined) {
    surroundings.findings.push(unknownUnit(placing.unit, placing.place, surroundings.library));
    return [];
  }
  const asked = [
    { set: placing.set, scope: placing.scope },
    ...sets.filter((change) => goesBy(placing, change.unit)).map((change) => ({ set: change.set, scope })),
  ];
  const body = expandUnit({ definition, asked, name: placing.name, within: [] }, surroundings);
  const at = { x: 0, y: 0, z: 0 };
  let placed = true;
  for (const axis of axes) {
    const um = placing.scope.lengthUm(placing.at[axis]);
    if (um === undefined) placed = false;
    else at[axis] = um;
  }
  if (body.outside === null || !placed) return [];
  const turned = turnedBox(body.outside, placing.facing);
  return [
    {
      name: placing.name,
      unit: placing.unit,
      place: placing.place,
      facing: placing.facing,
      parameters: body.parameters,
      outside: body.outside,
      placeOutside: movedBox(
        {
          x: [0, extentSize(turned.x)],
          y: [0, extentSize(turned.y)],
          z: [0, extentSize(turned.z)],
        },
        at,
      ),
      panels: body.panels,
      hangings: body.hangings,
      ...(body.assembly === undefined ? {} : { assembly: body.assembly }),
      fittings: body.fittings,
      appliances: body.appliances,
      cautions: body.cautions,
    },
  ];
}

function checkTarget(change: OrderChange, known: readonly string[], findings: Finding[]): void {
  if (change.kind === 'add' || known.includes(change.unit)) return;
  const nearest = nearestWord(change.unit, known);
  findings.push({
    code: 'unknown-unit',
    severity: 'error',
    message: `the layout places no unit named “${change.unit}”`,
    place: change.place,
    found: change.unit,
    ...(nearest === undefined ? {} : { nearest }),
  });
}

function checkNames(all: readonly Placing[], findings: Finding[]): void {
  const seen = new Set<string>();
  for (const placing of all) {
    if (seen.has(placing.name)) {
      findings.push({
        code: 'name-taken',
        severity: 'error',
        message: `two units are named “${placing.name}”`,
        place: placing.place,
        found: placing.name,
        advice: 'give the added unit another name with `as`',
      });
    }
    seen.add(placing.name);
  }
}
