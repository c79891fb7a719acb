import type { z } from 'zod';
import type { Finding, Place } from '../model/finding.ts';
import { versionFinding } from './fileVersion.ts';
import { errorFinding, listWords, shownText, unknownWord } from './findings.ts';
import { lengthAdvice } from './lengthText.ts';
import { nearestWord } from './nearestWord.ts';
import type { PlacedYaml } from './placedYaml.ts';

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** More than this many findings of one file help nobody. */
const MOST_FINDINGS = 60;
const MOST_ROUNDS = 30;

/**
 * Errors carry their `expected` phrase as message (a schema's own `error` text); an unknown field carries the fields
 * there are, as JSON; every other message is empty and worded here.
 */
function messageOf(issue: z.core.$ZodRawIssue): string {
  if (issue.code !== 'unrecognized_keys') return '';
  const definition = issue.inst?._zod.def as { shape?: object } | undefined;
  return JSON.stringify(Object.keys(definition?.shape ?? {}));
}

function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const key of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  return at;
}

/** How far a value is from one branch of a union: what is unknown or missing in it. */
function distance(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => {
    if (issue.code === 'unrecognized_keys') return sum + issue.keys.length;
    return sum + (issue.path.length === 0 ? 100 : 1);
  }, 0);
}

/** Replaces a union's error by those of the branch that was most likely meant, where one fits at all. */
function openUnions(issues: readonly Issue[]): Issue[] {
  return issues.flatMap((issue) => {
    if (issue.code !== 'invalid_union') return [issue];
    const branches = issue.errors.filter((errors) => errors.length > 0 && distance(errors) < 100);
    const nearest = branches.reduce<readonly Issue[] | undefined>(
      (best, errors) => (best === undefined || distance(errors) < distance(best) ? errors : best),
      undefined,
    );
    if (nearest === undefined) return [issue];
    return openUnions(nearest.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] }) as Issue));
  });
}

/** A value as a person would name what they see. */
export function describeValue(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'string') return `the text \`${shownText(value)}\``;
  if (typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return `the number ${Number.isNaN(value) ? 'NaN (not a number)' : value}`;
  return Array.isArray(value) ? 'a list' : 'a block of fields';
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a block of fields, one on each line',
  record: 'a block of names, each followed by a colon',
  array: 'a list, in brackets or with a dash on each line',
  tuple: 'a list in brackets',
};

function expectedKind(issue: Issue): string {
  if (issue.message !== '') return issue.message;
  if (issue.code === 'invalid_type') return KIND_WORDS[issue.expected] ?? issue.expected;
  if (issue.code === 'invalid_value') return listWords(issue.values.map(String));
  return 'something else';
}

function kindAdvice(value: unknown, expected: string): string | undefined {
  const text = /\btext\b|\bword\b|^`|^[a-z-]+(?:, [a-z-]+)* or /.test(expected);
  if (typeof value === 'boolean') {
    return text ? `Without quotes ${value} is read as a yes or no; put a text in quotes.` : undefined;
  }
  if (typeof value === 'number') return text ? 'If a text is meant, put it in quotes.' : undefined;
  if (typeof value === 'string') {
    if (expected === KIND_WORDS['boolean']) return 'Write true or false, without quotes.';
    const length = lengthAdvice(value);
    if (length !== undefined) return length;
    if (/^[+-]?[0-9.]+$/.test(value)) return 'Write the number without quotes.';
    if (/^[\w -]+:\S/.test(value)) return 'Put a space after the colon.';
  }
  if (value === null) return 'Fill it in, or take the line out.';
  return undefined;
}

/** How a sentence names what stands at a place. */
function nameOf(place: Place): string {
  if (place.field === undefined) return 'This file';
  const [last, around] = place.field.split(' › ').reverse();
  if (!/^[0-9]+(?:st|nd|rd|th)$/.test(last!)) return `\`${last}\``;
  return around === undefined ? `The ${last}` : `The ${last} of \`${around}\``;
}

