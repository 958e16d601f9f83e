import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import { readCredentials } from '../../src/intake/photo/credentials/read-credentials.js';
import { checkWith, type Program } from './programs.js';

/** The public test files of the C2PA, which `.ci/outside.sh` brings. */
const FOLDER = '.outside/c2pa/image/jpeg';
const there = existsSync(FOLDER);
const files: Program = { name: "C2PA's public test files", command: there ? [FOLDER] : undefined };

/**
 * Their names say what was done, one letter a step: C a claim, A an adjustment, I an ingredient, X a change without a
 * claim; `E-` and a word is an error that was put in. Names of other makers say nothing: those files are sound.
 */
function expected(name: string): 'intact' | 'broken' | undefined {
  const [, steps] = /-\d{8}-([A-Z].*)\.jpg$/.exec(name) ?? [];
  if (steps === undefined) return 'intact';
  if (/^[AI]$/.test(steps)) return undefined;
  return /^E-|^X/.test(steps) ? 'broken' : 'intact';
}

describe("content credentials of the C2PA's public test files", () => {
  const names = there ? readdirSync(FOLDER).filter((name) => name.endsWith('.jpg')) : ['(none here)'];
  for (const name of names)
    checkWith(files, `${name}: ${expected(name) ?? 'none'}`, async () => {
      const read = await readCredentials(join(FOLDER, name), 'image/jpeg');
      expect(read?.state).toBe(expected(name));
      if (read !== undefined) expect(read.signer?.trusted ?? false).toBe(false);
    });
  checkWith(files, 'there are sound, broken and plain ones', () => {
    const kinds = new Set(names.map(expected));
    expect(kinds).toEqual(new Set(['intact', 'broken', undefined]));
  });
});
