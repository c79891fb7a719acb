import { readFileSync } from 'node:fs';
import { type ExactValue, readExactJson } from './exactJson.ts';
import { Fraction } from './fraction.ts';

/** The published schema of the plan file, read as any other program would read it. */
interface Schema {
  readonly [keyword: string]: unknown;
}

const published = JSON.parse(
  readFileSync(new URL('../../schemas/plan.schema.json', import.meta.url), 'utf8'),
) as Schema;

/** Keywords of JSON Schema 2020-12 that say nothing about what is valid. */
const REMARKS = new Set(['title', '$schema', 'description', 'readOnly', 'default']);

/** Where a value is not as the published schema has it: the first such place, or null. */
export function misshapen(value: ExactValue): string | null {
  return departure(value, published, 'plan');
}

const limits = new Map<unknown, Fraction>();
const patterns = new Map<string, RegExp>();

/** Exact value of a number in the schema. */
function limit(value: unknown): Fraction {
  const known = limits.get(value);
  if (known !== undefined) return known;
  const read = readExactJson(JSON.stringify(value));
  if (!(read instanceof Fraction)) throw new Error(`not a number in the schema: ${String(value)}`);
  limits.set(value, read);
  return read;
}

function matches(text: string, pattern: string): boolean {
  const compiled = patterns.get(pattern) ?? new RegExp(pattern, 'u');
  patterns.set(pattern, compiled);
  return compiled.test(text);
}

function isOfType(value: ExactValue, type: unknown): boolean {
  switch (type) {
    case 'null':
      return value === null;
    case 'boolean':
      return typeof value === 'boolean';
    case 'string':
      return typeof value === 'string';
    case 'number':
      return value instanceof Fraction;
    case 'integer':
      return value instanceof Fraction && value.isWhole();
    case 'array':
      return Array.isArray(value);
    case 'object':
      return value instanceof Map;
    default:
      throw new Error(`the schema has a type that is not known here: ${String(type)}`);
  }
}

function isSame(value: ExactValue, wanted: unknown): boolean {
  return value instanceof Fraction
    ? typeof wanted === 'number' && value.equals(limit(wanted))
    : value === wanted;
}

function departure(value: ExactValue, schema: Schema, place: string): string | null {
  for (const [keyword, wanted] of Object.entries(schema)) {
    if (REMARKS.has(keyword)) continue;
    const wrong = against(keyword, wanted, value, schema, place);
    if (wrong !== null) return wrong;
  }
  return null;
}

function against(
  keyword: string,
  wanted: unknown,
  value: ExactValue,
  schema: Schema,
  place: string,
): string | null {
  const unless = (right: boolean) => (right ? null : `${place}: ${keyword} is ${JSON.stringify(wanted)}`);
  switch (keyword) {
    case 'type':
      return unless(isOfType(value, wanted));
    case 'const':
      return unless(isSame(value, wanted));
    case 'enum':
      return unless((wanted as unknown[]).some((one) => isSame(value, one)));
    case 'minimum':
      return unless(!(value instanceof Fraction) || !value.isLessThan(limit(wanted)));
    case 'maximum':
      return unless(!(value instanceof Fraction) || !value.isMoreThan(limit(wanted)));
    case 'exclusiveMinimum':
      return unless(!(value instanceof Fraction) || value.isMoreThan(limit(wanted)));
    case 'minLength':
      return unless(typeof value !== 'string' || [...value].length >= (wanted as number));
    case 'maxLength':
      return unless(typeof value !== 'string' || [...value].length <= (wanted as number));
    case 'pattern':
      return unless(typeof value !== 'string' || matches(value, wanted as string));
    case 'minItems':
      return unless(!Array.isArray(value) || value.length >= (wanted as number));
    case 'maxItems':
      return unless(!Array.isArray(value) || value.length <= (wanted as number));
    case 'required':
      return unless(!(value instanceof Map) || (wanted as string[]).every((key) => value.has(key)));
    case 'additionalProperties':
      return unless(
        wanted !== false ||
          !(value instanceof Map) ||
          [...value.keys()].every((key) => Object.hasOwn(schema['properties'] as object, key)),
      );
    case 'properties':
      return value instanceof Map ? members(value, wanted as Record<string, Schema>, place) : null;
    case 'items':
      return Array.isArray(value) ? items(value, wanted as Schema, schema, place) : null;
    case 'prefixItems':
      return Array.isArray(value) ? prefix(value, wanted as Schema[], place) : null;
    case 'anyOf':
      return unless((wanted as Schema[]).some((one) => departure(value, one, place) === null));
    case 'oneOf':
      return unless((wanted as Schema[]).filter((one) => departure(value, one, place) === null).length === 1);
    default:
      throw new Error(`the schema has a keyword that is not known here: ${keyword}`);
  }
}

function members(value: Map<string, ExactValue>, of: Record<string, Schema>, place: string): string | null {
  for (const [key, schema] of Object.entries(of)) {
    const member = value.get(key);
    const wrong = member === undefined ? null : departure(member, schema, `${place}.${key}`);
    if (wrong !== null) return wrong;
  }
  return null;
}

function items(value: ExactValue[], of: Schema, schema: Schema, place: string): string | null {
  const after = Array.isArray(schema['prefixItems']) ? schema['prefixItems'].length : 0;
  for (let index = after; index < value.length; index++) {
    const wrong = departure(value[index]!, of, `${place}[${index}]`);
    if (wrong !== null) return wrong;
  }
  return null;
}

function prefix(value: ExactValue[], of: Schema[], place: string): string | null {
  for (const [index, schema] of of.entries()) {
    if (index >= value.length) return null;
    const wrong = departure(value[index]!, schema, `${place}[${index}]`);
    if (wrong !== null) return wrong;
  }
  return null;
}
