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

/**
 * Measures text with two TrueType fonts, given as their bytes (DejaVu Sans Condensed and its bold in all drawings
 * of this project, see `FONT_FAMILY`). Widths are in the unit of `sizeMm`, rounded up to 0.001. Words are kept,
 * since the same ones come again and again on a job.
 */
export function makeFontMeasurer(regular: Uint8Array, bold: Uint8Array): TextMeasurer {
  const fonts = { regular: create(regular), bold: create(bold) };
  const known = { regular: new Map<string, number>(), bold: new Map<string, number>() };
  return (text, sizeMm, weight) => {
    const widths = known[weight];
    let width = widths.get(text);
    if (width === undefined) {
      width = advance(fonts[weight], text) / fonts[weight].unitsPerEm;
      widths.set(text, width);
    }
    return Math.ceil(width * sizeMm * 1000) / 1000;
  };
}
