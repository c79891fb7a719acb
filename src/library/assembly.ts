import { errorFinding, unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Finding } from '../model/finding.ts';
import { ASSEMBLY_WAYS, type AssemblyUse, type Library, type UnitDefinition } from '../model/library.ts';
import type { AssemblyStepField } from './schemas.ts';

/**
 * How a unit says that it goes together, as written; what it names is checked when all units are read. Undefined where a step is
 * wrong: what that would have named is not left out.
 */
export function readAssembly(
  reader: FieldReader,
  steps: readonly AssemblyStepField[] | undefined,
): AssemblyUse[] | undefined {
  const waysOf = (step: AssemblyStepField) => ASSEMBLY_WAYS.filter((way) => step[way] !== undefined);
  const wrong = (steps ?? []).filter((step) => waysOf(step).length !== 1);
  for (const step of wrong) {
    const message = 'A step of `assembly` has one way with its panels.';
    const advice = `Write it as a list of steps, each with one of ${ASSEMBLY_WAYS.join(', ')}.`;
    const place = reader.yaml.placeOf(steps!, steps!.indexOf(step));
    reader.report(errorFinding('assembly-step', message, place, { advice }));
  }
  if (steps === undefined || wrong.length > 0) return undefined;
  return steps.flatMap((step) =>
    waysOf(step).map((way) => ({
      way,
      names: step[way]!.map((name, at) => ({ name, place: reader.yaml.placeOf(step[way]!, at) })),
    })),
  );
}

/**
 * What is wrong with the names in the steps of units: each panel of a unit must come once, and each of a unit inside it, by its
 * own name or with that whole unit. Units whose file, or that of one inside, is `flawed` are left alone: panels may be missing.
 */
export function checkAssemblies(library: Library, flawed: ReadonlySet<string>): Finding[] {
  return [...library.units.values()].flatMap((unit) => {
    if (unit.assembly === undefined || flawed.has(unit.file)) return [];
    const inside = unit.units.map((use) => ({ use, panels: panelsOf(use.unit, library, flawed, [unit.id]) }));
    return checkNames(unit, unit.assembly, inside);
  });
}

interface Inside {
  readonly use: UnitDefinition['units'][number];
  /** Names of its panels, of units inside it too; null where they cannot be known. */
  readonly panels: readonly string[] | null;
}

function checkNames(
  unit: UnitDefinition,
  steps: readonly AssemblyUse[],
  inside: readonly Inside[],
): Finding[] {
  const findings: Finding[] = [];
  const panels = unit.panels.map(({ name }) => name);
  const wholes = inside.map(({ use }) => use.name);
  const parts = inside.flatMap((each) => (each.panels ?? []).map((name) => `${each.use.name} ${name}`));
  const unknowable = inside.flatMap((each) => (each.panels === null ? [`${each.use.name} `] : []));
  const seen = new Set<string>();
  for (const { name, place } of steps.flatMap(({ names }) => names)) {
    const isKnown = [panels, wholes, parts].some((names) => names.includes(name));
    if (!isKnown && !unknowable.some((start) => name.startsWith(start))) {
      const known = inside.some(({ use }) => name.startsWith(`${use.name} `))
        ? [...panels, ...parts]
        : [...panels, ...wholes];
      findings.push(unknownWord(name, 'a panel of this unit or a unit inside it', known, place));
    } else if (seen.has(name)) {
      const message = `“${name}” is put on twice.`;
      const advice = 'Name each panel in the step that puts it on, and nowhere else.';
      findings.push(errorFinding('assembly-twice', message, place, { found: name, advice }));
    }
    seen.add(name);
  }
  const place = steps[0]?.names[0]?.place;
  const advice =
    'Name it in one of the steps, or leave `assembly` out where the boxes say how it goes together.';
  for (const name of [...panels, ...inside.flatMap((each) => leftToName(each, seen))]) {
    if (seen.has(name)) continue;
    const message = `\`assembly\` does not say when “${name}” is put on.`;
    findings.push(errorFinding('assembly-without', message, place, { found: name, advice }));
  }
  return findings;
}

/** A unit inside of which nothing is named is missed as a whole, one of which some panels are named by the others. */
function leftToName({ use, panels }: Inside, seen: ReadonlySet<string>): readonly string[] {
  if (seen.has(use.name)) return [];
  const parts = (panels ?? []).map((name) => `${use.name} ${name}`);
  const isTouched = panels === null || parts.some((name) => seen.has(name));
  return isTouched ? parts : [use.name];
}

/** Names of a unit's panels and those of units inside it, without the numbers that repeats give. */
function panelsOf(
  id: string,
  library: Library,
  flawed: ReadonlySet<string>,
  within: readonly string[],
): readonly string[] | null {
  const unit = library.units.get(id);
  if (unit === undefined || flawed.has(unit.file) || within.includes(id)) return null;
  const inner = unit.units.map((use) => panelsOf(use.unit, library, flawed, [...within, id]));
  if (inner.includes(null)) return null;
  return [
    ...unit.panels.map(({ name }) => name),
    ...unit.units.flatMap((use, index) => inner[index]!.map((name) => `${use.name} ${name}`)),
  ];
}
