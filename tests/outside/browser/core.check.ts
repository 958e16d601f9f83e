import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { afterAll, expect } from 'vitest';
import { z } from 'zod';
import { checkWith, chromium, scratch } from '../programs.js';
import { ONLY_IN_NODE } from './only-in-node.js';

const ROOT = resolve(import.meta.dirname, '../../..');
const disk = scratch();
afterAll(disk.end);

const report = z.object({
  success: z.boolean(),
  numFailedTests: z.number(),
  numPassedTests: z.number(),
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      message: z.string(),
      assertionResults: z.array(z.object({ fullName: z.string(), status: z.string() })),
    }),
  ),
});

function testFiles(): string[] {
  return readdirSync(join(ROOT, 'tests/core'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join('tests/core', name))
    .filter((name) => !Object.keys(ONLY_IN_NODE).some((folder) => name.startsWith(`${folder}/`)))
    .sort();
}

checkWith(chromium, 'the core’s tests pass in a browser, in two languages and zones', () => {
  const out = join(disk.folder, 'browser.json');
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
  const done = spawnSync(
    process.execPath,
    [vitest, 'run', '--config', 'vitest.browser.config.ts', '--reporter=json', `--outputFile=${out}`],
    {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, OUTSIDE_CHROMIUM: chromium.command?.[0] },
      timeout: 280_000,
    },
  );
  const read = report.parse(JSON.parse(readFileSync(out, 'utf8')));
  const failed = read.testResults.flatMap(({ name, message, assertionResults }) => [
    ...(message === '' ? [] : [`${name}: ${message}`]),
    ...assertionResults.filter(({ status }) => status !== 'passed').map(({ fullName }) => fullName),
  ]);
  expect(failed).toEqual([]);
  expect([read.success, done.status]).toEqual([true, 0]);
  // Each file ran twice, once in each language and zone.
  const ran = read.testResults.map(({ name }) => relative(ROOT, name)).sort();
  expect(ran).toEqual(testFiles().flatMap((name) => [name, name]));
  console.log(`${read.numPassedTests} tests in ${ran.length / 2} files, both times together`);
});
