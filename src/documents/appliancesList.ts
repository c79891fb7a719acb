import { extentSize } from '../basics/boxes.ts';
import type { Furniture, PlacedAppliance } from '../model/furniture.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of the appliances that the furniture has room for, one line each, in the order of the units. They are
 * in no price: they are bought by their own offers.
 *
 * | column | holds |
 * |---|---|
 * | appliance, description | id and title in the library |
 * | count | how many, for all vehicles or rooms of the order |
 * | width, depth, height | of its body, mm |
 * | mass | of one, empty, kg; empty where the library does not say |
 * | units | which units hold how many, parted by semicolons, again for all vehicles or rooms |
 */
export const APPLIANCES_COLUMNS = tableColumns({
  appliance: 'text',
  description: 'text',
  count: 'whole',
  width: 'mm',
  depth: 'mm',
  height: 'mm',
  mass: 'kg',
  units: 'text',
});

/** How many of one appliance an order has room for, and where. */
export interface ApplianceNeed {
  readonly held: PlacedAppliance;
  readonly count: number;
  readonly units: readonly { readonly unit: string; readonly count: number }[];
}

/** The appliances of an order, for all that are alike, in the order of the units that hold them. */
export function applianceNeeds(furniture: Furniture): ApplianceNeed[] {
  const needs = new Map<string, { held: PlacedAppliance; units: { unit: string; count: number }[] }>();
  for (const unit of furniture.units) {
    for (const held of unit.appliances ?? []) {
      const need = needs.get(held.appliance) ?? { held, units: [] };
      needs.set(held.appliance, need);
      const last = need.units.at(-1);
      if (last?.unit === unit.name) last.count += furniture.count;
      else need.units.push({ unit: unit.name, count: furniture.count });
    }
  }
  return [...needs.values()].map((need) => ({
    ...need,
    count: need.units.reduce((sum, { count }) => sum + count, 0),
  }));
}

/** The list of appliances of an order. */
export function appliancesList(furniture: Furniture): Table {
  const rows = applianceNeeds(furniture).map(({ held, count, units }) => {
    const mm = (axis: 'x' | 'y' | 'z') => extentSize(held.body[axis]) / 1000;
    return {
      appliance: held.appliance,
      description: held.title,
      count,
      width: mm('x'),
      depth: mm('y'),
      height: mm('z'),
      mass: held.massKg,
      units: units.map((use) => `${use.unit} ${use.count}`).join('; '),
    };
  });
  return tableOf('appliances', APPLIANCES_COLUMNS, rows);
}
