import { parseArgs } from 'node:util';
import { type Fault, fuzz } from './fuzz.ts';
import { wholeNumber } from './wholeNumber.ts';

/**
 * `npm run fuzz -- --seconds N --seed S [--cases C]`: changed and made-up texts for every reader. Each must be read or
 * refused in words with its file, within two seconds of the processor. Ends with 1 when one is not. A run of many cases
 * may be cut into parts with seeds of their own; how far it has come is told on the way.
 */
const TOLD_EVERY = 20_000;

const { values } = parseArgs({
  options: {
    seconds: { type: 'string' },
    seed: { type: 'string', default: '1' },
    cases: { type: 'string' },
    // For the run that looks where the time goes.
    times: { type: 'boolean', default: false },
  },
});
const seed = wholeNumber('--seed', values.seed);
const seconds = wholeNumber('--seconds', values.seconds ?? (values.cases === undefined ? '60' : '999999999'));
const started = Date.now();
const seen = new Set<string>();

function tellFault({ reader, wrong, text }: Fault): void {
  const kind = `${reader}: ${wrong.replaceAll(/\d+/g, '#').slice(0, 80)}`;
  if (seen.has(kind)) return;
  seen.add(kind);
  console.log(`${reader}: ${wrong.slice(0, 600)}\n  text: ${JSON.stringify(text.slice(0, 1500))}`);
}

function memory(): string {
  return `memory at most ${Math.round(process.resourceUsage().maxRSS / 1000)} MB`;
}

let told = 0;
const { cases, accepted, slowestMs, casesOf, msOf, faults } = fuzz({
  seed,
  cases: wholeNumber('--cases', values.cases ?? '999999999'),
  mostMs: 2000,
  stop: () => Date.now() > started + seconds * 1000,
  done: (counts) => {
    for (const fault of counts.faults.slice(told)) tellFault(fault);
    told = counts.faults.length;
    if (counts.cases % TOLD_EVERY === 0)
      console.log(`${counts.cases} cases from seed ${seed} so far, ${told} faults, ${memory()}`);
  },
  now: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
});
if (values.times)
  for (const [reader, ms] of [...msOf].sort((a, b) => b[1] - a[1]))
    console.log(`${reader}: ${(ms / (casesOf.get(reader) ?? 1)).toFixed(1)} ms a case`);
console.log(
  `${cases} cases from seed ${seed} for ${casesOf.size} readers, ${accepted} accepted, the slowest ${Math.round(slowestMs)} ms, ` +
    `${faults.length} faults of ${seen.size} kinds, ${Math.round((Date.now() - started) / 1000)} s ` +
    `(${Math.round(process.cpuUsage().user / 1e6)} s of processor), ${memory()}`,
);
if (faults.length > 0) process.exitCode = 1;
