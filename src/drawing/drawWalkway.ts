import type { Extent, Um } from '../model/geometry.ts';
import { type Box, boxesOverlap } from './drawing.ts';
import type { Room } from './layoutRoom.ts';
import { printLength } from './lengthsInWords.ts';
import { SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** An arrow across the walkway of a layout in its plan, with how wide it is; `fields` are the outsides of units, for words. */
export function drawWalkway(
  sketch: Sketch,
  way: { readonly atUm: Um; readonly across: Extent },
  room: Pick<Room, 'words' | 'sizes'>,
  view: { readonly x: (um: number) => number; readonly y: (um: number) => number },
  fields: readonly Box[],
): void {
  const x = view.x(way.atUm);
  const ends = [view.y(way.across[1]), view.y(way.across[0])] as const;
  sketch.arrow('dimensions', [x, ends[0]], [x, ends[1]], 'both', 1.5);
  const text = room.words.walkway(printLength(way.across[1] - way.across[0], room.sizes));
  writeBeside(sketch, text, x, ends, fields);
}

/** How far along an upright line a word may stand beside it, as parts of its length: the middle first. */
const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8];

/**
 * Writes beside the middle of an upright line, or as near to it as lies on nothing else: to its right, or to its left where only
 * that is free. On white where nothing is.
 */
function writeBeside(
  sketch: Sketch,
  text: string,
  x: number,
  [low, high]: readonly [number, number],
  fields: readonly Box[],
): void {
  const wide = sketch.measure(text, SMALL, 'regular');
  const places = ALONG.flatMap((share) =>
    [x + 1.2, x - 1.2 - wide].map((x0): Box => {
      const y = low + share * (high - low);
      return { x0: x0 - 0.5, x1: x0 + wide + 0.5, y0: y - SMALL * 0.5, y1: y + SMALL * 0.62 };
    }),
  );
  const free = places.find((place) => !fields.some((field) => boxesOverlap(place, field)));
  const place = free ?? places[0]!;
  if (free === undefined) sketch.rect('dimensions', place, { fill: 0 });
  sketch.text('dimensions', text, place.x0 + 0.5, place.y0 + SMALL * 0.86, { sizeMm: SMALL });
}
