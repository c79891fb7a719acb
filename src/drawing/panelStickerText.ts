import { TEXT_FALL, TEXT_RISE, type TextMeasurer, type Weight } from './drawing.ts';
import { LINE_PITCH, plainText, shorten, wrap } from './lettering.ts';
import type { PanelSticker, StickerLine } from './panelSticker.ts';

/** Font sizes of a label's text in mm, largest first; the last has capitals of 1.4 mm. */
const SIZES_MM = [3.43, 2.9, 2.47, 2.15, 1.9] as const;
const HEADING_TO_TEXT = 1.25;
const MARK_TO_TEXT = 2.1;
/** A fill-in line needs room for a pen. */
const FILL_IN_MM = 5.5;
/** Font sizes of the text of the code. */
const CODE_SIZES_MM = [1.75, 1.5, 1.3, 1.1] as const;

/** Lines of a text under each other. */
export interface TextBlock {
  readonly lines: readonly string[];
  readonly weight: Weight;
}

/** A label's text with its lines broken. Lengths in mm. */
export interface StickerText {
  readonly sizeMm: number;
  readonly markSizeMm: number;
  /** The frame around the mark. */
  readonly markBoxMm: readonly [width: number, height: number];
  readonly headingSizeMm: number;
  readonly heading: TextBlock;
  /** From the top of the label to the text below the heading. */
  readonly headMm: number;
  readonly body: readonly TextBlock[];
  /** Height of the text below the heading, the fill-in line included. */
  readonly bodyMm: number;
  readonly bodyWidthMm: number;
}

/**
 * How far a text is bent to fit: nothing shortened; each line to what it may take; each but those that must stay whole to
 * one.
 */
interface Attempt {
  readonly sizeMm: number;
  readonly optional: 'kept' | 'left out';
  readonly lines: 'whole' | 'shortened' | 'one each';
}

const ATTEMPTS: readonly Attempt[] = [
  ...SIZES_MM.slice(0, 3).map((sizeMm) => ({ sizeMm, optional: 'kept', lines: 'whole' }) as const),
  ...SIZES_MM.map((sizeMm) => ({ sizeMm, optional: 'left out', lines: 'whole' }) as const),
  { sizeMm: 2.15, optional: 'left out', lines: 'shortened' },
  { sizeMm: 1.9, optional: 'left out', lines: 'shortened' },
  { sizeMm: 1.9, optional: 'left out', lines: 'one each' },
];

/** Height of lines under each other. */
export function blockHeight(lines: number, sizeMm: number): number {
  return lines === 0 ? 0 : sizeMm * (TEXT_RISE + TEXT_FALL + LINE_PITCH * (lines - 1));
}

interface Font {
  readonly sizeMm: number;
  readonly weight: Weight;
}

/** As `wrap`, but a word that is wider than a line is broken after hyphens where it has some. */
function wrapAtHyphens(text: string, widthMm: number, font: Font, measure: TextMeasurer): string[] {
  const { sizeMm, weight } = font;
  const words = text.split(' ').map((word) => {
    if (measure(word, sizeMm, weight) <= widthMm) return word;
    const parts: string[] = [];
    for (const part of word.split(/(?<=-)/u)) {
      const longer = (parts.at(-1) ?? '') + part;
      if (parts.length > 0 && measure(longer, sizeMm, weight) <= widthMm) parts[parts.length - 1] = longer;
      else parts.push(...wrap(part, widthMm, sizeMm, weight, measure));
    }
    // Two neighbours never fit a line together, so that the space between them is always a line's end.
    return parts.join(' ');
  });
  return wrap(words.join(' '), widthMm, sizeMm, weight, measure);
}

/** Lines of a text, at most `most` of them; null when it takes more and may not be shortened. */
function linesOf(
  text: string,
  widthMm: number,
  font: Font,
  most: number,
  lines: Attempt['lines'],
  measure: TextMeasurer,
): string[] | null {
  const all = wrapAtHyphens(plainText(text), widthMm, font, measure);
  if (all.length <= most) return all;
  if (lines === 'whole') return null;
  const last = all.slice(most - 1).join(' ');
  return [...all.slice(0, most - 1), shorten(last, widthMm, font.sizeMm, font.weight, measure)];
}

