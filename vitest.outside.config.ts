import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { alias: { '#platform': new URL('./src/platform/node', import.meta.url).pathname } },
  test: {
    globalSetup: ['tests/run-folder.ts'],
    // Sweeps too, of which `npm test` tries a part: `tests/properties.ts`.
    include: ['tests/outside/**/*.check.ts', 'tests/**/*.sweep.test.ts'],
    setupFiles: ['tests/properties.ts', 'tests/equal-bytes.ts'],
    env: { WHOLE_SWEEPS: 'yes' },
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
  },
});
