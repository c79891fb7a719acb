import type { Box } from './drawing.ts';
import { fillFinish } from './finishFill.ts';
import { hangsAbove } from './layoutMeasures.ts';
import { DASHED, type Room } from './layoutRoom.ts';
import { NARROW, SMALL, shorten } from './lettering.ts';
import type { Sketch } from './sketch.ts';
import { ADJACENT, HIDDEN } from './unitViews.ts';

/** The finishes with their fills, and what the kinds of dashed lines mean. */
export function drawLegend(sketch: Sketch, room: Room, field: Box): void {
  const used = new Set(room.units.flatMap(({ unit }) => unit.panels.map((panel) => panel.finish)));
  let y = field.y0;
  const row = 6;
  for (const id of [...used].sort()) {
    const finish = room.finishes.get(id);
    if (finish === undefined) continue;
    const box = { x0: field.x0, x1: field.x0 + 12, y0: y, y1: y + 4.4 };
    fillFinish(sketch, box, finish, 'across');
    sketch.rect('finishes', box, { stroke: NARROW });
    sketch.text('numbers', finish.title, field.x0 + 14, y + 3.1, { sizeMm: SMALL });
    y += row;
  }
  const { vehicle, words: says } = room;
  const keptFree = [
    vehicle.doors.length > 0 ? says.doorOpening : '',
    vehicle.wheelArches.length > 0 ? says.wheelArch : '',
    (vehicle.obstacles ?? []).length > 0 ? says.obstacle : '',
  ].filter((word) => word !== '');
  const dashes = [
    ...(keptFree.length === 0 ? [] : ([[DASHED, keptFree.join(', ')]] as const)),
    ...(room.appliances.length === 0 ? [] : ([[ADJACENT, says.appliance]] as const)),
    ...(room.units.some(({ unit }) => hangsAbove(unit, vehicle))
      ? ([[HIDDEN, says.hangsAbove]] as const)
      : []),
  ] as const;
  for (const [stroke, words] of dashes) {
    sketch.line('surroundings', field.x0, y + 2.2, field.x0 + 12, y + 2.2, stroke);
    sketch.text('numbers', words, field.x0 + 14, y + 3.1, { sizeMm: SMALL });
    y += row;
  }
}

/** The units by their numbers, in columns as wide as given. */
export function drawNames(sketch: Sketch, room: Room, field: Box, columns: number, columnMm: number): void {
  const perColumn = Math.ceil(room.units.length / columns);
  room.units.forEach(({ unit, number }, index) => {
    const x = field.x0 + Math.floor(index / perColumn) * columnMm;
    const y = field.y0 + 3 + (index % perColumn) * 3.6;
    const name = shorten(`${number} ${unit.name}`, columnMm - 1.5, SMALL, 'regular', sketch.measure);
    sketch.text('numbers', name, x, y, { sizeMm: SMALL });
  });
}
