import { recheckBound } from '../basics/recheckBound.ts';
import { makeRectangleProblem } from '../basics/rectangleProblem.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound, Certificate } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import type { StockGroup } from '../model/stock.ts';
import { functionPairs } from './dualFeasibleBound.ts';
import { everySplitBound } from './everySplitBound.ts';
import { patternBound } from './patternBound.ts';

export { everySplitBound } from './everySplitBound.ts';

/** Part of the effort that trying every way to part the pieces may take. */
const PART_FOR_SPLITS = 0.2;

export interface BoundOptions {
  /** A loaded HiGHS for the bound by patterns; null for areas and dual feasible functions only. */
  readonly solver: LinearSolver | null;
  /** Greatest work in steps of about a nanosecond; the result for a given effort is the same on every machine. */
  readonly effort: number;
  /** Cost of a plan that is known, in minor units: the bound stops there, and works harder to reach it. */
  readonly planCost?: number;
  /** Asked now and then: true ends the work with the bound so far. */
  readonly stop?: () => boolean;
  /** A bound by areas and dual feasible functions that is known already; they are then not tried once more. */
  readonly known?: Bound;
  /** Patterns that are known already, for the linear programme to start from. */
  readonly patterns?: readonly SheetPattern[];
  /** Whether trying every way to part the pieces is left out, as when it was tried before. */
  readonly withoutSplits?: boolean;
}

export interface LowerBound {
  readonly bound: Bound;
  /** Patterns that the linear programme used, for the search to start from; empty without a solver. */
  readonly patterns: readonly SheetPattern[];
}

/**
 * A lower bound on the number and cost of sheets for a stock group, with a certificate from which `recheckBound`
 * derives the same figures in whole numbers. In goes the group, a loaded HiGHS if there is one and a limit of work;
 * out come the bound and the sheet patterns met on the way. It holds for every plan of guillotine cuts, kerf, trim,
 * grain, prices and limited sheets included, whatever the saw's rules about turns; and it says nothing about groups
 * that cannot be cut at all.
 */
export function lowerBound(group: StockGroup, options: BoundOptions): LowerBound {
  return lowerBoundOfProblem(makeRectangleProblem(group), options);
}

/** The same for a group that has been taken down to whole numbers already. */
export function lowerBoundOfProblem(problem: RectangleProblem, options: BoundOptions): LowerBound {
  let best = options.known ?? boundFrom(problem, { method: 'area' });
  for (const pair of options.known ? [] : functionPairs(problem, options.effort / 10)) {
    best = better(
      best,
      boundFrom(problem, {
        method: 'dual feasible function',
        function: pair.along.family,
        parameter: pair.along.parameter,
        across: { function: pair.across.family, parameter: pair.across.parameter },
        sheet: pair.sheet,
      }),
    );
  }
  const { planCost, effort, solver } = options;
  // Of a bound that has reached the plan nothing is left to settle: what it asks for is not worked out again.
  if (planCost !== undefined && best.costMinor < planCost && !options.withoutSplits) {
    const settled = everySplitBound(problem, best, planCost, effort * PART_FOR_SPLITS, options.stop);
    if (settled && settled.patterns.length > 0) return settled;
    if (settled) best = better(best, settled.bound);
  }
  const reached = planCost !== undefined && best.costMinor >= planCost;
  if (!solver || reached) return { bound: best, patterns: [] };
  const byPatterns = patternBound(problem, {
    solver,
    known: best,
    planCost: planCost ?? null,
    effort,
    patterns: options.patterns ?? [],
    stop: options.stop ?? (() => false),
  });
  if (!byPatterns) return { bound: best, patterns: [] };
  return { bound: better(best, byPatterns.bound), patterns: byPatterns.patterns };
}

/** The bound by areas alone, which takes no time. */
export function areaBound(group: StockGroup): Bound {
  return boundFrom(makeRectangleProblem(group), { method: 'area' });
}

function boundFrom(problem: RectangleProblem, certificate: Certificate): Bound {
  return { ...recheckBound(problem, certificate), certificate };
}

/** The bound with the greater cost, then with more sheets; the first when they are alike. */
function better(a: Bound, b: Bound): Bound {
  if (b.costMinor !== a.costMinor) return b.costMinor > a.costMinor ? b : a;
  return b.sheets > a.sheets ? b : a;
}
