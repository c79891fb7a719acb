import { inVehicle } from '../basics/boxes.ts';
import { polygonBounds } from '../basics/polygons.ts';
import { freeAcrossUm, isRoom, widthAtUm, withinSection } from '../basics/vehicleSection.ts';
import type { Furniture, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Extent, Box as SolidBox } from '../model/geometry.ts';
import type { Finish, Vehicle } from '../model/library.ts';
import { DIMENSION_ROW_MM, drawDimension } from './dimensions.ts';
import { type Box, boxesOverlap, type Drawing, inset, type Segment, type Stroke } from './drawing.ts';
import { drawWalkway } from './drawWalkway.ts';
import { ExtensionLines } from './extensionLines.ts';
import { fillFinish } from './finishFill.ts';
import { cornersThenEdges, placesWithin } from './labelPlaces.ts';
import { drawLegend, drawNames } from './layoutLegend.ts';
import { hangsAbove, heightsOf, lengthsAlong, unitsBySide, walkway, withGaps } from './layoutMeasures.ts';
import { type Appliance, DASHED, type Room, type Seen, type Standing } from './layoutRoom.ts';
import { printLength } from './lengthsInWords.ts';
import { FRAME, NARROW, NORMAL, SMALL } from './lettering.ts';
import { numberAgain, numberHidden, numberNarrowUnits } from './narrowUnits.ts';
import { drawFrame, drawTitleBlock, type Page, pageOf, TITLE_BLOCK_WIDTH, TITLE_ROW_HEIGHT } from './page.ts';
import { drawOrigin, drawRunningDimensions } from './runningDimensions.ts';
import { type OwnedFace, seenFields } from './seenFinishes.ts';
import { Sketch } from './sketch.ts';
import {
  type Body,
  FROM_ABOVE,
  faceOf,
  type Look,
  placedBodyOf,
  TO_FRONT_END,
  TO_LEFT_WALL,
  TO_RIGHT_WALL,
} from './unitProjection.ts';
import { type FurnitureDrawingOptions, furnitureTitle } from './unitTitle.ts';
import { ADJACENT, drawBodies, HIDDEN, type Placed, placeView, REDUCTIONS } from './unitViews.ts';
import { writeAbove, writeOnWhite } from './writeOnWhite.ts';

const LEFT_MM = 16;
const GAP_MM = 22;
const TOP_MM = 16;
const BETWEEN_MM = 27;

/** Seen from above, the right side of the vehicle is at the top: across runs to the rear, up to the right side. */
const PLAN: Look = FROM_ABOVE;

/** The part of a box on one side of the middle of the vehicle. */
function clipped(box: SolidBox, y: Extent): SolidBox | null {
  const from = Math.max(box.y[0], y[0]);
  const to = Math.min(box.y[1], y[1]);
  return from < to ? { ...box, y: [from, to] } : null;
}

function clippedBody(body: Body, y: Extent): Body | null {
  const box = clipped(body.box, y);
  if (box === null) return null;
  const all = (boxes: readonly SolidBox[]) => boxes.flatMap((each) => clipped(each, y) ?? []);
  return { box, holes: all(body.holes), solids: all(body.solids) };
}

/** Which way the grain of a panel runs in a view. */
function grainIn(panel: Panel, unit: PlacedUnit, look: Look): 'across' | 'up' {
  const own = panel.lengthAxis;
  const turned = unit.facing === 'front' || unit.facing === 'rear';
  const axis = own === 'z' || !turned ? own : own === 'x' ? 'y' : 'x';
  return axis === look.across[0] ? 'across' : 'up';
}

function pageBox(u: Extent, v: Extent, view: Placed): Box {
  return { x0: view.x(u[0]), x1: view.x(u[1]), y0: view.y(v[1]), y1: view.y(v[0]) };
}

/**
 * Fills and visible lines of units in a view, with the outlines of the appliances that they hold, and each unit's number and
 * name where it is seen. An appliance hides what stands behind it; its outline is drawn whole, since one behind a door matters
 * as much.
 */
