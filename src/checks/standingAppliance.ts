import { freeAcrossUm, isRoom } from '../basics/vehicleSection.ts';
import type { Finding } from '../model/finding.ts';
import type { PlacedAppliance, PlacedUnit } from '../model/furniture.ts';
import type { Box } from '../model/geometry.ts';
import type { Appliance, Vehicle } from '../model/library.ts';

/** An appliance where it stands in the vehicle. */
export interface StandingAppliance {
  readonly unit: PlacedUnit;
  readonly held: PlacedAppliance;
  readonly appliance: Appliance;
  readonly body: Box;
}

/** As findings name it: `the gas hob of the galley worktop`. */
export function appliancePhrase({ held, unit }: StandingAppliance): string {
  return `the ${held.name} of the ${unit.name}`;
}

export function applianceFinding(
  code: string,
  { held }: StandingAppliance,
  message: string,
  advice: string,
): Finding {
  return { code, severity: 'error', message, place: held.place, advice };
}

/** Walls, ends, floor and roof as boxes around the inside, as they are at the height of a body, wheel arches and obstacles. */
export function wallsAround(body: Box, vehicle: Vehicle): { readonly what: string; readonly box: Box }[] {
  const FAR_UM = 10_000_000;
  const [left, right] = freeAcrossUm(vehicle, body.z[0], body.z[1]);
  const everywhere: Box = { x: [-FAR_UM, FAR_UM], y: [-FAR_UM, FAR_UM], z: [-FAR_UM, FAR_UM] };
  const room = isRoom(vehicle);
  const arches = vehicle.wheelArches.map((arch) => ({ what: `the wheel arch ${arch.name}`, box: arch }));
  const obstacles = (vehicle.obstacles ?? []).map((obstacle) => ({
    what: `the ${obstacle.name}`,
    box: obstacle,
  }));
  return [
    ...arches,
    ...obstacles,
    { what: 'the left wall', box: { ...everywhere, y: [-FAR_UM, left] } },
    { what: 'the right wall', box: { ...everywhere, y: [right, FAR_UM] } },
    { what: room ? 'the front end' : 'the cab end', box: { ...everywhere, x: [-FAR_UM, 0] } },
    { what: 'the rear end', box: { ...everywhere, x: [vehicle.insideLengthUm, FAR_UM] } },
    { what: 'the floor', box: { ...everywhere, z: [-FAR_UM, 0] } },
    {
      what: room ? 'the ceiling' : 'the roof',
      box: { ...everywhere, z: [vehicle.insideHeightUm, FAR_UM] },
    },
  ];
}
