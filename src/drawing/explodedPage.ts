import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Box as SolidBox } from '../model/geometry.ts';
import { openingCorners, type Picture, type Point, paint, pictureOf } from './apartPicture.ts';
import type { Box, Drawing, Segment, Stroke } from './drawing.ts';
import { inPicture, seenFaces } from './explodedView.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { NARROW, SMALL } from './lettering.ts';
import { outlineTable } from './outlineTable.ts';
import { drawFrame, drawTitleBlock, pageOf, TITLE_ROW_HEIGHT } from './page.ts';
import { passesClear } from './passesClear.ts';
import { seenFacesOf } from './shapedPrism.ts';
import { findRoomOnGrid, Sketch } from './sketch.ts';
import { columnsOf, flowTable, freeIn, type Table, tableSpace } from './tables.ts';
import { type FurnitureDrawingOptions, furnitureTitle, sizeWords } from './unitTitle.ts';

const PAGE = pageOf('A4');
const TABLE_WIDTH_MM = 122;
/** A line to a panel that others hide. */
const HIDDEN_LEADER: Stroke = { widthMm: 0.18, dashMm: [1, 0.7] };

/** Places inside the seen faces of a box, the middle of each face first, in the picture. */
function placesOn(box: SolidBox): Point[] {
  const shares = [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95];
  return seenFaces(box).flatMap(({ corners }) =>
    shares.flatMap((s) =>
      shares.map((t): Point => {
        const [a, b, , d] = corners as [Point, Point, Point, Point];
        return [a[0] + s * (b[0] - a[0]) + t * (d[0] - a[0]), a[1] + s * (b[1] - a[1]) + t * (d[1] - a[1])];
      }),
    ),
  );
}

function inPolygon(corners: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  corners.forEach((from, index) => {
    const to = corners[(index + 1) % corners.length]!;
    if (from[1] > y !== to[1] > y && x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0])) {
      inside = !inside;
    }
  });
  return inside;
}

function cornersOf(box: Box): Point[] {
  const [mx, my] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const xs = [box.x0, mx, box.x1];
  return xs.flatMap((x): Point[] => [
    [x, box.y0],
    [x, my],
    [x, box.y1],
  ]);
}

function around(sketch: Sketch, text: string, [x, y]: Point): Box {
  const half = sketch.measure(text, SMALL, 'bold') / 2 + 0.5;
  return { x0: x - half, x1: x + half, y0: y - SMALL * 0.55, y1: y + SMALL * 0.55 };
}

/**
 * Writes each panel's number onto a face of it that is seen, or beside the picture with a line to it. Gives whether some
 * line leads to a panel that others hide.
 */
