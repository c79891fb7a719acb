import { sharedUm } from '../basics/boxes.ts';
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

/** Gaps thinner than a board are not measured. */
const LEAST_GAP_UM = 20_000;

/** A chain with the gaps between its extents, and from it to both ends of what holds them. */
export function withGaps(chain: readonly Extent[], [start, end]: Extent): Extent[] {
  if (chain.length === 0) return [];
  const gaps = [...chain.map(([from]) => from), end].map(
    (to, index): Extent => [chain[index - 1]?.[1] ?? start, to],
  );
  return [...chain, ...gaps.filter(([from, to]) => to - from >= LEAST_GAP_UM)].sort((a, b) => a[0] - b[0]);
}

function sharedAreaUm2(one: PlacedUnit, other: PlacedUnit): number {
  const share = (axis: 'x' | 'y') => Math.max(0, sharedUm(one.placeOutside[axis], other.placeOutside[axis]));
  return share('x') * share('y');
}

/**
 * Heights over the floor that units along a wall are set out by, rising, each once, the inside height last: the tops of all
 * units that are not covered by another, as cupboards are by a worktop, and the undersides of those that stand neither on the
 * floor nor on a unit.
 */
export function heightsOf(units: readonly PlacedUnit[], vehicle: Vehicle): Um[] {
  const covered = (unit: PlacedUnit) =>
    units.some(
      (other) =>
        other.placeOutside.z[0] === unit.placeOutside.z[1] &&
        2 * sharedAreaUm2(unit, other) > sharedAreaUm2(unit, unit),
    );
  const lies = (unit: PlacedUnit) =>
    unit.placeOutside.z[0] === 0 ||
    units.some(
      (other) => other.placeOutside.z[1] === unit.placeOutside.z[0] && sharedAreaUm2(unit, other) > 0,
    );
  const heights = units.flatMap((unit) => [
    ...(lies(unit) ? [] : [unit.placeOutside.z[0]]),
    ...(covered(unit) ? [] : [unit.placeOutside.z[1]]),
  ]);
  return [...new Set([...heights, vehicle.insideHeightUm])].sort((a, b) => a - b);
}

/** Nobody goes through less, so that it is a gap and no way. Common practice, no source. */
const LEAST_WAY_UM = 300_000;

/**
 * The narrowest way between units of the two sides, or between a unit and the wall across from it, that leave one, with
 * nothing standing in it: where it is along the vehicle, and its extent across. `floor` is the floor from wall to wall.
 */
export function walkway(
  left: readonly PlacedUnit[],
  right: readonly PlacedUnit[],
  floor: Extent,
): { readonly atUm: Um; readonly across: Extent } | null {
  let narrowest: { atUm: Um; across: Extent } | null = null;
  const consider = (x: Extent, across: Extent) => {
    const wideUm = across[1] - across[0];
    if (x[0] >= x[1] || wideUm < LEAST_WAY_UM) return;
    if (narrowest !== null && wideUm >= narrowest.across[1] - narrowest.across[0]) return;
    const way = { atUm: (x[0] + x[1]) / 2, across };
    if (![...left, ...right].some((unit) => standsIn(unit, way))) narrowest = way;
  };
  for (const { placeOutside: one } of left) {
    for (const { placeOutside: other } of right) {
      const x: Extent = [Math.max(one.x[0], other.x[0]), Math.min(one.x[1], other.x[1])];
      if (one !== other) consider(x, [one.y[1], other.y[0]]);
    }
  }
  for (const { placeOutside: one } of left) consider(one.x, [one.y[1], floor[1]]);
  for (const { placeOutside: other } of right) consider(other.x, [floor[0], other.y[0]]);
  return narrowest;
}

function standsIn({ placeOutside: { x, y } }: PlacedUnit, way: { atUm: Um; across: Extent }): boolean {
  return x[0] < way.atUm && way.atUm < x[1] && y[0] < way.across[1] && way.across[0] < y[1];
}
