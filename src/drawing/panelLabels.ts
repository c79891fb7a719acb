import type { Box, Weight } from './drawing.ts';
import { boxAround, breakLine, drawLabel, extent, type Label, type LabelLine } from './labels.ts';
import { NARROW, NORMAL, SMALL } from './lettering.ts';
import { findRoom, findRoomOnGrid, type Sketch } from './sketch.ts';

/** What a label says about a panel, all parts plain text; empty parts are left out. */
export interface PanelWords {
  readonly name: string;
  readonly unit: string;
  readonly size: string;
  readonly run: string;
  /** Short mark under which the key has the full words. */
  readonly mark: string;
}

/** Direction and lengths in which a grain arrow may be drawn, longest first. */
const ARROW_LENGTHS = [14, 9, 6, 4] as const;
const ARROW_ROOM_MM = 1.3;

function joined(...parts: (LabelLine[] | null)[]): LabelLine[] | null {
  return parts.some((part) => part === null) ? null : parts.flatMap((part) => part!);
}

/** Labels with everything on them, for a room as wide as given. */
function fullLabels(sketch: Sketch, words: PanelWords, sizeMm: number, widthMm: number): LabelLine[][] {
  const part = (text: string, weight: Weight, most: number) =>
    breakLine(sketch, text, weight, sizeMm, widthMm, most);
  const nameAndUnit = words.unit === '' ? words.name : `${words.name} · ${words.unit}`;
  const tries = [
    joined(
      part(words.name, 'bold', 2),
      part(words.unit, 'regular', 2),
      part(words.size, 'regular', 1),
      part(words.run, 'regular', 2),
    ),
    joined(
      part(nameAndUnit, 'regular', 3),
      part(words.run === '' ? words.size : `${words.size} · ${words.run}`, 'regular', 1),
    ),
    part([nameAndUnit, words.size, words.run].filter((text) => text !== '').join(' · '), 'regular', 1),
  ];
  return tries.filter((lines) => lines !== null);
}

/** Labels that send the reader to the key, fullest first. */
function keyedLabels(words: PanelWords): LabelLine[][] {
  const { mark } = words;
  const size: LabelLine = { text: words.size, weight: 'regular' };
  return [
    [{ text: words.name, weight: 'regular', mark }, size],
    [{ text: words.size, weight: 'regular', mark }],
    [{ text: '', weight: 'bold', mark }, size],
    [{ text: '', weight: 'bold', mark }],
  ];
}

function* labelsToTry(sketch: Sketch, words: PanelWords, room: Box): Generator<Label & { keyed: boolean }> {
  const width = room.x1 - room.x0;
  const height = room.y1 - room.y0;
  for (const reads of ['across', 'up'] as const) {
    for (const sizeMm of [NORMAL, SMALL]) {
      const along = reads === 'across' ? width : height;
      for (const lines of fullLabels(sketch, words, sizeMm, along))
        yield { lines, sizeMm, reads, keyed: false };
    }
  }
  for (const lines of keyedLabels(words)) {
    for (const reads of ['across', 'up'] as const) yield { lines, sizeMm: SMALL, reads, keyed: true };
  }
}

/** A centre for the grain arrow and its length, outside the label's box, or null. */
function roomForArrow(
  room: Box,
  labelBox: Box,
  runs: 'across' | 'up',
  obstacles: readonly Box[],
): { centre: readonly [number, number]; lengthMm: number } | null {
  const all = [...obstacles, labelBox];
  const below = [(labelBox.x0 + labelBox.x1) / 2, labelBox.y1 + ARROW_ROOM_MM] as const;
  const beside = [labelBox.x1 + ARROW_ROOM_MM, (labelBox.y0 + labelBox.y1) / 2] as const;
  for (const lengthMm of ARROW_LENGTHS) {
    const [w, h] = runs === 'across' ? [lengthMm, ARROW_ROOM_MM] : [ARROW_ROOM_MM, lengthMm];
    const centre = findRoom(room, w, h, runs === 'across' ? below : beside, all);
    if (centre) return { centre, lengthMm };
  }
  return null;
}

function drawArrow(
  sketch: Sketch,
  runs: 'across' | 'up',
  arrow: { centre: readonly [number, number]; lengthMm: number },
): void {
  const [x, y] = arrow.centre;
  const half = arrow.lengthMm / 2;
  const head = arrow.lengthMm < 6 ? 1.4 : 1.9;
  if (runs === 'across') sketch.arrow('grain', [x - half, y], [x + half, y], 'both', head);
  else sketch.arrow('grain', [x, y + half], [x, y - half], 'both', head);
  sketch.taken.take(
    runs === 'across'
      ? boxAround(arrow.centre, arrow.lengthMm, ARROW_ROOM_MM)
      : boxAround(arrow.centre, ARROW_ROOM_MM, arrow.lengthMm),
  );
}