function drawStanding(
  sketch: Sketch,
  standing: readonly Standing[],
  appliances: readonly Appliance[],
  look: Look,
  view: Placed,
  room: Room,
): () => void {
  const faces = standing.flatMap(({ unit, bodies, number }) =>
    bodies.flatMap(({ panel, body }) =>
      body.solids.map(
        (solid): OwnedFace<Seen> => ({ ...faceOf(solid, look), owner: ownerOf(panel, unit, number) }),
      ),
    ),
  );
  const others = appliances.map(
    (appliance): OwnedFace<Seen> => ({ ...faceOf(appliance.box, look), owner: { number: 0, appliance } }),
  );
  const fields = seenFields([...faces, ...others]);
  for (const { u, v, owner } of fields) {
    const finish = room.finishes.get(owner.of?.panel.finish ?? '');
    if (owner.of === undefined || finish === undefined) continue;
    fillFinish(sketch, pageBox(u, v, view), finish, grainIn(owner.of.panel, owner.of.unit, look));
  }
  room.seen.filled.push(...fields.map(({ u, v }) => pageBox(u, v, view)));
  const bodies = standing.flatMap((each) => each.bodies.map(({ body }) => body));
  drawBodies(sketch, bodies, look, view, 'visible lines only');
  const seenOf = (appliance: Appliance) =>
    fields
      .filter(({ owner }) => owner.appliance === appliance)
      .map(({ u, v }) => pageBox(u, v, view))
      .filter(({ x0, x1, y0, y1 }) => x1 - x0 > 2 * CLEAR_OF_LINES_MM && y1 - y0 > 2 * CLEAR_OF_LINES_MM);
  for (const appliance of appliances) {
    for (const box of seenOf(appliance)) {
      sketch.rect('surroundings', inset(box, CLEAR_OF_LINES_MM), { fill: 0 });
    }
    const { u, v } = faceOf(appliance.box, look);
    sketch.rect('surroundings', pageBox(u, v, view), { stroke: ADJACENT });
  }
  // Words come after everything that is drawn over the furniture.
  return () => {
    for (const { unit, number } of standing) {
      if (labelUnit(unit, number)) room.seen.numbered.add(number);
      else {
        const others = standing.filter((other) => other.unit !== unit).map((other) => outside(other.unit));
        room.seen.narrow.push({ number, box: view.box, fields: fieldsOf(number), others });
      }
    }
    for (const appliance of appliances) labelAppliance(appliance);
  };
  function outside(unit: PlacedUnit): Box {
    const { u, v } = faceOf(unit.placeOutside, look);
    return pageBox(u, v, view);
  }
  function labelAppliance(appliance: Appliance): void {
    const { u, v } = faceOf(appliance.box, look);
    const seen = seenOf(appliance);
    const box = pageBox(u, v, view);
    const texts = [
      [appliance.title, SMALL],
      [appliance.name, SMALL],
    ] as const;
    if (writeOnWhite(sketch, seen.length > 0 ? seen : [box], texts) || seen.length === 0) return;
    writeAbove(sketch, box, texts, isEmpty);
  }
  /** Whether a place lies within the view, where nothing of the furniture is seen. */
  function isEmpty(place: Box): boolean {
    const { x0, x1, y0, y1 } = view.box;
    const inside = place.x0 > x0 && place.x1 < x1 && place.y0 > y0 && place.y1 < y1;
    return inside && !fields.some((field) => boxesOverlap(pageBox(field.u, field.v, view), place));
  }
  function fieldsOf(number: number): Box[] {
    return fields.filter((field) => field.owner.number === number).map(({ u, v }) => pageBox(u, v, view));
  }
  /** Whether the unit could be named or numbered. */
  function labelUnit(unit: PlacedUnit, number: number): boolean {
    const own = fieldsOf(number);
    const names = [`${number} ${unit.name}`, String(number)] as const;
    if (label(sketch, own, ...names)) return true;
    const within = emptyWithin(unit, number);
    if (within !== null && label(sketch, [within], ...names)) return true;
    return own.length > 0 && label(sketch, clearWithin(unit, number), ...names);
  }
  /** Places within a unit of which only narrow pieces are seen, such as slats, clear of other units; the middle first. */
  function clearWithin(unit: PlacedUnit, number: number): Box[] {
    const around = outside(unit);
    const others = fields
      .filter((field) => field.owner.number !== number)
      .map((field) => pageBox(field.u, field.v, view));
    return [
      [26, 6],
      [6, 6],
    ].flatMap(([wide, high]) =>
      placesWithin(around, wide!, high!)
        .filter((place) => !others.some((other) => boxesOverlap(place, other)))
        .slice(0, 30),
    );
  }
  /** The room within a unit of which only edges are seen, where nothing else is seen in it. */
  function emptyWithin(unit: PlacedUnit, number: number): Box | null {
    const around = outside(unit);
    const others = fields.filter((field) => field.owner.number !== number);
    const apart = others.every((field) => {
      const box = pageBox(field.u, field.v, view);
      return box.x1 <= around.x0 || around.x1 <= box.x0 || box.y1 <= around.y0 || around.y1 <= box.y0;
    });
    return apart ? around : null;
  }
}

