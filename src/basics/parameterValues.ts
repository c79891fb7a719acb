import type { Finding } from '../model/finding.ts';
import type { Formula, ParameterDefinition } from '../model/library.ts';
import { errorFinding, listWords, shownText, unknownWord } from './findings.ts';
import { nearestWord } from './nearestWord.ts';

/** What a value may name. */
export interface ValueScope {
  /** What the names should be: `a parameter of the unit \`base-door\``. */
  readonly what: string;
  readonly parameters: readonly ParameterDefinition[];
  /** Names that a formula can use where the value stands. */
  readonly identifiers: ReadonlySet<string>;
}

const PLAIN_WORD = /^[A-Za-z][\w-]*(?: [\w-]+)*$/;

/**
 * A value given to a parameter, ready to be evaluated. Where the parameter is a choice and the value is one of its
 * words, the formula becomes that word in quotes; a formula that names something stays as it is.
 */
function settleValue(
  definition: ParameterDefinition,
  value: Formula,
  identifiers: ReadonlySet<string>,
): Formula | Finding {
  if (definition.kind !== 'choice') return value;
  const word = value.text.trim();
  if (definition.choices.includes(word)) return { text: JSON.stringify(word), place: value.place };
  const isNumber = word !== '' && Number.isFinite(Number(word));
  if (!isNumber && (identifiers.has(word) || !PLAIN_WORD.test(word))) return value;
  return errorFinding(
    'unknown-word',
    `\`${shownText(word)}\` is not a choice of \`${definition.name}\`.`,
    value.place,
    {
      found: shownText(word),
      expected: listWords(definition.choices),
      nearest: nearestWord(word, definition.choices),
    },
  );
}

/**
 * Values given to parameters by name (`set:` of a unit, `choices:` of an order), ready to be evaluated, and findings for
 * names that are not parameters and words that are not choices.
 */
export function settleValues(
  values: ReadonlyMap<string, Formula>,
  scope: ValueScope,
): { readonly values: ReadonlyMap<string, Formula>; readonly findings: readonly Finding[] } {
  const settled = new Map<string, Formula>();
  const findings: Finding[] = [];
  const names = scope.parameters.map((definition) => definition.name);
  for (const [name, value] of values) {
    const definition = scope.parameters.find((each) => each.name === name);
    if (definition === undefined) {
      findings.push(unknownWord(name, scope.what, names, value.place));
      continue;
    }
    const result = settleValue(definition, value, scope.identifiers);
    if ('severity' in result) findings.push(result);
    else settled.set(name, result);
  }
  return { values: settled, findings };
}
