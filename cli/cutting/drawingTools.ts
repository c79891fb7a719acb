import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type DrawingTools, makeFontMeasurer } from '../../src/pipeline/makePapers.ts';

const require = createRequire(import.meta.url);

/** A window without a screen to draw in, and the fonts that texts are measured in. Takes some 400 ms to load. */
export async function loadDrawingTools(): Promise<DrawingTools> {
  const [{ JSDOM }, regular, bold] = await Promise.all([
    import('jsdom'),
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  ]);
  return { measure: makeFontMeasurer(regular, bold), window: new JSDOM('').window as never };
}
