import type { SeededRandom } from '../../src/basics/random.ts';
import type { Library, ParameterDefinition } from '../../src/model/library.ts';

/** An order for a layout of the library in one of its vehicles, with choices, materials and a changed unit at random. */
export function drawOrder(random: SeededRandom, library: Library, roles: string): string {
  const pick = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
  const layout = pick([...library.layouts.values()]);
  const vehicle = pick(layout.vehicles);
  const saw = pick([...library.saws.keys()]);
  const choices = layout.choices
    .filter(() => random.below(layout.choices.length) < 2)
    .map((choice) => `  ${choice.name}: ${drawValue(random, choice)}\n`)
    .join('');
  const changes = random.below(3) === 0 ? drawChange(random, library, layout.units) : '';
  return [
    `title: Random\nlibrary: demo-van\nlayout: ${layout.id}\nvehicle: ${vehicle}\nsaw: ${saw}\n`,
    choices === '' ? '' : `choices:\n${choices}`,
    roles,
    changes === '' ? '' : `changes:\n  - ${changes}\n`,
  ].join('');
}

function drawChange(
  random: SeededRandom,
  library: Library,
  units: readonly { readonly name: string; readonly unit: string }[],
): string {
  const { name, unit } = units[random.below(units.length)]!;
  const parameters = library.units.get(unit)?.parameters ?? [];
  if (parameters.length === 0 || random.below(5) === 0) return `{ leave out: ${name} }`;
  const parameter = parameters[random.below(parameters.length)]!;
  return `{ unit: ${name}, set: { ${parameter.name}: ${drawValue(random, parameter)} } }`;
}

/** A word that may be chosen, or a number near the default, now and then one that is not allowed. */
function drawValue(random: SeededRandom, parameter: ParameterDefinition): string {
  if (parameter.kind === 'choice') return parameter.choices[random.below(parameter.choices.length)]!;
  const written = [parameter.default, parameter.least, parameter.most].flatMap((bound) =>
    bound === null || !/^\d+(\.\d+)?$/.test(bound.text) ? [] : [Number(bound.text)],
  );
  const from = written[random.below(Math.max(1, written.length))] ?? 300;
  const moved = from + [0, 0, 1, -1, 0.1, 10, -10, 37][random.below(8)]!;
  return String(Math.max(0, Math.round(moved * 10) / 10));
}
