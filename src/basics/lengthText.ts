import type { Um } from '../model/geometry.ts';
import { mmToUm, UM_PER_INCH } from './lengths.ts';

/** Longest length that can be meant, in µm: 100 m. */
export const LONGEST_UM = 100_000_000;

const NUMBER = '(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)';
const FRACTION = '[0-9]+(?:[ -]+[0-9]+)?/[0-9]+';
// Both cases are spelt out: the pattern is published in JSON Schemas, which know no flags.
const MM = '[Mm][Mm]';
const INCH = '(?:[Ii][Nn](?:[Cc][Hh](?:[Ee][Ss])?)?|"|″|”)';

/** Texts that are lengths: `600`, `18 mm`, `3/4 in`, `0.75"`, `1 1/2 in`; a minus in front is understood too. */
export const LENGTH_PATTERN = new RegExp(
  `^ *[+-]? *(?:${NUMBER} *(?:${MM}|${INCH})?|${FRACTION} *${INCH}) *$`,
);

/** Texts with a unit mark, which cannot be formulas. */
const MARKED_LENGTH = new RegExp(`^ *[+-]? *(?:${NUMBER} *(?:${MM}|${INCH})|${FRACTION} *${INCH}) *$`);

/** How to write a length, for messages. */
export const LENGTH_EXPECTED = 'a length in mm such as 600 or 18 mm, or in inches such as 3/4 in or 0.75"';

function inchesOf(text: string): number {
  if (!text.includes('/')) return Number(text);
  const [before, denominator] = text.split('/') as [string, string];
  const parts = before.split(/[ -]+/).filter((part) => part !== '');
  const whole = parts.length === 2 ? Number(parts[0]) : 0;
  return whole + Number(parts.at(-1)) / Number(denominator);
}

/**
 * The length that a text states, in whole µm (1 in = 25.4 mm exactly, half away from zero), or undefined when the text
 * is not a length. It may be negative or too long: the caller knows what is allowed.
 */
export function lengthFromText(text: string): Um | undefined {
  if (text.length > 60 || !LENGTH_PATTERN.test(text)) return undefined;
  const plain = text.trim().toLowerCase();
  const sign = plain.startsWith('-') ? -1 : 1;
  const unsigned = plain.replace(/^[+-] */, '');
  const figure = unsigned.replace(/ *(?:mm|in|inch|inches|"|″|”)$/, '');
  const um = /(?:in|inch|inches|"|″|”)$/.test(unsigned)
    ? Math.round(inchesOf(figure) * UM_PER_INCH)
    : mmToUm(Number(figure));
  if (!Number.isSafeInteger(um)) return undefined;
  return um === 0 ? 0 : sign * um;
}

/** Millimetres of a text with a unit mark, or undefined for anything else, such as a formula or a bare number. */
export function millimetresOfMarkedText(text: string): number | undefined {
  if (text.length > 60 || !MARKED_LENGTH.test(text)) return undefined;
  const um = lengthFromText(text);
  return um === undefined ? undefined : um / 1000;
}

/** What to do about a text that is not the number or length it should be, or undefined when nothing helpful is known. */
export function lengthAdvice(text: string): string | undefined {
  const plain = text.trim();
  if (plain.length > 60) return undefined;
  if (/^[+-]?[0-9.]*,[0-9]+(?: *[a-z"]+)?$/i.test(plain)) {
    return `Write decimals with a point, without separators between thousands: ${plain.replace(',', '.')}.`;
  }
  const unit = /^[+-]?[0-9.]+ *(cm|dm|m|km|ft|feet|foot|'|yd)$/i.exec(plain)?.[1];
  if (unit !== undefined) return `Lengths in ${unit} are not read: write millimetres, or inches with \`in\`.`;
  if (/^[0-9]+\/[0-9]+$/.test(plain)) return `Fractions need an inch mark: ${plain} in.`;
  if (/\/ *0+ *(?:in|inch|inches|"|″|”)$/.test(plain)) return 'A fraction cannot be over 0.';
  return undefined;
}
