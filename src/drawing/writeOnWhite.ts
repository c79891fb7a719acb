import { type Box, inset } from './drawing.ts';
import { LINE_PITCH, wrap } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/**
 * Writes the first of some texts that has room onto the largest field where it has, on white, so far from other words; gives
 * whether one had.
 */
export function writeOnWhite(
  sketch: Sketch,
  fields: readonly Box[],
  texts: readonly (readonly [text: string, sizeMm: number])[],
  apartMm = 0,
): boolean {
  const area = (box: Box) => (box.x1 - box.x0) * (box.y1 - box.y0);
  const largest = [...fields].sort((a, b) => area(b) - area(a)).slice(0, 60);
  for (const [text, sizeMm] of texts) {
    for (const field of largest) {
      const width = Math.min(40, field.x1 - field.x0 - 1.6);
      if (width < 2) continue;
      const lines = wrap(text, width, sizeMm, 'regular', sketch.measure);
      const wide = Math.max(...lines.map((line) => sketch.measure(line, sizeMm, 'regular')));
      const broken = lines.join(' ') !== text;
      const high = lines.length * sizeMm * LINE_PITCH;
      const [x, y] = [(field.x0 + field.x1) / 2, (field.y0 + field.y1) / 2];
      const room = {
        x0: x - wide / 2 - 0.5,
        x1: x + wide / 2 + 0.5,
        y0: y - high / 2 - 0.2,
        y1: y + high / 2 + 0.2,
      };
      if (broken || high + 0.4 > field.y1 - field.y0 || !sketch.taken.isFree(inset(room, -apartMm))) continue;
      sketch.rect('numbers', room, { fill: 0 });
      lines.forEach((line, index) => {
        const base = y - high / 2 + (index + 0.76) * sizeMm * LINE_PITCH;
        sketch.text('numbers', line, x, base, { sizeMm, anchor: 'middle' });
      });
      return true;
    }
  }
  return false;
}

/**
 * Writes the first of some texts that has room straight above a box that is too low for any, such as a hob seen from the
 * front, where nothing else is drawn; gives whether one had.
 */
export function writeAbove(
  sketch: Sketch,
  { x0, x1, y0, y1 }: Box,
  texts: readonly (readonly [text: string, sizeMm: number])[],
  isEmpty: (field: Box) => boolean,
): boolean {
  const middle = (x0 + x1) / 2;
  return texts.some(([text, sizeMm]) => {
    const half = sketch.measure(text, sizeMm, 'regular') / 2 + 1;
    const high = sizeMm * LINE_PITCH + 0.5;
    if (y1 - y0 >= high) return false;
    const field = { x0: middle - half, x1: middle + half, y0: y0 - 0.4 - high, y1: y0 - 0.4 };
    return isEmpty(field) && writeOnWhite(sketch, [field], [[text, sizeMm]]);
  });
}
