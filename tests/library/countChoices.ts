/**
 * Prints what comes of the choices of every layout in every vehicle: `tsx tests/library/countChoices.ts`. With `--alone`
 * each pair that passes in no combination is tried by itself too; with `--reasons` each refusal is printed.
 */
import { countLine, tryAllPairs, tryPairsLeft } from '../helpers/allChoices.ts';
import { demoLibrary, demoOrder } from '../helpers/demoVan.ts';

const library = demoLibrary();
const base = demoOrder(library);
const all = [...library.layouts.values()].flatMap((layout) =>
  layout.vehicles.flatMap((vehicle) => {
    const asked = { layout, vehicle, base, library };
    const tried = tryAllPairs(asked);
    const passed = tried.filter(({ errors }) => errors.length === 0);
    if (process.argv.includes('--alone')) tried.push(...tryPairsLeft(asked, passed));
    console.log(countLine(`${layout.id} in ${vehicle}`, tried));
    return tried;
  }),
);
console.log(countLine('all layouts and vehicles', all));
for (const { words, errors } of process.argv.includes('--reasons') ? all : []) {
  for (const { code, message } of errors) console.log(`  ${code}: ${message} (${words.join(', ')})`);
}
