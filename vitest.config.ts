import { defineConfig } from 'vitest/config';

// Nothing is written into node_modules after an install: npx reads the whole folder again when it was touched.
export default defineConfig({
  cacheDir: '.cache/vite',
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Many tests wait for the program or a browser: two at a time keep two cores busy.
    maxWorkers: 2,
    coverage: { provider: 'v8', include: ['src/**/*.ts'] },
  },
});
