import { type Box, inset, type Segment, type Stroke } from './drawing.ts';
import { NARROW, WIDE } from './lettering.ts';
import type { StickerEdge, StickerPicture } from './panelSticker.ts';
import { findRoom, type Sketch } from './sketch.ts';

/** Lettering beside edges, in mm. */
const EDGE_NAME_MM = 1.9;
/** Room for an edge's name below or above a panel. */
const NAME_ROOM_MM = 2.6;
const BAR_MM = 0.8;
/** A strip is drawn at least this wide, so that its edges and its grain can be seen: such a picture is not to scale. */
const LEAST_SIDE_MM = 3.6;

/** Strokes of the first, second, third and fourth edging of a panel. */
const BAR_DASHES: readonly (readonly number[])[] = [[], [2, 0.8], [0.8, 0.8], [3, 0.7, 0.8, 0.7]];
/** Offcuts have the border they have on cut plans. */
const OFFCUT_BORDER: Stroke = { widthMm: 0.25, dashMm: [4, 0.8, 0.6, 0.8] };

const ARROW_LENGTHS_MM = [14, 10, 7, 5, 3.4] as const;
const ARROW_ROOM_MM = 1.2;

/** Room that the names of the edges take on each side of the piece. */
function margins(sketch: Sketch, edges: readonly StickerEdge[]): Record<StickerEdge['side'], number> {
  const room = (side: StickerEdge['side']) => {
    const edge = edges.find((one) => one.side === side);
    if (edge === undefined) return 0;
    return side.startsWith('length') ? NAME_ROOM_MM : sketch.measure(edge.name, EDGE_NAME_MM, 'bold') + 0.6;
  };
  return {
    length1: room('length1'),
    length2: room('length2'),
    width1: room('width1'),
    width2: room('width2'),
  };
}

