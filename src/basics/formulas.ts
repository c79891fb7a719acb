import { type Comment, type Expression, parseExpressionAt } from 'acorn';

/** What a formula comes to: a number (lengths in mm), a text, or yes and no. */
export type FormulaValue = number | string | boolean;

/** What is wrong with a formula, at a character of its text. */
export interface FormulaProblem {
  readonly code: string;
  /** From 0, in the text of the formula. */
  readonly offset: number;
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
  readonly advice?: string;
}

export type ComparisonSign = '<' | '<=' | '>' | '>=' | '==' | '!=';
export type ArithmeticSign = '+' | '-' | '*' | '/' | '%';

/** A formula taken apart; `from` and `to` bound its characters. */
export type FormulaNode = { readonly from: number; readonly to: number } & (
  | { readonly kind: 'value'; readonly value: FormulaValue }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'minus' | 'plus' | 'not'; readonly of: FormulaNode }
  | {
      readonly kind: 'arithmetic';
      readonly sign: ArithmeticSign;
      readonly left: FormulaNode;
      readonly right: FormulaNode;
    }
  | {
      readonly kind: 'comparison';
      readonly sign: ComparisonSign;
      readonly left: FormulaNode;
      readonly right: FormulaNode;
    }
  | { readonly kind: 'and' | 'or'; readonly left: FormulaNode; readonly right: FormulaNode }
  | {
      readonly kind: 'choice';
      readonly test: FormulaNode;
      readonly yes: FormulaNode;
      readonly no: FormulaNode;
    }
  | { readonly kind: 'call'; readonly name: FormulaFunction; readonly of: readonly FormulaNode[] }
);

export interface ParsedFormula {
  readonly text: string;
  readonly root: FormulaNode;
  /** Every name it uses, with the first character of its first use. */
  readonly names: ReadonlyMap<string, number>;
}

export type ParseResult =
  | { readonly ok: true; readonly formula: ParsedFormula }
  | { readonly ok: false; readonly problem: FormulaProblem };

/** Functions a formula may call, with how many values each takes. `wall` is known in layouts only; `appliance` takes texts. */
export const formulaFunctions = {
  min: [1, 20],
  max: [1, 20],
  floor: [1, 1],
  ceil: [1, 1],
  round: [1, 1],
  abs: [1, 1],
  wall: [2, 2],
  appliance: [2, 2],
} as const satisfies Record<string, readonly [number, number]>;

export type FormulaFunction = keyof typeof formulaFunctions;

/** A file may not cost more to read than it is worth. */
export const LONGEST_FORMULA = 1000;
const DEEPEST_FORMULA = 60;
const MOST_CACHED = 20_000;

/** Carries a problem out of a formula; never leaves this folder. */
export class FormulaRefusal extends Error {
  readonly problem: FormulaProblem;

  constructor(problem: FormulaProblem) {
    super(problem.message);
    this.problem = problem;
  }
}

function refuse(code: string, offset: number, message: string, advice?: string): never {
  throw new FormulaRefusal({ code, offset, message, ...(advice === undefined ? {} : { advice }) });
}

const allowedHere =
  'numbers, names, + - * / %, comparisons, && || !, “a ? b : c” and the functions min max floor ceil round abs';

const parsed = new Map<string, ParseResult>();

/**
 * Takes a formula apart. Nothing in it is ever run as code: acorn reads the text, and every kind of expression that
 * is not on the list of formulas is refused with its first character.
 */
export function parseFormula(text: string): ParseResult {
  const known = parsed.get(text);
  if (known !== undefined) return known;
  const result = parseAfresh(text);
  if (parsed.size >= MOST_CACHED) parsed.clear();
  if (text.length <= LONGEST_FORMULA) parsed.set(text, result);
  return result;
}

