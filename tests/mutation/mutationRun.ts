import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { parts } from './parts.ts';

/**
 * `npm run mutation -- --part NAME [--file src/replay/checkSize.ts]`: changes the code of a part in one place after
 * another and runs the tests near it each time. A change that no test sees has survived: it is printed with its place.
 * Texts are left as they are, since no test should hold every sentence. Ends with 1 below 85 % caught.
 */
const LEAST_CAUGHT = 85;

const { values } = parseArgs({
  options: { part: { type: 'string' }, file: { type: 'string', multiple: true } },
});
const part = parts.find(({ name }) => name === values.part);
if (part === undefined) {
  console.error(`--part is one of ${parts.map(({ name }) => name).join(', ')}.`);
  process.exit(2);
}
process.env['PLYWRIGHT_MUTATED'] = part.name;
// The processes that the tester starts read TypeScript too.
process.env['NODE_OPTIONS'] = '--import tsx';

type MutantResult = Awaited<ReturnType<Stryker['runMutationTest']>>[number];

const results = await new Stryker({
  mutate: [...(values.file ?? part.files)],
  mutator: { excludedMutations: ['StringLiteral'], plugins: null },
  testRunner: 'near tests',
  plugins: [fileURLToPath(new URL('nearTestRunner.ts', import.meta.url))],
  coverageAnalysis: 'perTest',
  ignoreStatic: true,
  concurrency: 1,
  // Endless loops are found by counting; time decides only where the changed place is not in the loop itself.
  timeoutMS: 60_000,
  dryRunTimeoutMinutes: 60,
  reporters: ['progress-append-only'],
  ignorePatterns: ['/out', '/dist', '/tests/pictures'],
  // It would rewrite its paths with an interface of the compiler that version 7 no longer has; none leads outside.
  tsconfigFile: 'none',
  tempDirName: '.mutated',
  checkers: [],
  disableTypeChecks: false,
  allowConsoleColors: false,
}).runMutationTest();

const SAID: Partial<Record<MutantResult['status'], string>> = {
  Survived: 'survived',
  NoCoverage: 'reached by no test',
  RuntimeError: 'spoilt a test for good',
};

const count = (...statuses: MutantResult['status'][]) =>
  results.filter(({ status }) => statuses.includes(status)).length;
for (const { status, fileName, location, replacement, mutatorName } of results) {
  const said = SAID[status];
  if (said === undefined) continue;
  console.log(
    `${relative(process.cwd(), fileName)}:${location.start.line}:${location.start.column} ${mutatorName} ${said}: ${replacement}`,
  );
}
const caught = count('Killed', 'Timeout');
const all = caught + count('Survived', 'NoCoverage');
const percent = all === 0 ? 100 : Math.floor((caught * 1000) / all) / 10;
console.log(
  `${values.file?.join(', ') ?? part.name}: ${all} mutants, ${caught} caught (${count('Timeout')} of them by their endless loop), ` +
    `${count('Survived')} survived, ${count('NoCoverage')} reached by no test, ${percent} % caught; ` +
    `${count('Ignored')} left out, ${count('RuntimeError')} that spoilt a test for good`,
);
if (percent < LEAST_CAUGHT || count('RuntimeError') > 0) process.exitCode = 1;
