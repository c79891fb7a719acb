/**
 * Dual feasible functions: u with u(x₁) + … + u(xₙ) ≤ u(whole) whenever x₁ + … + xₙ ≤ whole. Applied to both sides of
 * rectangles they keep every packing a packing (S. P. Fekete and J. Schepers, A general framework for bounds for
 * higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research 60 (2004) 311–329), so
 * that u(w)·v(h) is a price and u(W)·v(H) the most that a sheet can hold. All are scaled to whole numbers.
 */
export const dualFeasibleFamilies = [
  'size',
  'large and small',
  'steps',
  'halves',
  'rounding',
  'counting',
] as const;

export type DualFeasibleFamily = (typeof dualFeasibleFamilies)[number];

export interface DualFeasibleFunction {
  readonly family: DualFeasibleFamily;
  /** A whole number; its meaning depends on the family. */
  readonly parameter: number;
}

/** The sides that an item may lay along an axis of a sheet, and how many of the item are wanted. */
export interface AxisItem {
  readonly sides: readonly number[];
  readonly count: number;
}

/** A dual feasible function on sizes from 0 to `whole`, both included; whole numbers. */
export interface ScaledFunction {
  readonly value: (x: number) => number;
  /** Its value at `whole`, at least 1. */
  readonly full: number;
}

/**
 * The function on sizes from 0 to `whole`; null when the parameter does not suit.
 *
 * - size: x itself.
 * - large and small: U^(ε) of Fekete and Schepers: nothing below ε, the whole above whole − ε.
 * - steps: u^(k) of Fekete and Schepers, times k·whole: (k + 1)·x/whole rounded down to whole steps, kept where it is one.
 * - halves: f₂ of J. Carlier, F. Clautiaux and A. Moukrim, New reduction procedures and lower bounds for the
 *   two-dimensional bin packing problem with fixed orientation, Computers & Operations Research 34 (2007) 2223–2250.
 * - rounding: f_BJ,1 after C. A. Burdett and E. L. Johnson, as in F. Clautiaux, C. Alves and J. Valério de Carvalho,
 *   A survey of dual-feasible and superadditive functions, Annals of Operations Research 179 (2010) 317–342, with the
 *   sizes divided by g and the result multiplied by g − (whole mod g).
 * - counting: f₁ of Carlier, Clautiaux and Moukrim, which looks at the items: one for each side from k to half of the
 *   whole, and for a longer one as many as it takes the place of. An item that may lie in two ways is counted by the
 *   shorter of its sides in that range, so the counts hold however it lies.
 */
export function scaledFunction(
  { family, parameter }: DualFeasibleFunction,
  whole: number,
  items: readonly AxisItem[],
): ScaledFunction | null {
  if (!Number.isSafeInteger(parameter) || whole < 1) return null;
  if (family !== 'size' && (parameter < 1 || parameter > whole)) return null;
  const scaled = (value: (x: number) => number): ScaledFunction | null => {
    const full = value(whole);
    return full >= 1 ? { value, full } : null;
  };
  switch (family) {
    case 'size':
      return scaled((x) => x);
    case 'large and small':
      if (2 * parameter > whole) return null;
      return scaled((x) => (x < parameter ? 0 : x > whole - parameter ? whole : x));
    case 'steps':
      return scaled((x) => {
        const steps = (parameter + 1) * x;
        return steps % whole === 0 ? x * parameter : Math.floor(steps / whole) * whole;
      });
    case 'halves':
      if (2 * parameter > whole) return null;
      return scaled((x) => halves(x, parameter, whole));
    case 'rounding': {
      const rest = whole % parameter;
      return scaled(
        (x) => (parameter - rest) * Math.floor(x / parameter) + Math.max(0, (x % parameter) - rest),
      );
    }
    case 'counting': {
      if (2 * parameter > whole) return null;
      const fits = mostThatFit(parameter, whole, items);
      const most = fits(whole);
      return scaled((x) => (2 * x > whole ? most - fits(whole - x) : x >= parameter ? 1 : 0));
    }
  }
}

function halves(x: number, parameter: number, whole: number): number {
  if (2 * x < whole) return 2 * Math.floor(x / parameter);
  const full = Math.floor(whole / parameter);
  return 2 * x === whole ? full : 2 * (full - Math.floor((whole - x) / parameter));
}

/** How many sides from `least` to half of `whole` fit a length at most, one for each piece wanted. */
function mostThatFit(least: number, whole: number, items: readonly AxisItem[]): (length: number) => number {
  const sides: number[] = [];
  for (const { sides: choices, count } of items) {
    const side = Math.min(...choices.filter((choice) => choice >= least && 2 * choice <= whole));
    if (!Number.isFinite(side)) continue;
    for (let copy = 0; copy < Math.min(count, Math.floor(whole / side)); copy++) sides.push(side);
  }
  sides.sort((a, b) => a - b);
  const ends: number[] = [];
  let end = 0;
  for (const side of sides) {
    end += side;
    if (end > whole) break;
    ends.push(end);
  }
  return (length) => {
    let fitting = 0;
    while (fitting < ends.length && ends[fitting]! <= length) fitting++;
    return fitting;
  };
}
