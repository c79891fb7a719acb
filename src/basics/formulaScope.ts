import type { Finding, Place } from '../model/finding.ts';
import type { Um } from '../model/geometry.ts';
import type { Formula } from '../model/library.ts';
import {
  DependsOnWrong,
  describeValue,
  FormulaEvaluation,
  figureToUm,
  type LayoutWall,
  SAME_FIGURE,
  shortNumber,
} from './evaluateFormula.ts';
import { firstOf } from './findings.ts';
import { type FormulaProblem, FormulaRefusal, type FormulaValue, parseFormula } from './formulas.ts';
import { nearestWord } from './nearestWord.ts';

/** No length of furniture or a sheet comes near this (1 km): beyond it something is wrong. */
const GREATEST_MM = 1e6;

/** Where a formula stands, moved on to one of its characters. */
function placeAt(place: Place, offset: number): Place {
  return place.column === undefined ? place : { ...place, column: place.column + offset };
}

/** A formula's problem as a finding that points at its character. */
export function formulaFinding(formula: Formula, problem: FormulaProblem): Finding {
  const { offset, ...rest } = problem;
  return {
    severity: 'error',
    found: firstOf(formula.text, 80),
    ...rest,
    place: placeAt(formula.place, offset),
  };
}

/** What is wrong with a formula before any name has a value, or null. */
export function checkFormula(formula: Formula): Finding | null {
  const result = parseFormula(formula.text);
  return result.ok ? null : formulaFinding(formula, result.problem);
}

/**
 * Names with values, and names with formulas that are worked out in whatever order they need each other. What is
 * wrong is collected in `findings`, once each; a formula that leans on a wrong one gives undefined without a second
 * finding.
 */
export class FormulaScope {
  private readonly values: Map<string, FormulaValue>;
  private readonly wrong = new Set<string>();
  private readonly open: string[] = [];

  private readonly formulas: ReadonlyMap<string, Formula>;
  private readonly wall: LayoutWall | null;
  readonly findings: Finding[];

  constructor(
    values: ReadonlyMap<string, FormulaValue>,
    formulas: ReadonlyMap<string, Formula>,
    findings: Finding[],
    wall: LayoutWall | null = null,
  ) {
    this.values = new Map(values);
    this.formulas = formulas;
    this.findings = findings;
    this.wall = wall;
  }

  /** The same names and one more value, for a repeat's counter. */
  with(name: string, value: FormulaValue): FormulaScope {
    for (const known of this.formulas.keys()) this.lookUp(known);
    const next = new FormulaScope(this.values, this.formulas, this.findings, this.wall);
    for (const known of this.wrong) next.wrong.add(known);
    next.values.set(name, value);
    return next;
  }

  has(name: string): boolean {
    return this.values.has(name) || this.formulas.has(name);
  }

  /** What a name comes to, or undefined when it is unknown or wrong. */
  lookUp(name: string): FormulaValue | undefined {
    if (this.values.has(name)) return this.values.get(name);
    const formula = this.formulas.get(name);
    if (formula === undefined || this.wrong.has(name)) return undefined;
    if (this.open.includes(name)) {
      const circle = [...this.open.slice(this.open.indexOf(name)), name];
      for (const member of circle) this.wrong.add(member);
      this.report(formula, {
        code: 'formula-circle',
        offset: 0,
        message: `these formulas need each other in a circle: ${circle.join(' → ')}`,
        advice: 'give one of them a value that does not need the others',
      });
      return undefined;
    }
    this.open.push(name);
    const value = this.evaluate(formula);
    this.open.pop();
    if (value === undefined) this.wrong.add(name);
    else this.values.set(name, value);
    return value;
  }

  /** The value of a formula, or undefined with a finding. */
  evaluate(formula: Formula): FormulaValue | undefined {
    const result = parseFormula(formula.text);
    if (!result.ok) {
      this.report(formula, result.problem);
      return undefined;
    }
    let known = true;
    for (const [name, offset] of result.formula.names) {
      if (this.has(name)) continue;
      known = false;
      this.reportUnknown(formula, name, offset);
    }
    if (!known) return undefined;
    try {
      return new FormulaEvaluation(formula.text, (name) => this.lookUp(name), this.wall).of(
        result.formula.root,
      );
    } catch (error) {
      if (error instanceof FormulaRefusal) this.report(formula, error.problem);
      else if (!(error instanceof DependsOnWrong)) throw error;
      return undefined;
    }
  }

  /** A bare number. */
  number(formula: Formula): number | undefined {
    const value = this.evaluate(formula);
    if (value === undefined || typeof value === 'number') return value;
    this.reportKind(formula, value, 'a number');
    return undefined;
  }

  /** A length in µm of a formula in mm. */
  lengthUm(formula: Formula): Um | undefined {
    const value = this.number(formula);
    if (value === undefined) return undefined;
    if (Math.abs(value) <= GREATEST_MM) return figureToUm(value);
    this.report(formula, { code: 'length-too-great', offset: 0, message: `the length comes to ${value} mm` });
    return undefined;
  }

  /** A whole number from 0 up. */
  count(formula: Formula, most: number): number | undefined {
    const value = this.number(formula);
    if (value === undefined) return undefined;
    const whole = Math.round(value);
    if (Math.abs(value - whole) < SAME_FIGURE && whole >= 0 && whole <= most) return whole;
    const message = `the count comes to ${shortNumber(value)}; it must be a whole number from 0 to ${most}`;
    this.report(formula, { code: 'count-wrong', offset: 0, message });
    return undefined;
  }

  /** Yes or no; `null` stands for a condition that was not written, which holds. */
  condition(formula: Formula | null): boolean | undefined {
    if (formula === null) return true;
    const value = this.evaluate(formula);
    if (value === undefined || typeof value === 'boolean') return value;
    this.reportKind(formula, value, 'yes or no, as a comparison gives');
    return undefined;
  }

  private reportKind(formula: Formula, value: FormulaValue, expected: string): void {
    const message = `the formula comes to ${describeValue(value)}; wanted is ${expected}`;
    this.report(formula, { code: 'formula-kind', offset: 0, message, expected });
  }

  private reportUnknown(formula: Formula, name: string, offset: number): void {
    const nearest = nearestWord(name, [...this.values.keys(), ...this.formulas.keys()]);
    const finding: Finding = {
      code: 'unknown-name',
      severity: 'error',
      message: `there is no name “${name}” here`,
      place: placeAt(formula.place, offset),
      found: name,
      ...(nearest === undefined ? {} : { nearest }),
    };
    this.keep(finding);
  }

  private report(formula: Formula, problem: FormulaProblem): void {
    this.keep(formulaFinding(formula, problem));
  }

  private keep(finding: Finding): void {
    const same = (other: Finding) =>
      other.code === finding.code &&
      other.message === finding.message &&
      other.place?.file === finding.place?.file &&
      other.place?.line === finding.place?.line &&
      other.place?.column === finding.place?.column;
    if (!this.findings.some(same)) this.findings.push(finding);
  }
}
