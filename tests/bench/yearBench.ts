import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { furnishOrder, jobOfOrder } from '../../src/pipeline/prepareOrder.ts';
import { provenOrThrow } from '../../src/pipeline/provenPlan.ts';
import { readMix, simulateYear } from '../../src/pipeline/simulateYear.ts';
import { demoLibrary, demoRoot, must } from '../helpers/demoVan.ts';
import { loadSolver } from '../helpers/loadSolver.ts';

const ORDERS = [8, 16, 40, 80, 160, 320] as const;

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function timed<T>(run: () => T): { readonly value: T; readonly seconds: number } {
  const start = processorSeconds();
  const value = run();
  return { value, seconds: processorSeconds() - start };
}

/**
 * Prints how the time of a simulated year grows with the number of orders: the demonstration orders of both vans, the same
 * number of each, coming in weeks that are drawn, those of two weeks cut together, 40 offcuts kept for 26 weeks. Beside it,
 * for reference, what the same orders take when each is nested and replayed on its own with the same moves, once for each
 * of the vans and counted as often as it comes. `moves`: for each stock group; `only` 0 for all numbers.
 */
export async function benchYear(moves: number, only: number): Promise<void> {
  const solver = await loadSolver();
  const library = demoLibrary();
  const files = readdirSync(join(demoRoot, 'orders')).filter((name) => name.endsWith('.yaml'));
  const orders = files.sort().map((name): OrderedFurniture => {
    const file = join(demoRoot, 'orders', name);
    return must(furnishOrder(readFileSync(file, 'utf8'), file, library));
  });
  const alone = timed(() => orders.map((order, index) => aloneFigures(order, files[index]!)));
  const aloneSum = (of: (one: (typeof alone.value)[number]) => number) =>
    alone.value.reduce((sum, one) => sum + of(one), 0);

  function aloneFigures(ordered: OrderedFurniture, file: string) {
    const job = must(jobOfOrder(ordered, file));
    const nests = job.groups.map((group) => {
      const outcome = nestGroup(group, solver, { seed: 1, workLimit: moves });
      if (!outcome.ok) throw new Error(group.id);
      return outcome.nest;
    });
    provenOrThrow(job, nests, 1);
    return {
      panels: job.groups.reduce(
        (sum, { parts }) => sum + parts.reduce((all, { count }) => all + count, 0),
        0,
      ),
      cost: nests.reduce((sum, { costMinor }) => sum + costMinor, 0),
    };
  }

  console.log(`${files.length} orders, ${moves} moves a stock group; seconds of processor, one thread`);
  console.log('orders  panels  cuttings      s  s an order  sheets  for them  alone: s  for them');
  for (const count of ORDERS.filter((each) => only === 0 || each === only)) {
    const each = count / files.length;
    const entries = files.map((name) => `  - { order: ${name}, count: ${each} }`).join('\n');
    const text = `title: A year\ncut together: 2\nkeep offcuts: { weeks: 26, most: 40 }\norders:\n${entries}\n`;
    const mix = must(readMix(text, 'year.yaml'));
    const request = { mix, orders, library, file: 'year.yaml', workLimit: moves };
    const { value, seconds } = timed(() => must(simulateYear(request, 1, solver)));
    const sheets = value.taken.reduce((sum, one) => sum + one.sheets, 0);
    const cost = value.taken.reduce((sum, one) => sum + one.costMinor, 0);
    const cells: readonly (readonly [string, number])[] = [
      [String(count), 6],
      [String(each * aloneSum(({ panels }) => panels)), 8],
      [String(value.cuttings.length), 10],
      [seconds.toFixed(1), 7],
      [(seconds / count).toFixed(2), 12],
      [String(sheets), 8],
      [(cost / 100).toFixed(0), 10],
      [(each * alone.seconds).toFixed(1), 10],
      [((each * aloneSum(({ cost: own }) => own)) / 100).toFixed(0), 10],
    ];
    console.log(cells.map(([cell, width]) => cell.padStart(width)).join(''));
  }
}
