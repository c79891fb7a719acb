import { parseArgs } from 'node:util';
import { type Counts, runRandomJobs } from './randomJobs.ts';
import { wholeNumber } from './wholeNumber.ts';

/**
 * `npm run random-jobs -- --lists N --orders M --seed S [--seconds T]`: random lists and orders, nested with little work
 * and sawn by both replays. Ends with 1 when a plan is invalid. `--seconds` ends it earlier, shared by halves. A long run
 * may be cut into parts: seeds 1 to 2000 are those of one run from 1 and one from 1001. What is done is told on the way,
 * so that a run that is broken off says from which seed to go on.
 */
const { values } = parseArgs({
  options: {
    lists: { type: 'string', default: '1000' },
    orders: { type: 'string', default: '100' },
    seed: { type: 'string', default: '1' },
    seconds: { type: 'string' },
  },
});
const started = Date.now();
const seed = wholeNumber('--seed', values.seed);
const seconds = values.seconds === undefined ? null : wholeNumber('--seconds', values.seconds);
/** Jobs after which it is told how far the run has come. */
const TOLD_EVERY = { list: 1000, order: 100 } as const;

function run(lists: number, orders: number) {
  const end = seconds === null ? Number.POSITIVE_INFINITY : Date.now() + (seconds * 1000) / 2;
  let named = 0;
  const done = (kind: 'list' | 'order', counts: Counts) => {
    for (const line of counts.invalid.slice(named)) console.log(`  ${line}`);
    named = counts.invalid.length;
    if (counts.drawn % TOLD_EVERY[kind] === 0) tell(`${kind}s so far`, counts);
  };
  return runRandomJobs({ lists, orders, seed, mostPanels: 5000, stop: () => Date.now() > end, done });
}

function tell(what: string, counts: Counts): void {
  const seeds = counts.drawn === 0 ? '' : ` (seeds ${seed} to ${seed + counts.drawn - 1})`;
  const { drawn, plans, panels, sheets, refused, tooMany, notCut, invalid } = counts;
  console.log(
    `${what}: ${drawn} drawn${seeds}, ${plans} plans of ${panels} panels on ${sheets} sheets, ${refused} refused, ` +
      `${notCut} cannot be cut, ${tooMany} too long, ${invalid.length} invalid`,
  );
}

const { lists } = run(wholeNumber('--lists', values.lists), 0);
tell('lists', lists);
const { orders } = run(0, wholeNumber('--orders', values.orders));
tell('orders', orders);
const invalid = [...lists.invalid, ...orders.invalid];
console.log(
  `from seed ${seed}: ${lists.drawn} lists and ${orders.drawn} orders, ${lists.plans + orders.plans} plans, ` +
    `${lists.panels + orders.panels} panels, ${lists.sheets + orders.sheets} sheets, ${invalid.length} invalid, ` +
    `${Math.round((Date.now() - started) / 1000)} s (${Math.round(process.cpuUsage().user / 1e6)} s of processor), ` +
    `memory at most ${Math.round(process.resourceUsage().maxRSS / 1000)} MB`,
);
if (invalid.length > 0) process.exitCode = 1;
