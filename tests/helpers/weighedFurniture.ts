import type { Furniture, Panel, PlacedAppliance, PlacedUnit } from '../../src/model/furniture.ts';
import type { Box } from '../../src/model/geometry.ts';
import type { Edging, Fitting, Vehicle } from '../../src/model/library.ts';

/** Furniture of boxes whose masses can be added up by hand, in a van of 4 × 2 × 2 m. Lengths in mm. */

export const box = (
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
): Box => ({
  x: [x[0] * 1000, x[1] * 1000],
  y: [y[0] * 1000, y[1] * 1000],
  z: [z[0] * 1000, z[1] * 1000],
});

/** A panel of which only place, mass and edged metres are known; `edgedMm` of the edging `grey-1`. */
export function weighedPanel(name: string, place: Box, massKg: number, edgedMm = 0): Panel {
  const edge = { face: 'front' as const, edging: 'grey-1', lengthUm: edgedMm * 1000 };
  const panel: Partial<Panel> = {
    id: name,
    name,
    placeBox: place,
    massKg,
    edges: edgedMm > 0 ? [edge] : [],
    cutOuts: [],
    count: 1,
  };
  return panel as Panel;
}

export function weighedUnit(
  name: string,
  panels: readonly Panel[],
  fittings: PlacedUnit['fittings'],
  outside: Box,
  more: Partial<PlacedUnit> = {},
): PlacedUnit {
  return {
    name,
    unit: `${name.replaceAll(' ', '-')}-kind`,
    facing: 'left',
    parameters: new Map(),
    outside,
    placeOutside: outside,
    panels,
    fittings,
    ...more,
  };
}

export const boxVan: Vehicle = {
  id: 'box-van',
  title: 'the box van',
  insideLengthUm: 4_000_000,
  insideHeightUm: 2_000_000,
  widthAtHeight: [{ heightUm: 0, widthUm: 2_000_000 }],
  wheelArches: [],
  doors: [],
  overallLengthUm: 5_990_000,
  payloadKg: 400,
};

const fitting = (id: string, massKg: number, priceMinor: number, pack: number): [string, Fitting] => [
  id,
  { id, title: `The ${id}`, massKg, priceMinor, pack },
];

/** Edging of 0.03 kg/m; a hinge of 0.1 kg, ten in a pack; a screw of 0.005 kg, 200 in a pack. */
export const weighedLibrary = {
  currency: 'EUR',
  fittings: new Map([
    fitting('hinge', 0.1, 240, 10),
    fitting('latch', 0.06, 680, 5),
    fitting('screw', 0.005, 5, 200),
  ]),
  edgings: new Map<string, Edging>([
    [
      'grey-1',
      {
        id: 'grey-1',
        title: 'Grey 1 mm',
        finish: 'grey',
        thicknessUm: 1000,
        widthUm: 19_000,
        deducted: true,
        preMillingUm: 0,
        overlengthUm: 70_000,
        massKgPerM: 0.03,
        priceMinorPerM: 55,
        rollM: 75,
      },
    ],
  ]),
};

/**
 * On the left, in the front half, a cupboard of 10 kg board, 2 m of edging and 4 hinges with 20 screws; across the
 * middle line, in the rear half, a bed of 30 kg with 40 screws.
 */
export function weighedFurniture(more: Partial<Furniture> = {}): Furniture {
  const cupboardBox = box([500, 1500], [0, 500], [0, 800]);
  const bedBox = box([2500, 3500], [500, 2000], [600, 700]);
  const cupboard = weighedUnit(
    'cupboard',
    [weighedPanel('side', cupboardBox, 10.06, 2000)],
    [
      { fitting: 'hinge', count: 4 },
      { fitting: 'screw', count: 20 },
    ],
    cupboardBox,
  );
  const bed = weighedUnit(
    'bed',
    [weighedPanel('deck', bedBox, 30)],
    [{ fitting: 'screw', count: 40 }],
    bedBox,
  );
  return { order: 'weighed', count: 1, units: [cupboard, bed], ...more };
}

/** An appliance of a unit whose own frame is the vehicle's. */
export function heldAppliance(name: string, body: Box, massKg: number | null): PlacedAppliance {
  const place = { file: 'unit.yaml', line: 1, column: 1 };
  const air = { in: [], out: [] };
  return { name, appliance: `${name}-kind`, title: `The ${name}`, massKg, body, through: [], air, place };
}

/** As `weighedFurniture`; under the right half of the bed stands a toilet of 3 kg, and a heater that nobody has weighed. */
export function withAppliances(more: Partial<Furniture> = {}): Furniture {
  const [cupboard, bed] = weighedFurniture().units as [PlacedUnit, PlacedUnit];
  const toilet = heldAppliance('toilet', box([3000, 3500], [1000, 2000], [0, 400]), 3);
  const heater = heldAppliance('heater', box([2500, 2800], [600, 700], [0, 100]), null);
  return weighedFurniture({ units: [cupboard, { ...bed, appliances: [toilet, heater] }], ...more });
}
