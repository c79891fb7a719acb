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
const SIDE_BY_SIDE = /[\u0020-\u024f\u2010-\u2027\u2030-\u205e\u2190-\u2bff]/;
const SIDE_BY_SIDE_END = 0x2c00;

function makeOneMeasurer(font: Font): (text: string) => number {
  const widthOf = (text: string) => advance(font, text) / font.unitsPerEm;
  /** By code: the width of a letter that stands beside others; less than 0 for others, NaN before it was asked for. */
  const letters = new Float64Array(SIDE_BY_SIDE_END).fill(Number.NaN);
  const letterWidth = (code: number): number => {
    const letter = String.fromCharCode(code);
    return SIDE_BY_SIDE.test(letter) ? widthOf(letter) : -1;
  };
  const words = new Map<string, number>();
  const shaped = (text: string): number => {
    let width = words.get(text);
    if (width === undefined) {
      width = widthOf(text);
      words.set(text, width);
    }
    return width;
  };
  return (text) => {
    let sum = 0;
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code >= SIDE_BY_SIDE_END) return shaped(text);
      let width = letters[code]!;
      if (Number.isNaN(width)) {
        width = letterWidth(code);
        letters[code] = width;
      }
      if (width < 0) return shaped(text);
      sum += width;
    }
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
