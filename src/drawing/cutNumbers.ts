import type { Box } from './drawing.ts';
import { NARROW, SMALL, WIDE } from './lettering.ts';
import type { SawnCut } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import { type Sketch, TakenPlaces } from './sketch.ts';

/** Half the height of the ring around a cut's number; rings of three and more digits are wider. */
const RING_MM = 1.85;
/** Gap kept round a ring, so that neighbours stay apart. */
const GAP_MM = 0.25;
/** Kept free round a ring by the words that are written after it. */
const CLEAR_MM = 0.2;
/** Step in which places along a line are tried. */
const STEP_MM = 0.5;
/** Longest way of a leader along x or y. */
const FARTHEST_MM = 20;
/** Cuts longer than this on paper have room enough to choose last. */
const FREE_LENGTH_MM = 14;

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
  sketch.taken.take(ringBox(at, halfWidth, CLEAR_MM));
}

/** Where a leader may meet its line, best first: near where the blade enters, then on towards the other end. */
function leaderFeet(line: Line): (readonly [number, number])[] {
  const first = Math.min(line.lengthMm / 2, 3);
  return [first, 0.3 * line.lengthMm, 0.5 * line.lengthMm, 0.7 * line.lengthMm].map((d) => along(line, d));
}

/** The small boxes that a leader runs through. */
function boxesAlong(from: readonly [number, number], to: readonly [number, number]): Box[] {
  const count = Math.max(1, Math.ceil((Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1])) / 0.8));
  return Array.from({ length: count + 1 }, (_, i): Box => {
    const x = from[0] + ((to[0] - from[0]) * i) / count;
    const y = from[1] + ((to[1] - from[1]) * i) / count;
    return { x0: x - 0.3, y0: y - 0.3, x1: x + 0.3, y1: y + 0.3 };
  });
}

type Place = readonly [x: number, y: number];

/** The nearest good place within `mostMm` of a foot, in widening squares around it. */
function placeBeside(foot: Place, mostMm: number, isGood: (at: Place, foot: Place) => boolean): Place | null {
  const [x, y] = foot;
  for (let far = 2.5; far <= mostMm; far += 1.25) {
    for (let i = -far; i <= far; i += 1.25) {
      const square: readonly Place[] = [
        [x + i, y - far],
        [x + i, y + far],
        [x - far, y + i],
        [x + far, y + i],
      ];
      const found = square.find((at) => isGood(at, foot));
      if (found) return found;
    }
  }
  return null;
}

/** Where a number goes: on its line, or beside it with a leader to a foot on the line. */
interface Spot {
  readonly at: Place;
  readonly foot: Place | null;
}

function besideAnyFoot(line: Line, mostMm: number, isGood: (at: Place, foot: Place) => boolean): Spot | null {
  for (const foot of leaderFeet(line)) {
    const at = placeBeside(foot, mostMm, isGood);
    if (at) return { at, foot };
  }
  return null;
}

interface Crowd {
  readonly sketch: Sketch;
  readonly view: SheetView;
  readonly field: Box;
  readonly lines: readonly Line[];
  readonly kerfs: readonly Box[];
  readonly kerfPlaces: TakenPlaces;
  readonly smallPanels: TakenPlaces;
}

function placesOf(boxes: readonly Box[]): TakenPlaces {
  const places = new TakenPlaces();
  for (const box of boxes) places.take(box);
  return places;
}

