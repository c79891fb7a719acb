import type { Furniture, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Library, Vehicle } from '../model/library.ts';
import { inVehicle } from './boxes.ts';
import { boxShape, type MassShape, panelShape } from './massShape.ts';
import { widthAtUm } from './vehicleSection.ts';

/** What something weighs, of what, and where: furniture and the appliances whose mass is known, without loads. */
export interface MassShares {
  readonly totalKg: number;
  readonly boardsKg: number;
  readonly edgingKg: number;
  readonly fittingsKg: number;
  /** Of those whose entry in the library says what they weigh. */
  readonly appliancesKg: number;
  readonly leftKg: number;
  readonly rightKg: number;
  /** Ahead of and behind the middle of the inside length. */
  readonly frontKg: number;
  readonly rearKg: number;
  /** Centre of mass in the vehicle's frame; null when nothing weighs anything. */
  readonly centreUm: { readonly x: Um; readonly y: Um; readonly z: Um } | null;
}

export interface UnitMass extends MassShares {
  /** As placed: `galley sink`. */
  readonly unit: string;
}

/** What the furniture of one vehicle or room weighs with its appliances, together and unit by unit in the order of its units. */
export interface FurnitureMass extends MassShares {
  readonly perUnit: readonly UnitMass[];
}

/** What masses are looked up in. */
export type MassLibrary = Pick<Library, 'edgings' | 'fittings'>;

interface Lump {
  readonly shape: MassShape;
  readonly boardKg: number;
  readonly edgingKg: number;
  readonly fittingsKg: number;
  readonly appliancesKg: number;
}

const NOTHING = { boardKg: 0, edgingKg: 0, fittingsKg: 0, appliancesKg: 0 } as const;

const UM_PER_M = 1_000_000;

/** Mass of one panel's edging in kg. */
function edgingKgOf(panel: Panel, edgings: MassLibrary['edgings']): number {
  return panel.edges.reduce(
    (sum, { edging, lengthUm }) =>
      edging === null ? sum : sum + (lengthUm / UM_PER_M) * (edgings.get(edging)?.massKgPerM ?? 0),
    0,
  );
}

/** Mass of one unit's fittings in kg. */
export function fittingsKgOf(unit: Pick<PlacedUnit, 'fittings'>, fittings: MassLibrary['fittings']): number {
  return unit.fittings.reduce(
    (sum, { fitting, count }) => sum + count * (fittings.get(fitting)?.massKg ?? 0),
    0,
  );
}

/** Each panel's mass spread evenly over its board, each unit's fittings over its outside box, an appliance's over its body. */
function lumpsOf(unit: PlacedUnit, library: MassLibrary): Lump[] {
  const panels = unit.panels.map((panel): Lump => {
    const edgingKg = edgingKgOf(panel, library.edgings);
    return { ...NOTHING, shape: panelShape(panel, unit), boardKg: panel.massKg - edgingKg, edgingKg };
  });
  const fittingsKg = fittingsKgOf(unit, library.fittings);
  const appliances = (unit.appliances ?? []).flatMap(({ body, massKg }): Lump[] => {
    const place = inVehicle(body, unit);
    return massKg === null ? [] : [{ ...NOTHING, shape: boxShape(place), appliancesKg: massKg }];
  });
  return [...panels, { ...NOTHING, shape: boxShape(unit.placeOutside), fittingsKg }, ...appliances];
}

function sharesOf(lumps: readonly Lump[], vehicle: Vehicle): MassShares {
  const massKg = (lump: Lump) => lump.boardKg + lump.edgingKg + lump.fittingsKg + lump.appliancesKg;
  const sum = (of: (lump: Lump) => number) => lumps.reduce((total, lump) => total + of(lump), 0);
  const totalKg = sum(massKg);
  const below = (axis: 'x' | 'y', lineUm: Um) =>
    sum((lump) => massKg(lump) * lump.shape.shareBelow(axis, lineUm));
  const leftKg = below('y', widthAtUm(vehicle, 0) / 2);
  const frontKg = below('x', vehicle.insideLengthUm / 2);
  const centre = (axis: 'x' | 'y' | 'z') =>
    Math.round(sum((lump) => massKg(lump) * lump.shape.centre(axis)) / totalKg);
  return {
    totalKg,
    boardsKg: sum(({ boardKg }) => boardKg),
    edgingKg: sum(({ edgingKg }) => edgingKg),
    fittingsKg: sum(({ fittingsKg }) => fittingsKg),
    appliancesKg: sum(({ appliancesKg }) => appliancesKg),
    leftKg,
    rightKg: totalKg - leftKg,
    frontKg,
    rearKg: totalKg - frontKg,
    centreUm: totalKg > 0 ? { x: centre('x'), y: centre('y'), z: centre('z') } : null,
  };
}

/** What of a mass are boards, edging and fittings, and what appliances. */
export function furnitureAndAppliances({ totalKg, appliancesKg }: MassShares) {
  return { furnitureKg: totalKg - appliancesKg, appliancesKg };
}

/** The furniture of one vehicle or room, weighed: left and right of its middle line, ahead of and behind its middle. */
export function furnitureMass(furniture: Furniture, vehicle: Vehicle, library: MassLibrary): FurnitureMass {
  const lumps = furniture.units.map((unit) => ({ unit: unit.name, lumps: lumpsOf(unit, library) }));
  const all = lumps.flatMap((unit) => unit.lumps);
  return {
    ...sharesOf(all, vehicle),
    perUnit: lumps.map((unit) => ({ unit: unit.unit, ...sharesOf(unit.lumps, vehicle) })),
  };
}
