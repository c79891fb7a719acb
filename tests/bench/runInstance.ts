import type { LinearSolver } from '../../src/model/linearSolver.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { type BenchmarkInstance, groupOf, type Turning } from './instances.ts';
import { shelfSheets } from './shelfReference.ts';

export interface RunSettings {
  readonly seconds: number;
  readonly seed: number;
  /** Work for the bound by patterns; 0 for areas and dual feasible functions only. */
  readonly effort: number;
}

export interface RunResult {
  readonly id: string;
  readonly row: string;
  readonly turning: Turning;
  readonly sheets: number;
  readonly cost: number;
  readonly boundSheets: number;
  readonly boundCost: number;
  readonly knownBound: number | null;
  readonly knownBest: number | null;
  readonly shelf: number | null;
  readonly proved: boolean;
  readonly itemArea: number;
  readonly moves: number;
  /** Until the first plan, until the last better one, and of all, bounds included. */
  readonly firstSeconds: number;
  readonly lastSeconds: number;
  readonly seconds: number;
}

/** Time that the process has computed for, so that a busy machine does not change the results. */
function processorSeconds(): number {
  return process.cpuUsage().user / 1e6;
}

/** Bounds and nests one instance and checks the nest; throws when anything is wrong with either. */
export function runInstance(
  instance: BenchmarkInstance,
  turning: Turning,
  solver: LinearSolver | null,
  settings: RunSettings,
): RunResult {
  const group = groupOf(instance, turning);
  const start = processorSeconds();
  const since = () => processorSeconds() - start;
  let firstSeconds = -1;
  let lastSeconds = 0;
  let leastCost = Number.POSITIVE_INFINITY;
  const options = {
    seed: settings.seed,
    workLimit: Number.MAX_SAFE_INTEGER,
    stop: () => since() >= settings.seconds,
    progress: ({ costMinor }: { costMinor: number }) => {
      if (costMinor >= leastCost) return;
      leastCost = costMinor;
      lastSeconds = since();
      if (firstSeconds < 0) firstSeconds = lastSeconds;
    },
  };
  const outcome = nestGroup(group, settings.effort > 0 ? solver : null, options, settings.effort);
  const seconds = since();
  if (!outcome.ok) throw new Error(`${instance.id} ${turning}: ${JSON.stringify(outcome.failure)}`);
  assertNest(group, outcome.nest);
  const { bound } = outcome.nest;
  const { bound: knownBound, best: knownBest } = instance.known[turning];
  const sheets = outcome.nest.sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
  if (knownBound !== null && sheets < knownBound) {
    throw new Error(`${instance.id} ${turning}: ${sheets} sheets are below the known bound ${knownBound}`);
  }
  return {
    id: instance.id,
    row: instance.row,
    turning,
    sheets,
    cost: outcome.nest.costMinor,
    boundSheets: bound.sheets,
    boundCost: bound.costMinor,
    knownBound,
    knownBest,
    shelf: shelfSheets(instance),
    proved: outcome.nest.proved,
    itemArea: instance.items.reduce((sum, [w, h, count]) => sum + w * h * count, 0),
    moves: outcome.nest.moves,
    firstSeconds,
    lastSeconds,
    seconds,
  };
}
