import { execFileSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { config } from 'zod';
import { modulesOf, packagesIn } from '../cli/loaded.js';
import { PARTS } from './parts.js';

const DIST = resolve(import.meta.dirname, '../../dist');

/** Bytes that the heap of a fresh Node grows by. */
function heapOf(file: string): number {
  const url = pathToFileURL(join(DIST, `${file}.js`)).href;
  const script = `gc(); const before = process.memoryUsage().heapUsed; await import('${url}'); gc();
    console.log(process.memoryUsage().heapUsed - before);`;
  const args = ['--expose-gc', '--input-type=module', '-e', script];
  return Number(execFileSync(process.execPath, args, { encoding: 'utf8' }));
}

describe('a part of the library loads what it needs and no more', () => {
  it.each<{ file: string; packages: string[]; system: boolean; megabytes: number }>([
    { file: 'reference', packages: ['luxon', 'zod'], system: false, megabytes: 7 },
    { file: 'assess', packages: ['luxon', 'zod'], system: false, megabytes: 11 },
    { file: 'verify', packages: ['canonicalize', 'luxon', 'zod'], system: true, megabytes: 10 },
  ])('$file', async ({ file, packages, system, megabytes }) => {
    const modules = await modulesOf(join(DIST, `${file}.js`));
    expect(packagesIn(modules)).toEqual(packages);
    expect(modules.some((url) => url.startsWith('node:fs'))).toBe(system);
    expect(heapOf(file) / 1e6).toBeLessThan(megabytes);
  });

  it('record, without what draws pages, decodes pictures or signs', async () => {
    const packages = packagesIn(await modulesOf(join(DIST, 'record.js')));
    const heavy = [
      '@myriaddreamin/typst-ts-node-compiler',
      'sharp',
      'pdf-lib',
      'pkijs',
      'asn1js',
      'node-forge',
    ];
    expect(packages).toContain('zod');
    expect(packages.filter((name) => heavy.includes(name))).toEqual([]);
  });

  it.each(['assess', 'reference', 'verify'])(
    '%s in a page gives nothing that it does not give in Node',
    async (name) => {
      const [page, node]: object[] = await Promise.all([
        import(`../../src/in-page/${name}.ts`),
        import(`../../src/${name}.ts`),
      ]);
      // Other tests in this process go on as in Node.
      config({ jitless: false });
      const names = Object.keys(page ?? {});
      expect(names.length).toBeGreaterThan(8);
      expect(names.filter((one) => !(one in (node ?? {})))).toEqual([]);
    },
  );

  it('every part is known by its name', () => {
    expect(PARTS.map(({ name }) => name)).toEqual(
      ['', '/assess', '/conformance', '/record', '/reference', '/verify'].map(
        (part) => `load-dossier${part}`,
      ),
    );
  });
});