function headOf(
  sticker: PanelSticker,
  widthMm: number,
  attempt: Attempt,
  most: number,
  measure: TextMeasurer,
) {
  const { sizeMm } = attempt;
  const headingSizeMm = sizeMm * HEADING_TO_TEXT;
  const wanted = sizeMm * MARK_TO_TEXT;
  const markWidth = measure(sticker.mark, wanted, 'bold');
  // A long mark, a word or a number of many figures, takes at most a third of the width.
  const markSizeMm = Math.min(wanted, (wanted * (widthMm / 3)) / markWidth);
  const markBoxMm = [measure(sticker.mark, markSizeMm, 'bold') + 1.6, markSizeMm * 0.75 + 1.6] as const;
  const font = { sizeMm: headingSizeMm, weight: 'bold' } as const;
  const room = widthMm - markBoxMm[0] - 1.2;
  const lines = linesOf(sticker.heading, room, font, most, attempt.lines, measure);
  if (lines === null) return null;
  const headMm = Math.max(markBoxMm[1], blockHeight(lines.length, headingSizeMm)) + 0.9;
  return { headingSizeMm, markSizeMm, markBoxMm, heading: { lines, weight: 'bold' as const }, headMm };
}

function setText(
  sticker: PanelSticker,
  widths: { readonly headMm: number; readonly bodyMm: number },
  attempt: Attempt,
  mostOf: (line: StickerLine | 'heading') => number,
  measure: TextMeasurer,
): StickerText | null {
  const { sizeMm } = attempt;
  const head = headOf(sticker, widths.headMm, attempt, mostOf('heading'), measure);
  if (head === null) return null;
  const body: TextBlock[] = [];
  for (const line of sticker.lines) {
    if (line.need === 'optional' && attempt.optional === 'left out') continue;
    const font = { sizeMm, weight: line.weight };
    const lines = linesOf(line.text, widths.bodyMm, font, mostOf(line), attempt.lines, measure);
    if (lines === null) return null;
    if (lines.some((one) => one !== '')) body.push({ lines, weight: line.weight });
  }
  const count = body.reduce((sum, { lines }) => sum + lines.length, 0);
  const bodyMm = blockHeight(count, sizeMm) + (sticker.fillIn === null ? 0 : FILL_IN_MM);
  return { ...head, sizeMm, body, bodyMm, bodyWidthMm: widths.bodyMm };
}

/** A text that takes as many lines as it needs, nothing shortened or left out. */
export function textInFull(sticker: PanelSticker, widthMm: number, measure: TextMeasurer): StickerText {
  const attempt: Attempt = { sizeMm: SIZES_MM[1], optional: 'kept', lines: 'whole' };
  const widths = { headMm: widthMm, bodyMm: widthMm };
  return setText(sticker, widths, attempt, () => Number.POSITIVE_INFINITY, measure)!;
}

/** How many lines a text of the label may take. */
function mostLines({ lines }: Attempt): (line: StickerLine | 'heading') => number {
  return (line) => {
    if (line === 'heading') return lines === 'one each' ? 2 : 3;
    return lines === 'one each' && line.need !== 'whole' ? 1 : line.most;
  };
}

/**
 * The ways to set a label's text in given widths, the most legible first: smaller letters, then without what is
 * optional, then shortened. A heading takes three lines at most.
 */
export function* textsToTry(
  sticker: PanelSticker,
  widths: readonly { readonly headMm: number; readonly bodyMm: number }[],
  measure: TextMeasurer,
): Generator<StickerText> {
  for (const attempt of ATTEMPTS) {
    for (const width of widths) {
      const text = setText(sticker, width, attempt, mostLines(attempt), measure);
      if (text !== null) yield text;
    }
  }
}

/** A code in lines: broken after its strokes, parts that are too long after a hyphen; or wherever a line is full. */
function codeLines(code: string, widthMm: number, sizeMm: number, measure: TextMeasurer): string[][] {
  const font = { sizeMm, weight: 'regular' } as const;
  const byPart: string[] = [];
  for (const part of code.split(/(?<=\/)/u)) {
    const longer = (byPart.at(-1) ?? '') + part;
    if (byPart.length > 0 && measure(longer, sizeMm, 'regular') <= widthMm)
      byPart[byPart.length - 1] = longer;
    else byPart.push(...wrapAtHyphens(part, widthMm, font, measure));
  }
  return [byPart, wrap(code, widthMm, sizeMm, 'regular', measure)];
}

/** The text of a code as lines that fit a room, in the largest letters. Throws when the room holds none. */
export function codeText(
  code: string,
  roomMm: readonly [width: number, height: number],
  measure: TextMeasurer,
): { readonly lines: readonly string[]; readonly sizeMm: number } {
  for (const sizeMm of CODE_SIZES_MM) {
    for (const lines of codeLines(code, roomMm[0], sizeMm, measure)) {
      if (blockHeight(lines.length, sizeMm) <= roomMm[1]) return { lines, sizeMm };
    }
  }
  throw new Error(`the text ${code} does not fit ${roomMm.join(' × ')} mm`);
}
