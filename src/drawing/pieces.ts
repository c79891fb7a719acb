import type { PlanPanel } from '../model/plan.ts';
import { type Box, inset, type Segment } from './drawing.ts';
import { HAIRLINE, NARROW, WIDE } from './lettering.ts';
import type { SawnEnd } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';

export type PageSide = 'left' | 'right' | 'top' | 'bottom';

type SheetSide = 'left' | 'right' | 'near' | 'far';

/** Distance of parallel hatch lines along the page's x. */
const HATCH_MM = 2.2;

/**
 * Fills a box with thin lines under 45° (ISO 128 hatching). All hatches of a page lie on one set of lines, so that
 * neighbours join.
 */
export function hatch(
  sketch: Sketch,
  layer: 'waste' | 'trim' | 'tables',
  box: Box,
  spacingMm = HATCH_MM,
): void {
  const segments: Segment[] = [];
  const first = Math.ceil((box.x0 + box.y0) / spacingMm) * spacingMm;
  for (let c = first; c < box.x1 + box.y1; c += spacingMm) {
    // On each line x + y = c; its part inside the box:
    const x0 = Math.max(box.x0, c - box.y1);
    const x1 = Math.min(box.x1, c - box.y0);
    if (x1 - x0 > 0.05) segments.push([x0, c - x0, x1, c - x1]);
  }
  sketch.lines(layer, segments, HAIRLINE);
}

const SIDE_AS_IT_LIES: Record<SheetSide, PageSide> = {
  left: 'left',
  right: 'right',
  near: 'bottom',
  far: 'top',
};
const SIDE_TURNED: Record<SheetSide, PageSide> = { left: 'bottom', right: 'top', near: 'right', far: 'left' };

export function sideOnPage(side: SheetSide, view: SheetView): PageSide {
  return view.lies === 'turned' ? SIDE_TURNED[side] : SIDE_AS_IT_LIES[side];
}

/**
 * The edgings of a panel by the side of the page they lie on. A panel whose length lies along the sheet's width is
 * turned by a quarter, never turned over: its edge at width 0 comes to lie on the right.
 */
export function edgingsOnPage(
  panel: PlanPanel,
  lengthAlong: 'length' | 'width',
  view: SheetView,
): ReadonlyMap<PageSide, string> {
  const { alongLength, alongWidth } = panel.edging;
  const sides: readonly (readonly [SheetSide, string | null])[] =
    lengthAlong === 'length'
      ? [
          ['near', alongLength[0]],
          ['far', alongLength[1]],
          ['left', alongWidth[0]],
          ['right', alongWidth[1]],
        ]
      : [
          ['right', alongLength[0]],
          ['left', alongLength[1]],
          ['near', alongWidth[0]],
          ['far', alongWidth[1]],
        ];
  const found = new Map<PageSide, string>();
  for (const [side, edging] of sides) {
    if (edging !== null) found.set(sideOnPage(side, view), edging);
  }
  return found;
}

/** How far inside the edge of a panel its edging mark runs; half of that in pieces too narrow for it. */
export const EDGING_INSET_MM = 0.6;

/** Dashes by edging, in the order of the legend; edgings beyond these share the last. */
export const EDGING_DASHES: readonly (readonly number[])[] = [
  [2.6, 0.9],
  [0.9, 0.9],
  [4, 0.9, 0.9, 0.9],
  [6, 1.4],
  [1.8, 0.6, 0.6, 0.6, 0.6, 0.6],
];

/** Draws a thick broken line inside each edged side of a panel. */
export function drawEdging(
  sketch: Sketch,
  box: Box,
  edgings: ReadonlyMap<PageSide, string>,
  dashOf: (edging: string) => readonly number[],
): void {
  const narrower = Math.min(box.x1 - box.x0, box.y1 - box.y0);
  const inside = inset(box, Math.min(EDGING_INSET_MM, narrower / 5));
  const end = Math.min(0.9, narrower / 4);
  for (const side of ['left', 'right', 'top', 'bottom'] as const) {
    const edging = edgings.get(side);
    if (edging === undefined) continue;
    const stroke = { widthMm: Math.min(0.6, narrower / 6), dashMm: dashOf(edging) };
    if (side === 'left' || side === 'right') {
      const x = side === 'left' ? inside.x0 : inside.x1;
      sketch.line('edging', x, box.y0 + end, x, box.y1 - end, stroke);
    } else {
      const y = side === 'top' ? inside.y0 : inside.y1;
      sketch.line('edging', box.x0 + end, y, box.x1 - end, y, stroke);
    }
  }
}

/** Chain line round what is kept. */
export const OFFCUT_STROKE = { widthMm: 0.35, dashMm: [5, 1, 0.7, 1] };

/** The outline, trims, waste and offcuts of a sheet: everything that lies under its cuts and words. */
export function drawGround(sketch: Sketch, ends: readonly SawnEnd[], view: SheetView): void {
  for (const { piece, ending } of ends) {
    const box = view.place(piece.rect);
    if (ending.is === 'waste') hatch(sketch, 'waste', box);
    if (ending.is === 'offcut' && Math.min(box.x1 - box.x0, box.y1 - box.y0) > 2.5) {
      sketch.rect('offcuts', inset(box, 0.9), { stroke: OFFCUT_STROKE });
    }
  }
}

export function drawSheetOutline(sketch: Sketch, view: SheetView): void {
  sketch.rect('sheet', view.box, { stroke: { ...WIDE, widthMm: 0.5 } });
}

/** Dimension of one side of the sheet (ISO 129): a thin line with arrowheads, the figure in a gap of it. */
export function drawSheetSize(
  sketch: Sketch,
  view: SheetView,
  side: 'top' | 'right',
  figure: string,
  sizeMm: number,
): void {
  const { box } = view;
  const far = 2.7;
  const width = sketch.measure(figure, sizeMm, 'regular');
  if (side === 'top') {
    const y = box.y0 - far;
    const middle = (box.x0 + box.x1) / 2;
    sketch.line('sheet', box.x0, box.y0 - 0.6, box.x0, y - 1, NARROW);
    sketch.line('sheet', box.x1, box.y0 - 0.6, box.x1, y - 1, NARROW);
    sketch.text('sheet', figure, middle, y + sizeMm * 0.36, { sizeMm, anchor: 'middle' });
    sketch.taken.take({ x0: box.x0, y0: y - 0.6, x1: box.x1, y1: y + 0.6 });
    if (box.x1 - box.x0 < width + 8) return;
    sketch.arrow('sheet', [middle - width / 2 - 0.8, y], [box.x0, y], 'one');
    sketch.arrow('sheet', [middle + width / 2 + 0.8, y], [box.x1, y], 'one');
    return;
  }
  const x = box.x1 + far;
  const middle = (box.y0 + box.y1) / 2;
  sketch.line('sheet', box.x1 + 0.6, box.y0, x + 1, box.y0, NARROW);
  sketch.line('sheet', box.x1 + 0.6, box.y1, x + 1, box.y1, NARROW);
  sketch.text('sheet', figure, x + sizeMm * 0.36, middle, { sizeMm, anchor: 'middle', reads: 'up' });
  sketch.taken.take({ x0: x - 0.6, y0: box.y0, x1: x + 0.6, y1: box.y1 });
  if (box.y1 - box.y0 < width + 8) return;
  sketch.arrow('sheet', [x, middle + width / 2 + 0.8], [x, box.y1], 'one');
  sketch.arrow('sheet', [x, middle - width / 2 - 0.8], [x, box.y0], 'one');
}
