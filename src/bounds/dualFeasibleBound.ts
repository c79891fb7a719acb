import {
  type AxisItem,
  type DualFeasibleFunction,
  dualFeasibleFamilies,
  scaledFunction,
} from '../basics/dualFeasible.ts';
import { axisItems, type FunctionPair, mayTurn } from '../basics/pricesFromFunctions.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

/**
 * The kinds that lie on one kind of sheet, those that go only one way before those that may go either; what the values of
 * a function are needed at.
 */
interface Lying {
  /** Side along and side across of each kind, as it may lie. */
  readonly along: Int32Array;
  readonly across: Int32Array;
  readonly count: Float64Array;
  /** Kinds from here on may also lie with their sides exchanged. */
  readonly eitherWay: number;
}

/** A function with its values, as shares of the whole, at both sides of each kind; those of a side too long are no matter. */
interface Scaled {
  readonly rule: DualFeasibleFunction;
  readonly atAlong: Float64Array;
  readonly atAcross: Float64Array;
}

/** Parameters at which a family's values change for the sides given, at most `most` of them, in rising order. */
function parametersOf(
  family: DualFeasibleFunction['family'],
  sides: readonly number[],
  whole: number,
  most: number,
): number[] {
  switch (family) {
    case 'size':
      return [0];
    case 'large and small':
    case 'counting':
      return thinned(
        sides.filter((side) => 2 * side <= whole),
        most,
      );
    case 'steps':
      return Array.from({ length: Math.min(most, 60, whole) }, (_, k) => k + 1);
    case 'halves':
    case 'rounding': {
      const last = family === 'halves' ? Math.floor(whole / 2) : whole;
      if (last <= most) return Array.from({ length: last }, (_, k) => k + 1);
      const found = new Set<number>();
      for (const side of [...sides, whole, ...sides.map((s) => whole - s)]) {
        for (let parts = 1; parts <= 4; parts++) {
          const size = Math.floor(side / parts);
          if (size >= 1 && size <= last) found.add(size);
          if (size + 1 <= last) found.add(size + 1);
        }
      }
      return thinned(
        [...found].sort((a, b) => a - b),
        most,
      );
    }
  }
}

/** At most `most` of the values, evenly picked. */
function thinned(values: readonly number[], most: number): number[] {
  if (values.length <= most) return [...values];
  return Array.from({ length: most }, (_, k) => values[Math.floor((k * values.length) / most)]!);
}

/** The functions worth trying along one axis of a sheet, without those that give the same values. */
function functionsAlong(items: readonly AxisItem[], lying: Lying, whole: number, most: number): Scaled[] {
  const sides = [...new Set([...lying.along, ...lying.across])].sort((a, b) => a - b);
  const fitting = sides.filter((side) => side <= whole);
  const placeOf = new Map(sides.map((side, place) => [side, place]));
  const places = (of: Int32Array) => Int32Array.from(of, (side) => placeOf.get(side)!);
  const [alongPlaces, acrossPlaces] = [places(lying.along), places(lying.across)];
  const found: Scaled[] = [];
  const alike = new Map<number, Float64Array[]>();
  for (const family of dualFeasibleFamilies) {
    for (const parameter of parametersOf(family, fitting, whole, most)) {
      const rule = { family, parameter };
      const scaled = scaledFunction(rule, whole, items);
      if (!scaled) continue;
      const shares = new Float64Array(sides.length);
      for (let k = 0; k < fitting.length; k++) shares[k] = scaled.value(fitting[k]!) / scaled.full;
      if (!isNew(shares, alike)) continue;
      found.push({
        rule,
        atAlong: Float64Array.from(alongPlaces, (place) => shares[place]!),
        atAcross: Float64Array.from(acrossPlaces, (place) => shares[place]!),
      });
    }
  }
  return found;
}

