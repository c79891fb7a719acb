import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of fittings, one line a fitting, in the order of the library's file.
 *
 * | column | holds |
 * |---|---|
 * | fitting, description | id and title |
 * | count | how many, for all vehicles or rooms of the order |
 * | pack | how many come in a pack |
 * | packs | whole packs that hold the count |
 * | price each, price | of one piece, and of the whole packs, in the currency |
 * | currency | ISO 4217 |
 * | mass | of the count, kg; what is left in the packs does not count |
 * | units | which units take how many, parted by semicolons, again for all vehicles or rooms |
 */
export const FITTINGS_COLUMNS = tableColumns({
  fitting: 'text',
  description: 'text',
  count: 'whole',
  pack: 'whole',
  packs: 'whole',
  'price each': 'money',
  price: 'money',
  currency: 'text',
  mass: 'kg',
  units: 'text',
});

/** How many of one fitting an order takes, and where. */
export interface FittingNeed {
  readonly fitting: string;
  readonly count: number;
  /** Whole packs, at least one. */
  readonly packs: number;
  /** Of the whole packs. */
  readonly priceMinor: number;
  readonly massKg: number;
  readonly units: readonly { readonly unit: string; readonly count: number }[];
}

/**
 * Fittings that an order takes, for all that are alike, in the order of the library. Throws for a fitting that the
 * library does not have: reading the library finds it.
 */
export function fittingNeeds(furniture: Furniture, library: Pick<Library, 'fittings'>): FittingNeed[] {
  const uses = new Map<string, { unit: string; count: number }[]>();
  for (const unit of furniture.units) {
    for (const { fitting, count } of unit.fittings) {
      if (!library.fittings.has(fitting)) throw new Error(`the library has no fitting ${fitting}`);
      const own = uses.get(fitting) ?? [];
      own.push({ unit: unit.name, count: count * furniture.count });
      uses.set(fitting, own);
    }
  }
  return [...library.fittings.values()].flatMap((fitting) => {
    const units = uses.get(fitting.id);
    if (units === undefined) return [];
    const count = units.reduce((sum, use) => sum + use.count, 0);
    const packs = Math.ceil(count / fitting.pack);
    const priceMinor = packs * fitting.pack * fitting.priceMinor;
    return [{ fitting: fitting.id, count, packs, priceMinor, massKg: count * fitting.massKg, units }];
  });
}

/** The list of fittings of an order. */
export function fittingsList(furniture: Furniture, library: Pick<Library, 'fittings' | 'currency'>): Table {
  const rows = fittingNeeds(furniture, library).map((need) => {
    const { title, pack, priceMinor } = library.fittings.get(need.fitting)!;
    return {
      fitting: need.fitting,
      description: title,
      count: need.count,
      pack,
      packs: need.packs,
      'price each': priceMinor / 100,
      price: need.priceMinor / 100,
      currency: library.currency,
      mass: need.massKg,
      units: need.units.map(({ unit, count }) => `${unit} ${count}`).join('; '),
    };
  });
  return tableOf('fittings', FITTINGS_COLUMNS, rows);
}
