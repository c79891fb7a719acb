import type { Extent, Um } from '../model/geometry.ts';
import type { ExtensionLines } from './extensionLines.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** Room that one row of dimensions takes beside a view, in mm. */
export const DIMENSION_ROW_MM = 5;
const ARROW_MM = 1.5;
/** How far a figure keeps from lines beside it, where there is room. */
const CLEAR_MM = 0.6;

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
  /** Takes the extension lines, to draw them once all figures stand. */
  readonly extensions: ExtensionLines;
  /** Where extension lines of rows further out pass, in mm of the page along the dimension: the figure moves aside of them. */
  readonly avoid?: readonly number[];
}

/** Whether a figure has room between arrows that are so far apart. */
export function hasRoom(sketch: Sketch, apartMm: number, text: string): boolean {
  return apartMm >= sketch.measure(text, SMALL, 'regular') + 0.4;
}

/**
 * Where the middle of a figure so wide goes between its arrows: as near to their middle as it stands clear of what is to be
 * avoided; `clear` says whether it does.
 */
export function placeFigure(
  [from, to]: readonly [number, number],
  width: number,
  avoid: readonly number[],
): { readonly at: number; readonly clear: boolean } {
  const middle = (from + to) / 2;
  const half = width / 2 + CLEAR_MM;
  const near = avoid.filter((at) => from < at && at < to);
  const free = (at: number) => near.every((each) => Math.abs(each - at) >= half - 1e-9);
  if (free(middle)) return { at: middle, clear: true };
  const aside = near
    .flatMap((each) => [each - half, each + half])
    .filter((at) => at - half >= from && at + half <= to && free(at))
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  const [nearest] = aside;
  return nearest === undefined ? { at: middle, clear: false } : { at: nearest, clear: true };
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
  const { lineMm, reads } = place;
  const away = lineMm > place.fromMm ? 1 : -1;
  for (const at of [from, to]) {
    const [a, b] = [place.fromMm + away * 0.8, lineMm + away * 1];
    place.extensions.add(reads === 'across' ? [at, a, at, b] : [a, at, b, at]);
  }
  const width = sketch.measure(text, SMALL, 'regular');
  if (outside) {
    drawOutside(sketch, [from, to], width, place);
    write(sketch, text, to + 2 * ARROW_MM + width / 2, width, place);
    return true;
  }
  const head = to - from > 3 * ARROW_MM ? ARROW_MM : (to - from) / 3;
  const [start, end] =
    reads === 'across'
      ? ([
          [from, lineMm],
          [to, lineMm],
        ] as const)
      : ([
          [lineMm, to],
          [lineMm, from],
        ] as const);
  sketch.arrow('dimensions', start, end, 'both', head);
  write(sketch, text, placeFigure([from, to], width, place.avoid ?? []).at, width, place);
  return true;
}

/** The figure with its middle at a place along the dimension line; no extension line passes through it. */
function write(sketch: Sketch, text: string, middle: number, width: number, place: DimensionPlace): void {
  const base = place.lineMm - 0.7;
  const { reads } = place;
  const [x, y] = reads === 'across' ? [middle, base] : [base, middle];
  sketch.text('dimensions', text, x, y, { sizeMm: SMALL, anchor: 'middle', reads });
  const along = [middle - width / 2 - 0.4, middle + width / 2 + 0.4] as const;
  const across = [base - SMALL * 0.8 - 0.3, place.lineMm - 0.1] as const;
  const [[x0, x1], [y0, y1]] = reads === 'across' ? [along, across] : [across, along];
  place.extensions.keepClear({ x0, x1, y0, y1 });
}

/** Arrows from outside, the line drawn on under the figure: to the right, or downwards where it reads up. */
function drawOutside(
  sketch: Sketch,
  [from, to]: readonly [number, number],
  width: number,
  { reads, lineMm }: DimensionPlace,
): void {
  const tail = 2 * ARROW_MM;
  const point = (along: number) =>
    reads === 'across' ? ([along, lineMm] as const) : ([lineMm, along] as const);
  sketch.arrow('dimensions', point(from - tail), point(from), 'one', ARROW_MM);
  sketch.arrow('dimensions', point(to + tail + width), point(to), 'one', ARROW_MM);
}

/** The dimensions between figures in a row that follow each other, along one line. */
export function drawChain(sketch: Sketch, extents: readonly Extent[], place: DimensionPlace): boolean {
  const narrow = extents.length === 1 ? 'outside' : 'left out';
  const drawn = extents.map((extent) => drawDimension(sketch, extent, { narrow, ...place }));
  return drawn.some((done) => done);
}
