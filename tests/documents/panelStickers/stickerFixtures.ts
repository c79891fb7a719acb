import { makePanelStickers } from '../../../src/documents/panelStickers.ts';
import { wordsOf } from '../../../src/documents/words/index.ts';
import type { Box, Drawing, TextShape } from '../../../src/drawing/drawing.ts';
import { textBox } from '../../../src/drawing/drawing.ts';
import type { Units } from '../../../src/drawing/lengthsInWords.ts';
import type { PanelSticker } from '../../../src/drawing/panelSticker.ts';
import { type StickerFormat, stickerFormats } from '../../../src/drawing/panelStickerFormats.ts';
import { drawStickers } from '../../../src/drawing/panelStickers.ts';
import { measure } from '../../drawing/drawingTools.ts';
import type { PlannedOrder } from '../../helpers/demoPlan.ts';

export function stickersOf(
  { job, proven }: PlannedOrder,
  language = 'en',
  units: Units = 'mm',
): PanelSticker[] {
  return makePanelStickers({
    plan: proven.plan,
    job: job.name,
    ...(job.ordered === undefined ? {} : { furniture: job.ordered.furniture }),
    title: (id) => job.ordered?.library.edgings.get(id)?.title ?? id,
    words: wordsOf(language).stickers,
    units,
  });
}

export function formatOf(name: string): StickerFormat {
  const format = stickerFormats.get(name);
  if (format === undefined) throw new Error(`there is no format ${name}`);
  return format;
}

export const allFormats = [...stickerFormats.values()];

export function draw(stickers: readonly PanelSticker[], format: StickerFormat, first = 1): Drawing[] {
  return drawStickers(stickers, { format, first, measure, title: (page, of) => `${page} of ${of}` });
}

export function textsOf(drawing: Drawing): TextShape[] {
  return drawing.shapes.filter((shape) => shape.kind === 'text');
}

/** The room that each shape of a drawing takes, its strokes included. */
export function roomOf(shape: Drawing['shapes'][number]): Box {
  const around = (xs: readonly number[], ys: readonly number[], margin: number): Box => ({
    x0: Math.min(...xs) - margin,
    y0: Math.min(...ys) - margin,
    x1: Math.max(...xs) + margin,
    y1: Math.max(...ys) + margin,
  });
  switch (shape.kind) {
    case 'text':
      return textBox(shape);
    case 'rect': {
      const { x0, y0, x1, y1 } = shape.box;
      return around([x0, x1], [y0, y1], (shape.stroke?.widthMm ?? 0) / 2);
    }
    case 'rects':
      return around(
        shape.boxes.flatMap(({ x0, x1 }) => [x0, x1]),
        shape.boxes.flatMap(({ y0, y1 }) => [y0, y1]),
        0,
      );
    case 'line': {
      // Ends are cut off square: a level line takes no room beyond them.
      const level = shape.y0 === shape.y1;
      const half = shape.stroke.widthMm / 2;
      const box = around([shape.x0, shape.x1], [shape.y0, shape.y1], 0);
      return level
        ? { ...box, y0: box.y0 - half, y1: box.y1 + half }
        : { ...box, x0: box.x0 - half, x1: box.x1 + half };
    }
    case 'lines':
      return around(
        shape.segments.flatMap(([x0, , x1]) => [x0, x1]),
        shape.segments.flatMap(([, y0, , y1]) => [y0, y1]),
        0,
      );
    case 'circle':
      return around([shape.x], [shape.y], shape.radiusMm + shape.stroke.widthMm / 2);
    case 'polygon':
      return around(
        shape.points.map(([x]) => x),
        shape.points.map(([, y]) => y),
        0,
      );
  }
}
