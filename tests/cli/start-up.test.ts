import { describe, expect, it } from 'vitest';
import { modulesOf as loadedBy } from './loaded.js';
import { MAIN } from './run.js';

const HEAVY = [
  'sharp',
  'typst',
  'pdf-lib',
  'pkijs',
  'asn1js',
  'luxon',
  'zod',
  'yaml',
  '@handlebars',
  'csv-parse',
];

/** Addresses of the modules that one command line loads. */
const modulesOf = (...args: string[]) => loadedBy(MAIN, ...args);
const heavyIn = (modules: readonly string[]) =>
  HEAVY.filter((name) => modules.some((url) => new RegExp(`node_modules/(@[^/]*/)?${name}`).test(url)));

describe('help is quick, for it loads no library but the one that reads the command line', () => {
  it.each([
    [['--help']],
    [[]],
    [['--version']],
    [['verify', '--help']],
    [['temps', '--help']],
    [['build', '--help']],
    [['record', 'pulp', '--help']],
    [['colect']],
  ])('%j', async (args) => {
    const modules = await modulesOf(...args);
    expect(modules.some((url) => url.includes('node_modules/commander'))).toBe(true);
    expect(heavyIn(modules)).toEqual([]);
    expect(
      modules.filter((url) =>
        /\/dist\/(?!cli\/|core\/(?:model\/(?:error|omit-undefined)|words\/(?:wrap|spaces)))/.test(url),
      ),
    ).toEqual([]);
  });

  it('a command that has work to do is seen to load more', async () => {
    expect(heavyIn(await modulesOf('verify', MAIN))).toContain('zod');
  });
});
