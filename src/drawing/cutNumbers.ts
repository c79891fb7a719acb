import { type Box, boxesOverlap } from './drawing.ts';
import { NARROW, SMALL, WIDE } from './lettering.ts';
import type { SawnCut } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';

/** Half the height of the ring around a cut's number; rings of three and more digits are wider. */
const RING_MM = 1.85;
/** Gap kept round a ring, so that neighbours stay apart. */
const GAP_MM = 0.25;
/** Step in which places along a line are tried. */
const STEP_MM = 0.5;

interface Line {
  readonly cut: SawnCut;
  /** Where the blade enters and leaves. */
  readonly enter: readonly [number, number];
  readonly leave: readonly [number, number];
  readonly lengthMm: number;
}

function lineOf(cut: SawnCut, view: SheetView): Line {
  const box = view.place(cut.kerf);
  if (view.onPage(cut.runsAlong) === 'across') {
    const y = (box.y0 + box.y1) / 2;
    return { cut, enter: [box.x0, y], leave: [box.x1, y], lengthMm: box.x1 - box.x0 };
  }
  // Lines that stand upright are entered at their lower end, the others at their left; turned sheets keep to this
  // on paper, since the figures of the page are read from below and from the left.
  const x = (box.x0 + box.x1) / 2;
  return { cut, enter: [x, box.y1], leave: [x, box.y0], lengthMm: box.y1 - box.y0 };
}

function along(line: Line, distance: number): readonly [number, number] {
  const share = line.lengthMm === 0 ? 0 : distance / line.lengthMm;
  return [
    line.enter[0] + (line.leave[0] - line.enter[0]) * share,
    line.enter[1] + (line.leave[1] - line.enter[1]) * share,
  ];
}

function ringBox(at: readonly [number, number], halfWidth: number, gap: number): Box {
  return {
    x0: at[0] - halfWidth - gap,
    y0: at[1] - RING_MM - gap,
    x1: at[0] + halfWidth + gap,
    y1: at[1] + RING_MM + gap,
  };
}

/** Places for a ring, best first: outside the sheet's end, then along the line from where the blade enters. */
function* placesForRing(
  line: Line,
  halfWidth: number,
  view: SheetView,
): Generator<readonly [number, number]> {
  const across = line.enter[1] === line.leave[1];
  const half = across ? halfWidth : RING_MM;
  const beyondEdge = across ? line.enter[0] - view.box.x0 : view.box.y1 - line.enter[1];
  // Within a broad trim of the edge the number stands outside, joined to the line by its own prolongation.
  if (beyondEdge <= 25 / view.reduction || beyondEdge <= 3) {
    for (const out of [half + 0.7, 3 * half + 1.2]) yield along(line, -beyondEdge - out);
  }
  for (let d = half + 0.4; d + half <= line.lengthMm; d += STEP_MM) yield along(line, d);
}

function drawRing(sketch: Sketch, number: number, at: readonly [number, number], halfWidth: number): void {
  sketch.rect('numbers', ringBox(at, halfWidth, 0), { stroke: NARROW, fill: 0, radiusMm: RING_MM });
  sketch.text('numbers', String(number), at[0], at[1] + SMALL * 0.365, { sizeMm: SMALL, anchor: 'middle' });
  sketch.taken.take(ringBox(at, halfWidth, 0));
}

/** Where a leader meets its line: a little behind the place where the blade enters. */
function leaderFoot(line: Line): readonly [number, number] {
  return along(line, Math.min(line.lengthMm / 2, 3));
}

/** A place beside the line when there is none on it, found in widening squares around the leader's foot. */
function placeBeside(
  line: Line,
  field: Box,
  mostMm: number,
  isTaken: (box: Box) => boolean,
  isFree: (at: readonly [number, number]) => boolean,
): readonly [number, number] | null {
  const [x, y] = leaderFoot(line);
  const inField = (at: readonly [number, number]) =>
    at[0] > field.x0 && at[0] < field.x1 && at[1] > field.y0 && at[1] < field.y1;
  for (let far = 2.5; far <= mostMm; far += 1.25) {
    for (let i = -far; i <= far; i += 1.25) {
      for (const at of [
        [x + i, y - far],
        [x + i, y + far],
        [x - far, y + i],
        [x + far, y + i],
      ] as const) {
        if (inField(at) && isFree(at) && leaderIsFree([x, y], at, isTaken)) return at;
      }
    }
  }
  return null;
}

