import type { Box } from './drawing.ts';
import type { DrawingWords } from './drawingWords.ts';
import { FRAME, NARROW, NORMAL, SMALL, shorten, wrap } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** Sizes of ISO 216, landscape, in mm. */
const PAGE_SIZES = { A4: [297, 210], A3: [420, 297] } as const;

export type PageSize = keyof typeof PAGE_SIZES;

/** Margins of the drawing space (ISO 5457): 20 mm on the left for filing, 10 mm on the other sides. */
const FILING_MARGIN = 20;
const MARGIN = 10;

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The drawing space. */
  readonly frame: Box;
}

export function pageOf(size: PageSize): Page {
  const [widthMm, heightMm] = PAGE_SIZES[size];
  const frame = { x0: FILING_MARGIN, y0: MARGIN, x1: widthMm - MARGIN, y1: heightMm - MARGIN };
  return { widthMm, heightMm, frame };
}

export function drawFrame(sketch: Sketch, page: Page): void {
  sketch.rect('frame', page.frame, { stroke: FRAME });
}

/** A field of the title block: a small heading over its content. Widths of a row are shared out by weight. */
export interface TitleField {
  readonly heading: string;
  readonly content: string;
  readonly weight: number;
  readonly strong?: true;
}

/** The field `Page`, unless the number of the page stands elsewhere on it. */
export function pageField(
  options: { readonly words: DrawingWords; readonly pageNumber?: 'drawn' | 'left out' },
  page: number,
  pages: number,
  weight: number,
): TitleField[] {
  if (options.pageNumber === 'left out') return [];
  const { page: heads } = options.words;
  return [{ heading: heads.page, content: heads.of(page, pages), weight }];
}

/** Greatest width of a title block (ISO 7200), and the height of one of its rows. */
export const TITLE_BLOCK_WIDTH = 180;
export const TITLE_ROW_HEIGHT = 7.4;

function drawField(sketch: Sketch, cell: Box, field: TitleField): void {
  const left = cell.x0 + 0.9;
  const room = cell.x1 - cell.x0 - 1.8;
  sketch.text(
    'title block',
    shorten(field.heading, room, SMALL, 'regular', sketch.measure),
    left,
    cell.y0 + 2.5,
    {
      sizeMm: SMALL,
    },
  );
  const weight = field.strong ? 'bold' : 'regular';
  const sizeMm = [NORMAL, SMALL].find((size) => sketch.measure(field.content, size, weight) <= room);
  if (sizeMm !== undefined) {
    sketch.text('title block', field.content, left, cell.y1 - 1.1, { sizeMm, weight });
    return;
  }
  // Longer than one small line: the heading's line is used as well, beside the heading.
  const besideHeading = left + sketch.measure(field.heading, SMALL, 'regular') + 2;
  const lines = wrap(field.content, cell.x1 - 0.9 - besideHeading, SMALL, weight, sketch.measure);
  const rest = lines.slice(1).join(' ');
  sketch.text('title block', lines[0]!, besideHeading, cell.y0 + 2.5, { sizeMm: SMALL, weight });
  sketch.text('title block', shorten(rest, room, SMALL, weight, sketch.measure), left, cell.y1 - 1.5, {
    sizeMm: SMALL,
    weight,
  });
}

/** Draws a title block of the fields of ISO 7200 into the bottom right corner and gives the space it takes. */
export function drawTitleBlock(sketch: Sketch, page: Page, rows: readonly (readonly TitleField[])[]): Box {
  const { frame } = page;
  const block = {
    x0: frame.x1 - TITLE_BLOCK_WIDTH,
    y0: frame.y1 - rows.length * TITLE_ROW_HEIGHT,
    x1: frame.x1,
    y1: frame.y1,
  };
  sketch.taken.take(block);
  rows.forEach((fields, row) => {
    const y0 = block.y0 + row * TITLE_ROW_HEIGHT;
    const total = fields.reduce((sum, field) => sum + field.weight, 0);
    let x0 = block.x0;
    if (row > 0) sketch.line('title block', block.x0, y0, block.x1, y0, NARROW);
    fields.forEach((field, column) => {
      const x1 = x0 + (TITLE_BLOCK_WIDTH * field.weight) / total;
      if (column > 0) sketch.line('title block', x0, y0, x0, y0 + TITLE_ROW_HEIGHT, NARROW);
      drawField(sketch, { x0, y0, x1, y1: y0 + TITLE_ROW_HEIGHT }, field);
      x0 = x1;
    });
  });
  sketch.rect('title block', block, { stroke: { widthMm: 0.35, dashMm: [] } });
  return block;
}
