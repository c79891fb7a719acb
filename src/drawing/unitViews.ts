import { extentSize } from '../basics/boxes.ts';
import type { PlacedUnit } from '../model/furniture.ts';
import type { Axis, Extent, Box as SolidBox } from '../model/geometry.ts';
import { depthOfRows, drawRows, type Row, type Rows } from './dimensionRows.ts';
import {
  type Box,
  boxesOverlap,
  type Drawing,
  inset,
  type Segment,
  type Shape,
  type Stroke,
  textBox,
} from './drawing.ts';
import { drawHole, viewHoles } from './drawnHoles.ts';
import { drawApart, drawExplodedPages } from './explodedPage.ts';
import { ExtensionLines } from './extensionLines.ts';
import { type SlantedLine, type ViewLine, viewLines } from './hiddenLines.ts';
import type { Units } from './lengthsInWords.ts';
import { SMALL, WIDE } from './lettering.ts';
import { outlineTable } from './outlineTable.ts';
import { drawFrame, drawTitleBlock, pageOf, TITLE_BLOCK_WIDTH, TITLE_ROW_HEIGHT } from './page.ts';
import { Sketch } from './sketch.ts';
import { apartFrom, edgeExtents, footExtents, innerExtents, openingRows } from './unitMeasures.ts';
import { type Body, bodyOf, FROM_ABOVE, FROM_FRONT, FROM_LEFT, faceOf, type Look } from './unitProjection.ts';
import { type FurnitureDrawingOptions, furnitureTitle, sizeWords } from './unitTitle.ts';
import { writeAbove, writeOnWhite } from './writeOnWhite.ts';

/** Line of hidden edges: narrow, dashed (ISO 128, type 02). */
export const HIDDEN: Stroke = { widthMm: 0.18, dashMm: [1.6, 0.8] };
/** Outlines of what is held and not made, such as appliances: narrow, long-dashed with two dots (ISO 128, type 05). */
export const ADJACENT: Stroke = { widthMm: 0.18, dashMm: [3.2, 0.7, 0.35, 0.7, 0.35, 0.7] };
/** Scales that are drawn to, largest first: those of ISO 5455 and steps between them where a page would stay half empty. */
export const REDUCTIONS = [1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 100, 200] as const;

const PAGE = pageOf('A4');
const GAP_MM = 14;
const HEADING_MM = 5;
const HEADING_WIDTH_MM = 26;
const LEAST_TABLE_MM = 90;
const LEAST_TABLE_HEIGHT_MM = 22;

/** How a view lies on the page: µm across and up to mm. */
export interface Placed {
  readonly box: Box;
  readonly x: (um: number) => number;
  readonly y: (um: number) => number;
}

/** A view of an extent of space with its lower left corner at a place of the page. */
export function placeView(u: Extent, v: Extent, left: number, bottom: number, reduction: number): Placed {
  const mm = (um: number) => um / 1000 / reduction;
  const x = (um: number) => left + mm(um - u[0]);
  const y = (um: number) => bottom - mm(um - v[0]);
  return { box: { x0: left, x1: x(u[1]), y0: y(v[1]), y1: bottom }, x, y };
}

function segmentsOf(lines: readonly ViewLine[], view: Placed): Segment[] {
  return lines.map(({ runs, at, extent }) =>
    runs === 'level'
      ? [view.x(extent[0]), view.y(at), view.x(extent[1]), view.y(at)]
      : [view.x(at), view.y(extent[0]), view.x(at), view.y(extent[1])],
  );
}

function slantedSegments(lines: readonly SlantedLine[], view: Placed): Segment[] {
  return lines.map(({ from, to }) => [view.x(from[0]), view.y(from[1]), view.x(to[0]), view.y(to[1])]);
}