function parseAfresh(text: string): ParseResult {
  try {
    checkCharacters(text);
    checkUnits(text);
    const comments: Comment[] = [];
    const expression = parseExpressionAt(text, 0, {
      ecmaVersion: 2022,
      preserveParens: true,
      onComment: comments,
    });
    if (comments.length > 0) refuse('formula-wrong', comments[0]!.start, 'a formula cannot hold a remark');
    const after = text.slice(expression.end).search(/\S/);
    if (after >= 0) refuseTrailing(text, expression.end + after);
    const names = new Map<string, number>();
    return { ok: true, formula: { text, root: convert(expression, text, names, 0), names } };
  } catch (error) {
    if (error instanceof FormulaRefusal) return { ok: false, problem: error.problem };
    if (error instanceof SyntaxError) return { ok: false, problem: syntaxProblem(error, text) };
    throw error;
  }
}

function checkCharacters(text: string): void {
  if (text.trim() === '') refuse('formula-empty', 0, 'the formula is empty');
  if (text.length > LONGEST_FORMULA) {
    refuse(
      'formula-too-long',
      LONGEST_FORMULA,
      `the formula has ${text.length} characters; at most ${LONGEST_FORMULA} are allowed`,
      'give parts of it names of their own',
    );
  }
  const strange = text.search(/[\\`;{}[\]#@~^|&$]/);
  if (strange < 0) return;
  const two = text.slice(strange, strange + 2);
  if (two === '&&' || two === '||') {
    const rest = text.slice(0, strange) + text.slice(strange).replace(/&&|\|\|/g, '  ');
    checkCharacters(rest);
    return;
  }
  const advice = two[0] === '&' ? 'write && for “and”' : two[0] === '|' ? 'write || for “or”' : undefined;
  refuse('formula-wrong', strange, `“${text[strange]}” has no meaning in a formula`, advice);
}

/** `18mm` and `0.75 in` are lengths everywhere but in a formula: say how to write them. */
function checkUnits(text: string): void {
  const unit = /(?<![\w.])(\d+(?:\.\d+)?)\s*(mm|cm|in|inch)(?!\w)/.exec(
    text.replace(/'[^']*'|"[^"]*"/g, blank),
  );
  if (unit === null) return;
  const [whole, figure, mark] = unit;
  const instead = mark === 'mm' ? figure : mark === 'cm' ? `10 * ${figure}` : `${figure} * inch`;
  refuse(
    'formula-wrong',
    unit.index,
    `a formula takes bare numbers, in mm, not “${whole}”`,
    `write ${instead}`,
  );
}

function blank(text: string): string {
  return ' '.repeat(text.length);
}

function refuseTrailing(text: string, offset: number): never {
  const found = text.slice(offset, offset + 20);
  refuse(
    'formula-wrong',
    offset,
    `the formula ends before “${found}”`,
    'put an operator such as * or + between two values',
  );
}

function syntaxProblem(error: SyntaxError, text: string): FormulaProblem {
  const at = (error as SyntaxError & { pos?: number }).pos ?? 0;
  if (at >= text.trimEnd().length) {
    return { code: 'formula-wrong', offset: text.trimEnd().length, message: 'the formula stops too early' };
  }
  return {
    code: 'formula-wrong',
    offset: at,
    message: `the formula cannot be read from “${text.slice(at, at + 20)}” on`,
    expected: allowedHere,
  };
}

const arithmetic = new Set<string>(['+', '-', '*', '/', '%'] satisfies ArithmeticSign[]);
const comparison = new Set<string>(['<', '<=', '>', '>=', '==', '!='] satisfies ComparisonSign[]);

function convert(node: Expression, text: string, names: Map<string, number>, depth: number): FormulaNode {
  const from = node.start;
  const to = node.end;
  if (depth > DEEPEST_FORMULA) refuse('formula-too-deep', from, 'the formula is nested too deeply');
  const inner = (child: Expression) => convert(child, text, names, depth + 1);
  const name = (written: string): FormulaNode => {
    if (!names.has(written)) names.set(written, from);
    return { kind: 'name', name: written, from, to };
  };
  switch (node.type) {
    case 'Literal':
      return { kind: 'value', value: literal(text.slice(from, to), node.value, from), from, to };
    case 'Identifier':
      return name(node.name);
    case 'MemberExpression': {
      const { object, property } = node;
      if (node.computed || node.optional || object.type !== 'Identifier' || property.type !== 'Identifier')
        break;
      return name(`${object.name}.${property.name}`);
    }
    case 'ParenthesizedExpression':
      return inner(node.expression);
    case 'UnaryExpression': {
      const kind = { '-': 'minus', '+': 'plus', '!': 'not' } as const;
      if (!Object.hasOwn(kind, node.operator)) break;
      return { kind: kind[node.operator as '-' | '+' | '!'], of: inner(node.argument), from, to };
    }
    case 'BinaryExpression': {
      const sign = node.operator;
      if (node.left.type === 'PrivateIdentifier') break;
      const sides = () => ({ left: inner(node.left as Expression), right: inner(node.right), from, to });
      if (arithmetic.has(sign)) return { kind: 'arithmetic', sign: sign as ArithmeticSign, ...sides() };
      if (comparison.has(sign)) return { kind: 'comparison', sign: sign as ComparisonSign, ...sides() };
      if (sign === '===' || sign === '!==')
        refuse('formula-wrong', from, `write ${sign.slice(0, 2)} to compare`);
      break;
    }
    case 'LogicalExpression':
      if (node.operator === '??') break;
      return {
        kind: node.operator === '&&' ? 'and' : 'or',
        left: inner(node.left),
        right: inner(node.right),
        from,
        to,
      };
    case 'ConditionalExpression':
      return {
        kind: 'choice',
        test: inner(node.test),
        yes: inner(node.consequent),
        no: inner(node.alternate),
        from,
        to,
      };
    case 'CallExpression':
      if (node.optional || node.callee.type !== 'Identifier') break;
      return { kind: 'call', ...call(node.callee.name, node.arguments, from, inner), from, to };
    case 'AssignmentExpression':
      refuse('formula-wrong', from, '“=” does not compare', 'write == to compare');
      break;
    default:
      break;
  }
  const problem: FormulaProblem = {
    code: 'formula-wrong',
    offset: from,
    message: `“${text.slice(from, Math.min(to, from + 30))}” is not something a formula can hold`,
    expected: allowedHere,
  };
  throw new FormulaRefusal(problem);
}

function call(
  name: string,
  given: readonly (Expression | { type: 'SpreadElement'; start: number })[],
  from: number,
  inner: (child: Expression) => FormulaNode,
): { name: FormulaFunction; of: FormulaNode[] } {
  if (!Object.hasOwn(formulaFunctions, name)) {
    refuse('formula-wrong', from, `there is no function “${name}”`, 'there are min max floor ceil round abs');
  }
  const [least, most] = formulaFunctions[name as FormulaFunction];
  if (given.length < least || given.length > most) {
    const wanted = least === most ? String(least) : `${least} to ${most}`;
    refuse('formula-wrong', from, `${name} takes ${wanted} values, not ${given.length}`);
  }
  const of = given.map((value) => {
    if (value.type === 'SpreadElement')
      refuse('formula-wrong', value.start, '“...” has no meaning in a formula');
    return inner(value as Expression);
  });
  return { name: name as FormulaFunction, of };
}

function literal(raw: string, value: unknown, offset: number): FormulaValue {
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') {
    if (/^0\d/.test(raw))
      refuse('formula-wrong', offset, `the number “${raw}” starts with a 0`, 'leave the 0 out');
    if (/^(\d+(\.\d*)?|\.\d+)$/.test(raw)) return value;
  }
  return refuse('formula-wrong', offset, `“${raw}” is not a number a formula can hold`, 'write it like 12.5');
}
