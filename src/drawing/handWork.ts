import type { PlanPanel } from '../model/plan.ts';
import type { Segment, Stroke } from './drawing.ts';
import { inset } from './drawing.ts';
import { OFFCUT_STROKE } from './pieces.ts';
import type { SawnEnd } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';

/** Outline of a finished part within its blank: narrow, long-dashed double-dotted (ISO 128, type 05). */
export const BY_HAND: Stroke = { widthMm: 0.18, dashMm: [4, 0.8, 0.5, 0.8, 0.5, 0.8] };

type Corner = readonly [length: number, width: number];

function cornersOf({ length, width }: { length: readonly number[]; width: readonly number[] }): Corner[] {
  return [
    [length[0]!, width[0]!],
    [length[1]!, width[0]!],
    [length[1]!, width[1]!],
    [length[0]!, width[1]!],
  ];
}

/**
 * Draws what is cut by hand from the panels of a sheet into them: outlines along a wall and openings, those whose piece
 * is kept with the line of an offcut inside. A panel that is turned by a quarter has its edge at width 0 on the right.
 */
export function drawHandWork(sketch: Sketch, ends: readonly SawnEnd[], view: SheetView): void {
  for (const { piece, ending, panel } of ends) {
    if (panel?.byHand === undefined || ending.is !== 'panel') continue;
    const { rect } = piece;
    const onPage = ([length, width]: Corner): readonly [number, number] => {
      const [alongUm, acrossUm] = [length * 1000, width * 1000];
      const straight = ending.lengthAlong === 'length';
      const x = straight ? rect.x0 + alongUm : rect.x1 - acrossUm;
      const y = straight ? rect.y0 + acrossUm : rect.y0 + alongUm;
      const at = view.place({ x0: x, x1: x, y0: y, y1: y });
      return [at.x0, at.y0];
    };
    const ring = (corners: readonly Corner[]): Segment[] =>
      corners.map((corner, index) => [...onPage(corner), ...onPage(corners[(index + 1) % corners.length]!)]);
    sketch.lines('panels', inner(panel, ring), BY_HAND);
    for (const opening of panel.byHand.openings.filter(({ kept }) => kept !== undefined)) {
      const places = cornersOf(opening).map(onPage);
      const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
      const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
      if (Math.min(box.x1 - box.x0, box.y1 - box.y0) > 2.5) {
        sketch.rect('offcuts', inset(box, 0.9), { stroke: OFFCUT_STROKE });
      }
    }
  }
}

/** The lines inside a panel; sides of its outline that lie on its own edges are sawn already. */
function inner(panel: PlanPanel, ring: (corners: readonly Corner[]) => Segment[]): Segment[] {
  const { outline = [], openings } = panel.byHand!;
  const sides = ring(outline).filter((_segment, index) => {
    const [from, to] = [outline[index]!, outline[(index + 1) % outline.length]!];
    const onEdge = (axis: 0 | 1, at: number) => from[axis] === at && to[axis] === at;
    return !(onEdge(0, 0) || onEdge(1, 0) || onEdge(0, panel.length) || onEdge(1, panel.width));
  });
  return [...sides, ...openings.flatMap((opening) => ring(cornersOf(opening)))];
}
