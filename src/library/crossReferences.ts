import { errorFinding } from '../basics/findings.ts';
import { settleValues } from '../basics/parameterValues.ts';
import type { Finding } from '../model/finding.ts';
import type { LayoutDefinition, Library, UnitDefinition, UnitUse } from '../model/library.ts';

/** Names that a formula in a unit or layout can use, beside a repeat's counter. */
function identifiersOf(
  names: Iterable<string>,
  parameters: readonly { readonly name: string }[],
): Set<string> {
  return new Set([
    ...names,
    ...parameters.map((parameter) => parameter.name),
    'inch',
    'thickness',
    'vehicle',
  ]);
}

/** The use with its values ready to be evaluated, once the unit it names is known. */
function settleUse(
  use: UnitUse,
  identifiers: ReadonlySet<string>,
  library: Library,
  flawed: ReadonlySet<string>,
  findings: Finding[],
): UnitUse {
  const unit = library.units.get(use.unit);
  if (unit === undefined || flawed.has(unit.file)) return use;
  const scope = {
    what: `a parameter of the unit \`${unit.id}\``,
    parameters: unit.parameters,
    identifiers: use.repeat === null ? identifiers : new Set([...identifiers, use.repeat.counter]),
  };
  const settled = settleValues(use.set, scope);
  findings.push(...settled.findings);
  return { ...use, set: settled.values };
}

/**
 * Checks the parameters and choices that units and layouts set in units, and gives them back with the values of `set`
 * ready to be evaluated. `flawed`: files with errors of their own, whose parameters may be missing for that.
 */
export function settleUses(
  library: Library,
  flawed: ReadonlySet<string>,
): {
  readonly units: ReadonlyMap<string, UnitDefinition>;
  readonly layouts: ReadonlyMap<string, LayoutDefinition>;
  readonly findings: readonly Finding[];
} {
  const findings: Finding[] = [];
  const units = new Map<string, UnitDefinition>();
  for (const [id, unit] of library.units) {
    const identifiers = identifiersOf(unit.names.keys(), unit.parameters);
    const uses = unit.units.map((use) => settleUse(use, identifiers, library, flawed, findings));
    units.set(id, { ...unit, units: uses });
  }
  const layouts = new Map<string, LayoutDefinition>();
  for (const [id, layout] of library.layouts) {
    const identifiers = identifiersOf(layout.names.keys(), layout.choices);
    const uses = layout.units.map((use) => settleUse(use, identifiers, library, flawed, findings));
    layouts.set(id, { ...layout, units: uses });
  }
  return { units, layouts, findings };
}

/** Reports every circle of units that contain themselves, once, by the names on the way round. */
export function checkCircularUnits(library: Library): Finding[] {
  const findings: Finding[] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (id: string): void => {
    const unit = library.units.get(id);
    if (unit === undefined || done.has(id)) return;
    path.push(id);
    for (const use of unit.units) {
      const start = path.indexOf(use.unit);
      if (start >= 0) {
        const circle = [...path.slice(start), use.unit].join(' → ');
        findings.push(
          errorFinding('circular-units', `The unit \`${use.unit}\` contains itself.`, use.place, {
            found: circle,
            advice: 'Take one of these uses out.',
          }),
        );
      } else {
        visit(use.unit);
      }
    }
    path.pop();
    done.add(id);
  };
  for (const id of library.units.keys()) visit(id);
  return findings;
}
