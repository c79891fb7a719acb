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
          exclude: ['tests/end-to-end/**', 'tests/cli/faults.test.ts'],
          // A third of the time would go into loading the same modules for every file; none of them keeps a state.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'faulty disk',
          // It puts another file system below the program, which no other test may see.
          include: ['tests/cli/faults.test.ts'],
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