/** Where the piece lies in the room for its picture: as large as it can be, in the middle. */
function placePiece(picture: StickerPicture, room: Box): Box {
  const [wide, high] = [room.x1 - room.x0, room.y1 - room.y0];
  const scale = Math.min(wide / picture.lengthUm, high / picture.widthUm);
  const width = Math.min(wide, Math.max(LEAST_SIDE_MM, picture.lengthUm * scale));
  const height = Math.min(high, Math.max(LEAST_SIDE_MM, picture.widthUm * scale));
  const [x, y] = [(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2];
  return { x0: x - width / 2, y0: y - height / 2, x1: x + width / 2, y1: y + height / 2 };
}

/** A bar inside the border along an edge, and the edge's name outside. */
function drawEdge(sketch: Sketch, piece: Box, edge: StickerEdge): void {
  const half = BAR_MM / 2;
  const { x0, y0, x1, y1 } = piece;
  const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
  const middle = y + EDGE_NAME_MM * 0.27;
  const places = {
    length1: { bar: [x0, y1 - half, x1, y1 - half], name: [x, y1 + 1.95, 'middle'] },
    length2: { bar: [x0, y0 + half, x1, y0 + half], name: [x, y0 - 0.6, 'middle'] },
    width1: { bar: [x0 + half, y0, x0 + half, y1], name: [x0 - 0.4, middle, 'end'] },
    width2: { bar: [x1 - half, y0, x1 - half, y1], name: [x1 + 0.4, middle, 'start'] },
  } as const;
  const { bar, name } = places[edge.side];
  sketch.line('edging', ...bar, { widthMm: BAR_MM, dashMm: BAR_DASHES[edge.edging % BAR_DASHES.length]! });
  sketch.text('edging', edge.name, name[0], name[1], {
    sizeMm: EDGE_NAME_MM,
    weight: 'bold',
    anchor: name[2],
  });
}

/** Openings with the crossed diagonals of a hole right through. */
function drawOpening(sketch: Sketch, { x0, y0, x1, y1 }: Box): void {
  sketch.rect('panels', { x0, y0, x1, y1 }, { stroke: NARROW });
  const diagonals: Segment[] = [
    [x0, y0, x1, y1],
    [x0, y1, x1, y0],
  ];
  sketch.lines('panels', diagonals, { widthMm: 0.1, dashMm: [] });
}

/** How far the arrow along the grain stays from openings, where there is room. */
const CLEAR_OF_OPENINGS_MM = 0.6;

/** The arrow along the grain, in the longest place that no opening and no edging takes; else through the middle. */
function drawGrain(sketch: Sketch, grain: 'length' | 'width', inside: Box, openings: readonly Box[]): void {
  const middle = [(inside.x0 + inside.x1) / 2, (inside.y0 + inside.y1) / 2] as const;
  const size = (length: number) =>
    grain === 'length' ? ([length, ARROW_ROOM_MM] as const) : ([ARROW_ROOM_MM, length] as const);
  let [at, length]: [readonly [number, number], number] = [middle, ARROW_LENGTHS_MM.at(-1)!];
  // Clear of the openings, not along their borders.
  const taken = openings.map((opening) => inset(opening, -CLEAR_OF_OPENINGS_MM));
  for (const tried of ARROW_LENGTHS_MM) {
    const found = findRoom(inside, size(tried)[0], size(tried)[1], middle, taken);
    if (found === null) continue;
    [at, length] = [found, tried];
    break;
  }
  const half = Math.min(length, grain === 'length' ? inside.x1 - inside.x0 : inside.y1 - inside.y0) / 2;
  const [x, y] = at;
  const head = Math.min(1.7, half * 0.8);
  if (grain === 'length') sketch.arrow('grain', [x - half, y], [x + half, y], 'both', head);
  else sketch.arrow('grain', [x, y + half], [x, y - half], 'both', head);
}

/** Draws the piece with its edging, openings and grain into a box; nothing lies outside it. */
export function drawStickerPicture(sketch: Sketch, picture: StickerPicture, box: Box): void {
  const margin = margins(sketch, picture.edges);
  const room = {
    x0: box.x0 + margin.width1 + WIDE.widthMm / 2,
    y0: box.y0 + margin.length2 + WIDE.widthMm / 2,
    x1: box.x1 - margin.width2 - WIDE.widthMm / 2,
    y1: box.y1 - margin.length1 - WIDE.widthMm / 2,
  };
  const piece = placePiece(picture, room);
  const x = (um: number) => piece.x0 + ((piece.x1 - piece.x0) * um) / picture.lengthUm;
  const y = (um: number) => piece.y1 - ((piece.y1 - piece.y0) * um) / picture.widthUm;
  const { outline } = picture;
  if (outline === undefined) {
    sketch.rect('panels', piece, { stroke: picture.kind === 'panel' ? NARROW : OFFCUT_BORDER });
  } else {
    sketch.rect('panels', piece, { stroke: { widthMm: 0.13, dashMm: [0.8, 0.8] } });
    const corners = outline.map(([along, across]) => [x(along), y(across)] as const);
    const sides = corners.map((from, index): Segment => [...from, ...corners[(index + 1) % corners.length]!]);
    sketch.lines('panels', sides, WIDE);
  }
  const openings = picture.openings.map(({ alongLength, alongWidth }) => ({
    x0: x(alongLength[0]),
    y0: y(alongWidth[1]),
    x1: x(alongLength[1]),
    y1: y(alongWidth[0]),
  }));
  for (const opening of openings) drawOpening(sketch, opening);
  for (const edge of picture.edges) drawEdge(sketch, piece, edge);
  if (picture.grain === 'none') return;
  const bar = (side: StickerEdge['side']) =>
    picture.edges.some((edge) => edge.side === side) ? BAR_MM + 0.1 : 0.3;
  const inside = {
    x0: piece.x0 + bar('width1'),
    y0: piece.y0 + bar('length2'),
    x1: piece.x1 - bar('width2'),
    y1: piece.y1 - bar('length1'),
  };
  drawGrain(sketch, picture.grain, inside, openings);
}
