import type { Box } from './drawing.ts';
import { boxAround, breakLine, drawLabel, extent, type Label, type LabelLine } from './labels.ts';
import { LARGE, NORMAL, SMALL } from './lettering.ts';
import { findRoom, type Sketch } from './sketch.ts';

/** Writes what a spare piece is and its size where there is room, on a white ground. */
export function drawSpareLabel(
  sketch: Sketch,
  box: Box,
  word: string,
  size: string,
  strong: 'bold' | 'regular',
): void {
  const middle = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const;
  const obstacles = sketch.taken.within(box);
  const sizes = strong === 'bold' ? [LARGE, NORMAL, SMALL] : [SMALL];
  const first: LabelLine = { text: word, weight: strong };
  const second: LabelLine = { text: size, weight: 'regular' };
  const joinedLine: LabelLine = { text: `${word} ${size}`, weight: 'regular' };
  for (const sizeMm of sizes) {
    for (const reads of ['across', 'up'] as const) {
      for (const lines of [[first, second], [joinedLine], ...(sizeMm === SMALL ? [[first]] : [])]) {
        const label: Label = { lines, sizeMm, reads };
        const [along, high] = extent(sketch, label);
        const [w, h] = reads === 'across' ? [along + 0.8, high + 0.2] : [high + 0.2, along + 0.8];
        const centre = findRoom(box, w, h, middle, obstacles);
        if (!centre) continue;
        sketch.rect('offcuts', boxAround(centre, w, h), { fill: 0 });
        drawLabel(sketch, label, centre, 'offcuts');
        return;
      }
    }
  }
}

/** Writes a name in the small lettering where it fits on at most three lines, level or upright; else nothing. */
export function drawNameIfRoom(sketch: Sketch, box: Box, name: string): void {
  const obstacles = sketch.taken.within(box);
  const middle = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2] as const;
  for (const reads of ['across', 'up'] as const) {
    const along = reads === 'across' ? box.x1 - box.x0 : box.y1 - box.y0;
    const lines = breakLine(sketch, name, 'regular', SMALL, along, 3);
    if (!lines || lines.length === 0) continue;
    const label: Label = { lines, sizeMm: SMALL, reads };
    const [wide, high] = extent(sketch, label);
    const [w, h] = reads === 'across' ? [wide, high] : [high, wide];
    const centre = findRoom(box, w, h, middle, obstacles);
    if (!centre) continue;
    drawLabel(sketch, label, centre, 'panels');
    return;
  }
}
