import { z } from 'zod';
import type { Finding } from '../model/finding.ts';
import type { Um } from '../model/geometry.ts';
import type { Formula } from '../model/library.ts';
import { dayNumber } from './calendar.ts';
import { errorFinding, shownText } from './findings.ts';
import { mmToUm, printMmShort } from './lengths.ts';
import {
  LENGTH_EXPECTED,
  LENGTH_PATTERN,
  LONGEST_UM,
  lengthFromText,
  millimetresOfMarkedText,
} from './lengthText.ts';
import type { PlacedYaml } from './placedYaml.ts';

/** Longest length in millimetres that a file may state. */
const LONGEST_MM = LONGEST_UM / 1000;

const ID_EXPECTED = 'lower-case words and numbers joined by hyphens, such as birch-15';
const IDENTIFIER_EXPECTED =
  'one word of letters, numbers and underscores that begins with a letter, such as bed_width';
const NAME_EXPECTED = 'a name of 1 to 80 plain characters on one line, without spaces at its ends';
const FORMULA_EXPECTED = 'a number, or a formula such as width - 2 * gap';

/**
 * No control, line-break, direction or invisible characters: names are printed on labels and in drawings. Written
 * without property escapes and lookbehind, so that readers of the JSON Schemas understand it.
 */
const PRINTABLE_NAME =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is kept out
  /^(?! )(?!.* $)[^\u0000-\u001f\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]{1,80}$/;

/** Words that formulas use themselves, so that nothing else may be called so. */
export const FORMULA_WORDS: readonly string[] = [
  'inch',
  'min',
  'max',
  'floor',
  'ceil',
  'round',
  'abs',
  'wall',
  'appliance',
  'thickness',
  'vehicle',
  'true',
  'false',
  'null',
];

const lengthText = z.string({ error: LENGTH_EXPECTED }).regex(LENGTH_PATTERN, { error: LENGTH_EXPECTED });

/** The fields that YAML files are made of. A schema's `error` is its `expected` phrase (see `checkShape`). */
export const fields = {
  id: z
    .string({ error: ID_EXPECTED })
    .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, { error: ID_EXPECTED })
    .max(60),
  identifier: z
    .string({ error: IDENTIFIER_EXPECTED })
    .regex(/^[A-Za-z][A-Za-z0-9_]*$/, { error: IDENTIFIER_EXPECTED })
    .max(60),
  name: z.string({ error: NAME_EXPECTED }).regex(PRINTABLE_NAME, { error: NAME_EXPECTED }),
  title: z.string({ error: 'a text' }).min(1).max(200),
  note: z.string({ error: 'a text' }).max(2000),
  /** Above 0, at most 100 m. */
  size: z.union([z.number().gt(0).lte(LONGEST_MM), lengthText], { error: LENGTH_EXPECTED }),
  /** From 0 to 100 m. */
  allowance: z.union([z.number().gte(0).lte(LONGEST_MM), lengthText], { error: LENGTH_EXPECTED }),
  /** From −100 m to 100 m. */
  coordinate: z.union([z.number().gte(-LONGEST_MM).lte(LONGEST_MM), lengthText], { error: LENGTH_EXPECTED }),
  formula: z.union([z.number(), z.string().min(1).max(1000)], { error: FORMULA_EXPECTED }),
  price: z.number({ error: 'a price in currency units, such as 92.50' }).gte(0).lte(10_000_000),
  /** Whether the calendar has it is for `dayNumber` to say. */
  day: z.string({ error: 'a day such as 2026-03-02' }).regex(/^\d{4}-\d{2}-\d{2}$/, {
    error: 'a day such as 2026-03-02',
  }),
  grainSide: z.enum(['length', 'width', 'none']),
  wholeFromOne: z.number().int().gte(1).lte(100_000),
};

/** What a length may be. */
export type LengthKind = 'size' | 'allowance' | 'coordinate';

