import type { Box, Segment } from './drawing.ts';

/** Whether a line passes all of some boxes by. */
export function passesClear([x0, y0, x1, y1]: Segment, boxes: readonly Box[]): boolean {
  return boxes.every((box) => {
    let [from, to] = [0, 1];
    for (const [at, by, low, high] of [
      [x0, x1 - x0, box.x0, box.x1],
      [y0, y1 - y0, box.y0, box.y1],
    ] as const) {
      if (by === 0) {
        if (at <= low || at >= high) return true;
        continue;
      }
      const [a, b] = [(low - at) / by, (high - at) / by];
      from = Math.max(from, Math.min(a, b));
      to = Math.min(to, Math.max(a, b));
    }
    return from >= to;
  });
}
