import type { Extent, Um } from '../model/geometry.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** Room that one row of dimensions takes beside a view, in mm. */
export const DIMENSION_ROW_MM = 5;
const ARROW_MM = 1.5;

/** Where a dimension stands: level below or above a view, or upright on its left; `lineMm` is the dimension line. */
export interface DimensionPlace {
  readonly reads: 'across' | 'up';
  readonly lineMm: number;
  /** Where extension lines start, at the view's border. */
  readonly fromMm: number;
  /** µm of the view to mm of the page along the dimension. */
  readonly onPage: (um: Um) => number;
  readonly units: Units;
  /** Where the figure has no room between the arrows: they point inwards and it stands after the far one, or it is left out. */
  readonly narrow?: 'outside' | 'left out';
  /** Figures stand on white, where extension lines of a row further out would run through them. */
  readonly onWhite?: boolean;
}

/** Whether a figure has room between arrows that are so far apart. */
export function hasRoom(sketch: Sketch, apartMm: number, text: string): boolean {
  return apartMm >= sketch.measure(text, SMALL, 'regular') + 0.4;
}

/**
 * One dimension (ISO 129): extension lines with a gap to the view, arrows, the figure above the line, read from below or
 * from the right. Where the figure has no room between the arrows it stands outside them, or is left out and `false`
 * comes back.
 */
export function drawDimension(sketch: Sketch, extent: Extent, place: DimensionPlace, word = ''): boolean {
  const ends = [place.onPage(extent[0]), place.onPage(extent[1])].sort((a, b) => a - b);
  const [from, to] = [ends[0]!, ends[1]!];
  const text = `${word}${printLength(extent[1] - extent[0], place.units)}`;
  const outside = !hasRoom(sketch, to - from, text);
  if (outside && place.narrow !== 'outside') return false;
  const { lineMm } = place;
  const away = lineMm > place.fromMm ? 1 : -1;
  const middle = (from + to) / 2;
  for (const at of [from, to]) {
    const [a, b] = [place.fromMm + away * 0.8, lineMm + away * 1];
    if (place.reads === 'across') sketch.line('dimensions', at, a, at, b);
    else sketch.line('dimensions', a, at, b, at);
  }
  if (outside) {
    drawOutside(sketch, [from, to], text, place);
    return true;
  }
  const head = to - from > 3 * ARROW_MM ? ARROW_MM : (to - from) / 3;
  const { reads } = place;
  const [start, end, x, y] =
    reads === 'across'
      ? ([[from, lineMm], [to, lineMm], middle, lineMm - 0.7] as const)
      : ([[lineMm, to], [lineMm, from], lineMm - 0.7, middle] as const);
  sketch.arrow('dimensions', start, end, 'both', head);
  const width = sketch.measure(text, SMALL, 'regular');
  // Beside a figure that just has room its own extension lines are broken, so that none touches it.
  if (to - from < width + 1.2) clearGround(sketch, x, y, width + 0.6, reads);
  else if (place.onWhite === true) clearGround(sketch, x, y, width, reads);
  sketch.text('dimensions', text, x, y, { sizeMm: SMALL, anchor: 'middle', reads });
  return true;
}

/** White under a figure that is to stand with its middle at a place. */
function clearGround(sketch: Sketch, x: number, y: number, width: number, reads: 'across' | 'up'): void {
  const [half, rise] = [width / 2, SMALL * 0.8];
  const box =
    reads === 'across'
      ? { x0: x - half, x1: x + half, y0: y - rise, y1: y + 0.2 }
      : { x0: x - rise, x1: x + 0.2, y0: y - half, y1: y + half };
  sketch.rect('dimensions', box, { fill: 0 });
}

/** Arrows from outside, the line drawn on under the figure: to the right, or downwards where it reads up. */
function drawOutside(
  sketch: Sketch,
  [from, to]: readonly [number, number],
  text: string,
  { reads, lineMm }: DimensionPlace,
): void {
  const tail = 2 * ARROW_MM;
  const width = sketch.measure(text, SMALL, 'regular');
  const point = (along: number) =>
    reads === 'across' ? ([along, lineMm] as const) : ([lineMm, along] as const);
  sketch.arrow('dimensions', point(from - tail), point(from), 'one', ARROW_MM);
  sketch.arrow('dimensions', point(to + tail + width), point(to), 'one', ARROW_MM);
  const middle = to + tail + width / 2;
  const [x, y] = reads === 'across' ? [middle, lineMm - 0.7] : [lineMm - 0.7, middle];
  sketch.text('dimensions', text, x, y, { sizeMm: SMALL, anchor: 'middle', reads });
}

/** The dimensions between figures in a row that follow each other, along one line. */
export function drawChain(sketch: Sketch, extents: readonly Extent[], place: DimensionPlace): boolean {
  const narrow = extents.length === 1 ? 'outside' : 'left out';
  const drawn = extents.map((extent) => drawDimension(sketch, extent, { narrow, ...place }));
  return drawn.some((done) => done);
}