/** Reads single fields of one file after its shape has been checked, and collects what is wrong with them. */
export class FieldReader {
  readonly yaml: PlacedYaml;
  private readonly findings: Finding[];

  constructor(yaml: PlacedYaml, findings: Finding[]) {
    this.yaml = yaml;
    this.findings = findings;
  }

  report(finding: Finding): void {
    this.findings.push(finding);
  }

  /** A length in µm. The ranges are those of the field of the same name in `fields`, for texts too. */
  lengthUm<C extends object>(container: C, key: keyof C & (string | number), kind: LengthKind): Um {
    const written = container[key] as number | string;
    const um = typeof written === 'number' ? mmToUm(written) : lengthFromText(written);
    const name = `\`${key}\``;
    const place = this.yaml.placeOf(container, key);
    if (um === undefined) {
      this.report(
        errorFinding('wrong-form', `${name} is not a length.`, place, {
          found: shownText(String(written)),
          expected: LENGTH_EXPECTED,
        }),
      );
      return 1000;
    }
    const least = kind === 'coordinate' ? -LONGEST_UM : kind === 'size' ? 1 : 0;
    if (um < least || um > LONGEST_UM) {
      const problem =
        um < 0 && kind !== 'coordinate' ? 'is negative' : um < least ? 'is too small' : 'is too large';
      this.report(
        errorFinding('out-of-range', `${name} ${problem}.`, place, {
          found: shownText(String(written)),
          expected: `${kind === 'size' ? 'more than 0' : `${printMmShort(least)} mm`} to 100 m`,
        }),
      );
      return 1000;
    }
    return um;
  }

  /** Like `lengthUm`, or null where the field is left out. */
  optionalLengthUm<C extends object>(
    container: C,
    key: keyof C & (string | number),
    kind: LengthKind,
  ): Um | null {
    return container[key] === undefined ? null : this.lengthUm(container, key, kind);
  }

  /** A price in currency units with at most two decimals, in whole minor units. */
  priceMinor<C extends object>(container: C, key: keyof C & (string | number)): number {
    const price = container[key] as number;
    const minor = Math.round(price * 100);
    if (Math.abs(minor - price * 100) > 1e-6) {
      this.report(
        errorFinding(
          'wrong-form',
          `\`${key}\` has more than two decimals.`,
          this.yaml.placeOf(container, key),
          {
            found: String(price),
            expected: 'a price such as 92.50',
          },
        ),
      );
    }
    return minor;
  }

  /** A day of the calendar, or undefined with a finding. */
  day<C extends object>(container: C, key: keyof C & (string | number)): string | undefined {
    const text = container[key] as string;
    if (dayNumber(text) !== undefined) return text;
    this.report(
      errorFinding(
        'wrong-day',
        `\`${key}\` is not a day of the calendar.`,
        this.yaml.placeOf(container, key),
        {
          found: shownText(text),
          expected: 'a day such as 2026-03-02',
        },
      ),
    );
    return undefined;
  }

  /** A formula or number with the place where its text begins. Lengths with a unit mark become millimetres. */
  formula<C extends object>(container: C, key: keyof C & (string | number)): Formula {
    const written = container[key] as number | string;
    const place = this.yaml.placeOf(container, key);
    if (typeof written === 'number') return { text: String(written), place };
    const millimetres = millimetresOfMarkedText(written);
    return { text: millimetres === undefined ? written : String(millimetres), place };
  }

  /** Like `formula`, or null where the field is left out. */
  optionalFormula<C extends object>(container: C, key: keyof C & (string | number)): Formula | null {
    return container[key] === undefined ? null : this.formula(container, key);
  }

  /** From and to of an extent. */
  extent<C extends object>(container: C, key: keyof C & (string | number)): readonly [Formula, Formula] {
    const pair = container[key] as (number | string)[];
    return [this.formula(pair, 0), this.formula(pair, 1)];
  }
}