function boxAlongLine(from: readonly [number, number], to: readonly [number, number]): Box[] {
  const count = Math.max(1, Math.ceil((Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1])) / 0.8));
  return Array.from({ length: count + 1 }, (_, i): Box => {
    const x = from[0] + ((to[0] - from[0]) * i) / count;
    const y = from[1] + ((to[1] - from[1]) * i) / count;
    return { x0: x - 0.3, y0: y - 0.3, x1: x + 0.3, y1: y + 0.3 };
  });
}

/** Whether a leader crosses nothing on its way from its foot; at the foot itself other cuts may meet. */
function leaderIsFree(
  foot: readonly [number, number],
  at: readonly [number, number],
  isTaken: (box: Box) => boolean,
): boolean {
  return !boxAlongLine(foot, at).some((box) => isTaken(box));
}

/**
 * Numbers the cuts of a sheet in the order of sawing. Each number stands in a ring on its cut, as near as can be to
 * where the blade enters (the lower or left end), or beside it with a leader where there is no room.
 * `smallPanels` are panels whose whole room their own label needs; rings keep off them where they can.
 * Returns the cuts for which no place was found at all; the step table still has them.
 */
export function drawCutNumbers(
  sketch: Sketch,
  cuts: readonly SawnCut[],
  view: SheetView,
  field: Box,
  smallPanels: readonly Box[],
): number[] {
  const lines = cuts.map((cut) => lineOf(cut, view));
  const left: number[] = [];
  const isTaken = (box: Box) => !sketch.taken.isFree(box);
  const kerfs = lines.map((line) => view.place(line.cut.kerf));
  for (const [index, line] of lines.entries()) {
    const { number } = line.cut;
    const halfWidth = Math.max(RING_MM, sketch.measure(String(number), SMALL, 'regular') / 2 + 0.7);
    const inField = (box: Box) =>
      box.x0 >= field.x0 && box.x1 <= field.x1 && box.y0 >= field.y0 && box.y1 <= field.y1;
    const isFree = (at: readonly [number, number]) => {
      const box = ringBox(at, halfWidth, GAP_MM);
      return inField(box) && sketch.taken.isFree(box);
    };
    const clearOfCuts = (at: readonly [number, number]) => {
      const box = ringBox(at, halfWidth, 0);
      return kerfs.every((kerf, other) => other === index || !boxesOverlap(kerf, box));
    };
    const places = [...placesForRing(line, halfWidth, view)].filter(isFree);
    const clearOfSmallPanels = (at: readonly [number, number]) => {
      const box = ringBox(at, halfWidth, 0);
      return !smallPanels.some((panel) => boxesOverlap(panel, box));
    };
    const clear = places.filter(clearOfCuts);
    const best = clear.find(clearOfSmallPanels);
    const close = best
      ? null
      : placeBeside(line, field, 8, isTaken, (at) => isFree(at) && clearOfCuts(at) && clearOfSmallPanels(at));
    const on = best ?? (close ? undefined : (clear[0] ?? places[0]));
    if (on) {
      const outside = on[0] < view.box.x0 || on[1] > view.box.y1;
      if (outside) sketch.line('numbers', on[0], on[1], line.enter[0], line.enter[1], NARROW);
      drawRing(sketch, number, on, halfWidth);
      continue;
    }
    const beside =
      close ??
      placeBeside(line, field, 30, isTaken, (at) => isFree(at) && clearOfCuts(at)) ??
      placeBeside(line, field, 30, isTaken, isFree);
    if (!beside) {
      left.push(number);
      continue;
    }
    const foot = leaderFoot(line);
    sketch.line('numbers', foot[0], foot[1], beside[0], beside[1], NARROW);
    for (const box of boxAlongLine(foot, beside)) sketch.taken.take(box);
    drawRing(sketch, number, beside, halfWidth);
  }
  return left;
}

export function drawCuts(sketch: Sketch, cuts: readonly SawnCut[], view: SheetView): void {
  for (const cut of cuts) {
    const line = lineOf(cut, view);
    sketch.line('cuts', line.enter[0], line.enter[1], line.leave[0], line.leave[1], WIDE);
  }
}
