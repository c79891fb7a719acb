import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Box as SolidBox } from '../model/geometry.ts';
import type { Box, Segment } from './drawing.ts';
import { drawnApart, paintOrder, seenFaces } from './explodedView.ts';
import { NARROW } from './lettering.ts';
import { seenFacesOf } from './shapedPrism.ts';
import type { Sketch } from './sketch.ts';

/** A place in the picture or on the page. */
export type Point = readonly [number, number];

/** The picture of a unit drawn apart: boxes in painting order, and how the picture lies on the page. */
export interface Picture {
  readonly painted: readonly {
    readonly panel: Panel;
    readonly box: SolidBox;
    readonly holes: readonly SolidBox[];
  }[];
  readonly place: (point: Point) => Point;
  readonly back: (point: Point) => Point;
}

function holesApart(panel: Panel, box: SolidBox): SolidBox[] {
  return panel.cutOuts.map(({ alongLength, alongWidth }) => ({
    ...box,
    [panel.lengthAxis]: alongLength.map((um) => box[panel.lengthAxis][0] + um),
    [panel.widthAxis]: alongWidth.map((um) => box[panel.widthAxis][0] + um),
  }));
}

/** A unit with at least one panel drawn apart, as large as a field of the page allows; `apart` as for `drawnApart`. */
export function pictureOf(unit: PlacedUnit, field: Box, apart?: number): Picture {
  const boxes = drawnApart(
    unit.panels.map((panel) => panel.box),
    apart,
  );
  const { order } = paintOrder(boxes);
  const corners = boxes.flatMap((box) => seenFaces(box).flatMap((face) => face.corners));
  const least = [0, 1].map((axis) => Math.min(...corners.map((corner) => corner[axis]!)));
  const most = [0, 1].map((axis) => Math.max(...corners.map((corner) => corner[axis]!)));
  const wide = most[0]! - least[0]!;
  const high = most[1]! - least[1]!;
  const scale = Math.min((field.x1 - field.x0) / wide, (field.y1 - field.y0) / high);
  const x0 = (field.x0 + field.x1 - wide * scale) / 2;
  const y0 = (field.y0 + field.y1 - high * scale) / 2;
  return {
    painted: order.map((index) => {
      const panel = unit.panels[index]!;
      const box = boxes[index]!;
      return { panel, box, holes: holesApart(panel, box) };
    }),
    place: ([x, y]) => [x0 + (x - least[0]!) * scale, y0 + (y - least[1]!) * scale],
    back: ([x, y]) => [(x - x0) / scale + least[0]!, (y - y0) / scale + least[1]!],
  };
}

function ring(corners: readonly Point[]): Segment[] {
  return corners.map((from, index) => {
    const to = corners[(index + 1) % corners.length]!;
    return [from[0], from[1], to[0], to[1]];
  });
}

/** The face of an opening that is seen: only where its panel's broad side is one of the three seen faces' pairs. */
export function openingCorners(panel: Panel, hole: SolidBox): readonly Point[] {
  const face = { z: 0, y: 1, x: 2 }[panel.thicknessAxis];
  return seenFaces(hole)[face]!.corners;
}

/** Paints the panels, what hides others after them. */
export function paint(sketch: Sketch, picture: Picture): void {
  for (const { panel, box, holes } of picture.painted) {
    const edges: Segment[] = [];
    for (const { corners, tone } of seenFacesOf(panel, box)) {
      const placed = corners.map(picture.place);
      sketch.polygon('panels', placed, tone);
      edges.push(...ring(placed));
    }
    for (const hole of holes) {
      const placed = openingCorners(panel, hole).map(picture.place);
      sketch.polygon('panels', placed, 0.35);
      edges.push(...ring(placed));
    }
    sketch.lines('panels', edges, NARROW);
  }
}
