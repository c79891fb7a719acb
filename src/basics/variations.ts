/** One thing that is tried with several values: a setting's left side and the right sides that are tried, in order. */
export interface Variation {
  /** As in a setting: `bed_width`, `base cupboard.width`, `front.finish`. */
  readonly what: string;
  readonly values: readonly string[];
  /** Whether the values are the steps of a range, which can be drawn along an axis. */
  readonly isRange: boolean;
}

/** How a variation is written, for help and errors. */
export const VARIATION_EXPECTED =
  'NAME=FROM..TO/STEP as in bed_width=1200..1350/10, or NAME=VALUE,VALUE as in sink=small,large';

/** A range with more steps is a mistake. */
const MOST_VALUES = 1000;

const RANGE =
  /^\s*(-?\d{1,9}(?:\.\d{1,3})?)\s*\.\.\s*(-?\d{1,9}(?:\.\d{1,3})?)\s*\/\s*(\d{1,9}(?:\.\d{1,3})?)\s*$/;

/** Values of a range in thousandths, so that no step is missed by rounding. */
function stepsOf(from: number, to: number, step: number): string[] | undefined {
  const [first, last, by] = [from, to, step].map((value) => Math.round(value * 1000)) as [
    number,
    number,
    number,
  ];
  if (by <= 0 || last < first || (last - first) / by >= MOST_VALUES) return undefined;
  const values: string[] = [];
  for (let value = first; value <= last; value += by) values.push(String(value / 1000));
  return values;
}

/** Reads `bed_width=1200..1350/10` or `sink=small,large`; undefined when it is neither. */
export function variationFromText(text: string): Variation | undefined {
  const equals = text.indexOf('=');
  const what = text.slice(0, Math.max(0, equals)).trim();
  if (what === '' || text.length > 10_000) return undefined;
  const right = text.slice(equals + 1);
  const range = RANGE.exec(right);
  if (range !== null) {
    const values = stepsOf(Number(range[1]), Number(range[2]), Number(range[3]));
    return values && { what, values, isRange: true };
  }
  if (right.includes('..')) return undefined;
  const values = right.split(',').map((value) => value.trim());
  if (values.some((value) => value === '') || values.length > MOST_VALUES) return undefined;
  return { what, values: [...new Set(values)], isRange: false };
}

/** Every way to choose one value of each variation, as settings; the last variation runs fastest. One empty way for none. */
export function waysOf(variations: readonly Variation[]): readonly (readonly string[])[] {
  return variations.reduce<readonly (readonly string[])[]>(
    (ways, { what, values }) => ways.flatMap((way) => values.map((value) => [...way, `${what}=${value}`])),
    [[]],
  );
}