/** How far a number alone stands from words, as one of which it would be read. */
const NUMBER_APART_MM = 1.5;

/** As much of the ground of an appliance stays as it is, so that lines along its border keep their width. */
const CLEAR_OF_LINES_MM = 0.3;

const owners = new WeakMap<Panel, Seen>();

/** One owner per panel, so that fields of one panel can be told from those of another. */
function ownerOf(panel: Panel, unit: PlacedUnit, number: number): Seen {
  let owner = owners.get(panel);
  if (owner === undefined || owner.number !== number) {
    owner = { of: { panel, unit }, number };
    owners.set(panel, owner);
  }
  return owner;
}

/**
 * Writes a unit's words onto the largest field that is seen of it, on white; its number alone where words have no room.
 * Gives whether there was room for either.
 */
function label(sketch: Sketch, fields: readonly Box[], words: string, number: string, apartMm = 0): boolean {
  const texts = [
    [words, NORMAL],
    [words, SMALL],
    [number, SMALL],
  ] as const;
  return writeOnWhite(sketch, fields, texts, apartMm);
}

function dashedBox(sketch: Sketch, box: Box, stroke: Stroke): void {
  sketch.rect('surroundings', box, { stroke });
}

/** A body or opening of the vehicle in a view, dashed; what lies outside the view's border is cut off at it. */
function drawObstacle(sketch: Sketch, box: SolidBox, look: Look, view: Placed, word: string): () => void {
  const { u, v } = faceOf(box, look);
  const on = pageBox(u, v, view);
  const within = {
    x0: Math.max(on.x0, view.box.x0 - 3),
    x1: Math.min(on.x1, view.box.x1 + 3),
    y0: Math.max(on.y0, view.box.y0),
    y1: Math.min(on.y1, view.box.y1),
  };
  if (within.x0 >= within.x1 || within.y0 >= within.y1) return () => undefined;
  dashedBox(sketch, within, DASHED);
  return () => writeInto(sketch, within, word);
}

/** Writes a word along the lower border of a field, where it has room there and no other word stands. */
function writeInto(sketch: Sketch, field: Box, word: string): void {
  const width = sketch.measure(word, SMALL, 'regular');
  const x = (field.x0 + field.x1) / 2;
  const y = field.y1 - 0.9;
  const room = {
    x0: x - width / 2 - 0.4,
    x1: x + width / 2 + 0.4,
    y0: y - SMALL * 0.8,
    y1: y + SMALL * 0.26,
  };
  const fits = width + 1 <= field.x1 - field.x0 && SMALL <= field.y1 - field.y0;
  if (word === '' || !fits || !sketch.taken.isFree(room)) return;
  sketch.rect('numbers', room, { fill: 0 });
  sketch.text('numbers', word, x, y, { sizeMm: SMALL, anchor: 'middle' });
}

