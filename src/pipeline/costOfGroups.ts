import { areaBound, lowerBound } from '../bounds/index.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Nest, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import { groupContent } from './groupContent.ts';
import { nestInParts } from './nestGroup.ts';

/** Steps that the bounds may take which come before a nesting: without a solver, and with it. */
const QUICK_EFFORT = 30_000_000;
const PATTERN_EFFORT = 50_000_000;

export interface SearchLimits {
  /** 32-bit unsigned. */
  readonly seed: number;
  /** Moves for each stock group. */
  readonly workLimit: number;
  /** Told the number of nestings so far before each. */
  readonly progress?: (nestings: number) => void;
}

/** What is known of a group without a plan, and its plan once there is one. */
interface Known {
  leastMinor: number;
  /** How much was spent on the bound. */
  bounded: 'area' | 'quick' | 'patterns';
  /** Undefined before the group was nested. */
  outcome?: NestOutcome;
}

/**
 * Costs of stock groups, bound first: a group is nested only where the bound does not settle the question, and none twice.
 * A nest is the one that `plywright cut` finds with the same seed and work limit.
 */
export class CostOfGroups {
  private readonly known = new Map<string, Known>();
  private readonly solver: LinearSolver | null;
  private readonly limits: SearchLimits;
  nestings = 0;
  ruledOut = 0;

  constructor(solver: LinearSolver | null, limits: SearchLimits) {
    this.solver = solver;
    this.limits = limits;
  }

  private of(group: StockGroup): Known {
    const key = groupContent(group);
    let known = this.known.get(key);
    if (known === undefined) {
      known = { leastMinor: areaBound(group).costMinor, bounded: 'area' };
      this.known.set(key, known);
    }
    return known;
  }

  /** The group's plan, or what kept it from being nested. */
  outcome(group: StockGroup): NestOutcome {
    const known = this.of(group);
    if (known.outcome === undefined) {
      this.limits.progress?.(this.nestings);
      this.nestings++;
      const { seed, workLimit } = this.limits;
      known.outcome = nestInParts(group, this.solver, { seed, workLimit });
    }
    return known.outcome;
  }

  /** The group's plan; null when it cannot be nested, as where sheets run out. */
  nest(group: StockGroup): Nest | null {
    const outcome = this.outcome(group);
    return outcome.ok ? outcome.nest : null;
  }

  private cost({ outcome, leastMinor }: Known): number {
    if (outcome === undefined) return leastMinor;
    return outcome.ok ? outcome.nest.costMinor : Number.POSITIVE_INFINITY;
  }

  /** Plans of all groups that cost less than `below` together; null where the bound or the plans found say no. */
  plansBelow(groups: readonly StockGroup[], below: number): Nest[] | null {
    const all = groups.map((group) => this.of(group));
    const total = () => all.reduce((sum, known) => sum + this.cost(known), 0);
    const open = () => groups.filter((_, index) => all[index]!.outcome === undefined);
    const toNest = open().length;
    if (this.bound(groups, all, below, total)) {
      if (toNest > 0) this.ruledOut++;
      return null;
    }
    // Small groups are done soonest, and may answer already.
    const pieces = (group: StockGroup) => group.demands.reduce((sum, { count }) => sum + count, 0);
    for (const group of open().sort((a, b) => pieces(a) - pieces(b))) {
      this.nest(group);
      if (total() >= below) return null;
    }
    return all.flatMap(({ outcome }) => (outcome?.ok ? [outcome.nest] : []));
  }

  /** True when the bounds reach `below`. */
  private bound(
    groups: readonly StockGroup[],
    all: readonly Known[],
    below: number,
    total: () => number,
  ): boolean {
    if (total() >= below) return true;
    for (const step of ['quick', 'patterns'] as const) {
      for (const [index, group] of groups.entries()) {
        const known = all[index]!;
        if (known.outcome !== undefined || known.bounded === step || known.bounded === 'patterns') continue;
        const { bound } = lowerBound(group, {
          solver: step === 'quick' ? null : this.solver,
          effort: step === 'quick' ? QUICK_EFFORT : PATTERN_EFFORT,
          planCost: below - (total() - known.leastMinor),
        });
        known.leastMinor = Math.max(known.leastMinor, bound.costMinor);
        known.bounded = step;
        if (total() >= below) return true;
      }
    }
    return false;
  }
}
