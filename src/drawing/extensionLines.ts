import { type Box, boxesOverlap, type Segment } from './drawing.ts';
import { NARROW } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** A piece of a broken line that is shorter says nothing; the one that ends at the arrow stays. */
const LEAST_PIECE_MM = 1.2;

/**
 * The extension lines of all dimensions of a page, drawn together at the end: broken where they would pass through a
 * figure, which may be one of another row or view (ISO 129-1 lets them be interrupted).
 */
export class ExtensionLines {
  private readonly lines = new Map<string, Segment>();
  private readonly clear: Box[] = [];

  /** A level or upright line, in mm of the page, from the view outwards. */
  add(line: Segment): void {
    this.lines.set(line.join(' '), line);
  }

  /** Where no extension line may pass. */
  keepClear(box: Box): void {
    this.clear.push(box);
  }

  draw(sketch: Sketch): void {
    for (const line of this.lines.values()) {
      for (const [x0, y0, x1, y1] of pieces(line, this.clear))
        sketch.line('dimensions', x0, y0, x1, y1, NARROW);
    }
  }
}

/** What is left of a level or upright line outside some boxes, without short pieces before its end. */
function pieces([x0, y0, x1, y1]: Segment, boxes: readonly Box[]): Segment[] {
  const upright = x0 === x1;
  const [from, to] = upright ? [y0, y1] : [x0, x1];
  const sign = from < to ? 1 : -1;
  const hair = 1e-9;
  const line = {
    x0: Math.min(x0, x1) - hair,
    x1: Math.max(x0, x1) + hair,
    y0: Math.min(y0, y1) - hair,
    y1: Math.max(y0, y1) + hair,
  };
  const gaps = boxes
    .filter((box) => boxesOverlap(box, line))
    .map((box) => (upright ? [box.y0, box.y1] : [box.x0, box.x1]))
    .map(([low, high]) => (sign === 1 ? [low!, high!] : [high!, low!]))
    .sort((a, b) => sign * (a[0]! - b[0]!));
  const left: [number, number][] = [];
  let at = from;
  for (const [start, end] of gaps) {
    if (sign * (start! - at) >= LEAST_PIECE_MM) left.push([at, start!]);
    if (sign * (end! - at) > 0) at = end!;
  }
  if (sign * (to - at) > 0) left.push([at, to]);
  return left.map(([a, b]) => (upright ? [x0, a, x0, b] : [a, y0, b, y0]));
}
