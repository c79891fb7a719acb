import type { Box, Layer, Segment, Shape, Stroke, TextMeasurer, TextShape, Weight } from './drawing.ts';
import { boxesOverlap, textBox } from './drawing.ts';
import { NARROW, plainText } from './lettering.ts';

/** Side of the squares in which taken places are looked up, in mm. */
const SQUARE_MM = 8;

/** Places on a page that are taken, found again quickly. */
export class TakenPlaces {
  private readonly squares = new Map<number, Box[]>();

  take(box: Box): void {
    this.eachSquare(box, (key) => {
      const there = this.squares.get(key);
      if (there) there.push(box);
      else this.squares.set(key, [box]);
      return true;
    });
  }

  isFree(box: Box): boolean {
    return this.eachSquare(
      box,
      (key) => !(this.squares.get(key) ?? []).some((taken) => boxesOverlap(taken, box)),
    );
  }

  /** The taken places that reach into a box. */
  within(box: Box): Box[] {
    const found = new Set<Box>();
    this.eachSquare(box, (key) => {
      for (const taken of this.squares.get(key) ?? []) if (boxesOverlap(taken, box)) found.add(taken);
      return true;
    });
    return [...found];
  }

  private eachSquare(box: Box, visit: (key: number) => boolean): boolean {
    const rowTo = Math.floor(box.y1 / SQUARE_MM);
    const columnTo = Math.floor(box.x1 / SQUARE_MM);
    for (let row = Math.floor(box.y0 / SQUARE_MM); row <= rowTo; row++) {
      for (let column = Math.floor(box.x0 / SQUARE_MM); column <= columnTo; column++) {
        if (!visit(row * 4096 + column)) return false;
      }
    }
    return true;
  }
}

export interface TextStyle {
  readonly sizeMm: number;
  readonly weight?: Weight;
  readonly anchor?: TextShape['anchor'];
  readonly reads?: TextShape['reads'];
}

/** Collects the shapes of one page and remembers which places are taken. */
export class Sketch {
  readonly shapes: Shape[] = [];
  readonly taken = new TakenPlaces();

  readonly measure: TextMeasurer;

  constructor(measure: TextMeasurer) {
    this.measure = measure;
  }

  line(layer: Layer, x0: number, y0: number, x1: number, y1: number, stroke: Stroke = NARROW): void {
    this.shapes.push({ kind: 'line', layer, x0, y0, x1, y1, stroke });
  }

  rect(
    layer: Layer,
    box: Box,
    look: { readonly stroke?: Stroke; readonly fill?: number; readonly radiusMm?: number },
  ): void {
    this.shapes.push({
      kind: 'rect',
      layer,
      box,
      radiusMm: look.radiusMm ?? 0,
      stroke: look.stroke ?? null,
      fill: look.fill ?? null,
    });
  }

  polygon(layer: Layer, points: readonly (readonly [number, number])[], fill: number): void {
    this.shapes.push({ kind: 'polygon', layer, points, fill });
  }

  circle(layer: Layer, x: number, y: number, radiusMm: number, stroke: Stroke = NARROW): void {
    this.shapes.push({ kind: 'circle', layer, x, y, radiusMm, stroke });
  }

  /** Filled rectangles as one figure. */
  rects(layer: Layer, boxes: readonly Box[], fill: number): void {
    if (boxes.length > 0) this.shapes.push({ kind: 'rects', layer, boxes, fill });
  }

  /** Writes a text and takes its place. An empty text draws nothing. */
  text(layer: Layer, text: string, x: number, y: number, style: TextStyle): void {
    const plain = plainText(text);
    if (plain === '') return;
    const weight = style.weight ?? 'regular';
    const shape: TextShape = {
      kind: 'text',
      layer,
      text: plain,
      x,
      y,
      sizeMm: style.sizeMm,
      weight,
      anchor: style.anchor ?? 'start',
      reads: style.reads ?? 'across',
      widthMm: this.measure(plain, style.sizeMm, weight),
    };
    this.shapes.push(shape);
    this.taken.take(textBox(shape));
  }

  /** Many lines of one stroke: a hatch, the rules of a table. */
  lines(layer: Layer, segments: readonly Segment[], stroke: Stroke): void {
    if (segments.length > 0) this.shapes.push({ kind: 'lines', layer, segments, stroke });
  }

  /** An arrow with a head at one end or both, level or upright; the heads are drawn as filled triangles. */
  arrow(
    layer: Layer,
    from: readonly [number, number],
    to: readonly [number, number],
    heads: 'one' | 'both',
    headMm = 1.8,
  ): void {
    const [x0, y0] = from;
    const [x1, y1] = to;
    const length = Math.abs(x1 - x0) + Math.abs(y1 - y0);
    const ux = (x1 - x0) / length;
    const uy = (y1 - y0) / length;
    const half = headMm / 4;
    const back = headMm * 0.8;
    const start = heads === 'both' ? back : 0;
    this.line(layer, x0 + ux * start, y0 + uy * start, x1 - ux * back, y1 - uy * back);
    const head = (x: number, y: number, way: 1 | -1) => {
      const bx = x - way * ux * headMm;
      const by = y - way * uy * headMm;
      this.polygon(
        layer,
        [
          [x, y],
          [bx - uy * half, by + ux * half],
          [bx + uy * half, by - ux * half],
        ],
        1,
      );
    };
    head(x1, y1, 1);
    if (heads === 'both') head(x0, y0, -1);
  }
}