/** Wheel arches, other obstacles and doors in a view; what comes back writes their words. */
function drawObstacles(
  sketch: Sketch,
  { vehicle, words: says }: Room,
  look: Look,
  view: Placed,
  which: (box: SolidBox) => boolean,
): () => void {
  const words = [
    ...vehicle.wheelArches
      .filter(which)
      .map((each) => drawObstacle(sketch, each, look, view, says.wheelArch)),
    ...[...(vehicle.obstacles ?? []), ...vehicle.doors]
      .filter(which)
      .map((each) => drawObstacle(sketch, each, look, view, each.name)),
  ];
  return () => {
    for (const write of words) write();
  };
}

function across(
  sketch: Sketch,
  extent: Extent,
  view: Placed,
  side: 'above' | 'below',
  row: number,
  room: Room,
): void {
  const away = 1 + DIMENSION_ROW_MM * row;
  const place =
    side === 'below'
      ? { lineMm: view.box.y1 + away, fromMm: view.box.y1 }
      : { lineMm: view.box.y0 - away, fromMm: view.box.y0 };
  drawDimension(sketch, extent, {
    reads: 'across',
    onPage: view.x,
    units: room.sizes,
    extensions: room.extensions,
    ...place,
  });
}

function drawPlan(sketch: Sketch, room: Room, furniture: Furniture, view: Placed): void {
  const { vehicle } = room;
  const standing = room.units.filter(({ unit }) => !hangsAbove(unit, vehicle));
  const { left, right } = unitsBySide(furniture, vehicle);
  const writeLabels = drawStanding(sketch, standing, room.appliances, PLAN, view, room);
  const hanging = room.units.filter((each) => hangsAbove(each.unit, vehicle));
  const outsides = (units: readonly Standing[]) =>
    units.map(({ unit }) => {
      const { u, v } = faceOf(unit.placeOutside, PLAN);
      return pageBox(u, v, view);
    });
  for (const box of outsides(hanging)) dashedBox(sketch, box, HIDDEN);
  sketch.rect('surroundings', pageBox([0, vehicle.insideLengthUm], room.floor, view), { stroke: NARROW });
  sketch.rect('surroundings', view.box, { stroke: FRAME });
  const writeWalkway = () => {
    const way = walkway(left, right, room.floor);
    const fields = [...outsides(standing), ...outsides(hanging)];
    if (way !== null) drawWalkway(sketch, way, room, view, fields);
  };
  const labelHanging = () => {
    for (const { unit, number } of hanging) {
      const { u, v } = faceOf(unit.placeOutside, PLAN);
      const box = pageBox(u, v, view);
      const text = String(number);
      const apart = label(sketch, cornersThenEdges(box), text, text, NUMBER_APART_MM);
      const said =
        apart ||
        numberHidden(sketch, number, { view: view.box, outline: box }, room.seen) ||
        label(sketch, cornersThenEdges(box), text, text);
      if (said) room.seen.numbered.add(number);
    }
  };
  const writeObstacles = drawObstacles(sketch, room, PLAN, view, () => true);
  writeWalkway();
  writeLabels();
  labelHanging();
  writeObstacles();
  const whole: Extent = [0, vehicle.insideLengthUm];
  for (const extent of withGaps(lengthsAlong(left), whole)) across(sketch, extent, view, 'below', 1, room);
  across(sketch, whole, view, 'below', 2, room);
  for (const extent of withGaps(lengthsAlong(right), whole)) across(sketch, extent, view, 'above', 1, room);
  upright(sketch, room.floor, view, 1, room);
}

function upright(sketch: Sketch, extent: Extent, view: Placed, row: number, room: Room): void {
  const lineMm = view.box.x0 - 1 - DIMENSION_ROW_MM * row;
  drawDimension(sketch, extent, {
    reads: 'up',
    onPage: view.y,
    units: room.sizes,
    extensions: room.extensions,
    lineMm,
    fromMm: view.box.x0,
  });
}

