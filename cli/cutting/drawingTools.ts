import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type DrawingTools, makeFontMeasurer } from '../../src/pipeline/makePapers.ts';

const require = createRequire(import.meta.url);

/** The fonts that texts are measured in. */
export async function loadDrawingTools(): Promise<DrawingTools> {
  const [regular, bold] = await Promise.all([
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  ]);
  return { measure: makeFontMeasurer(regular, bold) };
}
