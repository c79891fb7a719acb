import type { Finish } from '../model/library.ts';
import type { Box, Segment } from './drawing.ts';
import { HAIRLINE } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** Hatches are laid out over the whole page, so that they run on from field to field. */
const PITCH_MM: Record<Finish['hatch'], number> = { none: 0, lines: 1.6, dots: 1.5, cross: 2, wood: 1.3 };

function slanting(box: Box, pitch: number, sign: 1 | -1): Segment[] {
  const segments: Segment[] = [];
  const sums = sign === 1 ? [box.x0 + box.y0, box.x1 + box.y1] : [box.x0 - box.y1, box.x1 - box.y0];
  for (let step = Math.ceil(sums[0]! / pitch); step * pitch < sums[1]!; step++) {
    const sum = step * pitch;
    const yAt = (x: number) => sign * (sum - x);
    const ends = [box.y0, box.y1].map((y) => (sign === 1 ? sum - y : sum + y));
    const from = Math.max(box.x0, Math.min(...ends));
    const to = Math.min(box.x1, Math.max(...ends));
    if (to - from > 0.05) segments.push([from, yAt(from), to, yAt(to)]);
  }
  return segments;
}

function dots(box: Box, pitch: number): Segment[] {
  const segments: Segment[] = [];
  for (let row = Math.ceil(box.y0 / pitch); row * pitch < box.y1; row++) {
    const shift = row % 2 === 0 ? 0 : pitch / 2;
    for (let column = Math.ceil((box.x0 - shift) / pitch); column * pitch + shift < box.x1 - 0.25; column++) {
      const x = column * pitch + shift;
      segments.push([x, row * pitch, x + 0.25, row * pitch]);
    }
  }
  return segments;
}

/** Strokes along the grain with gaps that step on from line to line. */
function wood(box: Box, pitch: number, runs: 'across' | 'up'): Segment[] {
  const [a0, a1, b0, b1] =
    runs === 'across' ? [box.x0, box.x1, box.y0, box.y1] : [box.y0, box.y1, box.x0, box.x1];
  const segments: Segment[] = [];
  const [stroke, gap] = [7, 1.6];
  for (let line = Math.ceil(b0 / pitch); line * pitch < b1; line++) {
    const shift = ((line * 37) % 10) * 0.86;
    for (let step = Math.floor((a0 - shift) / (stroke + gap)); step * (stroke + gap) + shift < a1; step++) {
      const from = Math.max(a0, step * (stroke + gap) + shift);
      const to = Math.min(a1, step * (stroke + gap) + shift + stroke);
      const at = line * pitch;
      if (to - from > 0.1) segments.push(runs === 'across' ? [from, at, to, at] : [at, from, at, to]);
    }
  }
  return segments;
}

/** Fills a rectangle with a finish: a light tone of grey and the finish's hatch, which reads in black and white. */
export function fillFinish(sketch: Sketch, box: Box, finish: Finish, grain: 'across' | 'up'): void {
  // Tones are lightened so that lines and letters stay dark enough to read on them.
  sketch.rect('finishes', box, { fill: finish.tone * 0.5 });
  const pitch = PITCH_MM[finish.hatch];
  const lines = (segments: readonly Segment[]) => sketch.lines('finishes', segments, HAIRLINE);
  switch (finish.hatch) {
    case 'none':
      return;
    case 'lines':
      lines(slanting(box, pitch, 1));
      return;
    case 'cross':
      lines([...slanting(box, pitch, 1), ...slanting(box, pitch, -1)]);
      return;
    case 'dots':
      sketch.lines('finishes', dots(box, pitch), { widthMm: 0.25, dashMm: [] });
      return;
    case 'wood':
      lines(wood(box, pitch, grain));
      return;
    default:
      finish.hatch satisfies never;
  }
}