function drawElevation(sketch: Sketch, room: Room, look: Look, y: Extent, view: Placed): void {
  const { vehicle } = room;
  const standing = room.units
    .map((each) => ({
      ...each,
      bodies: each.bodies.flatMap(({ panel, body }) => {
        const part = clippedBody(body, y);
        return part === null ? [] : [{ panel, body: part }];
      }),
    }))
    .filter(({ bodies }) => bodies.length > 0);
  const appliances = room.appliances.flatMap((each) => {
    const part = clipped(each.box, y);
    return part === null ? [] : [{ ...each, box: part }];
  });
  const writeLabels = drawStanding(sketch, standing, appliances, look, view, room);
  sketch.rect('surroundings', view.box, { stroke: FRAME });
  const widthUm = room.floor[1];
  const onSide = (each: SolidBox) =>
    look === TO_LEFT_WALL ? each.y[0] + each.y[1] < widthUm && each.y[1] <= y[1] : each.y[0] >= y[0];
  const writeObstacles = drawObstacles(sketch, room, look, view, onSide);
  writeLabels();
  writeObstacles();
  const turned = ([from, to]: Extent): Extent => (look.across[1] === 1 ? [from, to] : [0 - to, 0 - from]);
  const floor = standing.filter(({ unit }) => !hangsAbove(unit, vehicle)).map(({ unit }) => unit);
  const whole: Extent = [0, vehicle.insideLengthUm];
  for (const extent of withGaps(lengthsAlong(floor), whole)) {
    across(sketch, turned(extent), view, 'below', 1, room);
  }
  for (const { unit } of standing.filter((each) => hangsAbove(each.unit, vehicle))) {
    across(sketch, turned(unit.placeOutside.x), view, 'above', 1, room);
  }
  const heights = heightsOf(
    standing.map(({ unit }) => unit),
    vehicle,
  );
  const place = {
    side: 'left',
    edgeMm: view.box.x0,
    onPage: view.y,
    units: room.sizes,
    extensions: room.extensions,
  } as const;
  if (drawRunningDimensions(sketch, heights, place)) drawOrigin(sketch, view.box.x0, view.y(0));
  else upright(sketch, [0, vehicle.insideHeightUm], view, 1, room);
}

/** The outside of a unit; where it follows the wall, what of it lies within the section. */
function outsideBody(unit: PlacedUnit, vehicle: Vehicle): Body {
  const box = unit.placeOutside;
  const whole: Body = { box, holes: [], solids: [box] };
  if (!unit.panels.some((panel) => panel.scribed !== undefined)) return whole;
  const inside = withinSection(vehicle, box.y, box.z);
  if (inside === null) return whole;
  const corners = inside.map(([y, z]) => ({ x: box.x[0], y, z }));
  const { u: y, v: z } = polygonBounds(inside);
  const around = { ...box, y, z };
  return { box: around, holes: [], solids: [around], outline: { corners, through: 'x' } };
}

/** The body's cross-section with the outsides of the units, looking to the front end, in a vehicle the cab. */
function drawSection(sketch: Sketch, room: Room, view: Placed): void {
  const { vehicle } = room;
  const bodies = room.units.map(({ unit }) => outsideBody(unit, vehicle));
  drawBodies(sketch, bodies, TO_FRONT_END, view, 'visible lines only');
  const heights = [0, ...vehicle.widthAtHeight.map((point) => point.heightUm), vehicle.insideHeightUm];
  const sorted = [...new Set(heights)].filter((at) => at <= vehicle.insideHeightUm).sort((a, b) => a - b);
  const wall = (end: 0 | 1) =>
    sorted.map((at) => [view.x(freeAcrossUm(vehicle, at, at)[end]), view.y(at)] as const);
  const outline = [...wall(0), ...wall(1).reverse()];
  const segments = outline.map((from, index): Segment => {
    const to = outline[(index + 1) % outline.length]!;
    return [from[0], from[1], to[0], to[1]];
  });
  sketch.lines('surroundings', segments, FRAME);
  for (const each of [...vehicle.wheelArches, ...(vehicle.obstacles ?? [])]) {
    drawObstacle(sketch, each, TO_FRONT_END, view, '');
  }
  across(sketch, room.floor, view, 'below', 1, room);
  across(sketch, room.across, view, 'below', 2, room);
}

