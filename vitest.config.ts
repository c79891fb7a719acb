import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // Nested lists are searched for real in many tests; a slow machine must not fail them.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // By default one core is left to the terminal: on two cores that would be half of the time.
    maxWorkers: '100%',
    setupFiles: ['tests/helpers/seedOfProperties.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'parts',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/end-to-end/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'command',
          include: ['tests/end-to-end/**/*.test.ts'],
          // These start the real command, so it is built first.
          globalSetup: ['tests/end-to-end/build.ts'],
        },
      },
    ],
  },
});
