import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { JSDOM } from 'jsdom';
import { en } from '../../src/documents/words/en.ts';
import type { Drawing, TextMeasurer } from '../../src/drawing/drawing.ts';
import { makeFontMeasurer } from '../../src/drawing/fontMeasurer.ts';
import { svgFromDrawing } from '../../src/drawing/svg.ts';

const require = createRequire(import.meta.url);
const font = (file: string) => readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${file}`));

/** The measurer that the command uses, over the fonts of the dependency. */
export const measure: TextMeasurer = makeFontMeasurer(
  font('DejaVuSansCondensed.ttf'),
  font('DejaVuSansCondensed-Bold.ttf'),
);

/** The words of drawings in English. */
export const words = en.drawings;

/** A window of a browser's kind, to read drawings back in and to make plots. */
export const window = new JSDOM('').window;

export function toSvg(drawing: Drawing): string {
  return svgFromDrawing(drawing);
}
