import { errorFinding, shownText, unknownWord } from '../basics/findings.ts';
import {
  RANGE_EXPECTED,
  rangeFromText,
  TOO_MANY_VALUES,
  valuesOfRange,
  type WrittenRange,
} from '../basics/rangeText.ts';
import type { ChangeLimit } from '../model/advice.ts';
import type { Checked, Finding, Place } from '../model/finding.ts';
import type { ParameterDefinition, ParameterValue } from '../model/library.ts';
import { settledChoices } from '../units/index.ts';
import type { OrderedFurniture } from './job.ts';

interface Named {
  readonly definition: ParameterDefinition;
  readonly now: ParameterValue | undefined;
}

/** The choice of the layout or the parameter of a unit that a range is for. */
function find(
  { of, parameter }: WrittenRange,
  { order, library, furniture }: OrderedFurniture,
  place: Place,
): Named | Finding {
  if (of === null) {
    const layout = library.layouts.get(order.layout);
    const choices = layout?.choices ?? [];
    const definition = choices.find(({ name }) => name === parameter);
    if (definition !== undefined) return { definition, now: settledChoices(order, library).get(parameter) };
    const names = choices.map(({ name }) => name);
    return unknownWord(parameter, `a choice of the layout \`${shownText(order.layout)}\``, names, place);
  }
  // A unit that a layout repeats stands several times, with a number each; they are set together.
  const unit =
    furniture.units.find(({ name }) => name === of) ??
    furniture.units.find(({ name }) => name.startsWith(`${of} `) && /^\d+$/.test(name.slice(of.length + 1)));
  if (unit === undefined) {
    const names = furniture.units.map(({ name }) => name);
    return unknownWord(of, 'a unit of this order', names, place);
  }
  const parameters = library.units.get(unit.unit)?.parameters ?? [];
  const definition = parameters.find(({ name }) => name === parameter);
  if (definition !== undefined) return { definition, now: unit.parameters.get(parameter) };
  const names = parameters.map(({ name }) => name);
  return unknownWord(parameter, `a parameter of the unit \`${unit.unit}\``, names, place);
}

function limitOf(text: string, ordered: OrderedFurniture): ChangeLimit | Finding {
  const place: Place = { file: `--may ${shownText(text)}` };
  const range = rangeFromText(text);
  if (range === undefined) {
    const details = { found: shownText(text), expected: RANGE_EXPECTED };
    return errorFinding('wrong-form', 'This is not written as a range.', place, details);
  }
  const named = find(range, ordered, place);
  if ('code' in named) return named;
  const { definition, now } = named;
  if (definition.kind === 'choice' || typeof now !== 'number') {
    const message = `\`${shownText(range.name)}\` is a choice of words and has no range.`;
    return errorFinding('wrong-kind', message, place, { expected: 'a length or a count' });
  }
  const { kind } = definition;
  const all = valuesOfRange(range);
  if (all === null)
    return errorFinding('too-many-values', TOO_MANY_VALUES, place, { found: shownText(text) });
  const values = all.filter((value) => value !== now);
  if (kind === 'count' && values.some((value) => !Number.isInteger(value))) {
    const message = `\`${shownText(range.name)}\` counts, so its limits and its step must be whole.`;
    return errorFinding('wrong-kind', message, place);
  }
  return { name: range.name, kind, now, values };
}

/**
 * What may be changed of an order, from texts such as `locker.depth=300..320/2`, with what it is now. All that is wrong is
 * told at once: a unit, parameter or choice that there is not, one that has no range, the same twice.
 */
export function changeLimits(
  texts: readonly string[],
  ordered: OrderedFurniture,
): Checked<readonly ChangeLimit[]> {
  const limits: ChangeLimit[] = [];
  const findings: Finding[] = [];
  for (const text of texts) {
    const limit = limitOf(text, ordered);
    const place: Place = { file: `--may ${shownText(text)}` };
    if ('code' in limit) findings.push(limit);
    else if (limits.some(({ name }) => name === limit.name))
      findings.push(
        errorFinding('duplicate-name', `\`${shownText(limit.name)}\` has limits already.`, place),
      );
    else limits.push(limit);
  }
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: limits, findings };
}
