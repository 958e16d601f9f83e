import { writeFileSync } from 'node:fs';
import { build } from 'vite';

/** `node bundle.js ENTRY OUT`: one script for a page, as it is shipped. A process of its own, since tests run as such. */
const [, , entry = '', out = ''] = process.argv;
process.env.NODE_ENV = 'production';
const made = await build({
  configFile: false,
  logLevel: 'error',
  // Libraries that come in a form for pages come in one for workers too, which pages can run.
  resolve: {
    conditions: ['worker', 'module', 'browser', 'production'],
    // As package.json says of the built files, here of their sources. What others write gets the built files themselves.
    alias: entry.startsWith(import.meta.dirname)
      ? { '#platform': new URL('../../../src/platform/browser', import.meta.url).pathname }
      : {},
  },
  build: { write: false, minify: true, rolldownOptions: { input: entry } },
});
const [first] = Array.isArray(made) ? made : [made];
const [chunk, ...more] = first !== undefined && 'output' in first ? first.output : [];
if (chunk?.type !== 'chunk' || more.length > 0) throw new Error('the bundle is not one script');
writeFileSync(out, chunk.code);
