import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/outside/**'],
    setupFiles: ['tests/properties.ts'],
    // More cases of the properties, as DEVELOPERS.md tells, take more time.
    testTimeout: process.env.PROPERTY_TIMES ? 1_200_000 : 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Modules are loaded once per worker instead of once per file, which saves a sixth of the time.
    isolate: false,
    env: { TZ: 'Asia/Kathmandu' },
  },
});
