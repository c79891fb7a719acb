import { parseArgs } from 'node:util';
import { type Counts, runRandomJobs } from './randomJobs.ts';
import { wholeNumber } from './wholeNumber.ts';

/**
 * `npm run random-jobs -- --lists N --orders M --seed S [--seconds T]`: random lists and orders, nested with little work
 * and sawn by both replays. Ends with 1 when a plan is invalid. `--seconds` ends it earlier, shared by halves.
 */
const { values } = parseArgs({
  options: {
    lists: { type: 'string', default: '1000' },
    orders: { type: 'string', default: '100' },
    seed: { type: 'string', default: '1' },
    seconds: { type: 'string' },
  },
});
const seed = wholeNumber('--seed', values.seed);
const seconds = values.seconds === undefined ? null : wholeNumber('--seconds', values.seconds);

function run(lists: number, orders: number) {
  const end = seconds === null ? Number.POSITIVE_INFINITY : Date.now() + (seconds * 1000) / 2;
  return runRandomJobs({ lists, orders, seed, mostPanels: 5000, stop: () => Date.now() > end });
}

function tell(what: string, counts: Counts): void {
  const last = seed + counts.drawn - 1;
  console.log(
    `${what}: ${counts.drawn} drawn (seeds ${seed} to ${last}), ${counts.plans} plans of ${counts.panels} panels on ` +
      `${counts.sheets} sheets, ${counts.refused} refused, ${counts.notCut} cannot be cut, ${counts.invalid.length} invalid`,
  );
  for (const line of counts.invalid) console.log(`  ${line}`);
}

const { lists } = run(wholeNumber('--lists', values.lists), 0);
tell('lists', lists);
const { orders } = run(0, wholeNumber('--orders', values.orders));
tell('orders', orders);
if (lists.invalid.length + orders.invalid.length > 0) process.exitCode = 1;
