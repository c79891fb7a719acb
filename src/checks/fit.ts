import { leastMove, sharedBox } from '../basics/boxes.ts';
import { printMmShort } from '../basics/lengths.ts';
import { freeAcrossUm, isRoom } from '../basics/vehicleSection.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Obstacle, Vehicle } from '../model/library.ts';
import { mm, panelOfUnit, unitFinding } from './names.ts';
import { outlineThroughWalls } from './outlineFit.ts';

/**
 * Whether the units fit beside each other and into the vehicle or room. Units are kept apart by their outside boxes; the body, its
 * wheel arches, door openings and other obstacles are held against each panel, since a unit may well reach over a wheel arch. Of a
 * panel that follows the wall only its outline must lie within the body.
 */
export function checkFit(furniture: Furniture, vehicle: Vehicle): Finding[] {
  return [
    ...unitsThroughEachOther(furniture),
    ...furniture.units.flatMap((unit) => [
      ...throughBody(unit, vehicle),
      ...vehicle.wheelArches.flatMap((arch) => {
        return throughObstacle(unit, arch, 'in-wheel-arch', `wheel arch ${arch.name}`);
      }),
      ...vehicle.doors.flatMap((door) => {
        return throughObstacle(unit, door, 'in-door-opening', `opening of the ${door.name}`);
      }),
      ...(vehicle.obstacles ?? []).flatMap((each) => throughObstacle(unit, each, 'in-obstacle', each.name)),
    ]),
  ];
}

function unitsThroughEachOther(furniture: Furniture): Finding[] {
  return furniture.units.flatMap((a, index) =>
    furniture.units.slice(index + 1).flatMap((b) => {
      if (sharedBox(a.placeOutside, b.placeOutside) === null) return [];
      const { um } = leastMove(a.placeOutside, b.placeOutside);
      const message = `the ${b.name} goes ${mm(um)} into the ${a.name}`;
      return [unitFinding('units-clash', b, message, 'move one of them, or make one of them smaller')];
    }),
  );
}

/** How far a panel stands through each side of the body, in µm; 0 or less where it does not. */
function throughSides(
  panel: Panel,
  unit: PlacedUnit,
  vehicle: Vehicle,
): readonly { readonly side: string; readonly overUm: Um }[] {
  const { x, y, z } = panel.placeBox;
  const [left, right] = freeAcrossUm(vehicle, z[0], z[1]);
  const walls =
    panel.outline === undefined
      ? { leftUm: left - y[0], rightUm: y[1] - right }
      : outlineThroughWalls(panel, unit, vehicle);
  const room = isRoom(vehicle);
  return [
    { side: room ? 'the front end' : 'the cab end', overUm: -x[0] },
    { side: 'the rear end', overUm: x[1] - vehicle.insideLengthUm },
    { side: 'the left wall', overUm: walls.leftUm },
    { side: 'the right wall', overUm: walls.rightUm },
    { side: 'the floor', overUm: -z[0] },
    { side: room ? 'the ceiling' : 'the roof', overUm: z[1] - vehicle.insideHeightUm },
  ];
}

/** The panel that stands furthest through each side; one finding a side, not one a panel. */
function throughBody(unit: PlacedUnit, vehicle: Vehicle): Finding[] {
  const worst = new Map<string, { panel: Panel; overUm: Um }>();
  for (const panel of unit.panels) {
    for (const { side, overUm } of throughSides(panel, unit, vehicle)) {
      if (overUm > (worst.get(side)?.overUm ?? 0)) worst.set(side, { panel, overUm });
    }
  }
  return [...worst].map(([side, { panel, overUm }]) => {
    const [from, to] = panel.placeBox.z;
    const where = side.endsWith('wall')
      ? `, between ${printMmShort(from)} and ${printMmShort(to)} mm above the floor`
      : '';
    const message = `${panelOfUnit(panel)} stands ${mm(overUm)} through ${side}${where}`;
    return unitFinding('through-body', unit, message, `move the ${unit.name}, or make it smaller`);
  });
}

function throughObstacle(unit: PlacedUnit, obstacle: Obstacle, code: string, what: string): Finding[] {
  let worst: { panel: Panel; overUm: Um } | null = null;
  for (const panel of unit.panels) {
    if (sharedBox(panel.placeBox, obstacle) === null) continue;
    const overUm = leastMove(panel.placeBox, obstacle).um;
    if (worst === null || overUm > worst.overUm) worst = { panel, overUm };
  }
  if (worst === null) return [];
  const message = `${panelOfUnit(worst.panel)} goes ${mm(worst.overUm)} into the ${what}`;
  return [unitFinding(code, unit, message, `move the ${unit.name}, or make it smaller`)];
}
