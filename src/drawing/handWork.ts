import type { PlanPanel } from '../model/plan.ts';
import { type Box, inset, type Segment, type Stroke } from './drawing.ts';
import { printSize, type Units } from './lengthsInWords.ts';
import { OFFCUT_STROKE } from './pieces.ts';
import type { SawnEnd, SheetRect } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';
import { drawSpareLabel } from './spareLabels.ts';

/** Outline of a finished part within its blank: narrow, long-dashed double-dotted (ISO 128, type 05). */
export const BY_HAND: Stroke = { widthMm: 0.18, dashMm: [4, 0.8, 0.5, 0.8, 0.5, 0.8] };

const CLEAR_MM = 1;

type Corner = readonly [length: number, width: number];

function cornersOf({ length, width }: { length: readonly number[]; width: readonly number[] }): Corner[] {
  return [
    [length[0]!, width[0]!],
    [length[1]!, width[0]!],
    [length[1]!, width[1]!],
    [length[0]!, width[1]!],
  ];
}

export interface HandWorkOptions {
  readonly units: Units;
  /** Word for a piece that is kept. */
  readonly offcut: string;
}

/**
 * Draws what is cut by hand from the panels of a sheet into them: outlines along a wall and openings, those whose piece
 * is kept with the line and the size of an offcut inside. A panel that is turned by a quarter has its edge at width 0 on
 * the right. Words that come later keep off the lines and out of the openings.
 */
export function drawHandWork(
  sketch: Sketch,
  ends: readonly SawnEnd[],
  view: SheetView,
  { units, offcut }: HandWorkOptions,
): void {
  for (const { piece, ending, panel } of ends) {
    if (panel?.byHand === undefined || ending.is !== 'panel') continue;
    const { outline = [], openings } = panel.byHand;
    const onPage = pagePlace(piece.rect, ending.lengthAlong, view);
    const sides = ring(outline.map(onPage)).filter((_side, index) => !isSawn(panel, outline, index));
    const rings = openings.map((opening) => ring(cornersOf(opening).map(onPage)));
    sketch.lines('panels', [...sides, ...rings.flat()], BY_HAND);
    for (const side of sides) keepFree(sketch, side);
    openings.forEach(({ kept }, index) => {
      const box = around(rings[index]!);
      if (kept !== undefined && Math.min(box.x1 - box.x0, box.y1 - box.y0) > 2.5) {
        sketch.rect('offcuts', inset(box, 0.9), { stroke: OFFCUT_STROKE });
        const size = printSize(kept.length * 1000, kept.width * 1000, units);
        drawSpareLabel(sketch, inset(box, 1.3), offcut, size, 'bold');
      }
      sketch.taken.take(inset(box, -CLEAR_MM));
    });
  }
}

/** Where a place of a panel is on the page. */
function pagePlace(
  rect: SheetRect,
  lengthAlong: 'length' | 'width',
  view: SheetView,
): (corner: Corner) => readonly [number, number] {
  return ([length, width]) => {
    const [alongUm, acrossUm] = [length * 1000, width * 1000];
    const straight = lengthAlong === 'length';
    const x = straight ? rect.x0 + alongUm : rect.x1 - acrossUm;
    const y = straight ? rect.y0 + acrossUm : rect.y0 + alongUm;
    const at = view.place({ x0: x, x1: x, y0: y, y1: y });
    return [at.x0, at.y0];
  };
}

function ring(places: readonly (readonly [number, number])[]): Segment[] {
  return places.map((place, index) => [...place, ...places[(index + 1) % places.length]!]);
}

function around(segments: readonly Segment[]): Box {
  const [xs, ys] = [segments.map(([x]) => x), segments.map(([, y]) => y)];
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
}

/** Whether a side of an outline lies on an edge of the panel, where the saw has cut it already. */
function isSawn(panel: PlanPanel, outline: readonly Corner[], side: number): boolean {
  const [from, to] = [outline[side]!, outline[(side + 1) % outline.length]!];
  const onEdge = (axis: 0 | 1, at: number) => from[axis] === at && to[axis] === at;
  return onEdge(0, 0) || onEdge(1, 0) || onEdge(0, panel.length) || onEdge(1, panel.width);
}

/** Words keep off the line: boxes along it, short ones where it slants. */
function keepFree(sketch: Sketch, [x0, y0, x1, y1]: Segment): void {
  const steps = x0 === x1 || y0 === y1 ? 1 : Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 3));
  for (let step = 0; step < steps; step++) {
    const at = (from: number, to: number, share: number) => from + ((to - from) * share) / steps;
    const [ax, bx] = [at(x0, x1, step), at(x0, x1, step + 1)];
    const [ay, by] = [at(y0, y1, step), at(y0, y1, step + 1)];
    sketch.taken.take({
      x0: Math.min(ax, bx) - CLEAR_MM,
      x1: Math.max(ax, bx) + CLEAR_MM,
      y0: Math.min(ay, by) - CLEAR_MM,
      y1: Math.max(ay, by) + CLEAR_MM,
    });
  }
}
