/**
 * Properties are tried with the same cases in every run, so that a run that passed passes again, and one that failed fails
 * again. `PLYWRIGHT_SEED=17 npm test` tries other cases; `npm run fuzz` and `npm run random-jobs` try very many.
 */

import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env.PLYWRIGHT_SEED ?? 1) });
