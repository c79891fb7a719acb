import { inVehicle, sharedBox } from '../basics/boxes.ts';
import type { Finding } from '../model/finding.ts';
import type { Panel } from '../model/furniture.ts';
import type { Axis, Box, Extent, Um } from '../model/geometry.ts';
import type { ApplianceHinges, Vehicle } from '../model/library.ts';
import { panelOfUnit } from './names.ts';
import {
  applianceFinding,
  appliancePhrase,
  type StandingAppliance,
  wallsAround,
} from './standingAppliance.ts';

/** How far a door reaches into the room, and the line about which it turns, in the frame of its unit. */
function swingOf(body: Box, hinges: ApplianceHinges): { readonly reachUm: Um; readonly line: Box } {
  const [front] = body.y;
  const across: Axis = hinges === 'left' || hinges === 'right' ? 'x' : 'z';
  const at = hinges === 'left' || hinges === 'bottom' ? body[across][0] : body[across][1];
  const line: Box = { ...body, y: [front, front], [across]: [at, at] };
  return { reachUm: body[across][1] - body[across][0], line };
}

/** Square of the distance from a point to the nearest point of an extent. */
function away2(at: Um, [from, to]: Extent): number {
  const away = at < from ? from - at : at > to ? at - to : 0;
  return away * away;
}

/** Whether a quarter turn of a door of an appliance sweeps through a board of another unit, or a wall. */
export function doorInTheWay(
  each: StandingAppliance,
  panels: readonly Panel[],
  vehicle: Vehicle | undefined,
): Finding[] {
  const { held, unit, appliance, body } = each;
  if (appliance.door === null) return [];
  const { reachUm, line } = swingOf(held.body, appliance.door);
  const [front] = held.body.y;
  const swept = inVehicle({ ...held.body, y: [front - reachUm, front] }, unit);
  const hinge = inVehicle(line, unit);
  const round = (['x', 'y', 'z'] as const).filter((axis) => hinge[axis][0] === hinge[axis][1]);
  const others = [
    ...panels
      .filter((panel) => panel.unit !== unit.name)
      .map((panel) => ({ what: panelOfUnit(panel), box: panel.placeBox })),
    ...(vehicle === undefined ? [] : wallsAround(body, vehicle)),
  ];
  const hit = others.find(({ box }) => {
    const shared = sharedBox(swept, box);
    if (shared === null) return false;
    return round.reduce((sum, axis) => sum + away2(hinge[axis][0], shared[axis]), 0) < reachUm * reachUm;
  });
  if (hit === undefined) return [];
  const message = `the door of ${appliancePhrase(each)} hits ${hit.what} when it opens`;
  const advice = 'move one of them, or take an appliance whose door is hinged on the other side';
  return [applianceFinding('appliance-door', each, message, advice)];
}