/** The lines of some bodies: hidden ones dashed below, visible ones over them. */
export function drawBodies(
  sketch: Sketch,
  bodies: readonly Body[],
  look: Look,
  view: Placed,
  hidden: 'with hidden lines' | 'visible lines only',
): void {
  const lines = viewLines(bodies, look);
  const { slanted } = lines;
  if (hidden === 'with hidden lines') {
    // Each dash pattern starts anew with each line, so that short hidden edges still show.
    sketch.lines(
      'hidden lines',
      [...segmentsOf(lines.hidden, view), ...slantedSegments(slanted.hidden, view)],
      HIDDEN,
    );
  }
  sketch.lines(
    'panels',
    [...segmentsOf(lines.visible, view), ...slantedSegments(slanted.visible, view)],
    WIDE,
  );
}

/** The rows of each view; empty chains take none. */
function rowsOf(unit: PlacedUnit): { front: Rows; side: Rows; plan: Rows } {
  const inner = innerExtents(unit);
  const [wide, deep] = [edgeExtents(unit, 'y', 'x'), edgeExtents(unit, 'x', 'y')];
  const { x, y, z } = unit.outside;
  const row = (chain: readonly Extent[]): Row[] => (chain.length === 0 ? [] : [{ chains: [chain] }]);
  const openings = (faces: Axis, axis: Axis): Row[] =>
    openingRows(unit, faces, axis).map((chains) => ({
      chains: chains.map(({ extents }) => extents),
      running: chains.map(({ panel, extents }) => ({
        fromUm: panel.box[axis][0],
        places: extents.slice(1).map(([from]) => from),
      })),
    }));
  const slats = (axis: 'x' | 'y'): Row[] => {
    const places = apartFrom(unit, axis);
    return places.length === 0 ? [] : [{ chains: [], running: [{ fromUm: unit.outside[axis][0], places }] }];
  };
  const each = (extents: readonly Extent[]): Row[] => extents.flatMap((extent) => row([extent]));
  return {
    front: {
      below: [
        ...openings('y', 'x'),
        ...row(footExtents(unit)),
        ...row(inner.x),
        ...each(wide.lower),
        ...row([x]),
      ],
      left: [...openings('y', 'z'), ...row(inner.z), ...row([z])],
      above: each(wide.upper),
    },
    side: {
      below: [...row(inner.y), ...each(deep.lower), ...row([y])],
      left: [],
      above: each(deep.upper),
    },
    plan: { below: [...openings('z', 'x'), ...slats('x')], left: [...openings('z', 'y'), ...slats('y')] },
  };
}

interface Arrangement {
  readonly reduction: number;
  readonly left: number;
  readonly top: number;
  readonly gapAcross: number;
  readonly gapDown: number;
}

/** The outside of a unit with the appliances that stand out of it or hang out. */
function shownOf({ outside, appliances }: PlacedUnit): SolidBox {
  const around = (axis: Axis): Extent =>
    (appliances ?? []).reduce<Extent>(
      ([from, to], { body }) => [Math.min(from, body[axis][0]), Math.max(to, body[axis][1])],
      outside[axis],
    );
  return { x: around('x'), y: around('y'), z: around('z') };
}

/** Where views go: from the left border of the page to here, or all of it. */
type Field = 'page' | { readonly x1: number };

/**
 * The largest scale at which front, side and plan with their dimensions fit into a field, and where they begin; null where
 * no scale is small enough.
 */
