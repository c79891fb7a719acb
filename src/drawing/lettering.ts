import { withoutUnseen } from '../basics/visibleText.ts';
import type { Stroke, TextMeasurer, Weight } from './drawing.ts';

/** Height of the capitals of DejaVu Sans as a part of its font size (1493 of 2048 font units). */
const CAPITAL_HEIGHT = 0.729;

/** Font size whose capitals have a lettering height in mm, to 0.01 mm. ISO 3098 counts lettering by its capitals. */
function sizeForHeight(heightMm: number): number {
  return Math.round((heightMm / CAPITAL_HEIGHT) * 100) / 100;
}

/** Font sizes in mm. ISO 3098 heights are 2.5, 3.5, 5; 1.8 is one step of √2 below 2.5 and the smallest used. */
export const SMALL = sizeForHeight(1.8);
export const NORMAL = sizeForHeight(2.5);
export const LARGE = sizeForHeight(3.5);

/** Distance of baselines as a multiple of the font size. */
export const LINE_PITCH = 1.24;

/** Line widths of one ISO 128 group: wide to narrow is 2 : 1; the frame is one step wider still. */
export const NARROW: Stroke = { widthMm: 0.18, dashMm: [] };
export const WIDE: Stroke = { widthMm: 0.35, dashMm: [] };
export const FRAME: Stroke = { widthMm: 0.7, dashMm: [] };
/** For hatches and rules of tables, which lie behind everything else. */
export const HAIRLINE: Stroke = { widthMm: 0.13, dashMm: [] };

const ELLIPSIS = '…';

/** Words of Latin letters, figures and common signs with one space between: most texts, which stay as they are. */
const IS_PLAIN = /^[!-~\u00ae-\u017f]+(?: [!-~\u00ae-\u017f]+)*$/;

/**
 * A text that fits on one line of a drawing: line breaks and tabs become spaces, halves of surrogate pairs are shown as
 * such, and what cannot be seen or changes how others are read is taken out.
 */
export function plainText(text: string): string {
  if (IS_PLAIN.test(text)) return text;
  const lines = text.replace(/[\t-\r \u0085\u2028\u2029]+/gu, ' ').replace(/\p{Surrogate}/gu, '\ufffd');
  return withoutUnseen(lines, '').trim();
}

/** The text, or as much of its start as fits `widthMm` with an ellipsis after it. */
export function shorten(
  text: string,
  widthMm: number,
  sizeMm: number,
  weight: Weight,
  measure: TextMeasurer,
): string {
  if (measure(text, sizeMm, weight) <= widthMm) return text;
  const letters = [...text];
  let fits = 0;
  let tooLong = letters.length;
  while (fits + 1 < tooLong) {
    const middle = (fits + tooLong) >> 1;
    const tried = letters.slice(0, middle).join('').trimEnd() + ELLIPSIS;
    if (measure(tried, sizeMm, weight) <= widthMm) fits = middle;
    else tooLong = middle;
  }
  return letters.slice(0, fits).join('').trimEnd() + ELLIPSIS;
}

/** How many letters from the start of a word fit, at least one. */
function lettersThatFit(
  letters: readonly string[],
  widthMm: number,
  measure: (text: string) => number,
): number {
  let fits = 1;
  while (fits < letters.length && measure(letters.slice(0, fits + 1).join('')) <= widthMm) fits++;
  return fits;
}

/** Where a word that is too long is broken: behind the last stroke or hyphen of its first half line or more, else where it must be. */
function afterStroke(letters: readonly string[], fits: number): number {
  for (let at = fits; at > fits / 2; at--) if ('/-'.includes(letters[at - 1]!)) return at;
  return fits;
}

/**
 * Breaks a text into lines no wider than `widthMm`, between words; a word wider than a line is broken where it must
 * be. A cross stays with what stands before and after it, so that no size or count is torn, and mm with their figure.
 * Nothing is left out. An empty text gives one empty line.
 */
export function wrap(
  text: string,
  widthMm: number,
  sizeMm: number,
  weight: Weight,
  measure: TextMeasurer,
): string[] {
  return wrapWords(unbroken(text), widthMm, (part) => measure(part, sizeMm, weight));
}

/** The parts of a text that no line should break: its words, those on both sides of a cross and a figure with its mm as one. */
export function unbroken(text: string): string[] {
  return text.split(/(?<!×)(?<!\d(?= mm\b)) (?!×)/);
}

function wrapWords(words: readonly string[], widthMm: number, width: (part: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (width(longer) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    // What holds words together gives way where they have no room beside each other.
    const held = word.split(/[ \u00a0]/);
    if (held.length > 1 && width(word) > widthMm) {
      const parts = wrapWords(held, widthMm, width);
      lines.push(...parts.slice(0, -1));
      line = parts.at(-1)!;
      continue;
    }
    let letters = [...word];
    while (letters.length > 1 && width(letters.join('')) > widthMm) {
      const fits = afterStroke(letters, lettersThatFit(letters, widthMm, width));
      lines.push(letters.slice(0, fits).join(''));
      letters = letters.slice(fits);
    }
    line = letters.join('');
  }
  lines.push(line);
  return lines;
}
