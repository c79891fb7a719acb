import { type Box, inset, type Weight } from './drawing.ts';
import { boxAround, breakLine, drawLabel, extent, type Label, type LabelLine } from './labels.ts';
import { NARROW, NORMAL, SMALL } from './lettering.ts';
import { findRoom, findRoomOnGrid, type Sketch } from './sketch.ts';

/** What a label says about a panel, all parts plain text; empty parts are left out. */
export interface PanelWords {
  /** With its number, where it has one. */
  readonly name: string;
  /** Without the number, which beside a mark would be said twice. */
  readonly bareName: string;
  readonly unit: string;
  readonly size: string;
  readonly run: string;
  /** Short mark under which the key has the full words. */
  readonly mark: string;
}

/** Direction and lengths in which a grain arrow may be drawn, longest first. */
const ARROW_LENGTHS = [14, 9, 6, 4] as const;
const ARROW_ROOM_MM = 1.3;
/** How much further than they must a name and a number of a cut stand apart, where there is room. */
const APART_MM = 0.6;

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
    [{ text: words.bareName, weight: 'regular', mark }, size],
    [{ text: words.size, weight: 'regular', mark }],
    [{ text: '', weight: 'bold', mark }, size],
    [{ text: '', weight: 'bold', mark }],
  ];
}

/** `keyed`: the label needs the key to be understood. */
type TriedLabel = Label & { readonly keyed: boolean };

function* labelsToTry(sketch: Sketch, words: PanelWords, room: Box): Generator<TriedLabel> {
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

interface Arrow {
  readonly centre: readonly [number, number];
  readonly lengthMm: number;
}

interface Placed {
  readonly centre: readonly [number, number];
  readonly arrow: Arrow | null;
}

function arrowSize(lengthMm: number, runs: 'across' | 'up'): readonly [number, number] {
  return runs === 'across' ? [lengthMm, ARROW_ROOM_MM] : [ARROW_ROOM_MM, lengthMm];
}

/** Gaps between words and their arrow: descenders need more of it below than letters do beside. */
const GAP_BELOW_MM = 0.5;
const GAP_BESIDE_MM = 1.4;

/** A label with its arrow under it or to its right, the two together as near the middle of the room as can be. */
function placeTogether(
  room: Box,
  size: readonly [number, number],
  runs: 'across' | 'up',
  obstacles: readonly Box[],
): Placed | null {
  const [w, h] = size;
  const middle = [(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2] as const;
  for (const lengthMm of ARROW_LENGTHS) {
    const [aw, ah] = arrowSize(lengthMm, runs);
    const high = h + GAP_BELOW_MM + ah;
    const stacked = findRoom(room, Math.max(w, aw), high, middle, obstacles);
    if (stacked) {
      const [x, y] = stacked;
      return {
        centre: [x, y - high / 2 + h / 2],
        arrow: { centre: [x, y + high / 2 - ah / 2], lengthMm },
      };
    }
    const wide = w + GAP_BESIDE_MM + aw;
    const inRow = findRoom(room, wide, Math.max(h, ah), middle, obstacles);
    if (inRow) {
      const [x, y] = inRow;
      return {
        centre: [x - wide / 2 + w / 2, y],
        arrow: { centre: [x + wide / 2 - aw / 2, y], lengthMm },
      };
    }
  }
  return null;
}

/** A label in the middle and its arrow wherever there is room, or null when there is none for the label. */
function placeApart(
  room: Box,
  size: readonly [number, number],
  runs: 'across' | 'up',
  obstacles: readonly Box[],
): Placed | null {
  const [w, h] = size;
  const centre = findRoom(room, w, h, [(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2], obstacles);
  if (!centre) return null;
  const all = [...obstacles, boxAround(centre, w + 1, h + 0.9)];
  for (const lengthMm of ARROW_LENGTHS) {
    const [aw, ah] = arrowSize(lengthMm, runs);
    const found = findRoom(room, aw, ah, centre, all);
    if (found) return { centre, arrow: { centre: found, lengthMm } };
  }
  return { centre, arrow: null };
}

function drawArrow(sketch: Sketch, runs: 'across' | 'up', arrow: Arrow): void {
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
  const apart = sketch.taken.within(inset(room, -APART_MM)).map((box) => inset(box, -APART_MM));
  const middle = [(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2] as const;
  let withoutArrow: (Placed & { readonly label: TriedLabel }) | null = null;
  const draw = (label: TriedLabel, placed: Placed) => {
    drawLabel(sketch, label, placed.centre, 'panels');
    if (grainRuns && placed.arrow) drawArrow(sketch, grainRuns, placed.arrow);
    return label.keyed ? 'keyed' : 'full';
  };
  for (const label of labelsToTry(sketch, words, room)) {
    const [along, high] = extent(sketch, label);
    const size = label.reads === 'across' ? ([along, high] as const) : ([high, along] as const);
    if (grainRuns === null) {
      const centre =
        findRoom(room, size[0], size[1], middle, apart) ??
        findRoom(room, size[0], size[1], middle, obstacles);
      if (centre) return draw(label, { centre, arrow: null });
      continue;
    }
    const placed =
      placeTogether(room, size, grainRuns, apart) ??
      placeTogether(room, size, grainRuns, obstacles) ??
      placeApart(room, size, grainRuns, obstacles);
    if (placed?.arrow) return draw(label, placed);
    if (placed) withoutArrow ??= { ...placed, label };
  }
  return withoutArrow ? draw(withoutArrow.label, withoutArrow) : 'no room';
}

/** How far from its panel a mark may stand, in mm, the nearest first. */
const LEADER_REACHES = [12, 30] as const;
/** As far again for a leader that runs over others, which is better than none; the last is all round the sheet. */
const LAST_REACHES = [...LEADER_REACHES, 60, 420] as const;

/**
 * Sets a panel's mark outside it with a leader that ends in a dot on the panel; false when there is no place within
 * `mostReachMm`, at least 12.
 */
export function drawMarkWithLeader(
  sketch: Sketch,
  panelBox: Box,
  mark: string,
  field: Box,
  avoid: (box: Box) => boolean,
  mostReachMm: number = Number.POSITIVE_INFINITY,
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
  const tries = [
    { reaches: LEADER_REACHES, wanted: (box: Box) => isFree(box) && !avoid(box) && leaderIsFree(box) },
    { reaches: LEADER_REACHES, wanted: (box: Box) => isFree(box) && leaderIsFree(box) },
    { reaches: LAST_REACHES, wanted: isFree },
  ];
  for (const { reaches, wanted } of tries) {
    for (const far of reaches.filter((reach) => reach <= mostReachMm)) {
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