function arrange(
  sketch: Sketch,
  unit: PlacedUnit,
  rows: ReturnType<typeof rowsOf>,
  units: Units,
  field: Field,
): Arrangement | null {
  const shown = shownOf(unit);
  const size = (axis: Axis, reduction: number) => extentSize(shown[axis]) / 1000 / reduction;
  const { frame } = PAGE;
  const depth = (of: readonly Row[], reduction: number) => 2 + depthOfRows(sketch, of, reduction, units);
  const leftOf = (reduction: number) =>
    Math.max(depth(rows.front.left, reduction), depth(rows.plan.left, reduction));
  const gapOf = (reduction: number) => depth(rows.front.below, reduction) + HEADING_MM + 2;
  const blockTop = frame.y1 - 3 * TITLE_ROW_HEIGHT;
  const top = frame.y0 + HEADING_MM + 3 + aboveOf(sketch, rows, units);
  const farRight = field === 'page' ? frame.x1 : field.x1;
  const fits = (reduction: number) => {
    const planRight = frame.x0 + 4 + leftOf(reduction) + size('x', reduction);
    // A view that is narrower than the words over it takes their room.
    const right =
      planRight + GAP_MM + Math.max(size('y', reduction), field === 'page' ? 0 : HEADING_WIDTH_MM);
    const lowest = planRight + 4 < frame.x1 - TITLE_BLOCK_WIDTH ? frame.y1 : blockTop;
    const frontBottom = top + size('z', reduction);
    const bottom =
      frontBottom + gapOf(reduction) + size('y', reduction) + depth(rows.plan.below, reduction) + 1;
    const sideBottom = frontBottom + depth(rows.side.below, reduction) + 2;
    return right + 4 <= farRight && bottom <= lowest && sideBottom <= blockTop;
  };
  const reduction = REDUCTIONS.find(fits);
  if (reduction === undefined) return null;
  const leftRows = leftOf(reduction);
  const gapDown = gapOf(reduction);
  const width = leftRows + size('x', reduction) + GAP_MM + size('y', reduction);
  const underPlan = frame.x0 + 4 + leftRows + size('x', reduction) + 4 < frame.x1 - TITLE_BLOCK_WIDTH;
  const free = farRight - frame.x0 - 8 - width;
  // Beside the title block the views stay on the left, and where a table has room right of them; else they stand in the middle.
  const onLeft = underPlan || free - 5 >= LEAST_TABLE_MM;
  return {
    reduction,
    left: frame.x0 + 4 + leftRows + (onLeft ? 0 : free / 2),
    top,
    gapAcross: GAP_MM,
    gapDown,
  };
}

/** Room for the rows above front and side, whose headings stand on one line. */
function aboveOf(sketch: Sketch, { front, side }: ReturnType<typeof rowsOf>, units: Units): number {
  const depths = [front, side].map(({ above = [] }) =>
    above.length === 0 ? 0 : depthOfRows(sketch, above, 1, units) + 1,
  );
  return Math.max(...depths);
}

function heading(sketch: Sketch, view: Placed, text: string, aboveMm: number): void {
  const { box } = view;
  const width = sketch.measure(text, SMALL, 'bold');
  const x = Math.min(Math.max(box.x0, PAGE.frame.x0 + 2), PAGE.frame.x1 - width - 2);
  sketch.text('numbers', text, x, box.y0 - 2 - aboveMm, { sizeMm: SMALL, weight: 'bold' });
}

function drawViewsPage(unit: PlacedUnit, options: FurnitureDrawingOptions, pages: number): Drawing {
  const sketch = new Sketch(options.measure);
  const rows = rowsOf(unit);
  const arrangement = arrange(sketch, unit, rows, options.units ?? 'mm', 'page');
  if (arrangement === null) throw new Error(`the unit ${unit.name} is too large to be drawn`);
  drawFrame(sketch, PAGE);
  drawViews(sketch, unit, options, rows, arrangement, pages);
  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: options.words.furniture.unitTitle(options.job, unit.name),
    description: options.words.furniture.unitDescription(unit.name, sizeWords(unit, options.units ?? 'mm')),
    shapes: sketch.shapes,
    picture: pictureOf(sketch.shapes),
    ...(options.tables === 'left out' ? { free: besideViews(sketch.shapes) } : {}),
  };
}

/** Room right of the views that is wide enough for a table, or in two columns below them that is high enough. */
function besideViews(shapes: readonly Shape[]): Box[] {
  const { frame } = PAGE;
  const views = pictureOf(shapes);
  const [x0, x1, y1] = [frame.x0 + 3, frame.x1 - 3, frame.y1 - 3 * TITLE_ROW_HEIGHT - 2];
  if (x1 - (views.x1 + 2) >= LEAST_TABLE_MM) return [{ x0: views.x1 + 2, y0: frame.y0 + 3, x1, y1 }];
  const y0 = views.y1 + 2;
  if (y1 - y0 < LEAST_TABLE_HEIGHT_MM) return [];
  const middle = (x0 + x1) / 2;
  return [
    { x0, y0, x1: middle - 4, y1 },
    { x0: middle + 4, y0, x1, y1 },
  ];
}