/**
 * A unit of which nothing is seen in any view, such as one under a worktop behind others, gets its number in the plan over what
 * hides it, as near the edge of its own outline as can be, or where that has no room clear of words beside it.
 */
function numberHiddenUnits(sketch: Sketch, { units, seen, vehicle }: Room, view: Placed): void {
  for (const { unit, number } of units) {
    const fields = seen.narrow.filter((each) => each.number === number).flatMap((each) => each.fields);
    if (unit.panels.length === 0 || seen.numbered.has(number) || fields.length > 0) continue;
    if (hangsAbove(unit, vehicle)) continue;
    const { u, v } = faceOf(unit.placeOutside, PLAN);
    const box = pageBox(u, v, view);
    const places = [...cornersThenEdges(box), ...placesWithin(box, 6, 4)];
    const alone = [[String(number), SMALL]] as const;
    const isWritten =
      writeOnWhite(sketch, places, [[`${number} ${unit.name}`, SMALL]]) ||
      writeOnWhite(sketch, places, alone, NUMBER_APART_MM) ||
      numberHidden(sketch, number, { view: view.box, outline: box }, seen);
    if (!isWritten) writeOnWhite(sketch, places, alone);
  }
}

function roomOf(
  furniture: Furniture,
  vehicle: Vehicle,
  finishes: ReadonlyMap<string, Finish>,
  options: FurnitureDrawingOptions,
): Room {
  const widest = Math.max(widthAtUm(vehicle, 0), ...vehicle.widthAtHeight.map((point) => point.widthUm));
  const floorUm = widthAtUm(vehicle, 0);
  const beyond = Math.ceil((widest - floorUm) / 2);
  return {
    vehicle,
    words: options.words.furniture,
    sizes: options.units ?? 'mm',
    across: [0 - beyond, floorUm + beyond],
    floor: [0, floorUm],
    seen: { numbered: new Set(), filled: [], narrow: [] },
    extensions: new ExtensionLines(),
    finishes,
    appliances: furniture.units.flatMap((unit) =>
      (unit.appliances ?? []).map(({ title, name, body }) => ({
        title,
        name,
        box: inVehicle(body, unit),
      })),
    ),
    units: furniture.units.map((unit, index) => ({
      unit,
      number: index + 1,
      bodies: unit.panels.map((panel) => ({ panel, body: placedBodyOf(panel, unit) })),
    })),
  };
}

function reductionFor(page: Page, lengthUm: number, widthUm: number, heightUm: number): number {
  const { frame } = page;
  const legendMm = isLarge(page) ? 122 : 48;
  const wide = frame.x1 - frame.x0;
  const high = frame.y1 - frame.y0 - 3 * TITLE_ROW_HEIGHT;
  const reduction = REDUCTIONS.find((by) => {
    const [length, width, height] = [lengthUm, widthUm, heightUm].map((um) => um / 1000 / by) as [
      number,
      number,
      number,
    ];
    const upper = Math.max(width, height);
    return (
      LEFT_MM + Math.max(length * 2 + GAP_MM + 4, length + width + GAP_MM + legendMm) <= wide &&
      TOP_MM + upper + BETWEEN_MM + height + 10 <= high
    );
  });
  if (reduction === undefined) throw new Error(`a vehicle ${lengthUm} µm long is too large to be drawn`);
  return reduction;
}

/** Whether the names of the units have room beside the legend. */
function isLarge({ widthMm }: Page): boolean {
  return widthMm > 400;
}

/**
 * The drawing of an order's furniture in its vehicle or room, on A3 unless the options say A4: plan from above with what hangs higher dashed, the body's
 * section, and the views to the left and the right wall from the middle, with main dimensions. Finishes are shown by tone
 * and hatch with a legend; what hides what is worked out panel by panel.
 */
