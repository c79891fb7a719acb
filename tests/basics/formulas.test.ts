import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkFormula, FormulaScope } from '../../src/basics/formulaScope.ts';
import type { FormulaValue } from '../../src/basics/formulas.ts';
import { parseFormula } from '../../src/basics/formulas.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Formula } from '../../src/model/library.ts';

const place = { file: 'units/cupboard.yaml', line: 7, column: 10, field: 'names › inside' };
const formula = (text: string): Formula => ({ text, place });

function scopeOf(values: Record<string, FormulaValue>, formulas: Record<string, string> = {}) {
  const findings: Finding[] = [];
  const named = new Map(Object.entries(formulas).map(([name, text]) => [name, formula(text)]));
  return { scope: new FormulaScope(new Map(Object.entries(values)), named, findings), findings };
}

function value(text: string, values: Record<string, FormulaValue> = {}) {
  const { scope, findings } = scopeOf(values);
  return { is: scope.evaluate(formula(text)), findings };
}

describe('formulas', () => {
  it.each<[string, FormulaValue]>([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['-2 - -3', 1],
    ['7 / 2', 3.5],
    ['7 % 4', 3],
    ['0.75 * inch', 19.05],
    ['min(3, 2, 9) + max(1, 4)', 6],
    ['floor(2.9) + ceil(2.1) + round(2.5) + abs(-1)', 9],
    ['width - 2 * thickness.carcass', 567.6],
    ["hand == 'left' ? 1 : 2", 1],
    ['width > 300 && !(width > 900)', true],
    ['width < 300 || hand != "right"', true],
    ['true', true],
  ])('works out %s', (text, expected) => {
    const { is, findings } = value(text, { width: 600, 'thickness.carcass': 16.2, hand: 'left', inch: 25.4 });
    expect(findings).toEqual([]);
    if (typeof expected === 'number') expect(is).toBeCloseTo(expected, 9);
    else expect(is).toBe(expected);
  });

  it('does not let rounding noise change a whole number or a comparison', () => {
    expect(value('floor(0.3 / 0.1)').is).toBe(3);
    expect(value('ceil(0.1 * 3 / 0.1)').is).toBe(3);
    expect(value('0.1 + 0.2 == 0.3').is).toBe(true);
    expect(value('0.1 + 0.2 <= 0.3').is).toBe(true);
    expect(value('0.1 + 0.2 > 0.3').is).toBe(false);
  });

  it.each<[string, number]>([
    ['width; 1', 5],
    ['(() => 1)()', 0],
    ['this', 0],
    ['[1]', 0],
    ['width[0]', 5],
    ['globalThis.process.exit(1)', 0],
    ['new Date()', 0],
    ['a = 1', 0],
    ['a === 1', 0],
    ['a ?? 1', 0],
    ['a?.b', 0],
    ['1, 2', 0],
    ['import("x")', 0],
    ['2 width', 2],
    ['010', 0],
    ['0x10', 0],
    ['1e9', 0],
    ['10n', 0],
    ['1 /* remark */', 2],
    ['wide(1)', 0],
    ['min()', 0],
    ['floor(1, 2)', 0],
    ['min(...a)', 4],
    ['`a`', 0],
    ['2 * ', 3],
    ['', 0],
    ['a & b', 2],
    ['a && b | c', 7],
    ['2 ** 3', 0],
    ['typeof a', 0],
    ['/a/', 0],
    ['null', 0],
  ])('refuses %s at character %i', (text, offset) => {
    const result = parseFormula(text);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.problem.offset).toBe(offset);
  });

  it('says how to write a length with its unit', () => {
    expect(checkFormula(formula('width - 18mm'))).toMatchObject({
      message: 'a formula takes bare numbers, in mm, not “18mm”',
      advice: 'write 18',
      place: { line: 7, column: 18 },
    });
    expect(checkFormula(formula('0.75in'))?.advice).toBe('write 0.75 * inch');
    expect(checkFormula(formula('3 in + 1'))?.message).toContain('“3 in”');
  });

  it('points at the character of an unknown name and knows the nearest one', () => {
    const { findings } = value('10 + widht', { width: 600 });
    expect(findings).toEqual([
      {
        code: 'unknown-name',
        severity: 'error',
        message: 'there is no name “widht” here',
        place: { ...place, column: 15 },
        found: 'widht',
        nearest: 'width',
      },
    ]);
  });

  it('finds an unknown name in the branch that is not taken', () => {
    expect(value('true ? 1 : nothing').findings).toHaveLength(1);
  });

  it('names what was divided by when it is zero', () => {
    const { findings } = value('10 / (width - 600)', { width: 600 });
    expect(findings[0]).toMatchObject({
      code: 'division-by-zero',
      message: 'division by zero: “width - 600” is 0',
      place: { column: 16 },
    });
    expect(value('3 % 0').findings[0]?.code).toBe('division-by-zero');
  });

  it('works names out in any order and once', () => {
    const { scope, findings } = scopeOf(
      { width: 600 },
      { clear: 'inside - gap', gap: '3', inside: 'width - 30' },
    );
    expect(scope.number(formula('clear'))).toBe(567);
    expect(findings).toEqual([]);
  });

  it('reports a circle by name, once', () => {
    const { scope, findings } = scopeOf({}, { inside: 'clear + 1', clear: 'inside - 1', door: 'clear' });
    expect(scope.number(formula('door'))).toBeUndefined();
    expect(scope.number(formula('inside'))).toBeUndefined();
    expect(findings.map((finding) => finding.message)).toEqual([
      'these formulas need each other in a circle: clear → inside → clear',
    ]);
    const self = scopeOf({}, { inside: 'inside' });
    self.scope.number(formula('inside'));
    expect(self.findings[0]?.message).toContain('inside → inside');
  });

  it('says what kind of value was wanted', () => {
    const { scope, findings } = scopeOf({ hand: 'left', drawers: 2.5 });
    scope.number(formula('hand'));
    scope.condition(formula('1'));
    scope.count(formula('drawers'), 100);
    scope.count(formula('-1'), 100);
    scope.evaluate(formula('hand + 1'));
    scope.evaluate(formula('hand < 1'));
    scope.evaluate(formula('wall(1, 2)'));
    expect(findings.map((finding) => finding.message)).toEqual([
      'the formula comes to the text “left”; wanted is a number',
      'the formula comes to the number 1; wanted is yes or no, as a comparison gives',
      'the count comes to 2.5; it must be a whole number from 0 to 100',
      'the count comes to -1; it must be a whole number from 0 to 100',
      '“hand” is the text “left”, not a number',
      'the text “left” and the number 1 cannot be compared with <',
      'wall(from, to) is known in layouts and orders only',
    ]);
  });

  it('gives whole µm at once', () => {
    const { scope } = scopeOf({ inch: 25.4 });
    expect(scope.lengthUm(formula('0.1 + 0.2'))).toBe(300);
    expect(scope.lengthUm(formula('-0.0006'))).toBe(-1);
    // A board in the middle of an odd width stays as thick as it is, wherever its ends fall between two µm.
    for (const middle of ['250.0005', '-250.0005', '333.3335', '0.0005', '100 / 3']) {
      const from = scope.lengthUm(formula(`${middle} - 16.2 / 2`))!;
      expect(scope.lengthUm(formula(`${middle} + 16.2 / 2`))! - from).toBe(16_200);
    }
    expect(scope.lengthUm(formula('inch / 32'))).toBe(794);
    expect(scope.lengthUm(formula('2000000'))).toBeUndefined();
  });

  it('does not reach what every object has', () => {
    for (const name of ['constructor', '__proto__', 'toString', 'thickness.constructor']) {
      expect(value(name).findings[0]?.code).toBe('unknown-name');
    }
    expect(value('toString(1)').findings[0]?.code).toBe('formula-wrong');
  });

  it('bounds length and depth', () => {
    expect(checkFormula(formula('1'.repeat(1001)))?.code).toBe('formula-too-long');
    expect(checkFormula(formula(`${'('.repeat(400)}1${')'.repeat(400)}`))?.code).toBe('formula-too-deep');
    expect(checkFormula(formula(`${'('.repeat(40)}1${')'.repeat(40)}`))).toBeNull();
    expect(checkFormula(formula(`${'-'.repeat(1).concat(' ').repeat(90)}1`))?.code).toBe('formula-too-deep');
  });

  it('gives a value or a finding for any text, never anything else', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60, unit: 'grapheme' }), (text) => {
        const { is, findings } = value(text, { width: 600 });
        expect(is === undefined).toBe(findings.length > 0);
        if (typeof is === 'number') expect(Number.isFinite(is)).toBe(true);
      }),
      { numRuns: 500 },
    );
    const word = fc.constantFrom(
      'width',
      '1',
      '0',
      '(',
      ')',
      '+',
      '/',
      '?',
      ':',
      ' ',
      "'a'",
      '<',
      'min(',
      ',',
      '!',
      '&&',
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 12 }), (words) => {
        const { is, findings } = value(words.join(''), { width: 600 });
        expect(is === undefined).toBe(findings.length > 0);
      }),
      { numRuns: 1000 },
    );
  });
});