function number(sketch: Sketch, picture: Picture, field: Box): boolean {
  const { painted, place, back } = picture;
  const beside: { text: string; at: Point; isSeen: boolean }[] = [];
  const written: Box[] = [];
  const leaders: Segment[] = [];
  const write = (text: string, [x, y]: Point) => {
    written.push(around(sketch, text, [x, y]));
    sketch.text('numbers', text, x, y + SMALL * 0.36, { sizeMm: SMALL, weight: 'bold', anchor: 'middle' });
  };
  painted.forEach(({ panel, box, holes }, index) => {
    const later = painted.slice(index + 1);
    const seen = (point: Point) => !later.some((other) => inPicture(other.box, point));
    const text = String(panel.number);
    const places = placesOn(box);
    const openings = holes.map((hole) => openingCorners(panel, hole));
    const faces = seenFacesOf(panel, box);
    const onFace = (point: Point) => faces.some(({ corners }) => inPolygon(corners, point));
    const good = places.find((point) => {
      const room = around(sketch, text, place(point));
      if (!sketch.taken.isFree(room)) return false;
      const points = cornersOf(room).map(back);
      return (
        points.every(seen) &&
        faces.some(({ corners }) => points.every((each) => inPolygon(corners, each))) &&
        !openings.some((corners) => points.some((each) => inPolygon(corners, each)))
      );
    });
    if (good !== undefined) write(text, place(good));
    else {
      const shown = places.find(
        (each) => seen(each) && onFace(each) && !openings.some((o) => inPolygon(o, each)),
      );
      beside.push({ text, at: place(shown ?? places[0]!), isSeen: shown !== undefined });
    }
  });
  let leadsBehind = false;
  for (const { text, at, isSeen } of beside) {
    const size = around(sketch, text, [0, 0]);
    const free = (room: Box) =>
      sketch.taken.isFree(room) &&
      cornersOf(room).every((corner) => !painted.some(({ box }) => inPicture(box, back(corner))));
    // No line through a number, where there is a place without.
    const clear = (room: Box) => {
      const middle: Segment = [at[0], at[1], (room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2];
      return passesClear(middle, written) && leaders.every((leader) => passesClear(leader, [room]));
    };
    const find = (wanted: (room: Box) => boolean) =>
      findRoomOnGrid(field, size.x1 - size.x0 + 1, size.y1 - size.y0 + 1, at, wanted);
    const found = find((room) => clear(room) && free(room)) ?? find(free);
    if (found === null) continue;
    const away = Math.max(Math.abs(found[0] - at[0]), Math.abs(found[1] - at[1]), 0.01);
    const stop = Math.max(0, 1 - (SMALL * 0.7) / away);
    const to = [at[0] + (found[0] - at[0]) * stop, at[1] + (found[1] - at[1]) * stop] as const;
    leadsBehind ||= !isSeen;
    leaders.push([at[0], at[1], to[0], to[1]]);
    sketch.line('numbers', at[0], at[1], to[0], to[1], isSeen ? NARROW : HIDDEN_LEADER);
    sketch.rect(
      'numbers',
      { x0: at[0] - 0.35, y0: at[1] - 0.35, x1: at[0] + 0.35, y1: at[1] + 0.35 },
      { fill: 1, radiusMm: 0.35 },
    );
    write(text, found);
  }
  return leadsBehind;
}

function size(lengthUm: number, widthUm: number, units: Units): string {
  return `${printLength(lengthUm, units)} × ${printLength(widthUm, units)}`;
}

function partsTable(unit: PlacedUnit, options: FurnitureDrawingOptions): Table {
  const { titles, units = 'mm' } = options;
  const says = options.words.furniture;
  const word = (id: string) => titles.get(id) ?? id;
  const rows = unit.panels.map((panel) => [
    String(panel.number),
    [panel.name, ...panel.cutOuts.map((cut) => cutWords(cut, options))].join('; '),
    size(panel.cutLengthUm, panel.cutWidthUm, units),
    size(panel.finishedLengthUm, panel.finishedWidthUm, units),
    `${panel.board}, ${word(panel.finish)}`,
  ]);
  return {
    title: says.panels.title,
    shortTitle: options.words.page.continued(says.panels.shortTitle),
    columns: [
      { heading: says.panels.columns[0], widthMm: 6, anchor: 'end', weight: 'bold' },
      { heading: says.panels.columns[1], widthMm: 26, grows: true },
      { heading: says.panels.columns[2], widthMm: 22, anchor: 'end', weight: 'bold' },
      { heading: says.panels.columns[3], widthMm: 20, anchor: 'end' },
      { heading: says.panels.columns[4], widthMm: 34 },
    ],
    rows,
  };
}

function cutWords(
  { name, alongLength, alongWidth }: Panel['cutOuts'][number],
  { words, units = 'mm' }: FurnitureDrawingOptions,
): string {
  const figures = size(alongLength[1] - alongLength[0], alongWidth[1] - alongWidth[0], units);
  return words.furniture.opening(name, figures);
}

function fittingsTable(unit: PlacedUnit, { titles, words }: FurnitureDrawingOptions): Table {
  const { title, columns } = words.furniture.fittings;
  return {
    title,
    shortTitle: words.page.continued(title),
    columns: [
      { heading: columns[0], widthMm: 14, anchor: 'end' },
      { heading: columns[1], widthMm: 40, grows: true },
    ],
    rows: unit.fittings.map(({ fitting, count }) => [String(count), titles.get(fitting) ?? fitting]),
  };
}

/** The pages with a unit drawn apart and its tables; more than one only where the tables need them. */
export function drawExplodedPages(unit: PlacedUnit, options: FurnitureDrawingOptions): Drawing[] {
  const { frame } = PAGE;
  const bottom = frame.y1 - 3 * TITLE_ROW_HEIGHT - 2;
  const outlines = outlineTable(unit, options);
  const drawn = options.tables !== 'left out';
  const tables = [
    ...(drawn ? [partsTable(unit, options)] : []),
    ...(outlines === null ? [] : [outlines]),
    ...(drawn ? [fittingsTable(unit, options)] : []),
  ];
  const free: Box[] = [];
  const pictureOnly = { x0: frame.x0, y0: frame.y0, x1: frame.x1 - TABLE_WIDTH_MM - 2, y1: bottom };
  const from = tables.map(() => 0);
  const sketches: Sketch[] = [];
  do {
    const sketch = new Sketch(options.measure);
    const first = sketches.length === 0;
    sketches.push(sketch);
    drawFrame(sketch, PAGE);
    const left = first ? frame.x1 - TABLE_WIDTH_MM : frame.x0 + 3;
    const room = { x0: left, y0: frame.y0 + 3, x1: frame.x1 - 3, y1: bottom };
    if (first)
      drawApart(sketch, unit, options, { x0: frame.x0 + 2, y0: frame.y0 + 2, x1: left - 3, y1: bottom });
    const space = tableSpace(columnsOf(room, 60, TABLE_WIDTH_MM - 3));
    tables.forEach((table, index) => {
      if (from[index]! < table.rows.length) from[index] = flowTable(sketch, table, from[index]!, space);
    });
    free.splice(0, free.length, ...freeIn(space));
  } while (tables.some((table, index) => from[index]! < table.rows.length));
  return sketches.map((sketch, index) => {
    drawTitleBlock(sketch, PAGE, titleOf(unit, options, index + 2, sketches.length + 1));
    return {
      widthMm: PAGE.widthMm,
      heightMm: PAGE.heightMm,
      title: options.words.furniture.panelsTitle(options.job, unit.name),
      description: options.words.furniture.panelsDescription(unit.name, unit.panels.length),
      shapes: sketch.shapes,
      ...(drawn || index < sketches.length - 1 ? {} : { free }),
      ...(drawn || outlines !== null ? {} : { picture: pictureOnly }),
    };
  });
}

function titleOf(unit: PlacedUnit, options: FurnitureDrawingOptions, page: number, pages: number) {
  const kind = options.titles.get(unit.unit) ?? unit.unit;
  const words = {
    document: options.words.furniture.panelsOfUnit,
    what: unit.name,
    kind,
    size: sizeWords(unit, options.units ?? 'mm'),
    scale: options.words.furniture.noScale,
    projection: 'isometric' as const,
    page,
    pages,
  };
  return furnitureTitle(options, words);
}

/** The unit drawn apart with the numbers of its panels, as large as a field allows. */
export function drawApart(
  sketch: Sketch,
  unit: PlacedUnit,
  { words }: Pick<FurnitureDrawingOptions, 'words'>,
  field: Box,
): void {
  if (unit.panels.length === 0) return;
  const margin = 9;
  const inner = {
    x0: field.x0 + margin,
    y0: field.y0 + margin,
    x1: field.x1 - margin,
    y1: field.y1 - margin,
  };
  const picture = pictureOf(unit, inner);
  paint(sketch, picture);
  // Its line is kept free, and left empty where nothing is to be said.
  const numbers = { ...field, y1: field.y1 - 1 - SMALL };
  if (!number(sketch, picture, numbers)) return;
  sketch.text('numbers', words.furniture.hiddenLeader, field.x0 + 2, field.y1 - 1, { sizeMm: SMALL });
}
