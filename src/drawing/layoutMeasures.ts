import { widthAtUm } from '../basics/vehicleSection.ts';
import type { Furniture, PlacedUnit } from '../model/furniture.ts';
import type { Extent, Um } from '../model/geometry.ts';
import type { Vehicle } from '../model/library.ts';

/** Units that hang over others: they begin above three fifths of the inside height. */
export function hangsAbove(unit: PlacedUnit, vehicle: Vehicle): boolean {
  return 5 * unit.placeOutside.z[0] >= 3 * vehicle.insideHeightUm;
}

/** Units that stand below, by the side of the vehicle that their middle is on; a unit over the whole width is on both. */
export function unitsBySide(furniture: Furniture, vehicle: Vehicle) {
  const widthUm = widthAtUm(vehicle, 0);
  const standing = furniture.units.filter((unit) => !hangsAbove(unit, vehicle));
  const across = (unit: PlacedUnit) => unit.placeOutside.y[1] - unit.placeOutside.y[0] > (widthUm * 7) / 10;
  const left = (unit: PlacedUnit) => unit.placeOutside.y[0] + unit.placeOutside.y[1] < widthUm;
  return {
    left: standing.filter((unit) => across(unit) || left(unit)),
    right: standing.filter((unit) => across(unit) || !left(unit)),
  };
}

/** Lengths of the units along a side, each once, with the gaps between them left open. */
export function lengthsAlong(units: readonly PlacedUnit[]): Extent[] {
  const starts = [...units].sort(
    (a, b) => a.placeOutside.x[0] - b.placeOutside.x[0] || b.placeOutside.x[1] - a.placeOutside.x[1],
  );
  const chain: Extent[] = [];
  // A worktop lies over the units below it; the units say more.
  for (const unit of starts.filter((each) => each.placeOutside.z[0] === 0)) {
    const last = chain.at(-1);
    if (last === undefined || unit.placeOutside.x[0] >= last[1]) chain.push(unit.placeOutside.x);
  }
  return chain;
}

/** Nobody goes through less, so that it is a gap and no way. Common practice, no source. */
const LEAST_WAY_UM = 300_000;

/**
 * The narrowest way between units of the two sides that leave one, with nothing standing in it: where it is along the
 * vehicle, and its extent across.
 */
export function walkway(
  left: readonly PlacedUnit[],
  right: readonly PlacedUnit[],
): { readonly atUm: Um; readonly across: Extent } | null {
  let narrowest: { atUm: Um; across: Extent } | null = null;
  for (const one of left) {
    for (const other of right) {
      const from = Math.max(one.placeOutside.x[0], other.placeOutside.x[0]);
      const to = Math.min(one.placeOutside.x[1], other.placeOutside.x[1]);
      const across: Extent = [one.placeOutside.y[1], other.placeOutside.y[0]];
      const wideUm = across[1] - across[0];
      if (one === other || from >= to || wideUm < LEAST_WAY_UM) continue;
      if (narrowest !== null && wideUm >= narrowest.across[1] - narrowest.across[0]) continue;
      const way = { atUm: (from + to) / 2, across };
      if (![...left, ...right].some((unit) => standsIn(unit, way))) narrowest = way;
    }
  }
  return narrowest;
}

function standsIn({ placeOutside: { x, y } }: PlacedUnit, way: { atUm: Um; across: Extent }): boolean {
  return x[0] < way.atUm && way.atUm < x[1] && y[0] < way.across[1] && way.across[0] < y[1];
}