/** Finds a place for the number of a cut, giving up its wishes one by one. */
function spotFor(crowd: Crowd, index: number, halfWidth: number): Spot | null {
  const { sketch, view, field, kerfs, kerfPlaces, smallPanels } = crowd;
  const line = crowd.lines[index]!;
  const isFree = (at: Place) => {
    const box = ringBox(at, halfWidth, GAP_MM);
    const inField = box.x0 >= field.x0 && box.x1 <= field.x1 && box.y0 >= field.y0 && box.y1 <= field.y1;
    return inField && sketch.taken.isFree(box);
  };
  const clearOf = (places: TakenPlaces, own: Box | null) => (at: Place) =>
    places.within(ringBox(at, halfWidth, 0)).every((box) => box === own);
  const clearOfCuts = clearOf(kerfPlaces, kerfs[index]!);
  const clearOfSmallPanels = clearOf(smallPanels, null);
  const leaderIsFree = (at: Place, foot: Place) =>
    boxesAlong(foot, at).every((box) => sketch.taken.isFree(box));
  const onLine = [...placesForRing(line, halfWidth, view)].filter(isFree);
  const clear = onLine.filter(clearOfCuts);
  const best = clear.find(clearOfSmallPanels);
  if (best) return { at: best, foot: null };
  const close = besideAnyFoot(
    line,
    8,
    (at, foot) => isFree(at) && clearOfCuts(at) && clearOfSmallPanels(at) && leaderIsFree(at, foot),
  );
  if (close) return close;
  const crowded = clear[0] ?? onLine[0];
  if (crowded) return { at: crowded, foot: null };
  return (
    besideAnyFoot(line, FARTHEST_MM, (at, foot) => isFree(at) && clearOfCuts(at) && leaderIsFree(at, foot)) ??
    besideAnyFoot(line, FARTHEST_MM, (at, foot) => isFree(at) && leaderIsFree(at, foot)) ??
    besideAnyFoot(line, FARTHEST_MM, isFree)
  );
}

/**
 * Numbers the cuts of a sheet in the order of sawing. Each number stands in a ring on its cut, as near as can be to
 * where the blade enters (the lower or left end), or beside it with a leader where there is no room. Short cuts
 * choose first, since they have the fewest places. `smallPanels` are panels whose whole room their own label needs;
 * rings keep off them where they can. Returns the cuts for which no place was found at all, in order; the table of
 * cuts still has them.
 */
export function drawCutNumbers(
  sketch: Sketch,
  cuts: readonly SawnCut[],
  view: SheetView,
  field: Box,
  smallPanels: readonly Box[],
): number[] {
  const lines = cuts.map((cut) => lineOf(cut, view));
  const kerfs = lines.map((line) => view.place(line.cut.kerf));
  const crowd: Crowd = {
    sketch,
    view,
    field,
    lines,
    kerfs,
    kerfPlaces: placesOf(kerfs),
    smallPanels: placesOf(smallPanels),
  };
  const reach = (line: Line) => Math.min(line.lengthMm, FREE_LENGTH_MM);
  const order = lines.map((_, index) => index).sort((a, b) => reach(lines[a]!) - reach(lines[b]!) || a - b);
  const left: number[] = [];
  for (const index of order) {
    const line = lines[index]!;
    const { number } = line.cut;
    const halfWidth = Math.max(RING_MM, sketch.measure(String(number), SMALL, 'regular') / 2 + 0.7);
    const spot = spotFor(crowd, index, halfWidth);
    if (!spot) {
      left.push(number);
      continue;
    }
    const { at, foot } = spot;
    const outside = at[0] < view.box.x0 || at[1] > view.box.y1;
    if (foot) {
      sketch.line('numbers', foot[0], foot[1], at[0], at[1], NARROW);
      for (const box of boxesAlong(foot, at)) sketch.taken.take(box);
    } else if (outside) sketch.line('numbers', at[0], at[1], line.enter[0], line.enter[1], NARROW);
    drawRing(sketch, number, at, halfWidth);
  }
  return left.sort((a, b) => a - b);
}

/** Draws every cut as a wide line in the middle of its kerf. */
export function drawCuts(sketch: Sketch, cuts: readonly SawnCut[], view: SheetView): void {
  for (const cut of cuts) {
    const line = lineOf(cut, view);
    sketch.line('cuts', line.enter[0], line.enter[1], line.leave[0], line.leave[1], WIDE);
  }
}
