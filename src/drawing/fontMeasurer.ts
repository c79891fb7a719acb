import { create, type Font } from 'fontkit';
import type { TextMeasurer } from './drawing.ts';

/** Width of a text in font units; a letter the font does not have is given a full square. */
function advance(font: Font, text: string): number {
  const run = font.layout(text);
  let sum = 0;
  run.glyphs.forEach((glyph, index) => {
    sum += glyph.id === 0 ? font.unitsPerEm : run.positions[index]!.xAdvance;
  });
  return sum;
}

/** Letters that stand side by side without shaping: Latin, punctuation, arrows and other signs. */
const SIDE_BY_SIDE = /^[\u0020-\u024f\u2010-\u2027\u2030-\u205e\u2190-\u2bff]*$/u;

function makeOneMeasurer(font: Font): (text: string) => number {
  const letters = new Map<string, number>();
  const words = new Map<string, number>();
  const remembered = (known: Map<string, number>, text: string): number => {
    let width = known.get(text);
    if (width === undefined) {
      width = advance(font, text) / font.unitsPerEm;
      known.set(text, width);
    }
    return width;
  };
  return (text) => {
    if (!SIDE_BY_SIDE.test(text)) return remembered(words, text);
    let sum = 0;
    for (const letter of text) sum += remembered(letters, letter);
    return sum;
  };
}

/**
 * Measures text with two TrueType fonts, given as their bytes (DejaVu Sans Condensed and its bold in all drawings
 * of this project, see `FONT_FAMILY`). Widths are in the unit of `sizeMm`, rounded up to 0.001. Latin letters are
 * added up without kerning, which would only bring them nearer together; other scripts are shaped.
 */
export function makeFontMeasurer(regular: Uint8Array, bold: Uint8Array): TextMeasurer {
  const measurers = { regular: makeOneMeasurer(create(regular)), bold: makeOneMeasurer(create(bold)) };
  return (text, sizeMm, weight) => Math.ceil(measurers[weight](text) * sizeMm * 1000) / 1000;
}
