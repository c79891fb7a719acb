import {
  type FurnitureMass,
  furnitureMass,
  type MassLibrary,
  type MassShares,
} from '../basics/furnitureMass.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Vehicle } from '../model/library.ts';
import { type RowOf, type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of masses, one line a unit of one vehicle or room, with the appliances that it holds. Cushions and
 * what is loaded are not in it.
 *
 * | column | holds |
 * |---|---|
 * | unit, kind | as placed in the layout, and the id of its definition |
 * | total | kg; the sum of the next four |
 * | boards, edging, fittings, appliances | kg; of appliances those whose entry in the library has a mass |
 * | left, right | kg on each side of the middle line; their sum is the total |
 * | front, rear | kg ahead of and behind the middle of the inside length; their sum is the total |
 * | centre x, centre y, centre z | centre of mass, mm from the front end, from the left edge of the floor, and above it |
 */
export const MASS_BY_UNIT_COLUMNS = tableColumns({
  unit: 'text',
  kind: 'text',
  total: 'kg',
  boards: 'kg',
  edging: 'kg',
  fittings: 'kg',
  appliances: 'kg',
  left: 'kg',
  right: 'kg',
  front: 'kg',
  rear: 'kg',
  'centre x': 'mm',
  'centre y': 'mm',
  'centre z': 'mm',
});

type MassCells = Omit<RowOf<typeof MASS_BY_UNIT_COLUMNS>, 'unit' | 'kind'>;

function cellsOf(mass: MassShares): MassCells {
  const centreMm = (axis: 'x' | 'y' | 'z') => (mass.centreUm === null ? null : mass.centreUm[axis] / 1000);
  return {
    total: mass.totalKg,
    boards: mass.boardsKg,
    edging: mass.edgingKg,
    fittings: mass.fittingsKg,
    appliances: mass.appliancesKg,
    left: mass.leftKg,
    right: mass.rightKg,
    front: mass.frontKg,
    rear: mass.rearKg,
    'centre x': centreMm('x'),
    'centre y': centreMm('y'),
    'centre z': centreMm('z'),
  };
}

/** The masses of the units of an order, without a line for their sum: a program adds a column up. */
export function massByUnit(furniture: Furniture, vehicle: Vehicle, library: MassLibrary): Table {
  const mass: FurnitureMass = furnitureMass(furniture, vehicle, library);
  const rows = furniture.units.map((unit, index) => ({
    unit: unit.name,
    kind: unit.unit,
    ...cellsOf(mass.perUnit[index]!),
  }));
  return tableOf('mass-by-unit', MASS_BY_UNIT_COLUMNS, rows);
}
