import { parseArgs } from 'node:util';
import { fuzz } from './fuzz.ts';
import { wholeNumber } from './wholeNumber.ts';

/**
 * `npm run fuzz -- --seconds N --seed S [--cases C]`: changed and made-up texts for every reader. Each must be read or
 * refused in words with its file, within two seconds. Ends with 1 when one is not.
 */
const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    cases: { type: 'string', default: '999999999' },
  },
});
const end = Date.now() + wholeNumber('--seconds', values.seconds) * 1000;
const { cases, accepted, slowestMs, casesOf, faults } = fuzz({
  seed: wholeNumber('--seed', values.seed),
  cases: wholeNumber('--cases', values.cases),
  mostMs: 2000,
  stop: () => Date.now() > end,
  now: () => performance.now(),
});
const seen = new Set<string>();
for (const { reader, wrong, text } of faults) {
  const kind = `${reader}: ${wrong.replaceAll(/\d+/g, '#').slice(0, 80)}`;
  if (seen.has(kind)) continue;
  seen.add(kind);
  console.log(`${reader}: ${wrong.slice(0, 600)}\n  text: ${JSON.stringify(text.slice(0, 1500))}`);
}
console.log(
  `${cases} cases for ${casesOf.size} readers, ${accepted} accepted, the slowest ${Math.round(slowestMs)} ms, ` +
    `${faults.length} faults of ${seen.size} kinds; memory at the end ${Math.round(process.memoryUsage().rss / 1e6)} MB`,
);
if (faults.length > 0) process.exitCode = 1;
