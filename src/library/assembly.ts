import { errorFinding, unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import { ASSEMBLY_WAYS, type AssemblyUse } from '../model/library.ts';
import type { AssemblyStepField } from './schemas.ts';

/**
 * How a unit says that it goes together. Each of its own `panels` must come once, and each of the `units` inside it, as a whole
 * or panel by panel; what is wrong with that is reported.
 */
export function readAssembly(
  reader: FieldReader,
  steps: readonly AssemblyStepField[] | undefined,
  panels: readonly string[],
  units: readonly string[],
): AssemblyUse[] | undefined {
  if (steps === undefined) return undefined;
  const seen = new Set<string>();
  const inside = (name: string) => units.find((unit) => name.startsWith(`${unit} `));
  const check = (name: string, place: Place) => {
    const known = [...panels, ...units];
    if (!known.includes(name) && inside(name) === undefined) {
      reader.report(unknownWord(name, 'a panel of this unit or a unit inside it', known, place));
    } else if (seen.has(name)) {
      const advice = 'Name each panel in the step that puts it on, and nowhere else.';
      const message = `“${name}” is put on twice.`;
      reader.report(errorFinding('assembly-twice', message, place, { advice }));
    }
    seen.add(name);
    return { name, place };
  };
  const uses = steps.flatMap((step, index): AssemblyUse[] => {
    const ways = waysOf(step);
    if (ways.length !== 1) {
      const message = 'A step of `assembly` has one way with its panels.';
      const advice = `Write it as a list of steps, each with one of ${ASSEMBLY_WAYS.join(', ')}.`;
      reader.report(errorFinding('assembly-step', message, reader.yaml.placeOf(steps, index), { advice }));
    }
    return ways.map((way) => ({
      way,
      names: step[way]!.map((name, at) => check(name, reader.yaml.placeOf(step[way]!, at))),
    }));
  });
  // What a wrong step would have named is not left out.
  if (steps.some((step) => waysOf(step).length !== 1)) return uses;
  const named = [...seen];
  const isLeftOut = (name: string) => !seen.has(name) && !named.some((other) => inside(other) === name);
  for (const name of [...panels, ...units].filter(isLeftOut)) {
    const message = `\`assembly\` does not say when “${name}” is put on.`;
    const advice =
      'Name it in one of the steps, or leave `assembly` out where the boxes say how it goes together.';
    reader.report(errorFinding('assembly-without', message, reader.yaml.placeOfAll(steps), { advice }));
  }
  return uses;
}

function waysOf(step: AssemblyStepField) {
  return ASSEMBLY_WAYS.filter((way) => step[way] !== undefined);
}
