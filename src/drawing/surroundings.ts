import type { Box } from './drawing.ts';
import type { CutPlanWords } from './drawingWords.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { NORMAL, SMALL } from './lettering.ts';
import { drawSheetSize, sideOnPage } from './pieces.ts';
import type { SawnPiece, SawnSheet } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import { findRoom, type Sketch } from './sketch.ts';

/** The margins of a sheet on the page in which words about it may stand. */
function marginLeft(view: SheetView): Box {
  const { box } = view;
  return { x0: box.x0 - 9.2, x1: box.x0 - 0.5, y0: box.y0, y1: box.y1 };
}

function marginBelow(view: SheetView): Box {
  const { box } = view;
  return { x0: box.x0, x1: box.x1, y0: box.y1 + 0.5, y1: box.y1 + 5.3 };
}

/**
 * Writes a word in the left margin (upright) or below (level), as near as can be to a place along that side, close to it or
 * anywhere within a span.
 */
function writeInMargin(
  sketch: Sketch,
  view: SheetView,
  where: 'left' | 'bottom',
  word: string,
  along: number,
  style: { sizeMm: number; weight: 'regular' | 'bold'; reads: 'across' | 'up' },
  span?: readonly [from: number, to: number],
): void {
  const { sizeMm, weight, reads } = style;
  const width = sketch.measure(word, sizeMm, weight) + 0.8;
  const height = sizeMm * 1.02 + 0.2;
  const [w, h] = reads === 'up' ? [height, width] : [width, height];
  const { box } = view;
  const wanted = where === 'left' ? ([box.x0 - 2.6, along] as const) : ([along, box.y1 + 2.6] as const);
  const field = where === 'left' ? marginLeft(view) : marginBelow(view);
  const [from, to] = span ?? (where === 'left' ? [along - 2 * h, along + 2 * h] : [along - w, along + w]);
  const near =
    where === 'left'
      ? { ...field, y0: Math.max(field.y0, from), y1: Math.min(field.y1, to) }
      : { ...field, x0: Math.max(field.x0, from), x1: Math.min(field.x1, to) };
  const taken = sketch.taken.within(near);
  // Best alone in its part of the margin, so that it is not read together with the number of a cut.
  const alone = where === 'left' ? ([8.6, h] as const) : ([w + 2, 4.7] as const);
  const middle = [(field.x0 + field.x1) / 2, (field.y0 + field.y1) / 2] as const;
  const lone = findRoom(
    near,
    alone[0],
    alone[1],
    where === 'left' ? [middle[0], along] : [along, middle[1]],
    taken,
  );
  const centre = lone
    ? where === 'left'
      ? ([Math.min(wanted[0], field.x1 - w / 2), lone[1]] as const)
      : ([lone[0], wanted[1]] as const)
    : findRoom(near, w, h, wanted, taken);
  if (!centre) return;
  const down = sizeMm * 0.27;
  const [x, y] = reads === 'up' ? [centre[0] + down, centre[1]] : [centre[0], centre[1] + down];
  sketch.text('sheet', word, x, y, { sizeMm, weight, reads, anchor: 'middle' });
}

/** The sheet's size along its top and right, and the names of the two sides from which cuts are measured on paper. */
export function drawSurroundings(
  sketch: Sketch,
  sawn: SawnSheet,
  view: SheetView,
  units: Units,
  { sides }: CutPlanWords,
): void {
  const size = (um: number) => printLength(um, units);
  const [across, up] =
    view.onPage('x') === 'across' ? [sawn.raw.x1, sawn.raw.y1] : [sawn.raw.y1, sawn.raw.x1];
  drawSheetSize(sketch, view, 'top', size(across), NORMAL);
  drawSheetSize(sketch, view, 'right', size(up), NORMAL);
  const { box } = view;
  const style = { sizeMm: SMALL, weight: 'regular' } as const;
  for (const side of ['left', 'right', 'near', 'far'] as const) {
    const where = sideOnPage(side, view);
    if (where === 'left')
      writeInMargin(sketch, view, where, sides[side], box.y1 - 7, { ...style, reads: 'up' });
    if (where === 'bottom')
      writeInMargin(sketch, view, where, sides[side], box.x0 + 8, { ...style, reads: 'across' });
  }
}

/** The pieces of the first parting direction, one beside the other: the strips a sheet is first sawn into. */
function firstStrips(sawn: SawnSheet): SawnPiece[] {
  const first = sawn.cuts.find((cut) => cut.step.cut !== 'trim');
  if (!first) return [];
  const sawnSo = new Map(
    sawn.cuts.flatMap((cut) => (cut.runsAlong === first.runsAlong ? [[cut.hand.name, cut] as const] : [])),
  );
  const stripsOf = (piece: SawnPiece): readonly SawnPiece[] =>
    sawnSo.get(piece.name)?.gives.flatMap(stripsOf) ?? [piece];
  return first.gives.flatMap(stripsOf);
}

/** Writes the names of the strips that are sawn further beside them, as the table of cuts calls them. */
export function drawStripNames(sketch: Sketch, sawn: SawnSheet, view: SheetView): void {
  const sawnFurther = new Set(sawn.cuts.map((cut) => cut.hand.name));
  const first = sawn.cuts.find((cut) => cut.step.cut !== 'trim');
  if (!first) return;
  const across = view.onPage(first.runsAlong) === 'across';
  for (const strip of firstStrips(sawn)) {
    if (!sawnFurther.has(strip.name)) continue;
    const box = view.place(strip.rect);
    // Numbers of cuts may stand in the middle of a strip, so that its name goes beside them.
    const span = across ? ([box.y0, box.y1] as const) : ([box.x0, box.x1] as const);
    const style = { sizeMm: NORMAL, weight: 'bold', reads: 'across' } as const;
    const middle = (span[0] + span[1]) / 2;
    writeInMargin(sketch, view, across ? 'left' : 'bottom', strip.name, middle, style, span);
  }
}
