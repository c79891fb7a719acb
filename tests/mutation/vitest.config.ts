import { defineConfig } from 'vitest/config';
import { parts } from './parts.ts';

/** The tests near one part of the program, named by PLYWRIGHT_MUTATED. */
const part = parts.find(({ name }) => name === process.env['PLYWRIGHT_MUTATED']);
if (part === undefined) throw new Error('PLYWRIGHT_MUTATED names no part');

export default defineConfig({
  test: {
    include: [...part.tests],
    isolate: false,
    setupFiles: ['tests/helpers/seedOfProperties.ts'],
    // A busy machine must not make a mutant look caught.
    testTimeout: 900_000,
    hookTimeout: 900_000,
  },
});