/** The title block and the views with their dimensions. */
function drawViews(
  sketch: Sketch,
  unit: PlacedUnit,
  options: FurnitureDrawingOptions,
  rows: ReturnType<typeof rowsOf>,
  { reduction, left, top, gapAcross, gapDown }: Arrangement,
  pages: number,
): void {
  const kind = options.titles.get(unit.unit) ?? unit.unit;
  const units = options.units ?? 'mm';
  const size = sizeWords(unit, units);
  const says = options.words.furniture;
  const words = {
    document: says.unit,
    what: unit.name,
    kind,
    size,
    scale: `1 : ${reduction}`,
    page: 1,
    pages,
  };
  drawTitleBlock(sketch, PAGE, furnitureTitle(options, words));
  const bodies = unit.panels.map(bodyOf);
  const shown = shownOf(unit);
  const outside = (look: Look) => faceOf(shown, look);
  const down = (look: Look) => extentSize(outside(look).v) / 1000 / reduction;
  const place = (look: Look, x0: number, bottom: number) =>
    placeView(outside(look).u, outside(look).v, x0, bottom, reduction);
  const front = place(FROM_FRONT, left, top + down(FROM_FRONT));
  const side = place(FROM_LEFT, front.box.x1 + gapAcross, front.box.y1);
  const plan = place(FROM_ABOVE, left, front.box.y1 + gapDown + down(FROM_ABOVE));
  const views = [
    [FROM_FRONT, front, rows.front, says.views.front, 1],
    [FROM_LEFT, side, rows.side, says.views.left, -1],
    [FROM_ABOVE, plan, rows.plan, says.views.plan, 1],
  ] as const;
  const extensions = new ExtensionLines();
  const aboveMm = aboveOf(sketch, rows, units);
  for (const [look, view, its, name, across] of views) {
    drawBodies(sketch, bodies, look, view, 'with hidden lines');
    for (const { u, v, diameterUm, seen } of viewHoles(unit.panels, bodies, look)) {
      drawHole(sketch, view.x(u), view.y(v), diameterUm / 2000 / reduction, seen ? 'seen' : 'hidden');
    }
    drawRows(sketch, its, { view, across, reduction, units, extensions });
    heading(sketch, view, name, view === plan ? 0 : aboveMm);
    drawAppliances(sketch, unit, look, view);
  }
  extensions.draw(sketch);
}

/** The outlines of what a unit holds, each with its name where that has room and lies on no other word. */
function drawAppliances(sketch: Sketch, unit: PlacedUnit, look: Look, view: Placed): void {
  const faces = unit.panels.map((panel) => {
    const { u, v } = faceOf(panel.box, look);
    return { x0: view.x(u[0]), x1: view.x(u[1]), y0: view.y(v[1]), y1: view.y(v[0]) };
  });
  const isEmpty = (field: Box) => !faces.some((face) => boxesOverlap(face, field));
  for (const { body, title, name } of unit.appliances ?? []) {
    const { u, v } = faceOf(body, look);
    const box = { x0: view.x(u[0]), x1: view.x(u[1]), y0: view.y(v[1]), y1: view.y(v[0]) };
    sketch.rect('surroundings', box, { stroke: ADJACENT });
    const texts = [
      [title, SMALL],
      [name, SMALL],
    ] as const;
    if (!writeOnWhite(sketch, [box], texts)) writeAbove(sketch, box, texts, isEmpty);
  }
}

/** A unit of so few panels is drawn apart clearly enough beside its views. */
const FEW_PANELS = 6;
/** The views of such a unit are clear in this scale. */
const CLEAR_REDUCTION = 15;
/** The part of the page right of the views, and how much of its height the unit drawn apart has there. */
const BESIDE_MM = { width: 122, picture: 74 } as const;

/**
 * A unit of few panels on one page of A4: its views, as large as on a page of their own or clear all the same, the unit drawn apart beside
 * them (a single panel is not), and what is left as `free` room for its tables. A long panel has its views across the page
 * and its tables below. Null where that is not to be had.
 */
