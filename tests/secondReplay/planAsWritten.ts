import type { ExactObject, ExactValue } from './exactJson.ts';
import { Fraction } from './fraction.ts';

/** Reads members of an object whose shape the schema has vouched for. A wrong kind is a mistake of these tests. */
export class Written {
  private readonly object: ExactObject;

  constructor(object: ExactObject) {
    this.object = object;
  }

  has(key: string): boolean {
    const value = this.object.get(key);
    return value !== undefined && value !== null;
  }

  text(key: string): string {
    const value = this.object.get(key);
    if (typeof value !== 'string') throw new Error(`${key} is no text`);
    return value;
  }

  number(key: string): Fraction {
    const value = this.object.get(key);
    if (!(value instanceof Fraction)) throw new Error(`${key} is no number`);
    return value;
  }

  /** Absent and null are both null. */
  numberOrNull(key: string): Fraction | null {
    return this.has(key) ? this.number(key) : null;
  }

  flag(key: string): boolean {
    return this.object.get(key) === true;
  }

  part(key: string): Written {
    return asWritten(this.object.get(key));
  }

  list(key: string): ExactValue[] {
    const value = this.object.get(key);
    if (value === undefined) return [];
    if (!Array.isArray(value)) throw new Error(`${key} is no list`);
    return value;
  }

  parts(key: string): Written[] {
    return this.list(key).map(asWritten);
  }

  texts(key: string): string[] {
    return this.list(key).map((value) => {
      if (typeof value !== 'string') throw new Error(`${key} has something that is no text`);
      return value;
    });
  }

  numbers(key: string): Fraction[] {
    return this.list(key).map((value) => {
      if (!(value instanceof Fraction)) throw new Error(`${key} has something that is no number`);
      return value;
    });
  }
}

export function asWritten(value: ExactValue | undefined): Written {
  if (!(value instanceof Map)) throw new Error('no object');
  return new Written(value);
}

/** The first number that is finer than a micrometre: every number of the file is whole or in millimetres. */
export function tooFine(value: ExactValue): Fraction | null {
  if (value instanceof Fraction) return value.times(Fraction.of(1000)).isWhole() ? null : value;
  const inside = value instanceof Map ? value.values() : Array.isArray(value) ? value : [];
  for (const one of inside) {
    const found = tooFine(one);
    if (found !== null) return found;
  }
  return null;
}