/** Words one wrong shape. `place` names the field already. */
function wordIssue(issue: Issue, value: unknown, place: Place): Finding {
  const name = nameOf(place);
  const expected = expectedKind(issue);
  const found = describeValue(value);
  switch (issue.code) {
    case 'invalid_value':
      if (typeof value === 'string') {
        return unknownWord(value, 'one of the words that can stand here', issue.values.map(String), place);
      }
      return errorFinding('wrong-kind', `${name} should be one of ${expected}.`, place, {
        found,
        expected,
        advice: kindAdvice(value, expected),
      });
    case 'too_small':
    case 'too_big':
      return wordRange(issue, value, name, place);
    case 'invalid_format':
      return errorFinding('wrong-form', `${name} is not written as it should be.`, place, {
        found: value === '' ? 'an empty text' : found,
        expected,
        advice: typeof value === 'string' ? lengthAdvice(value) : undefined,
      });
    case 'invalid_key': {
      const inner = issue.issues.find((each) => each.message !== '');
      return errorFinding('bad-name', `${name} cannot be used as a name here.`, place, {
        expected: inner?.message ?? 'a shorter name',
      });
    }
    default:
      return errorFinding(
        value === null ? 'empty-field' : 'wrong-kind',
        value === null ? `${name} is empty.` : `${name} is ${found}, which does not fit here.`,
        place,
        {
          found: value === null ? undefined : found,
          expected,
          advice: place.field === undefined ? undefined : kindAdvice(value, expected),
        },
      );
  }
}

function wordRange(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  value: unknown,
  name: string,
  place: Place,
): Finding {
  const small = issue.code === 'too_small';
  const limit = small ? issue.minimum : issue.maximum;
  const bound = small
    ? issue.inclusive
      ? 'at least'
      : 'more than'
    : issue.inclusive
      ? 'at most'
      : 'less than';
  if (issue.origin === 'string') {
    return errorFinding('out-of-range', `${name} is too ${small ? 'short' : 'long'} a text.`, place, {
      found: `${(value as string).length} characters`,
      expected: `${bound} ${limit} character${limit === 1 ? '' : 's'}`,
    });
  }
  if (issue.origin === 'array') {
    const count = (value as unknown[]).length;
    return errorFinding('out-of-range', `${name} holds too ${small ? 'few' : 'many'} entries.`, place, {
      found: String(count),
      expected: `${bound} ${limit}`,
      advice: small ? undefined : 'A comma begins the next entry; write decimals with a point.',
    });
  }
  const negative = small && typeof value === 'number' && value < 0 && Number(limit) >= 0;
  return errorFinding(
    'out-of-range',
    negative ? `${name} is negative.` : `${name} is too ${small ? 'small' : 'large'}.`,
    place,
    { found: String(value), expected: `${bound} ${limit}` },
  );
}

/** Where the value of a path stands, or the nearest thing around it that exists. */
function placeOfPath(yaml: PlacedYaml, root: unknown, path: Path, which: 'key' | 'value'): Place {
  const container = path.length === 0 ? root : valueAt(root, path.slice(0, -1));
  if (typeof container !== 'object' || container === null) return { file: yaml.file, line: 1, column: 1 };
  if (path.length === 0) return yaml.placeOfAll(container);
  const key = path.at(-1) as string | number;
  return which === 'key' ? yaml.placeOfKey(container, key) : yaml.placeOf(container, key);
}

function unknownFieldAdvice(key: string): string | undefined {
  if (/:\S/.test(key)) return 'Put a space after the colon.';
  if (/^[0-9]+$/.test(key))
    return 'A comma within braces begins the next field; write decimals with a point.';
  return undefined;
}

function wordUnknownFields(
  yaml: PlacedYaml,
  root: unknown,
  issue: z.core.$ZodIssueUnrecognizedKeys,
): Finding[] {
  const fields = JSON.parse(issue.message) as string[];
  const container = valueAt(root, issue.path) as object;
  const free = fields.filter((field) => !Object.hasOwn(container, field));
  return issue.keys.slice(0, MOST_FINDINGS).map((key) => {
    const within = yaml.placeOfAll(container).field;
    return errorFinding(
      'unknown-field',
      `\`${shownText(key)}\` is not a field of ${within === undefined ? 'this file' : within}.`,
      yaml.placeOfKey(container, key),
      {
        expected: listWords(fields),
        nearest: nearestWord(key, free) ?? nearestWord(key, fields),
        advice: unknownFieldAdvice(key),
      },
    );
  });
}

