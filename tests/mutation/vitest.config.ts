import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/mutation/nearTests.ts'],
    runner: 'tests/mutation/repeatingRunner.ts',
    setupFiles: ['tests/mutation/firstFailure.ts'],
    pool: 'threads',
    isolate: false,
    maxWorkers: 1,
    // A busy machine must not make a change look caught.
    testTimeout: 900_000,
    hookTimeout: 900_000,
  },
});
