import { defineConfig } from 'vitest/config';

export default defineConfig({
  // As package.json says of the built files, here of their sources.
  resolve: { alias: { '#platform': new URL('./src/platform/node', import.meta.url).pathname } },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/outside/**'],
    globalSetup: ['tests/run-folder.ts'],
    setupFiles: ['tests/properties.ts', 'tests/equal-bytes.ts'],
    // More cases of the properties, as DEVELOPERS.md tells, take more time.
    testTimeout: process.env.PROPERTY_TIMES ? 1_200_000 : 60_000,
    hookTimeout: 120_000,
    // Every core: vitest leaves one free, which is half of a machine that has two.
    maxWorkers: '100%',
    // Modules are loaded once per worker instead of once per file, which saves a sixth of the time.
    isolate: false,
    env: { TZ: 'Asia/Kathmandu' },
  },
});
