import { type Box, type Drawing, type Shape, textBox } from './drawing.ts';

/** White left around a picture, in mm. */
const AROUND_MM = 4;

/** Layers that belong to the sheet of paper and not to what is drawn on it. */
const OF_THE_SHEET: ReadonlySet<string> = new Set(['frame', 'title block']);

function pointsOf(shape: Shape): readonly (readonly [x: number, y: number])[] {
  const corners = ({ x0, y0, x1, y1 }: Box): [number, number][] => [
    [x0, y0],
    [x1, y1],
  ];
  switch (shape.kind) {
    case 'line':
      return corners(shape);
    case 'lines':
      return shape.segments.flatMap(([x0, y0, x1, y1]) => corners({ x0, y0, x1, y1 }));
    case 'rect':
      return corners(shape.box);
    case 'rects':
      return shape.boxes.flatMap(corners);
    case 'polygon':
      return shape.points;
    case 'circle': {
      const { x, y, radiusMm: r } = shape;
      return corners({ x0: x - r, y0: y - r, x1: x + r, y1: y + r });
    }
    case 'text':
      return corners(textBox(shape));
  }
}

/**
 * What is drawn on a page without its frame and title block, with the part of the page that it takes as its `picture`: for
 * screens, where drawings stand beside each other under headings of their own. A page with nothing else on it stays whole.
 */
export function pictureAlone(drawing: Drawing): Drawing {
  const shapes = drawing.shapes.filter(({ layer }) => !OF_THE_SHEET.has(layer));
  const picture = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const [x, y] of shapes.flatMap(pointsOf)) {
    picture.x0 = Math.min(picture.x0, x);
    picture.y0 = Math.min(picture.y0, y);
    picture.x1 = Math.max(picture.x1, x);
    picture.y1 = Math.max(picture.y1, y);
  }
  if (picture.x0 > picture.x1) return drawing;
  return {
    ...drawing,
    shapes,
    picture: {
      x0: Math.max(0, picture.x0 - AROUND_MM),
      y0: Math.max(0, picture.y0 - AROUND_MM),
      x1: Math.min(drawing.widthMm, picture.x1 + AROUND_MM),
      y1: Math.min(drawing.heightMm, picture.y1 + AROUND_MM),
    },
  };
}
