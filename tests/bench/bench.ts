/**
 * Nests published instances and prints a table: `npm run bench -- <set> [options]`. See `--help`.
 *
 * Every nest is checked by `assertNest`, which shares no code with the nester, and compared with its own bound and
 * with the bound that came with the data; a plan below a bound ends the run with an error.
 */
import { fork } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { loadSolver } from '../helpers/loadSolver.ts';
import { benchGrowth } from './growthBench.ts';
import { BENCHMARK_SETS, readInstances, type Turning } from './instances.ts';
import { printInstances, printTable } from './report.ts';
import { type RunResult, runInstance } from './runInstance.ts';
import { benchSawing } from './sawingBench.ts';
import { benchListsByClock, benchWorkshopLists } from './workshopBench.ts';
import { benchYear } from './yearBench.ts';

const HELP = `npm run bench -- <set> [options]

sets: ${BENCHMARK_SETS.join(', ')};
workshop-lists: thirty lists, carcasses, fronts and backs of a board each, two sizes of sheet; workshop-lists-one-board;
workshop-lists-one-size: one board and one size; workshop-lists-by-clock: --seconds by the clock a list, all of its
boards together on all cores, as the command does (all with --seconds, --sample and --seed as the number of the series);
growth: 500 to 5,000 panels of 300 sizes, or only as many as --only says;
sawing: what the workshop lists take on the saw after 1000 moves per second asked for;
year: a simulated year of 8 to 320 demonstration orders, with 1000 moves per second asked for, or only as many as --only says

--seconds n     time an instance, bound and search, in seconds of processor time on one core (1)
--sample n      every n-th instance only (1)
--offset n      start the sample at this instance (0)
--only text     instances whose name holds this text
--fixed         pieces not turned only
--turnable      turnable pieces only
--effort n      work for the bound by patterns, in steps of about a nanosecond; 0: none (300000000)
--seed n        (1)
--jobs n        instances searched side by side, each on a core of its own (1)
--after file    results of an earlier run: what was proved best there is taken over, the rest is run
--list          a line for each instance, too
--json file     results of all instances
`;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '1' },
    sample: { type: 'string', default: '1' },
    offset: { type: 'string', default: '0' },
    only: { type: 'string', default: '' },
    fixed: { type: 'boolean', default: false },
    turnable: { type: 'boolean', default: false },
    effort: { type: 'string', default: '300000000' },
    seed: { type: 'string', default: '1' },
    jobs: { type: 'string', default: '1' },
    after: { type: 'string' },
    list: { type: 'boolean', default: false },
    json: { type: 'string' },
    help: { type: 'boolean', default: false },
  },
});

const set = positionals[0] ?? '';
if (set === 'sawing' && !values.help) {
  benchSawing(1000 * Number(values.seconds));
  process.exit(0);
}
if (set === 'year' && !values.help) {
  await benchYear(1000 * Number(values.seconds), Number(values.only));
  process.exit(0);
}
if (set === 'growth' && !values.help) {
  await benchGrowth(Number(values.seconds), Number(values.only));
  process.exit(0);
}
if (set === 'workshop-lists-by-clock' && !values.help) {
  await benchListsByClock(Number(values.seconds), Number(values.seed) - 1, Number(values.sample));
  process.exit(0);
}
if (set.startsWith('workshop-lists') && !values.help) {
  await benchWorkshopLists({
    limit: Number(values.seconds),
    series: Number(values.seed) - 1,
    choice: set === 'workshop-lists-one-size' ? 'one size a list' : 'both sizes',
    boards: set === 'workshop-lists' ? 'three boards' : 'one board',
    sample: Number(values.sample),
  });
  process.exit(0);
}
if (values.help || !(BENCHMARK_SETS as readonly string[]).includes(set)) {
  console.log(HELP);
  process.exit(values.help ? 0 : 2);
}

const settings = {
  seconds: Number(values.seconds),
  seed: Number(values.seed),
  effort: Number(values.effort),
};

const proved = new Map(
  (values.after ? (JSON.parse(readFileSync(values.after, 'utf8')) as RunResult[]) : [])
    .filter((result) => result.proved)
    .map((result) => [`${result.id} ${result.turning}`, result]),
);

const jobs = readInstances(set)
  .filter(
    (instance, index) =>
      instance.id.includes(values.only) && (index - Number(values.offset)) % Number(values.sample) === 0,
  )
  .flatMap((instance) => turnings().map((turning) => ({ instance, turning })));

function turnings(): Turning[] {
  const all: Turning[] = ['fixed', 'turnable'];
  return all.filter((turning) => values[turning] || (!values.fixed && !values.turnable));
}

/** A process of its own asks for the number of a job and answers with its result, until there are none left. */
async function answerAsWorker(): Promise<void> {
  const solver = await loadSolver();
  process.on('message', (index: number) => {
    const { instance, turning } = jobs[index]!;
    const before = proved.get(`${instance.id} ${turning}`);
    process.send!({ index, result: before ?? runInstance(instance, turning, solver, settings) });
  });
  process.send!({ index: -1 });
}

async function runAll(): Promise<RunResult[]> {
  const results: RunResult[] = [];
  let next = 0;
  const runWorker = () =>
    new Promise<void>((resolve, reject) => {
      const worker = fork(fileURLToPath(import.meta.url), process.argv.slice(2), {
        env: { ...process.env, BENCH_WORKER: '1' },
      });
      const give = () => {
        if (next < jobs.length) worker.send(next++);
        else worker.disconnect();
      };
      worker.on('message', ({ index, result }: { index: number; result?: RunResult }) => {
        if (result) results[index] = result;
        if (process.stderr.isTTY)
          process.stderr.write(`\r${results.filter(Boolean).length} of ${jobs.length} `);
        give();
      });
      worker.on('exit', (code) =>
        code === 0 ? resolve() : reject(new Error('an instance failed, see above')),
      );
    });
  await Promise.all(Array.from({ length: Number(values.jobs) }, runWorker));
  return results;
}

if (process.env['BENCH_WORKER']) {
  await answerAsWorker();
} else {
  const results = await runAll();
  if (values.json) writeFileSync(values.json, JSON.stringify(results, null, 1));
  for (const turning of turnings()) {
    const some = results.filter((result) => result.turning === turning);
    if (values.list) printInstances(some);
    printTable(`${set}, ${turning}, ${settings.seconds} s an instance`, some, {
      turning,
      published: set === 'bwmv' && values.sample === '1' && values.only === '',
    });
  }
}