export function drawUnitOnOnePage(unit: PlacedUnit, options: FurnitureDrawingOptions): Drawing | null {
  const { frame } = PAGE;
  if (unit.panels.length > FEW_PANELS || outlineTable(unit, options) !== null) return null;
  const rows = rowsOf(unit);
  const x0 = frame.x1 - BESIDE_MM.width;
  const sketch = new Sketch(options.measure);
  const units = options.units ?? 'mm';
  const arrangement = arrange(sketch, unit, rows, units, { x1: x0 - 2 });
  const most = Math.max(CLEAR_REDUCTION, arrange(sketch, unit, rows, units, 'page')?.reduction ?? 0);
  if (arrangement === null || arrangement.reduction > most) {
    // A single panel needs no picture of its parts: its views leave enough of their page.
    return unit.panels.length === 1 && options.tables === 'left out' ? drawViewsPage(unit, options, 1) : null;
  }
  drawFrame(sketch, PAGE);
  drawViews(sketch, unit, options, rows, arrangement, 1);
  const picture = unit.panels.length > 1;
  const y0 = frame.y0 + (picture ? BESIDE_MM.picture : 0);
  if (picture) drawApart(sketch, unit, options, { x0, y0: frame.y0 + 2, x1: frame.x1 - 2, y1: y0 });
  const free = { x0, y0: y0 + 3, x1: frame.x1 - 3, y1: frame.y1 - 3 * TITLE_ROW_HEIGHT - 2 };
  const { furniture: says } = options.words;
  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: says.unitTitle(options.job, unit.name),
    description: says.unitDescription(unit.name, sizeWords(unit, options.units ?? 'mm')),
    shapes: sketch.shapes,
    free: [free],
  };
}

/** What a screen shows of a page: all but frame and title block. */
function pictureOf(shapes: readonly Shape[]): Box {
  const boxes = shapes.flatMap((shape): Box[] => {
    if (shape.layer === 'frame' || shape.layer === 'title block') return [];
    switch (shape.kind) {
      case 'line':
        return [shape];
      case 'lines':
        return shape.segments.map(([x0, y0, x1, y1]) => ({ x0, y0, x1, y1 }));
      case 'rect':
        return [shape.box];
      case 'rects':
        return [...shape.boxes];
      case 'polygon':
        return shape.points.map(([x, y]) => ({ x0: x, y0: y, x1: x, y1: y }));
      case 'circle': {
        const { x, y, radiusMm: r } = shape;
        return [{ x0: x - r, y0: y - r, x1: x + r, y1: y + r }];
      }
      case 'text':
        return [textBox(shape)];
      default:
        return shape satisfies never;
    }
  });
  const xs = boxes.flatMap(({ x0, x1 }) => [x0, x1]);
  const ys = boxes.flatMap(({ y0, y1 }) => [y0, y1]);
  if (boxes.length === 0) return { x0: 0, y0: 0, x1: PAGE.widthMm, y1: PAGE.heightMm };
  const [least, most] = [
    (all: number[]) => all.reduce((a, b) => Math.min(a, b)),
    (all: number[]) => all.reduce((a, b) => Math.max(a, b)),
  ];
  const all = inset({ x0: least(xs), y0: least(ys), x1: most(xs), y1: most(ys) }, -4);
  const { frame } = PAGE;
  return {
    x0: Math.max(all.x0, frame.x0 + 1),
    y0: Math.max(all.y0, frame.y0 + 1),
    x1: Math.min(all.x1, frame.x1 - 1),
    y1: Math.min(all.y1, frame.y1 - 1),
  };
}

/**
 * The drawings of one unit on A4: front, from the left and plan in first-angle projection (ISO 128, ISO 5456-2) with
 * hidden edges dashed and dimensions after ISO 129; then the unit drawn apart with the numbers of its panels, a table of
 * them and its fittings. The same unit gives the same drawings.
 */
export function drawUnit(unit: PlacedUnit, options: FurnitureDrawingOptions): Drawing[] {
  const exploded = drawExplodedPages(unit, options);
  return [drawViewsPage(unit, options, 1 + exploded.length), ...exploded];
}