/** Whether no function had the same values before; `alike` keeps them by a sum that tells most of them apart. */
function isNew(shares: Float64Array, alike: Map<number, Float64Array[]>): boolean {
  let sum = 0;
  for (let k = 0; k < shares.length; k++) sum += (k + 1) * shares[k]!;
  const others = alike.get(sum);
  if (others?.some((other) => other.every((share, k) => share === shares[k]!))) return false;
  if (others) others.push(shares);
  else alike.set(sum, [shares]);
  return true;
}

/** Steps that the search for a pair of functions may take, and so how finely functions are tried. */
function mostPerFamily(effort: number, items: number, sheets: number): number {
  const pairs = effort / Math.max(1, items * sheets);
  return Math.max(4, Math.min(150, Math.floor(Math.sqrt(pairs) / 3)));
}

/**
 * For each kind of sheet, the pair of dual feasible functions (one along the grain, one across) under which the items
 * fill the most sheets of that kind. A turnable item counts by the lesser of its two ways, which is valid whichever way
 * it is laid. `effort` limits the work, in steps. What the pairs prove is for `recheckBound` to say.
 */
export function functionPairs(problem: RectangleProblem, effort: number): FunctionPair[] {
  const most = mostPerFamily(effort, problem.items.kinds, problem.sheets.length);
  const pairs: FunctionPair[] = [];
  for (const [s, sheet] of problem.sheets.entries()) {
    const lying = lyingOn(problem, s);
    const along = functionsAlong(axisItems(problem, sheet, 'w'), lying, sheet.w, most);
    const across = functionsAlong(axisItems(problem, sheet, 'h'), lying, sheet.h, most);
    let best: { total: number; pair: FunctionPair } | null = null;
    for (const u of along) {
      const weighed = {
        ...u,
        atAlong: times(u.atAlong, lying.count),
        atAcross: times(u.atAcross, lying.count),
      };
      for (const v of across) {
        const total = filled(weighed, v, lying.eitherWay);
        // Plainer functions come first and are kept unless another gives more than the last bits of a sum.
        if (!best || total > best.total * (1 + 1e-12)) {
          best = { total, pair: { along: u.rule, across: v.rule, sheet: s } };
        }
      }
    }
    if (best) pairs.push(best.pair);
  }
  return pairs;
}

/** How the kinds lie on a kind of sheet; those that do not fit it are left out. */
function lyingOn(problem: RectangleProblem, s: number): Lying {
  const { kinds, w, h, count } = problem.items;
  const sheet = problem.sheets[s]!;
  const oneWay: [number, number, number][] = [];
  const eitherWay: [number, number, number][] = [];
  for (let i = 0; i < kinds; i++) {
    const [width, height, copies] = [w[i]!, h[i]!, count[i]!];
    const straight = width <= sheet.w && height <= sheet.h;
    const turned = width !== height && height <= sheet.w && width <= sheet.h && mayTurn(problem, i, sheet);
    if (straight && turned) eitherWay.push([width, height, copies]);
    else if (straight) oneWay.push([width, height, copies]);
    else if (turned) oneWay.push([height, width, copies]);
  }
  const all = [...oneWay, ...eitherWay];
  return {
    along: Int32Array.from(all, ([side]) => side),
    across: Int32Array.from(all, ([, side]) => side),
    count: Float64Array.from(all, ([, , copies]) => copies),
    eitherWay: oneWay.length,
  };
}

function times(values: Float64Array, counts: Float64Array): Float64Array {
  return values.map((value, i) => value * counts[i]!);
}

/** How many sheets the items fill under a function whose values are already those of all copies, and another across it. */
function filled(u: Scaled, v: Scaled, eitherWay: number): number {
  const { atAlong: uAlong, atAcross: uAcross } = u;
  const { atAlong: vAlong, atAcross: vAcross } = v;
  let total = 0;
  for (let i = 0; i < eitherWay; i++) total += uAlong[i]! * vAcross[i]!;
  for (let i = eitherWay; i < uAlong.length; i++) {
    const straight = uAlong[i]! * vAcross[i]!;
    const turned = uAcross[i]! * vAlong[i]!;
    total += Math.min(straight, turned);
  }
  return total;
}
