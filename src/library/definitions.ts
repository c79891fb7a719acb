import { errorFinding, shownText, unknownWord } from '../basics/findings.ts';
import { type FieldReader, FORMULA_WORDS } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import type { Facing } from '../model/geometry.ts';
import type { Formula, ParameterDefinition, Repeat, UnitUse } from '../model/library.ts';
import type { InnerUnitField, MustField, ParameterField } from './schemas.ts';

/** What a library has, also where the file about it could not be used; undefined where nothing can be said. */
export interface KnownWords {
  readonly roles: readonly string[] | undefined;
  readonly fittings: readonly string[] | undefined;
  readonly drilling: readonly string[] | undefined;
  readonly units: readonly string[];
  readonly cautions: readonly string[];
  /** What its vehicles are called in sentences: `vehicle`, `room`. */
  readonly place: string;
}

/** Refuses a name that formulas use themselves, or that stands for something else already. */
export function checkFreeName(
  reader: FieldReader,
  name: string,
  place: Place,
  taken: ReadonlyMap<string, Place>,
): void {
  if (FORMULA_WORDS.includes(name)) {
    const message = `\`${name}\` has a meaning in formulas, so nothing else can be called so.`;
    reader.report(errorFinding('bad-name', message, place, { advice: 'Choose another name.' }));
  }
  const other = taken.get(name);
  if (other !== undefined) {
    const message = `\`${name}\` stands for something else already, on line ${other.line}.`;
    reader.report(errorFinding('duplicate-name', message, place, { advice: 'Choose another name.' }));
  }
}

function readChoice(
  reader: FieldReader,
  name: string,
  field: ParameterField,
  place: Place,
): ParameterDefinition {
  const choices = field.choices ?? [];
  const written = field.default;
  const at = reader.yaml.placeOf(field, 'default');
  if (typeof written !== 'string') {
    const details = { found: String(written), expected: choices.join(', ') };
    reader.report(
      errorFinding('wrong-kind', `The default of \`${name}\` must be one of its choices.`, at, details),
    );
  } else if (!choices.includes(written)) {
    reader.report(unknownWord(written, `a choice of \`${name}\``, choices, at));
  }
  for (const [index, choice] of choices.entries()) {
    if (choices.indexOf(choice) === index) continue;
    const where = reader.yaml.placeOf(field.choices!, index);
    reader.report(errorFinding('duplicate-name', `\`${shownText(choice)}\` is a choice already.`, where));
  }
  for (const other of ['least', 'most', 'counts'] as const) {
    if (field[other] === undefined) continue;
    const where = reader.yaml.placeOfKey(field, other);
    const message = `\`${other}\` has no meaning for a parameter with choices.`;
    reader.report(errorFinding('needless-field', message, where, { advice: 'Take out one of the two.' }));
  }
  return { kind: 'choice', name, default: String(written), choices, note: field.note ?? '', place };
}

/** The parameters of a unit, or the choices of a layout. Their names are added to `taken`. */
export function readParameters(
  reader: FieldReader,
  fields: Readonly<Record<string, ParameterField>> | undefined,
  taken: Map<string, Place>,
): ParameterDefinition[] {
  return Object.entries(fields ?? {}).map(([name, field]) => {
    const place = reader.yaml.placeOfKey(fields!, name);
    checkFreeName(reader, name, place, taken);
    taken.set(name, place);
    if (field.choices !== undefined) return readChoice(reader, name, field, place);
    return {
      kind: field.counts === true ? 'count' : 'length',
      name,
      default: reader.formula(field, 'default'),
      least: reader.optionalFormula(field, 'least'),
      most: reader.optionalFormula(field, 'most'),
      note: field.note ?? '',
      place,
    };
  });
}

/** Formulas by name. Their names are added to `taken`. */
export function readNames(
  reader: FieldReader,
  fields: Readonly<Record<string, number | string>> | undefined,
  taken: Map<string, Place>,
): Map<string, Formula> {
  const names = new Map<string, Formula>();
  for (const name of Object.keys(fields ?? {})) {
    const place = reader.yaml.placeOfKey(fields!, name);
    checkFreeName(reader, name, place, taken);
    taken.set(name, place);
    names.set(name, reader.formula(fields!, name));
  }
  return names;
}

/** Conditions with what to say when one does not hold. */
export function readMusts(
  reader: FieldReader,
  fields: readonly MustField[] | undefined,
): { that: Formula; says: string; place: Place }[] {
  return (fields ?? []).map((field) => ({
    that: reader.formula(field, 'that'),
    says: field.says,
    place: reader.yaml.placeOf(field, 'that'),
  }));
}

/** A repeat has exactly one counter, whose name is free. */
export function readRepeat(
  reader: FieldReader,
  owner: { readonly repeat?: Record<string, number | string> | undefined },
  taken: ReadonlyMap<string, Place>,
): Repeat | null {
  if (owner.repeat === undefined) return null;
  const counters = Object.keys(owner.repeat);
  const counter = counters[0];
  if (counter === undefined || counters.length > 1) {
    const place = reader.yaml.placeOfAll(owner.repeat);
    const details = { found: String(counters.length), expected: 'one counter, such as { i: shelves }' };
    reader.report(errorFinding('bad-repeat', 'A repeat needs exactly one counter.', place, details));
    return null;
  }
  checkFreeName(reader, counter, reader.yaml.placeOfKey(owner.repeat, counter), taken);
  return { counter, count: reader.formula(owner.repeat, counter) };
}

/** A use of a unit, as written; whether its parameters exist is checked when all units are read. */
export function readUnitUse(
  reader: FieldReader,
  uses: Readonly<Record<string, InnerUnitField>>,
  name: string,
  facing: Facing,
  taken: ReadonlyMap<string, Place>,
  known: KnownWords,
): UnitUse {
  const use = uses[name]!;
  if (!known.units.includes(use.unit)) {
    const at = reader.yaml.placeOf(use, 'unit');
    reader.report(unknownWord(use.unit, 'a unit of this library', known.units, at));
  }
  const set = new Map<string, Formula>();
  for (const key of Object.keys(use.set ?? {})) set.set(key, reader.formula(use.set!, key));
  return {
    name,
    place: reader.yaml.placeOfKey(uses, name),
    unit: use.unit,
    at: { x: reader.formula(use.at, 'x'), y: reader.formula(use.at, 'y'), z: reader.formula(use.at, 'z') },
    facing,
    set,
    when: reader.optionalFormula(use, 'when'),
    repeat: readRepeat(reader, use, taken),
  };
}

/** Refuses a name with a number that a repeat of the name before it would produce too, such as `shelf 2` beside `shelf`. */
export function checkRepeatedNames(
  reader: FieldReader,
  entries: Readonly<Record<string, { readonly repeat?: object | undefined }>>,
): void {
  for (const name of Object.keys(entries)) {
    const base = /^(.*\S) [0-9]+$/.exec(name)?.[1];
    if (base === undefined || !Object.hasOwn(entries, base) || entries[base]!.repeat === undefined) continue;
    const message = `\`${shownText(name)}\` may also be the name of a repeat of \`${shownText(base)}\`.`;
    const place = reader.yaml.placeOfKey(entries, name);
    reader.report(errorFinding('duplicate-name', message, place, { advice: 'Choose another name.' }));
  }
}
