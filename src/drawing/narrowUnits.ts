import { type Box, boxesOverlap } from './drawing.ts';
import { boxAround } from './labels.ts';
import { LINE_PITCH, NARROW, SMALL } from './lettering.ts';
import { findRoomOnGrid, type Sketch } from './sketch.ts';

/** How far a number may stand from a unit too narrow for it, and how far it must. */
const LEADER_MM = 14;
const LEAST_LEADER_MM = 5;

/** So far from other words, as a number close to one would be read as part of it. */
const APART_MM = 1;

/** Lines to a unit that is hidden end so near the edge of its outline, clear of words in its middle. */
const EDGE_MM = 1.6;

/** What is seen of units in the views of a layout, and which of them have their number. */
export interface SeenUnits {
  /** Numbers of units that are written in some view. */
  readonly numbered: Set<number>;
  /** What is seen of any unit in any view. */
  readonly filled: Box[];
  /** Units that are too narrow for their number in the view with this border, with what is seen of them there. */
  readonly narrow: {
    readonly number: number;
    readonly box: Box;
    readonly fields: readonly Box[];
    /** The outsides of all other units in that view. */
    readonly others: readonly Box[];
  }[];
}

/**
 * A unit that has its number in no view, such as a board that stands on edge, gets it beside where it is seen, with a line
 * that ends in a dot on it: in the view where the white of the page is nearest.
 */
export function numberNarrowUnits(sketch: Sketch, numbers: readonly number[], all: SeenUnits): void {
  for (const number of numbers.filter((each) => !all.numbered.has(each))) {
    const seen = all.narrow.filter((each) => each.number === number);
    if (numberOnWhite(sketch, all, seen)) continue;
    const anywhere = seen.flatMap((each) => placesBeside(sketch, all, each, 'on anything'));
    if (anywhere.length > 0) numberBeside(sketch, number, nearestOf(anywhere));
  }
}

/**
 * Units that have their number in another view only get one in the view with this border too, where white is near: who reads
 * one view looks for all of them in it.
 */
export function numberAgain(sketch: Sketch, view: Box, all: SeenUnits): void {
  for (const each of all.narrow) {
    if (each.box !== view || !all.numbered.has(each.number)) continue;
    // Within the outside of another unit it would be read as that one's.
    numberOnWhite(sketch, { ...all, filled: [...all.filled, ...each.others] }, [each]);
  }
}

/** The number of a unit that others hide, beside the view, with a line to the edge of its outline; false without white near. */
export function numberHidden(
  sketch: Sketch,
  number: number,
  { view, outline }: { readonly view: Box; readonly outline: Box },
  all: SeenUnits,
): boolean {
  const { x0, x1, y0, y1 } = outline;
  const fields = [
    { x0, x1: x0 + EDGE_MM, y0, y1 },
    { x0: x1 - EDGE_MM, x1, y0, y1 },
    { x0, x1, y0, y1: y0 + EDGE_MM },
    { x0, x1, y0: y1 - EDGE_MM, y1 },
  ];
  return numberOnWhite(sketch, all, [{ number, box: view, fields, others: [] }]);
}

function numberOnWhite(sketch: Sketch, all: SeenUnits, seen: SeenUnits['narrow']): boolean {
  const places = seen.flatMap((each) => placesBeside(sketch, all, each, 'on white'));
  if (places.length === 0) return false;
  numberBeside(sketch, seen[0]!.number, nearestOf(places));
  return true;
}

function nearestOf(places: readonly Place[]): Place {
  return places.reduce((a, b) => (farFrom(b.at, b.to) < farFrom(a.at, a.to) ? b : a));
}

type Spot = readonly [x: number, y: number];

/** Where a number stands, and the spot of its unit that it belongs to. */
interface Place {
  readonly at: Spot;
  readonly to: Spot;
}

function farFrom([x0, y0]: Spot, [x1, y1]: Spot): number {
  return Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
}

function numberSize(sketch: Sketch, text: string): { readonly wide: number; readonly high: number } {
  return { wide: sketch.measure(text, SMALL, 'regular') + 1, high: SMALL * LINE_PITCH };
}

/** Places for a number beside what is seen of its unit in a view. */
function placesBeside(
  sketch: Sketch,
  all: SeenUnits,
  { number, box, fields }: SeenUnits['narrow'][number],
  ground: 'on white' | 'on anything',
): Place[] {
  const { wide, high } = numberSize(sketch, String(number));
  const free = (place: Box) =>
    sketch.taken.isFree({ ...place, x0: place.x0 - APART_MM, x1: place.x1 + APART_MM }) &&
    (ground === 'on white' ? all.filled : fields).every((other) => !boxesOverlap(place, other));
  return fields.flatMap((field) =>
    [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((share) => {
      const [x, y] = [(field.x0 + field.x1) / 2, (field.y0 + field.y1) / 2];
      const upright = field.y1 - field.y0 > field.x1 - field.x0;
      const at: Spot = upright
        ? [x, field.y0 + share * (field.y1 - field.y0)]
        : [field.x0 + share * (field.x1 - field.x0), y];
      const around = {
        x0: Math.max(at[0] - LEADER_MM, box.x0 + 0.8),
        x1: Math.min(at[0] + LEADER_MM, box.x1 - 0.8),
        y0: Math.max(at[1] - LEADER_MM, box.y0 + 0.8),
        y1: Math.min(at[1] + LEADER_MM, box.y1 - 0.8),
      };
      // Nearer than this the line would not be seen.
      const apart = (place: Box) =>
        farFrom(at, [(place.x0 + place.x1) / 2, (place.y0 + place.y1) / 2]) >= LEAST_LEADER_MM && free(place);
      const to = findRoomOnGrid(around, wide, high, at, apart);
      return to === null ? [] : [{ at, to }];
    }),
  );
}

function numberBeside(sketch: Sketch, number: number, { at, to }: Place): void {
  const text = String(number);
  const { wide, high } = numberSize(sketch, text);
  const [x, y] = to;
  const away = Math.max(Math.abs(x - at[0]) / (wide / 2), Math.abs(y - at[1]) / (high / 2), 1);
  sketch.line('numbers', at[0], at[1], x + (at[0] - x) / away, y + (at[1] - y) / away, NARROW);
  sketch.rect('numbers', boxAround(at, 0.8, 0.8), { fill: 1, radiusMm: 0.4 });
  sketch.rect('numbers', boxAround(to, wide, high), { fill: 0 });
  sketch.text('numbers', text, x, y + SMALL * 0.36, { sizeMm: SMALL, anchor: 'middle' });
}