function boxAt(x: number, y: number, widthMm: number, heightMm: number): Box {
  return { x0: x - widthMm / 2, y0: y - heightMm / 2, x1: x + widthMm / 2, y1: y + heightMm / 2 };
}

/** The nearest centre to `start` among all pairs of the given x and y, each sorted by its distance from the start. */
function nearestFree(
  xs: readonly number[],
  ys: readonly number[],
  start: readonly [number, number],
  isFree: (x: number, y: number) => boolean,
): readonly [x: number, y: number] | null {
  let nearest = Number.POSITIVE_INFINITY;
  let found: readonly [number, number] | null = null;
  for (const x of xs) {
    const dx2 = (x - start[0]) * (x - start[0]);
    if (dx2 >= nearest) break;
    for (const y of ys) {
      const far = dx2 + (y - start[1]) * (y - start[1]);
      if (far >= nearest) break;
      if (!isFree(x, y)) continue;
      nearest = far;
      found = [x, y];
      break;
    }
  }
  return found;
}

function sortedFrom(start: number, values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => Math.abs(a - start) - Math.abs(b - start) || a - b);
}

/** Where centres of a box of the given size can lie in a field, and the one nearest to what is wanted. */
function centresIn(field: Box, widthMm: number, heightMm: number, wanted: readonly [number, number]) {
  const least = [field.x0 + widthMm / 2, field.y0 + heightMm / 2] as const;
  const most = [field.x1 - widthMm / 2, field.y1 - heightMm / 2] as const;
  if (least[0] > most[0] || least[1] > most[1]) return null;
  const clamp = (value: number, axis: 0 | 1) => Math.min(most[axis], Math.max(least[axis], value));
  return { least, most, start: [clamp(wanted[0], 0), clamp(wanted[1], 1)] as const };
}

/**
 * Where a box of the given size fits into a field without touching an obstacle, as near as can be to a wanted centre.
 * Exact: the nearest free centre lies straight from the wanted one, or touches obstacles or the field on two sides.
 * Returns the centre, or null when the box fits nowhere.
 */
export function findRoom(
  field: Box,
  widthMm: number,
  heightMm: number,
  wanted: readonly [x: number, y: number],
  obstacles: readonly Box[],
): readonly [x: number, y: number] | null {
  const centres = centresIn(field, widthMm, heightMm, wanted);
  if (!centres) return null;
  const { least, most, start } = centres;
  const isFree = (x: number, y: number) => {
    const box = boxAt(x, y, widthMm, heightMm);
    return !obstacles.some((obstacle) => boxesOverlap(obstacle, box));
  };
  if (isFree(start[0], start[1])) return start;
  const xs = [start[0], least[0], most[0]];
  const ys = [start[1], least[1], most[1]];
  // A hair beyond the touching place, so that rounding does not make it an overlap.
  const hair = 1e-6;
  for (const obstacle of obstacles) {
    xs.push(obstacle.x0 - widthMm / 2 - hair, obstacle.x1 + widthMm / 2 + hair);
    ys.push(obstacle.y0 - heightMm / 2 - hair, obstacle.y1 + heightMm / 2 + hair);
  }
  const inside = (axis: 0 | 1) => (value: number) => value >= least[axis] && value <= most[axis];
  return nearestFree(
    sortedFrom(start[0], xs.filter(inside(0))),
    sortedFrom(start[1], ys.filter(inside(1))),
    start,
    isFree,
  );
}

/** As `findRoom`, over a grid of at most 48 places a side, for conditions that are no boxes. */
export function findRoomOnGrid(
  field: Box,
  widthMm: number,
  heightMm: number,
  wanted: readonly [x: number, y: number],
  isFree: (box: Box) => boolean,
): readonly [x: number, y: number] | null {
  const centres = centresIn(field, widthMm, heightMm, wanted);
  if (!centres) return null;
  const { least, most, start } = centres;
  const ticks = (axis: 0 | 1): number[] => {
    const count = Math.min(48, Math.ceil(most[axis] - least[axis]));
    const step = count === 0 ? 0 : (most[axis] - least[axis]) / count;
    const all = Array.from({ length: count + 1 }, (_, index) => least[axis] + index * step);
    return sortedFrom(start[axis], all);
  };
  return nearestFree(ticks(0), ticks(1), start, (x, y) => isFree(boxAt(x, y, widthMm, heightMm)));
}
