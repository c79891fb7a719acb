import type { Box } from './drawing.ts';

/** Boxes of a size within another, 3 mm apart, those nearest to its middle first. */
export function placesWithin(around: Box, wide: number, high: number): Box[] {
  const steps = (from: number, to: number) =>
    to < from ? [] : Array.from({ length: Math.floor((to - from) / 3) + 1 }, (_, index) => from + 3 * index);
  const [x, y] = [(around.x0 + around.x1 - wide) / 2, (around.y0 + around.y1 - high) / 2];
  const away = (box: Box) => Math.abs(box.x0 - x) + Math.abs(box.y0 - y);
  return steps(around.x0, around.x1 - wide)
    .flatMap((x0) =>
      steps(around.y0, around.y1 - high).map((y0) => ({ x0, y0, x1: x0 + wide, y1: y0 + high })),
    )
    .sort((a, b) => away(a) - away(b));
}

/** Squares of 6 mm along the borders of a box, from its corners on, then the whole box: where its number may stand. */
export function cornersThenEdges(box: Box): Box[] {
  const side = 6;
  const along = (from: number, to: number) => {
    const count = Math.max(1, Math.floor((to - from) / side));
    return Array.from(
      { length: count },
      (_, index) => from + (index * (to - from - side)) / Math.max(1, count - 1),
    );
  };
  const square = (x: number, y: number) => ({ x0: x, y0: y, x1: x + side, y1: y + side });
  const level = along(box.x0, box.x1).flatMap((x) => [square(x, box.y0), square(x, box.y1 - side)]);
  const upright = along(box.y0, box.y1).flatMap((y) => [square(box.x0, y), square(box.x1 - side, y)]);
  return [...level, ...upright, box];
}
