import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    // Many tests wait for the program or a browser: two at a time keep two cores busy.
    maxWorkers: 2,
    coverage: { provider: 'v8', include: ['src/**/*.ts'] },
  },
});
