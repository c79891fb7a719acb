import {
  type Box,
  boxesOverlap,
  type Drawing,
  inset,
  type Shape,
  textBox,
} from '../../../src/drawing/drawing.ts';

/** Least gap in mm between the ring round a cut's number and the words on a panel. */
const RING_GAP_MM = 0.15;

function boxOf(points: readonly (readonly [x: number, y: number])[]): Box {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) };
}

/** The space that a shape takes on the page. */
function extentOf(shape: Shape): Box {
  switch (shape.kind) {
    case 'text':
      return textBox(shape);
    case 'rect':
      return shape.box;
    case 'rects':
      return boxOf(shape.boxes.flatMap(({ x0, y0, x1, y1 }) => [[x0, y0] as const, [x1, y1] as const]));
    case 'line':
      return boxOf([
        [shape.x0, shape.y0],
        [shape.x1, shape.y1],
      ]);
    case 'lines':
      return boxOf(shape.segments.flatMap(([x0, y0, x1, y1]) => [[x0, y0] as const, [x1, y1] as const]));
    case 'polygon':
      return boxOf(shape.points);
    case 'circle':
      return inset({ x0: shape.x, y0: shape.y, x1: shape.x, y1: shape.y }, -shape.radiusMm);
    default:
      return shape satisfies never;
  }
}

/** Throws when something reaches over the border of a page, texts lie on each other, or on the number of a cut. */
export function assertReadable(drawing: Drawing): void {
  const { shapes, title } = drawing;
  for (const shape of shapes) {
    const box = extentOf(shape);
    if (box.x0 < 0 || box.y0 < 0 || box.x1 > drawing.widthMm || box.y1 > drawing.heightMm) {
      throw new Error(`${title}: outside the page: ${shape.kind === 'text' ? shape.text : shape.layer}`);
    }
  }
  const texts = shapes.filter((shape) => shape.kind === 'text');
  const boxes = texts.map(textBox);
  boxes.forEach((box, index) => {
    const { text } = texts[index]!;
    const shrunk = { x0: box.x0 + 0.05, x1: box.x1 - 0.05, y0: box.y0 + 0.3, y1: box.y1 - 0.3 };
    const on = boxes.findIndex((other, at) => at > index && boxesOverlap(shrunk, other));
    if (on >= 0) throw new Error(`${title}: ${texts[on]!.text} lies on ${text}`);
  });
  const rings = shapes.flatMap((shape) =>
    shape.kind === 'rect' && shape.layer === 'numbers' ? [inset(shape.box, -RING_GAP_MM)] : [],
  );
  for (const [index, { layer, text }] of texts.entries()) {
    if (layer !== 'panels') continue;
    if (rings.some((ring) => boxesOverlap(ring, boxes[index]!))) {
      throw new Error(`${title}: ${text} stands too close to the number of a cut`);
    }
  }
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
