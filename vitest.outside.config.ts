import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { alias: { '#platform': new URL('./src/platform/node', import.meta.url).pathname } },
  test: {
    globalSetup: ['tests/run-folder.ts'],
    include: ['tests/outside/**/*.check.ts'],
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
  },
});
