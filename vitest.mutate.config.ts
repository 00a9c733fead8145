// The tests that judge a mutant: those of the two rooms that grade, without the long counts.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/report/**/*.test.ts', 'tests/interpret/**/*.test.ts'],
    exclude: ['**/every-combination.test.ts', '**/properties.test.ts'],
    testTimeout: 30_000,
  },
});
