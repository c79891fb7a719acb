import { InvalidArgumentError } from 'commander';
import { composed, unreadablePart } from '../../src/basics/visibleText.ts';

/** Reads a day such as 2026-03-02. */
export function day(text: string): string {
  const date = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : null;
  if (date === null || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== text) {
    throw new InvalidArgumentError('It must be a day such as 2026-03-02.');
  }
  return text;
}

/** Reads a percentage with at most two decimals into hundredths of a percent. */
export function percentage(text: string): number {
  const value = /^\d{1,4}(?:\.\d{1,2})?$/.test(text) ? Math.round(Number(text) * 100) : Number.NaN;
  if (!(value <= 100_000)) throw new InvalidArgumentError('It must be a percentage such as 20 or 7.5.');
  return value;
}

/** Reads sheets of a plan with commas between. */
export function sheetList(text: string): string[] {
  const words = text.split(',').map((word) => word.trim());
  if (words.some((word) => word === '' || word.length > 300)) {
    throw new InvalidArgumentError('It must be sheets with commas between, such as GROUP/1,GROUP/2x3.');
  }
  return words;
}

/** Reads a text of a person, at most `most` characters, nothing in it that cannot be seen. */
export function words(most: number): (text: string) => string {
  return (text) => {
    const plain = composed(text).trim();
    if (plain === '' || plain.length > most) {
      throw new InvalidArgumentError(`It must be a text of 1 to ${most} characters.`);
    }
    const unreadable = unreadablePart(plain);
    if (unreadable !== undefined) throw new InvalidArgumentError(`It holds ${unreadable}.`);
    return plain;
  };
}
