import type { ChangeLimit } from '../model/advice.ts';
import {
  type ChangeBox,
  type ChangeValues,
  cornersOf,
  halvesOf,
  isSingle,
  nearestValues,
  sizeOfChange,
  startBoxes,
} from './boxes.ts';
import { farChange } from './farChanges.ts';

export type { ChangeValues } from './boxes.ts';
export { smallestParts } from './smallestParts.ts';

/** How values are tried. Costs in minor units. */
export interface Trials<Plan> {
  /**
   * Whether panels that are nowhere larger than at any of the corners may cost less than `below`: by their bound, or else by
   * a plan. `unknown` where some corner has no panels.
   */
  readonly mayCostLess: (corners: readonly ChangeValues[], below: number) => 'yes' | 'no' | 'unknown';
  /** A plan at these values with all checks passing that costs less than `below`; null where there is none. */
  readonly planBelow: (values: ChangeValues, below: number) => FoundPlan<Plan> | null;
  /** How much of what may be spent has been, from 0 to 1; the search ends with 1. */
  readonly spent: () => number;
}

interface FoundPlan<Plan> {
  readonly costMinor: number;
  readonly plan: Plan;
}

/** Values at which the order costs less than at any smaller change of the same numbers. */
export interface FoundChange<Plan> extends FoundPlan<Plan> {
  readonly values: ChangeValues;
  /** As `sizeOfChange` has it. */
  readonly size: number;
}

export interface FoundChanges<Plan> {
  /** Smallest first. */
  readonly found: readonly FoundChange<Plan>[];
  /** Null when the limits were searched through; otherwise all changes smaller than this were looked at, larger ones here and there. */
  readonly lookedUpTo: number | null;
}

/** A found change with the numbers that it changes. */
interface OfNumbers<Plan> extends FoundChange<Plan> {
  readonly of: readonly number[];
}

interface Waiting {
  readonly box: ChangeBox;
  readonly nearest: number;
}

/** Part of what may be spent that the search from near to far may have; the rest is for looks further away. */
const PART_FOR_NEAR = 0.6;

/**
 * Looks for the smallest changes after which an order costs less than `costNow`, and then for larger ones that save still
 * more. Not every combination is tried: many together, a box, are asked for the cost of panels none of which is larger
 * than at any of them; where even these cost no less, none of the box does. What is left is halved, nearest first.
 *
 * That rests on sizes that only grow or only shrink within a box. Where a formula has them turn round in between (a
 * maximum inside), a change may be missed; what is found has a plan of its own and is always true.
 */
export function findChanges<Plan>(
  limits: readonly ChangeLimit[],
  costNow: number,
  trials: Trials<Plan>,
): FoundChanges<Plan> {
  const found: OfNumbers<Plan>[] = [];
  const waiting: Waiting[] = [];
  const add = (box: ChangeBox) => {
    waiting.push({ box, nearest: sizeOfChange(limits, nearestValues(limits, box)) });
  };
  /** A change of two numbers has to save more than a smaller one of either does alone. */
  const toBeat = (box: ChangeBox) => {
    const of = box.map(({ limit }) => limit);
    const smaller = found.filter((one) => one.of.every((limit) => of.includes(limit)));
    return Math.min(costNow, ...smaller.map(({ costMinor }) => costMinor));
  };
  startBoxes(limits).forEach(add);
  while (waiting.length > 0) {
    const next = waiting.reduce((best, one) => (isBefore(one, best) ? one : best));
    if (trials.spent() >= PART_FOR_NEAR) {
      return { found: withFar(limits, costNow, trials, found, next.nearest), lookedUpTo: next.nearest };
    }
    waiting.splice(waiting.indexOf(next), 1);
    const { box, nearest } = next;
    const below = toBeat(box);
    if (!isSingle(box)) {
      if (trials.mayCostLess(cornersOf(limits, box), below) !== 'no') halvesOf(box).forEach(add);
      continue;
    }
    const values = nearestValues(limits, box);
    const plan = trials.planBelow(values, below);
    if (plan !== null) found.push({ ...plan, values, size: nearest, of: box.map(({ limit }) => limit) });
  }
  return { found, lookedUpTo: null };
}

/** What was found, and changes further away; of these only such as save more than any smaller change of the same numbers. */
function withFar<Plan>(
  limits: readonly ChangeLimit[],
  costNow: number,
  trials: Trials<Plan>,
  near: readonly OfNumbers<Plan>[],
  lookedUpTo: number,
): OfNumbers<Plan>[] {
  const beats = (box: readonly number[], all: readonly OfNumbers<Plan>[]) =>
    all.filter(({ of }) => of.every((limit) => box.includes(limit))).map(({ costMinor }) => costMinor);
  const far: OfNumbers<Plan>[] = [];
  for (const box of startBoxes(limits)) {
    const of = box.map(({ limit }) => limit);
    const below = Math.min(costNow, ...beats(of, near), ...beats(of, far));
    const change = farChange(limits, box, {
      lookedUpTo,
      tryAt: (values): OfNumbers<Plan> | null => {
        const plan = trials.planBelow(values, below);
        return plan && { ...plan, values, size: sizeOfChange(limits, values), of };
      },
      isOver: () => trials.spent() >= 1,
    });
    if (change !== null) far.push(change);
  }
  const found = [...near];
  for (const change of far.sort((a, b) => a.size - b.size || a.of.length - b.of.length)) {
    if (change.costMinor < Math.min(costNow, ...beats(change.of, found))) found.push(change);
  }
  return found;
}

/** Nearest first; of equally near ones fewer numbers first, then those of more values, so that they are halved together. */
function isBefore(a: Waiting, b: Waiting): boolean {
  if (a.nearest !== b.nearest) return a.nearest < b.nearest;
  if (a.box.length !== b.box.length) return a.box.length < b.box.length;
  return false;
}
