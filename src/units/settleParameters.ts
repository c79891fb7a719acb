import { figureToUm, SAME_FIGURE, shortNumber } from '../basics/evaluateFormula.ts';
import { FormulaScope } from '../basics/formulaScope.ts';
import type { FormulaValue } from '../basics/formulas.ts';
import { umToMm } from '../basics/lengths.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { Finding } from '../model/finding.ts';
import type { Formula, ParameterDefinition, ParameterValue } from '../model/library.ts';

/** Parameters of a unit or choices of a layout, with what was asked for and the scope it was asked in. */
export interface AskedParameters {
  /** As a person knows it: `unit base-cupboard`, `layout galley-right`. */
  readonly owner: string;
  readonly definitions: readonly ParameterDefinition[];
  /** Later ones go before earlier ones. */
  readonly asked: readonly { readonly set: ReadonlyMap<string, Formula>; readonly scope: FormulaScope }[];
}

export interface SettledParameters {
  readonly scope: FormulaScope;
  readonly values: ReadonlyMap<string, ParameterValue>;
}

/**
 * Gives every parameter its value and checks it against its range; `names` are worked out with them. Defaults and
 * ranges may use the other parameters and the names, in any order.
 */
export function settleParameters(
  request: AskedParameters,
  constants: ReadonlyMap<string, FormulaValue>,
  names: ReadonlyMap<string, Formula>,
  findings: Finding[],
  makeScope: typeof newScope = newScope,
): SettledParameters {
  reportUnknownParameters(request, findings);
  const values = new Map(constants);
  const formulas = new Map(names);
  const asked = new Map<string, Formula>();
  for (const parameter of request.definitions) {
    const wish = lastAsked(request, parameter.name);
    if (wish !== null) asked.set(parameter.name, wish.formula);
    const value = wish === null ? undefined : askedValue(parameter, wish, findings);
    if (value !== undefined) values.set(parameter.name, value);
    else if (parameter.kind === 'choice') values.set(parameter.name, parameter.default);
    else formulas.set(parameter.name, parameter.default);
  }
  let scope = makeScope(values, formulas, findings);
  const wrong = request.definitions.filter(
    (parameter) =>
      parameter.kind !== 'choice' && !inRange(request, parameter, asked.get(parameter.name), scope),
  );
  // One wrong value is one finding: what follows is worked out with the default instead.
  for (const parameter of wrong) {
    if (parameter.kind === 'choice' || !values.delete(parameter.name)) continue;
    formulas.set(parameter.name, parameter.default);
  }
  if (wrong.length > 0) scope = makeScope(values, formulas, findings);
  const settled = new Map<string, ParameterValue>();
  for (const { name } of request.definitions) {
    const value = scope.lookUp(name);
    if (typeof value === 'number' || typeof value === 'string') settled.set(name, value);
  }
  return { scope, values: settled };
}

/** What was asked for, or undefined with a finding. */
function askedValue(
  parameter: ParameterDefinition,
  wish: { readonly formula: Formula; readonly scope: FormulaScope },
  findings: Finding[],
): FormulaValue | undefined {
  if (parameter.kind === 'choice') return settleChoice(parameter, wish.formula, wish.scope, findings);
  const value = wish.scope.number(wish.formula);
  return value !== undefined && parameter.kind === 'length' ? onGrid(value) : value;
}

/** Lengths handed on are kept to whole µm, so that a unit and the one around it round to the same places. */
function onGrid(mm: number): number {
  return Math.abs(mm) < 1e9 ? umToMm(figureToUm(mm)) : mm;
}

function newScope(
  values: ReadonlyMap<string, FormulaValue>,
  formulas: ReadonlyMap<string, Formula>,
  findings: Finding[],
): FormulaScope {
  return new FormulaScope(values, formulas, findings);
}

function lastAsked(request: AskedParameters, name: string): { formula: Formula; scope: FormulaScope } | null {
  for (let i = request.asked.length - 1; i >= 0; i--) {
    const formula = request.asked[i]!.set.get(name);
    if (formula !== undefined) return { formula, scope: request.asked[i]!.scope };
  }
  return null;
}

function reportUnknownParameters(request: AskedParameters, findings: Finding[]): void {
  const known = request.definitions.map((parameter) => parameter.name);
  for (const { set } of request.asked) {
    for (const [name, formula] of set) {
      if (known.includes(name)) continue;
      const nearest = nearestWord(name, known);
      findings.push({
        code: 'unknown-parameter',
        severity: 'error',
        message: `${request.owner} has no parameter “${name}”`,
        place: formula.place,
        found: name,
        expected: known.length === 0 ? 'it has none' : `one of ${known.join(', ')}`,
        ...(nearest === undefined ? {} : { nearest }),
      });
    }
  }
}

/** A bare word that is one of the choices stands for itself; anything else is a formula. */
function settleChoice(
  parameter: ParameterDefinition & { kind: 'choice' },
  formula: Formula,
  scope: FormulaScope,
  findings: Finding[],
): string {
  const word = formula.text.trim();
  if (parameter.choices.includes(word)) return word;
  const plainWord = /^[A-Za-z][\w-]*$/.test(word) && !scope.has(word);
  const value = plainWord ? word : scope.evaluate(formula);
  if (value === undefined) return parameter.default;
  const text = String(value);
  if (parameter.choices.includes(text)) return text;
  const nearest = nearestWord(text, parameter.choices);
  findings.push({
    code: 'unknown-choice',
    severity: 'error',
    message: `“${text}” is not a choice for ${parameter.name}`,
    place: formula.place,
    found: text,
    expected: `one of ${parameter.choices.join(', ')}`,
    ...(nearest === undefined ? {} : { nearest }),
  });
  return parameter.default;
}

/** Whether a parameter's value is a number within its range; a finding where it is not. */
function inRange(
  request: AskedParameters,
  parameter: ParameterDefinition & { kind: 'length' | 'count' },
  asked: Formula | undefined,
  scope: FormulaScope,
): boolean {
  const value = scope.lookUp(parameter.name);
  if (value === undefined) return true;
  const report = (code: string, message: string, expected: string): false => {
    scope.findings.push({
      code,
      severity: 'error',
      message: `${parameter.name} of ${request.owner} ${message}`,
      place: (asked ?? parameter.default).place,
      found: typeof value === 'number' ? shortNumber(value) : String(value),
      expected,
    });
    return false;
  };
  if (typeof value !== 'number')
    return report('formula-kind', `is “${value}”; wanted is a number`, 'a number');
  if (parameter.kind === 'count' && Math.abs(value - Math.round(value)) > SAME_FIGURE) {
    return report(
      'count-wrong',
      `is ${shortNumber(value)}; it counts, so it must be whole`,
      'a whole number',
    );
  }
  const least = parameter.least === null ? null : scope.number(parameter.least);
  const most = parameter.most === null ? null : scope.number(parameter.most);
  if (least === undefined || most === undefined) return true;
  const low = least ?? (parameter.kind === 'count' ? 0 : null);
  const small = low !== null && value < low - SAME_FIGURE;
  const great = most !== null && value > most + SAME_FIGURE;
  if (!small && !great) return true;
  const unit = parameter.kind === 'length' ? ' mm' : '';
  const range = [
    ...(low === null ? [] : [`from ${shortNumber(low)}`]),
    ...(most === null ? [] : [`up to ${shortNumber(most)}`]),
  ].join(' ');
  return report(
    'out-of-range',
    `is ${shortNumber(value)}${unit}; it may go ${range}${unit}`,
    `${range}${unit}`,
  );
}
