import type { Box, Layer, Shape, Stroke, TextMeasurer, TextShape, Weight } from './drawing.ts';
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

/**
 * Where a box of the given size fits into a field without touching a taken place, as near as can be to a wanted
 * centre. Positions are tried on a grid of `stepMm`. Returns its centre, or null when it fits nowhere.
 */
export function findRoom(
  field: Box,
  widthMm: number,
  heightMm: number,
  wanted: readonly [x: number, y: number],
  isFree: (box: Box) => boolean,
  stepMm = 0.75,
): readonly [x: number, y: number] | null {
  const least = [field.x0 + widthMm / 2, field.y0 + heightMm / 2] as const;
  const most = [field.x1 - widthMm / 2, field.y1 - heightMm / 2] as const;
  if (least[0] > most[0] || least[1] > most[1]) return null;
  const clamp = (value: number, axis: 0 | 1) => Math.min(most[axis], Math.max(least[axis], value));
  const at = (x: number, y: number): Box => ({
    x0: x - widthMm / 2,
    y0: y - heightMm / 2,
    x1: x + widthMm / 2,
    y1: y + heightMm / 2,
  });
  const start = [clamp(wanted[0], 0), clamp(wanted[1], 1)] as const;
  if (isFree(at(start[0], start[1]))) return start;
  const places: { x: number; y: number; far: number }[] = [];
  const ticks = (axis: 0 | 1): number[] => {
    const count = Math.min(60, Math.ceil((most[axis] - least[axis]) / stepMm));
    const step = count === 0 ? 0 : (most[axis] - least[axis]) / count;
    return Array.from({ length: count + 1 }, (_, index) => least[axis] + index * step);
  };
  const rows = ticks(1);
  for (const x of ticks(0)) {
    for (const y of rows) {
      const dx = x - start[0];
      const dy = y - start[1];
      places.push({ x, y, far: dx * dx + dy * dy });
    }
  }
  places.sort((a, b) => a.far - b.far || a.x - b.x || a.y - b.y);
  const found = places.find((place) => isFree(at(place.x, place.y)));
  return found ? [found.x, found.y] : null;
}
