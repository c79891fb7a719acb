import type { Um } from '../model/geometry.ts';
import { type FormulaNode, FormulaRefusal, type FormulaValue } from './formulas.ts';

/** Figures closer than this (mm, or a bare number) are the same: a thousandth of the finest length there is. */
export const SAME_FIGURE = 1e-6;
/** A quotient that is whole but for rounding must not be floored to the number below. */
const WHOLE = 1e-9;

/**
 * A figure in mm that a formula came to, as whole µm: half up, after the noise of doubles below a thousandth of a µm is
 * gone. Half up, and not away from zero, keeps a box as thick wherever it stands: both ends of `x - t / 2` and
 * `x + t / 2` then round the same way.
 */
export function figureToUm(mm: number): Um {
  return Math.floor(Math.round(mm * 1e6) / 1000 + 0.5);
}

/**
 * Figures of an appliance that formulas may use: its size, the opening that it hangs in and what it wants clear in mm, the
 * openings for its air in cm².
 */
export const APPLIANCE_FIGURES = [
  'width',
  'depth',
  'height',
  'opening width',
  'opening depth',
  'left',
  'right',
  'front',
  'back',
  'above',
  'below',
  'air in',
  'air out',
] as const;

/** The name under which a figure of an appliance is known to formulas; nothing that a person writes is called so. */
export function applianceName(id: string, figure: string): string {
  return `appliance ${id} ${figure}`;
}

/** How far the body stands in from the floor's edge, at most, between two heights; all in mm. */
export type LayoutWall = (fromMm: number, toMm: number) => number;

/** Stops one formula: what is wrong has been said where it is. */
export class DependsOnWrong extends Error {}

/** A value for a sentence. */
export function describeValue(value: FormulaValue): string {
  if (typeof value === 'string') return `the text “${value}”`;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return `the number ${shortNumber(value)}`;
}

/** A figure for a sentence, at most three decimals. */
export function shortNumber(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** Works out one formula. Throws a FormulaRefusal, or a DependsOnWrong when a name it needs has no value. */
export class FormulaEvaluation {
  private readonly text: string;
  private readonly lookUp: (name: string) => FormulaValue | undefined;
  private readonly wall: LayoutWall | null;

  constructor(text: string, lookUp: (name: string) => FormulaValue | undefined, wall: LayoutWall | null) {
    this.text = text;
    this.lookUp = lookUp;
    this.wall = wall;
  }

  of(node: FormulaNode): FormulaValue {
    switch (node.kind) {
      case 'value':
        return node.value;
      case 'name': {
        const value = this.lookUp(node.name);
        if (value === undefined) throw new DependsOnWrong();
        return value;
      }
      case 'minus':
        return -this.number(node.of);
      case 'plus':
        return this.number(node.of);
      case 'not':
        return !this.truth(node.of);
      case 'arithmetic':
        return this.arithmetic(node);
      case 'comparison':
        return this.comparison(node);
      case 'and':
        return this.truth(node.left) && this.truth(node.right);
      case 'or':
        return this.truth(node.left) || this.truth(node.right);
      case 'choice':
        return this.truth(node.test) ? this.of(node.yes) : this.of(node.no);
      case 'call':
        return this.finite(this.call(node), node);
    }
  }

  private number(node: FormulaNode): number {
    const value = this.of(node);
    if (typeof value === 'number') return value;
    return this.refuse(node, `${this.quote(node)} is ${describeValue(value)}, not a number`);
  }

  private truth(node: FormulaNode): boolean {
    const value = this.of(node);
    if (typeof value === 'boolean') return value;
    return this.refuse(node, `${this.quote(node)} is ${describeValue(value)}; a comparison is wanted here`);
  }

  private arithmetic(node: FormulaNode & { kind: 'arithmetic' }): number {
    const left = this.number(node.left);
    const right = this.number(node.right);
    if ((node.sign === '/' || node.sign === '%') && right === 0) {
      const message = `division by zero: ${this.quote(node.right)} is 0`;
      throw new FormulaRefusal({ code: 'division-by-zero', offset: node.right.from, message });
    }
    const result = {
      '+': () => left + right,
      '-': () => left - right,
      '*': () => left * right,
      '/': () => left / right,
      '%': () => left % right,
    }[node.sign]();
    return this.finite(result, node);
  }

  private comparison(node: FormulaNode & { kind: 'comparison' }): boolean {
    const left = this.of(node.left);
    const right = this.of(node.right);
    if (typeof left === 'number' && typeof right === 'number') {
      const same = Math.abs(left - right) < SAME_FIGURE;
      switch (node.sign) {
        case '==':
          return same;
        case '!=':
          return !same;
        case '<':
          return left < right && !same;
        case '>':
          return left > right && !same;
        case '<=':
          return left < right || same;
        case '>=':
          return left > right || same;
      }
    }
    if (typeof left === typeof right) {
      if (node.sign === '==') return left === right;
      if (node.sign === '!=') return left !== right;
    }
    return this.refuse(
      node,
      `${describeValue(left)} and ${describeValue(right)} cannot be compared with ${node.sign}`,
    );
  }

  private call(node: FormulaNode & { kind: 'call' }): number {
    if (node.name === 'appliance') return this.appliance(node);
    const values = node.of.map((value) => this.number(value));
    switch (node.name) {
      case 'min':
        return Math.min(...values);
      case 'max':
        return Math.max(...values);
      case 'floor':
        return Math.floor(values[0]! + WHOLE);
      case 'ceil':
        return Math.ceil(values[0]! - WHOLE);
      case 'round':
        return Math.floor(values[0]! + 0.5 + WHOLE);
      case 'abs':
        return Math.abs(values[0]!);
      case 'wall':
        if (this.wall === null)
          return this.refuse(node, 'wall(from, to) is known in layouts and orders only');
        return this.wall(values[0]!, values[1]!);
    }
  }

  /** A figure of an appliance of the library; what may be asked for is in the scope under `applianceName`. */
  private appliance(node: FormulaNode & { kind: 'call' }): number {
    const [id, figure] = node.of.map((text) => {
      const value = this.of(text);
      if (typeof value === 'string') return value;
      return this.refuse(
        text,
        `${this.quote(text)} is ${describeValue(value)}; a text in quotes is wanted here`,
      );
    }) as [string, string];
    const value = this.lookUp(applianceName(id, figure));
    if (typeof value === 'number') return value;
    if (this.lookUp(applianceName(id, 'width')) === undefined) {
      return this.refuse(node.of[0]!, `the library has no appliance “${id}”`);
    }
    return this.refuse(
      node.of[1]!,
      `“${figure}” is no figure of an appliance; these are ${APPLIANCE_FIGURES.join(', ')}`,
    );
  }

  private finite(value: number, node: FormulaNode): number {
    if (Number.isFinite(value)) return value;
    return this.refuse(node, `${this.quote(node)} has no finite value`);
  }

  private quote(node: FormulaNode): string {
    return `“${this.text.slice(node.from, node.to)}”`;
  }

  private refuse(node: FormulaNode, message: string): never {
    throw new FormulaRefusal({ code: 'formula-kind', offset: node.from, message });
  }
}
