import type { Um } from '../model/geometry.ts';
import type { ExtensionLines } from './extensionLines.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { HAIRLINE, NARROW, SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** From one figure to the next along a row of running dimensions, in mm. */
const PITCH_MM = SMALL * 1.06;
/** How far figures may stand out over the ends of what they measure: so that two rows at a corner keep apart. */
const OVER_MM = 2.6;
/** From the edge of what is measured to the end of the straight part of a line, and to where the figure begins. */
const STRAIGHT_MM = 1.8;
const FIGURE_MM = 3.6;
/** So much further out begin figures beside an upright edge: at the origin the first ones of both rows stand close. */
const ASIDE_MM = 0.4;

/** Between a figure and the letters of the holes that it is for. */
const LETTERS_GAP_MM = 0.8;

/** Letters of the kinds of holes at a place; an empty text where there is none. */
export type LettersAt = (um: Um) => string;

/** Depth of a row of running dimensions whose widest figure is as wide as given. */
export function runningRowMm(widestMm: number): number {
  return FIGURE_MM + ASIDE_MM + 0.4 + widestMm;
}

export interface RunningPlace {
  /** `below`: figures stand upright under a level edge; `left`: level figures beside an upright edge. */
  readonly side: 'below' | 'left';
  /** Where the edge lies on the page: its y for `below`, its x for `left`. */
  readonly edgeMm: number;
  /** From µm of the panel to mm of the page, along the edge. */
  readonly onPage: (um: Um) => number;
  readonly units: Units;
  /** Extension lines of rows further out, which begin outside the figures. */
  readonly extensions?: ExtensionLines;
  /** Written before each figure, on the side away from the edge, so that none is taken for its neighbour. */
  readonly letters?: LettersAt;
}

/**
 * Places for figures along a row, in the order of `wanted`, at least a pitch apart and moved as little as can be (least
 * squares: pools of neighbours that push each other share their mean; R. E. Barlow et al., Statistical Inference under Order
 * Restrictions, 1972, on pooling adjacent violators). Null when the row is too short for them. `wanted` rises.
 */
export function spread(
  wanted: readonly number[],
  pitch: number,
  [from, to]: readonly [number, number],
): number[] | null {
  const room = to - from - pitch * (wanted.length - 1);
  if (room < 0) return null;
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((at, index) => {
    let pool = { sum: at - index * pitch, count: 1 };
    for (let last = pools.at(-1); last !== undefined; last = pools.at(-1)) {
      if (last.sum / last.count <= pool.sum / pool.count) break;
      pool = { sum: last.sum + pool.sum, count: last.count + pool.count };
      pools.pop();
    }
    pools.push(pool);
  });
  const means = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  return means.map((mean, index) => Math.min(from + room, Math.max(from, mean)) + index * pitch);
}

/** Whether figures have room along a row; places in mm of the page, rising. */
export function runningRoom(places: readonly number[]): boolean {
  const [first, last] = [places[0] ?? 0, places.at(-1) ?? 0];
  return spread(places, PITCH_MM, [first - OVER_MM, last + OVER_MM]) !== null;
}

function lettersMm(sketch: Sketch, letters: string): number {
  return letters === '' ? 0 : LETTERS_GAP_MM + sketch.measure(letters, SMALL, 'bold');
}

/** The widest figure of a row with its letters, in mm. */
export function widestFigureMm(
  sketch: Sketch,
  values: readonly Um[],
  units: Units,
  letters: LettersAt = () => '',
): number {
  return values.reduce((most, um) => {
    const figureMm = sketch.measure(printLength(um, units), SMALL, 'regular');
    return Math.max(most, figureMm + lettersMm(sketch, letters(um)));
  }, 0);
}

/**
 * Running dimensions from one origin (ISO 129-1, superimposed running dimensioning): a short line at each place, bent where
 * figures would lie on each other, and the distance from the origin at its end. `values` rise, each once. False, with nothing
 * drawn, where there is no room for so many.
 */
export function drawRunningDimensions(sketch: Sketch, values: readonly Um[], place: RunningPlace): boolean {
  const { side, edgeMm, onPage, units } = place;
  // On the page y runs down, so that figures beside an upright edge follow each other the other way.
  const marks = values
    .map((um) => ({ at: onPage(um), text: printLength(um, units), letters: place.letters?.(um) ?? '' }))
    .sort((a, b) => a.at - b.at);
  const [first, last] = [marks[0]?.at ?? 0, marks.at(-1)?.at ?? 0];
  const figures = spread(
    marks.map(({ at }) => at),
    PITCH_MM,
    [first - OVER_MM, last + OVER_MM],
  );
  if (figures === null) return false;
  marks.forEach(({ at, text, letters }, index) => {
    const to = figures[index]!;
    const bent = Math.abs(to - at) > 0.05;
    const points = bent
      ? [
          [at, 0.6],
          [at, STRAIGHT_MM],
          [to, FIGURE_MM - 0.4],
        ]
      : [
          [at, 0.6],
          [at, FIGURE_MM - 0.4],
        ];
    points.slice(1).forEach(([along, away], part) => {
      const [alongBefore, awayBefore] = points[part] as [number, number];
      if (side === 'below') {
        sketch.line('dimensions', alongBefore, edgeMm + awayBefore, along!, edgeMm + away!, HAIRLINE);
      } else {
        sketch.line('dimensions', edgeMm - awayBefore, alongBefore, edgeMm - away!, along!, HAIRLINE);
      }
    });
    const half = SMALL * 0.27;
    const figureMm = sketch.measure(text, SMALL, 'regular');
    const wide = figureMm + lettersMm(sketch, letters);
    // Together with the line that leads to it, so that no other is taken for that.
    const [low, high] = [Math.min(at, to - half * 1.4) - 0.3, Math.max(at, to + half * 1.4) + 0.3];
    const far = FIGURE_MM + ASIDE_MM + wide + 0.8;
    place.extensions?.keepClear(
      side === 'below'
        ? { x0: low, x1: high, y0: edgeMm, y1: edgeMm + far }
        : { x0: edgeMm - far, x1: edgeMm, y0: low, y1: high },
    );
    if (side === 'below') {
      const style = { sizeMm: SMALL, reads: 'up', anchor: 'end' } as const;
      sketch.text('dimensions', text, to + half, edgeMm + FIGURE_MM, style);
      if (letters === '') return;
      const before = edgeMm + FIGURE_MM + figureMm + LETTERS_GAP_MM;
      sketch.text('dimensions', letters, to + half, before, { ...style, weight: 'bold' });
    } else {
      const style = { sizeMm: SMALL, anchor: 'end' } as const;
      sketch.text('dimensions', text, edgeMm - FIGURE_MM - ASIDE_MM, to + half, style);
      if (letters === '') return;
      const before = edgeMm - FIGURE_MM - ASIDE_MM - figureMm - LETTERS_GAP_MM;
      sketch.text('dimensions', letters, before, to + half, { ...style, weight: 'bold' });
    }
  });
  return true;
}

/** The sign of the origin of running dimensions: a small circle on the corner. */
export function drawOrigin(sketch: Sketch, x: number, y: number): void {
  sketch.circle('dimensions', x, y, 0.9, NARROW);
}
