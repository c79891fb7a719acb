import type { PlacedUnit } from '../model/furniture.ts';
import { paint, pictureOf } from './apartPicture.ts';
import type { Box, Drawing } from './drawing.ts';
import { inset } from './drawing.ts';
import { LINE_PITCH, NARROW, NORMAL, SMALL, shorten, wrap } from './lettering.ts';
import { drawFrame, drawTitleBlock, pageOf, TITLE_ROW_HEIGHT } from './page.ts';
import { Sketch } from './sketch.ts';
import { type FurnitureDrawingOptions, furnitureTitle, sizeWords } from './unitTitle.ts';

const PAGE = pageOf('A4');
const COLUMNS = 4;
const ROWS = 3;
/** Apart enough to see what is inside, together enough to see what it is. */
const SLIGHTLY_APART = 0.3;
const TITLE_LINES = 2;

/** The fields of a page, row by row. */
function fieldsOf(space: Box): Box[] {
  const wide = (space.x1 - space.x0) / COLUMNS;
  const high = (space.y1 - space.y0) / ROWS;
  return Array.from({ length: COLUMNS * ROWS }, (_, index) => {
    const x0 = space.x0 + (index % COLUMNS) * wide;
    const y0 = space.y0 + Math.floor(index / COLUMNS) * high;
    return { x0, y0, x1: x0 + wide, y1: y0 + high };
  });
}

/** At most so many lines, the last one shortened where the text needs more. */
function titleLines(sketch: Sketch, title: string, widthMm: number): string[] {
  const lines = wrap(title, widthMm, NORMAL, 'bold', sketch.measure);
  const last = lines.slice(TITLE_LINES - 1).join(' ');
  if (last === '') return lines;
  return [...lines.slice(0, TITLE_LINES - 1), shorten(last, widthMm, NORMAL, 'bold', sketch.measure)];
}

/** One unit in its field: title, its name in the library, the picture, its outside size and how many panels it has. */
function drawField(sketch: Sketch, unit: PlacedUnit, options: FurnitureDrawingOptions, field: Box): void {
  const { x0, y0, x1, y1 } = inset(field, 2.2);
  const room = x1 - x0;
  sketch.rect('tables', field, { stroke: NARROW });
  const line = NORMAL * LINE_PITCH;
  titleLines(sketch, options.titles.get(unit.unit) ?? unit.unit, room).forEach((text, index) => {
    sketch.text('numbers', text, x0, y0 + NORMAL * 0.78 + index * line, { sizeMm: NORMAL, weight: 'bold' });
  });
  const below = [
    unit.unit,
    `${sizeWords(unit, options.units ?? 'mm')}, ${options.words.cutPlan.small.countOfPanels(unit.panels.length)}`,
  ];
  const pitch = SMALL * LINE_PITCH;
  below.forEach((text, index) => {
    const y = y1 - SMALL * 0.24 - (below.length - 1 - index) * pitch;
    sketch.text('numbers', shorten(text, room, SMALL, 'regular', sketch.measure), x0, y, { sizeMm: SMALL });
  });
  if (unit.panels.length === 0) return;
  const top = y0 + TITLE_LINES * line + 0.5;
  const bottom = y1 - below.length * pitch - 1;
  paint(sketch, pictureOf(unit, { x0, y0: top, x1, y1: bottom }, SLIGHTLY_APART));
}

/**
 * Units side by side on pages of A4, each drawn slightly apart with its title, its name in the library, its outside size and
 * how many panels it has; not to one scale. `titles` has the titles of the units by id, `job` the library's. The same
 * units give the same drawings; no units give one empty page.
 */
export function drawContactSheet(units: readonly PlacedUnit[], options: FurnitureDrawingOptions): Drawing[] {
  const { frame } = PAGE;
  const says = options.words.furniture.contactSheet;
  const fields = fieldsOf({ ...frame, y1: frame.y1 - 3 * TITLE_ROW_HEIGHT });
  const pages = Math.max(1, Math.ceil(units.length / fields.length));
  return Array.from({ length: pages }, (_, page) => {
    const sketch = new Sketch(options.measure);
    const shown = units.slice(page * fields.length, (page + 1) * fields.length);
    shown.forEach((unit, index) => {
      drawField(sketch, unit, options, fields[index]!);
    });
    drawFrame(sketch, PAGE);
    const words = {
      document: says.document,
      what: options.job,
      kind: says.kind(units.length),
      size: says.underEach,
      scale: options.words.furniture.noScale,
      projection: 'isometric' as const,
      page: page + 1,
      pages,
    };
    drawTitleBlock(sketch, PAGE, furnitureTitle(options, words));
    return {
      widthMm: PAGE.widthMm,
      heightMm: PAGE.heightMm,
      title: says.title(options.job),
      description: says.description(shown.map((unit) => options.titles.get(unit.unit) ?? unit.unit)),
      shapes: sketch.shapes,
    };
  });
}
