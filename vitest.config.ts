import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Nested lists are searched for real in many tests; a slow machine must not fail them.
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
