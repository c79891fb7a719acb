import { axes, extentSize } from '../basics/boxes.ts';
import type { FormulaValue } from '../basics/formulas.ts';
import type { ExpandedUnit } from '../model/expanded.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Extent } from '../model/geometry.ts';
import type { Formula, Library, ParameterValue, UnitDefinition } from '../model/library.ts';
import { expandUnit } from './expandUnit.ts';
import { settleParameters } from './settleParameters.ts';

/** One parameter of a unit with another value than its default; lengths in mm. */
export interface OtherValue {
  readonly parameter: string;
  readonly value: ParameterValue;
}

/** Settles a unit's parameters, all at their defaults but one. */
function settled(
  definition: UnitDefinition,
  constants: ReadonlyMap<string, FormulaValue>,
  findings: Finding[],
) {
  const owner = `the unit ${definition.id}`;
  const request = { owner, definitions: definition.parameters, asked: [] };
  return settleParameters(request, constants, definition.names, findings);
}

/** The ends of every parameter's range and every choice, each with the other parameters at their defaults. */
export function otherValuesOf(
  definition: UnitDefinition,
  constants: ReadonlyMap<string, FormulaValue>,
): OtherValue[] {
  const { scope, values } = settled(definition, constants, []);
  return definition.parameters.flatMap((parameter): OtherValue[] => {
    const possible: readonly (ParameterValue | undefined)[] =
      parameter.kind === 'choice'
        ? parameter.choices
        : [parameter.least, parameter.most].map((end) => (end === null ? undefined : scope.number(end)));
    return possible.flatMap((value) =>
      value === undefined || value === values.get(parameter.name)
        ? []
        : [{ parameter: parameter.name, value }],
    );
  });
}

/** A unit by itself with its defaults, or with one other value, in its own frame. */
export function expandUnitAlone(
  definition: UnitDefinition,
  other: OtherValue | null,
  library: Library,
  constants: ReadonlyMap<string, FormulaValue>,
): Checked<ExpandedUnit> {
  const findings: Finding[] = [];
  const place = { file: definition.file };
  const { scope } = settled(definition, constants, []);
  const set = new Map<string, Formula>();
  if (other !== null) set.set(other.parameter, { text: String(other.value), place });
  const name = definition.id.replaceAll('-', ' ');
  const body = expandUnit(
    { definition, asked: [{ set, scope }], name, within: [] },
    { library, constants, findings },
  );
  const { outside } = body;
  if (outside === null || findings.some(({ severity }) => severity === 'error')) {
    return { ok: false, findings };
  }
  const [x, y, z] = axes.map((axis): Extent => [0, extentSize(outside[axis])]);
  const unit = { ...body, name, unit: definition.id, place, facing: 'front' as const, outside };
  return { ok: true, value: { ...unit, placeOutside: { x: x!, y: y!, z: z! } }, findings };
}