function wordIssues(yaml: PlacedYaml, root: unknown, issues: readonly Issue[]): Finding[] {
  const unknown: Finding[] = [];
  const others: Finding[] = [];
  for (const issue of issues.slice(0, MOST_FINDINGS)) {
    if (issue.code === 'unrecognized_keys') unknown.push(...wordUnknownFields(yaml, root, issue));
  }
  const misspelt = new Set(
    unknown.map(
      (finding) => `${finding.place?.field?.split(' › ').slice(0, -1).join(' › ')}|${finding.nearest}`,
    ),
  );
  for (const issue of issues.slice(0, MOST_FINDINGS)) {
    if (issue.code === 'unrecognized_keys') continue;
    const value = valueAt(root, issue.path);
    if (value !== undefined || issue.path.length === 0) {
      const which = issue.code === 'invalid_key' ? 'key' : 'value';
      others.push(wordIssue(issue, value, placeOfPath(yaml, root, issue.path, which)));
      continue;
    }
    const place = placeOfPath(yaml, root, issue.path.slice(0, -1), 'key');
    const field = String(issue.path.at(-1));
    // A field that is missing because its name is misspelt has been reported under the wrong name.
    if (misspelt.has(`${place.field ?? ''}|${field}`)) continue;
    others.push(
      errorFinding(
        'missing-field',
        `\`${field}\` is missing${place.field === undefined ? '' : ` in ${place.field}`}.`,
        place,
        {
          expected: expectedKind(issue),
        },
      ),
    );
  }
  return [...unknown, ...others];
}

/**
 * Takes everything that is wrong out of the value, and puts what is spare where a field of the file itself is missing.
 * False when the whole value is wrong.
 */
function takeOut(
  yaml: PlacedYaml,
  root: unknown,
  issues: readonly Issue[],
  spare: Readonly<Record<string, unknown>>,
): boolean {
  const drops: Path[] = [];
  for (const issue of issues) {
    const key = issue.path[0];
    if (issue.path.length === 1 && valueAt(root, issue.path) === undefined && Object.hasOwn(spare, key!)) {
      (root as Record<PropertyKey, unknown>)[key!] = spare[String(key)];
      continue;
    }
    if (issue.code === 'unrecognized_keys') for (const key of issue.keys) drops.push([...issue.path, key]);
    else if (valueAt(root, issue.path) === undefined) drops.push(issue.path.slice(0, -1));
    else drops.push(issue.path);
  }
  // Later entries of a list first, so that the places before them stay as they are; what is inside goes first.
  drops.sort((a, b) => {
    for (let i = 0; i < Math.min(a.length, b.length); i++) {
      if (typeof a[i] === 'number' && typeof b[i] === 'number' && a[i] !== b[i])
        return Number(b[i]) - Number(a[i]);
      if (a[i] !== b[i]) return String(a[i]) < String(b[i]) ? -1 : 1;
    }
    return b.length - a.length;
  });
  const done = new Set<string>();
  for (const path of drops) {
    if (path.length === 0) return false;
    const name = JSON.stringify(path);
    if (done.has(name)) continue;
    done.add(name);
    const container = valueAt(root, path.slice(0, -1));
    if (typeof container === 'object' && container !== null)
      yaml.drop(container, path.at(-1) as string | number);
  }
  return true;
}

/**
 * Checks a placed YAML file against a schema without transforms, and words everything that is wrong, all at once.
 * `value` is the file's own value, without whatever was wrong, so that the rest can still be checked; undefined when
 * nothing of it could be used. With any error finding it is good for further checks only. `spare` stands in for fields
 * of the file itself that are missing or wrong (a fresh object, with right values), so that the others are still there.
 */
export function checkShape<S extends z.ZodType>(
  yaml: PlacedYaml,
  schema: S,
  spare: Readonly<Record<string, unknown>> = {},
): { readonly value: z.infer<S> | undefined; readonly findings: readonly Finding[] } {
  const other = versionFinding(yaml);
  if (other !== undefined) return { value: undefined, findings: [other] };
  let findings: readonly Finding[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const result = schema.safeParse(yaml.value, { error: messageOf });
    if (result.success) return { value: yaml.value as z.infer<S>, findings };
    const issues = openUnions(result.error.issues);
    if (round === 0) findings = wordIssues(yaml, yaml.value, issues);
    if (issues.length > 1000 || !takeOut(yaml, yaml.value, issues, spare)) break;
  }
  return { value: undefined, findings };
}
