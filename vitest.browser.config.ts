import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { BROWSER_ARGUMENTS } from './tests/outside/browser/arguments.js';
import { ONLY_IN_NODE } from './tests/outside/browser/only-in-node.js';

const chromium = (locale: string, timezoneId: string) => ({
  browser: 'chromium' as const,
  name: `Chromium ${locale} ${timezoneId}`,
  provider: playwright({
    launchOptions: {
      executablePath: process.env.OUTSIDE_CHROMIUM ?? '/usr/bin/chromium',
      args: BROWSER_ARGUMENTS,
    },
    contextOptions: { locale, timezoneId },
  }),
});

/** The core's tests in a browser. `tests/outside/browser/core.check.ts` runs them, and says what must pass. */
export default defineConfig({
  define: { 'import.meta.env.PROPERTY_TIMES': JSON.stringify(process.env.PROPERTY_TIMES ?? '') },
  resolve: { alias: { '#platform': new URL('./src/platform/browser', import.meta.url).pathname } },
  test: {
    include: ['tests/core/**/*.test.ts'],
    exclude: Object.keys(ONLY_IN_NODE).map((folder) => `${folder}/**`),
    setupFiles: ['tests/properties.ts'],
    testTimeout: 60_000,
    isolate: false,
    browser: {
      enabled: true,
      headless: true,
      screenshotFailures: false,
      instances: [chromium('en-US', 'UTC'), chromium('de-DE', 'Asia/Tokyo')],
    },
  },
});
