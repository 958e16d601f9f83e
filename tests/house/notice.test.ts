import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const ROOT = resolve(import.meta.dirname, '../..');
const NOTICE = `load-dossier is licensed under the Apache License 2.0, see LICENSE.

Its sources contain no work of others. npm installs these packages beside it, each with its own license text; those
marked with * only on some systems. The built commands hold code of some of them, whose licenses are beside it in
dist/program/LICENSES.txt. The fonts are set into the pages that it makes, as their license (OFL-1.1) allows.
`;

const lock = z
  .object({
    packages: z.record(
      z.string(),
      z.object({
        license: z.string().optional(),
        dev: z.boolean().optional(),
        devOptional: z.boolean().optional(),
        optional: z.boolean().optional(),
      }),
    ),
  })
  .parse(JSON.parse(readFileSync(resolve(ROOT, 'package-lock.json'), 'utf8')));

/** What a user installs: licenses, and under each its packages. */
function installed(): [license: string, names: string[]][] {
  const licenses = new Map<string, Map<string, string>>();
  for (const [path, { license = 'not stated', dev, devOptional, optional }] of Object.entries(
    lock.packages,
  )) {
    if (path === '' || dev || devOptional) continue;
    const name = path.replace(/^.*node_modules\//, '');
    const names = licenses.get(license) ?? new Map<string, string>();
    licenses.set(license, names.set(name, optional && names.get(name) !== name ? `${name} *` : name));
  }
  return [...licenses]
    .map(([license, names]): [string, string[]] => [license, [...names.values()].sort()])
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

describe('the packages of others', () => {
  it('are named in NOTICE with their licenses, as package-lock.json has them', async () => {
    const lists = installed().map(
      ([license, names]) => `${license}\n${names.map((one) => `  ${one}\n`).join('')}`,
    );
    // Written anew by: npx vitest run tests/house/notice.test.ts -u
    await expect([NOTICE, ...lists].join('\n')).toMatchFileSnapshot(resolve(ROOT, 'NOTICE'));
  });

  it('state a license that is known here', () => {
    const known =
      /\b(?:MIT|MIT-0|ISC|0BSD|Apache-2\.0|BSD-[23]-Clause|BlueOak-1\.0\.0|LGPL-3\.0|Zlib|OFL-1\.1)\b/;
    expect(installed().filter(([license]) => !known.test(license))).toEqual([]);
  });
});