export function drawLayout(
  furniture: Furniture,
  vehicle: Vehicle,
  finishes: ReadonlyMap<string, Finish>,
  options: FurnitureDrawingOptions,
): Drawing[] {
  const room = roomOf(furniture, vehicle, finishes, options);
  const lengthUm = vehicle.insideLengthUm;
  const widthUm = room.across[1] - room.across[0];
  const heightUm = vehicle.insideHeightUm;
  const page = pageOf(options.page ?? 'A3');
  const reduction = reductionFor(page, lengthUm, widthUm, heightUm);
  const mm = (um: number) => um / 1000 / reduction;
  const sketch = new Sketch(options.measure);
  const { frame } = page;
  drawFrame(sketch, page);
  const says = options.words.furniture;
  const inside = says.inside[isRoom(vehicle) ? 'room' : 'vehicle'];
  const size = [lengthUm, room.floor[1], heightUm].map((um) => printLength(um, room.sizes)).join(' × ');
  const words = {
    sizeHeading: says.insideSize,
    document: says.layout,
    what: vehicle.title,
    kind: options.job,
    size,
    scale: `1 : ${reduction}`,
  };
  const fields = furnitureTitle(options, { ...words, page: 1, pages: 1 });
  drawTitleBlock(sketch, page, fields);
  const x0 = frame.x0 + LEFT_MM;
  const upper = frame.y0 + TOP_MM + Math.max(mm(widthUm), mm(heightUm));
  const lower = upper + BETWEEN_MM + mm(heightUm);
  const plan = placeView([0, lengthUm], room.across, x0, upper, reduction);
  const section = placeView(room.across, [0, heightUm], plan.box.x1 + GAP_MM, upper, reduction);
  const toRight = placeView([0, lengthUm], [0, heightUm], x0, lower, reduction);
  const toLeft = placeView([0 - lengthUm, 0], [0, heightUm], toRight.box.x1 + GAP_MM, lower, reduction);
  const middle = room.floor[1] / 2;
  const titles = [
    [plan, inside.plan],
    [section, inside.section],
    [toRight, says.rightWall],
    [toLeft, says.leftWall],
  ] as const;
  for (const [view, text] of titles) {
    sketch.text('numbers', text, view.box.x0, view.box.y0 - 10.6, { sizeMm: SMALL, weight: 'bold' });
  }
  drawPlan(sketch, room, furniture, plan);
  drawSection(sketch, room, section);
  drawElevation(sketch, room, TO_RIGHT_WALL, [middle, room.across[1]], toRight);
  drawElevation(sketch, room, TO_LEFT_WALL, [room.across[0], middle], toLeft);
  room.extensions.draw(sketch);
  numberNarrowUnits(
    sketch,
    room.units.filter(({ unit }) => unit.panels.length > 0).map(({ number }) => number),
    room.seen,
  );
  numberHiddenUnits(sketch, room, plan);
  numberAgain(sketch, plan.box, room.seen);
  const legend = { x0: section.box.x1 + 10, y0: frame.y0 + 8, x1: frame.x1, y1: upper };
  drawLegend(sketch, room, legend);
  if (isLarge(page)) drawNames(sketch, room, { ...legend, x0: legend.x0 + 50 }, 2, 32);
  else {
    const y0 = lower + 2 * DIMENSION_ROW_MM + 4;
    const beside = { x0: frame.x0 + 3, y0, x1: frame.x1 - TITLE_BLOCK_WIDTH, y1: frame.y1 };
    const columns = Math.max(2, Math.ceil(room.units.length / Math.floor((beside.y1 - beside.y0 - 2) / 3.6)));
    drawNames(sketch, room, beside, columns, (beside.x1 - beside.x0) / columns);
  }
  return [
    {
      widthMm: page.widthMm,
      heightMm: page.heightMm,
      title: says.layoutTitle(options.job),
      description: says.layoutDescription(vehicle.title, furniture.units.length),
      shapes: sketch.shapes,
    },
  ];
}
