import { boxesOverlap, type Drawing, textBox } from '../../../src/drawing/drawing.ts';

/** Throws when texts of a page lie on each other or reach over its border. */
export function assertReadable(drawing: Drawing): void {
  const texts = drawing.shapes.filter((shape) => shape.kind === 'text');
  const boxes = texts.map(textBox);
  boxes.forEach((box, index) => {
    const { text } = texts[index]!;
    if (box.x0 < 0 || box.y0 < 0 || box.x1 > drawing.widthMm || box.y1 > drawing.heightMm) {
      throw new Error(`${drawing.title}: outside the page: ${text}`);
    }
    const shrunk = { x0: box.x0 + 0.05, x1: box.x1 - 0.05, y0: box.y0 + 0.3, y1: box.y1 - 0.3 };
    const on = boxes.findIndex((other, at) => at > index && boxesOverlap(shrunk, other));
    if (on >= 0) throw new Error(`${drawing.title}: ${texts[on]!.text} lies on ${text}`);
  });
}

/** How much of a page's height is drawn or written on, its foot left out. */
export function usedHeight({ shapes, heightMm }: Drawing): number {
  const lowest = shapes.reduce((most, shape) => {
    if (shape.kind !== 'text') return most;
    const { y1 } = textBox(shape);
    return y1 < heightMm - 10 ? Math.max(most, y1) : most;
  }, 0);
  return lowest / heightMm;
}
