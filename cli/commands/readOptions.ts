import { InvalidArgumentError } from 'commander';

/** Reads a whole number from `least` to `most`. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,16}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= least && value <= most)) {
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    }
    return value;
  };
}

/** Reads seconds above 0. */
export function seconds(text: string): number {
  const value = /^\d{1,6}(?:\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN;
  if (!(value > 0 && value <= 100_000)) {
    throw new InvalidArgumentError('It must be a number of seconds above 0, up to 100000.');
  }
  return value;
}

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