/**
 * Labels a panel in the room it leaves free: the fullest of its labels that fits, in the largest lettering, with a
 * grain arrow when the panel has a grain. Returns whether the label sends the reader to the key, or `no room` when
 * nothing was drawn.
 */
export function drawPanelLabel(
  sketch: Sketch,
  room: Box,
  words: PanelWords,
  grainRuns: 'across' | 'up' | null,
): 'full' | 'keyed' | 'no room' {
  const obstacles = sketch.taken.within(room);
  const middle = [(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2] as const;
  let withoutArrow: (() => 'full' | 'keyed') | null = null;
  for (const label of labelsToTry(sketch, words, room)) {
    const [along, high] = extent(sketch, label);
    const [w, h] = label.reads === 'across' ? [along, high] : [high, along];
    const centre = findRoom(room, w, h, middle, obstacles);
    if (!centre) continue;
    const draw = () => {
      drawLabel(sketch, label, centre, 'panels');
      return label.keyed ? 'keyed' : 'full';
    };
    if (grainRuns === null) return draw();
    // A little apart from the words on every side, so that the arrow is seen as an arrow.
    const arrow = roomForArrow(room, boxAround(centre, w + 1, h + 0.9), grainRuns, obstacles);
    if (arrow) {
      const drawn = draw();
      drawArrow(sketch, grainRuns, arrow);
      return drawn;
    }
    withoutArrow ??= draw;
  }
  return withoutArrow ? withoutArrow() : 'no room';
}

/** Sets a panel's mark outside it with a leader that ends in a dot on the panel; false when there is no place. */
export function drawMarkWithLeader(
  sketch: Sketch,
  panelBox: Box,
  mark: string,
  field: Box,
  avoid: (box: Box) => boolean,
): boolean {
  const label: Label = { lines: [{ text: '', weight: 'bold', mark }], sizeMm: SMALL, reads: 'across' };
  const [w, h] = extent(sketch, label);
  const middle = [(panelBox.x0 + panelBox.x1) / 2, (panelBox.y0 + panelBox.y1) / 2] as const;
  // The dot stands where the panel is not covered by a number, or else in its middle.
  const from = findRoom(panelBox, 0.8, 0.8, middle, sketch.taken.within(panelBox)) ?? middle;
  const near = (far: number): Box => ({
    x0: Math.max(field.x0, from[0] - far),
    y0: Math.max(field.y0, from[1] - far),
    x1: Math.min(field.x1, from[0] + far),
    y1: Math.min(field.y1, from[1] + far),
  });
  const leaderIsFree = (box: Box) => {
    const to = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const;
    for (const [x, y] of pointsBetween(from, to)) {
      if (x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1) return true;
      if (!sketch.taken.isFree({ x0: x - 0.2, y0: y - 0.2, x1: x + 0.2, y1: y + 0.2 })) return false;
    }
    return true;
  };
  const isFree = (box: Box) => sketch.taken.isFree(box);
  for (const wanted of [
    (box: Box) => isFree(box) && !avoid(box) && leaderIsFree(box),
    (box: Box) => isFree(box) && leaderIsFree(box),
  ]) {
    for (const far of [12, 30, 60]) {
      const centre = findRoomOnGrid(near(far), w + 0.4, h + 0.4, from, wanted);
      if (!centre) continue;
      sketch.line('panels', from[0], from[1], centre[0], centre[1], NARROW);
      sketch.rect('panels', boxAround(from, 0.8, 0.8), { fill: 1, radiusMm: 0.4 });
      for (const [x, y] of pointsBetween(from, centre)) sketch.taken.take(boxAround([x, y], 0.4, 0.4));
      drawLabel(sketch, label, centre, 'panels');
      return true;
    }
  }
  return false;
}

function* pointsBetween(
  from: readonly [number, number],
  to: readonly [number, number],
): Generator<readonly [number, number]> {
  const count = Math.max(1, Math.ceil((Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1])) / 0.6));
  for (let i = 0; i <= count; i++) {
    yield [from[0] + ((to[0] - from[0]) * i) / count, from[1] + ((to[1] - from[1]) * i) / count];
  }
}
