import Table from 'cli-table3';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { type SheetChoice, WORKSHOP_LISTS, workshopList, workshopListByBoard } from './workshopLists.ts';

const MARKS = [1, 5, 20] as const;

interface Step {
  readonly seconds: number;
  readonly costMinor: number;
}

interface ListResult {
  readonly id: string;
  readonly panels: number;
  readonly kinds: number;
  readonly areaCost: number;
  readonly steps: readonly Step[];
  readonly boundCost: number;
  readonly proved: boolean;
  /** Of the whole run: bounds and searches. */
  readonly seconds: number;
}

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function runGroup(group: StockGroup, limit: number, solver: LinearSolver): ListResult {
  const start = processorSeconds();
  const since = () => processorSeconds() - start;
  const steps: Step[] = [];
  const outcome = nestGroup(group, solver, {
    seed: 1,
    workLimit: Number.MAX_SAFE_INTEGER,
    stop: () => since() >= limit,
    progress: ({ costMinor }) => {
      const best = steps.at(-1)?.costMinor ?? Number.POSITIVE_INFINITY;
      if (costMinor < best) steps.push({ seconds: since(), costMinor });
    },
  });
  const seconds = since();
  if (!outcome.ok) throw new Error(`${group.id}: ${JSON.stringify(outcome.failure)}`);
  assertNest(group, outcome.nest);
  const area = group.demands.reduce((sum, d) => sum + d.lengthUm * d.widthUm * d.count, 0);
  return {
    id: group.id,
    panels: group.demands.reduce((sum, d) => sum + d.count, 0),
    kinds: group.demands.length,
    areaCost: area / 1e12,
    steps,
    boundCost: outcome.nest.bound.costMinor,
    proved: outcome.nest.proved,
    seconds,
  };
}

const costAt = (steps: readonly Step[], seconds: number) =>
  steps.filter((step) => step.seconds <= seconds).at(-1)?.costMinor;

function print(results: readonly ListResult[], limit: number): void {
  const marks = MARKS.filter((mark) => mark <= limit);
  const table = new Table({
    head: [
      'stock group',
      'panels',
      'sizes',
      'm²',
      'first plan',
      'ms',
      ...marks.map((m) => `${m} s`),
      'bound',
      'proved',
    ],
    style: { head: [], border: [] },
    chars: { mid: '', 'left-mid': '', 'mid-mid': '', 'right-mid': '' },
  });
  results.forEach((r) => {
    const first = r.steps[0]!;
    table.push([
      r.id,
      r.panels,
      r.kinds,
      r.areaCost.toFixed(1),
      first.costMinor,
      Math.round(first.seconds * 1000),
      ...marks.map((mark) => costAt(r.steps, mark) ?? '–'),
      r.boundCost,
      r.proved
        ? `${r.seconds.toFixed(1)} s`
        : `within ${(100 * (r.steps.at(-1)!.costMinor / r.boundCost - 1)).toFixed(2)} %`,
    ]);
  });
  const proved = (mark: number) => results.filter((r) => r.proved && r.seconds <= mark).length;
  console.log(table.toString());
  console.log(
    marks.map((mark) => `proved best after ${mark} s: ${proved(mark)} of ${results.length}`).join('\n'),
  );
}

/**
 * Nests each of the thirty lists as `plywright cut --time` does: its three stock groups together on all cores, for
 * `seconds` by the clock a list, the start of the threads included. The program must have been built.
 */
export async function benchListsByClock(seconds: number, series: number, sample: number): Promise<void> {
  const built = new URL('../../dist/cli/threads/searchGroups.js', import.meta.url).href;
  const { searchGroups } = (await import(built)) as typeof import('../../cli/threads/searchGroups.ts');
  let proved = 0;
  let all = 0;
  let longest = 0;
  for (let index = 0; index < WORKSHOP_LISTS; index += sample) {
    const groups = workshopListByBoard(index, series, 'both sizes');
    const start = performance.now();
    const results = await searchGroups(groups, {
      seed: 1,
      time: seconds,
      progress: () => {},
      stoppable: () => {},
    });
    const took = (performance.now() - start) / 1000;
    longest = Math.max(longest, took);
    const told = results.map(({ outcome }, g) => {
      if (!outcome.ok) throw new Error(`${groups[g]!.id}: ${JSON.stringify(outcome.failure)}`);
      assertNest(groups[g]!, outcome.nest);
      all++;
      if (outcome.nest.proved) proved++;
      const { costMinor, bound } = outcome.nest;
      return outcome.nest.proved ? `${costMinor} proved` : `${costMinor} ≥ ${bound.costMinor}`;
    });
    console.log(`list ${index + 1}: ${told.join(', ')}, ${took.toFixed(1)} s`);
  }
  console.log(`proved best after ${seconds} s a list: ${proved} of ${all}; longest ${longest.toFixed(1)} s`);
}

/**
 * Nests the stock groups of the thirty workshop lists as the command does, quick bound, first search and bound by patterns included, for
 * `limit` seconds of processor time each, and prints first plan, best at 1, 5 and 20 s, and the bound.
 */
export async function benchWorkshopLists(asked: {
  readonly limit: number;
  readonly series: number;
  readonly choice: SheetChoice;
  readonly boards: 'one board' | 'three boards';
  readonly sample: number;
}): Promise<void> {
  const solver = await loadSolver();
  const results: ListResult[] = [];
  for (let index = 0; index < WORKSHOP_LISTS; index += asked.sample) {
    const groups =
      asked.boards === 'one board'
        ? [workshopList(index, asked.series, asked.choice)]
        : workshopListByBoard(index, asked.series, asked.choice);
    for (const group of groups) results.push(runGroup(group, asked.limit, solver));
    if (process.stderr.isTTY) process.stderr.write(`\r${index + 1} of ${WORKSHOP_LISTS} `);
  }
  print(results, asked.limit);
}
