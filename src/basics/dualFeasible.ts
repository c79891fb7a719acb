/**
 * Dual feasible functions: u with u(x₁) + … + u(xₙ) ≤ u(whole) whenever x₁ + … + xₙ ≤ whole. Applied to both sides of
 * rectangles they keep every packing a packing (S. P. Fekete and J. Schepers, A general framework for bounds for
 * higher-dimensional orthogonal packing problems, Mathematical Methods of Operations Research 60 (2004) 311–329), so
 * that u(w)·v(h) is a price and u(W)·v(H) the most that a sheet can hold. All are scaled to whole numbers.
 */
export const dualFeasibleFamilies = ['size', 'large and small', 'steps', 'halves', 'rounding'] as const;

export type DualFeasibleFamily = (typeof dualFeasibleFamilies)[number];

export interface DualFeasibleFunction {
  readonly family: DualFeasibleFamily;
  /** A whole number; its meaning depends on the family. */
  readonly parameter: number;
}

/** Parameters for which the function below is dual feasible on sizes from 0 to `whole`. */
export function isDualFeasible({ family, parameter }: DualFeasibleFunction, whole: number): boolean {
  if (!Number.isSafeInteger(parameter) || whole < 1) return false;
  switch (family) {
    case 'size':
      return true;
    case 'large and small':
      return parameter >= 1 && 2 * parameter <= whole;
    case 'steps':
      return parameter >= 1 && parameter <= 1000;
    case 'halves':
      return parameter >= 1 && 2 * parameter <= whole;
    case 'rounding':
      return parameter >= 1 && parameter <= whole;
  }
}

/**
 * Value of a dual feasible function at `x`, 0 ≤ x ≤ `whole`; a whole number.
 *
 * - size: x itself.
 * - large and small: U^(ε) of Fekete and Schepers: nothing below ε, the whole above whole − ε.
 * - steps: u^(k) of Fekete and Schepers, times k·whole: (k + 1)·x/whole rounded down to whole steps, kept where it is one.
 * - halves: f₂ of J. Carlier, F. Clautiaux and A. Moukrim, New reduction procedures and lower bounds for the
 *   two-dimensional bin packing problem with fixed orientation, Computers & Operations Research 34 (2007) 2223–2250.
 * - rounding: f_BJ,1 after C. A. Burdett and E. L. Johnson, as in F. Clautiaux, C. Alves and J. Valério de Carvalho,
 *   A survey of dual-feasible and superadditive functions, Annals of Operations Research 179 (2010) 317–342, with the
 *   sizes divided by g and the result multiplied by g − (whole mod g).
 */
export function dualFeasibleValue(
  { family, parameter }: DualFeasibleFunction,
  x: number,
  whole: number,
): number {
  switch (family) {
    case 'size':
      return x;
    case 'large and small':
      return x < parameter ? 0 : x > whole - parameter ? whole : x;
    case 'steps': {
      const scaled = (parameter + 1) * x;
      return scaled % whole === 0 ? x * parameter : Math.floor(scaled / whole) * whole;
    }
    case 'halves': {
      if (2 * x < whole) return 2 * Math.floor(x / parameter);
      const full = Math.floor(whole / parameter);
      return 2 * x === whole ? full : 2 * (full - Math.floor((whole - x) / parameter));
    }
    case 'rounding': {
      const rest = whole % parameter;
      return (parameter - rest) * Math.floor(x / parameter) + Math.max(0, (x % parameter) - rest);
    }
  }
}
