/**
 * Prints what comes of the choices of every layout in every vehicle: `tsx tests/library/countChoices.ts`. With `--alone`
 * each pair that passes in no combination is tried by itself too; with `--reasons` each refusal is printed. `--nest`, with
 * or without `--processes 2`, does so with `--alone` and nests and replays every combination that passes, which takes some
 * minutes; it ends with 1 where the replay of one has anything to say.
 */
import { countLine, passing, tryAllPairs, tryPairsLeft } from '../helpers/allChoices.ts';
import { demoLibrary, demoOrder } from '../helpers/demoVan.ts';
import { sawChoices } from './sawChoices.ts';

const asks = (word: string) => process.argv.includes(word);

const library = demoLibrary();
const base = demoOrder(library);
const all = [...library.layouts.values()].flatMap((layout) =>
  layout.vehicles.flatMap((vehicle) => {
    const asked = { layout, vehicle, base, library };
    const tried = tryAllPairs(asked);
    if (asks('--alone') || asks('--nest')) tried.push(...tryPairsLeft(asked, passing(tried)));
    console.log(countLine(`${layout.id} in ${vehicle}`, tried));
    return tried;
  }),
);
console.log(countLine('all layouts and vehicles', all));
for (const { words, errors } of asks('--reasons') ? all : []) {
  for (const { code, message } of errors) console.log(`  ${code}: ${message} (${words.join(', ')})`);
}

if (asks('--nest')) {
  const processes = asks('--processes') ? Number(process.argv[process.argv.indexOf('--processes') + 1]) : 1;
  const passed = passing(all);
  const sawn = await sawChoices(passed, processes, (done) => {
    if (done % 50 === 0) console.log(`  ${done} of ${passed.length} nested`);
  });
  const wrong = sawn.filter(({ messages }) => messages.length > 0);
  const panels = sawn.reduce((sum, each) => sum + each.panels, 0);
  console.log(
    `nested and replayed: ${sawn.length} combinations with ${panels} panels, ${wrong.length} with a finding`,
  );
  for (const { words, messages } of wrong) console.log(`  ${messages.join('; ')} (${words.join(', ')})`);
  if (wrong.length > 0) process.exitCode = 1;
}
