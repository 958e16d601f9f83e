import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Which rooms each room may import from, besides itself. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  model: [],
  reference: ['model'],
  intake: ['model', 'reference'],
  record: ['model', 'reference'],
  assess: ['model', 'reference'],
  compose: ['model', 'reference', 'assess'],
  seal: ['model', 'reference', 'record', 'assess', 'compose'],
  verify: ['model', 'record', 'seal'],
  jobs: ['model', 'reference', 'intake', 'record', 'assess', 'compose', 'seal', 'verify'],
  cli: ['model', 'reference', 'intake', 'record', 'assess', 'compose', 'seal', 'verify', 'jobs', '.'],
  '.': ['model', 'reference', 'intake', 'record', 'assess', 'compose', 'seal', 'verify', 'jobs'],
};
/** verify trusts nothing of the producer: of these rooms it may use only the parts named. */
const VERIFY_MAY_USE =
  /^(record\/(tree|canonical|checkpoint|statement)|seal\/(cms-parse|asn1|identity-types|certificate-parse))\b/;

const SRC = resolve(import.meta.dirname, '../../src');
const IMPORT = /(?:from\s+|import\s*\(\s*|import\s+)['"](\.{1,2}\/[^'"]+)['"]/g;

const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.[jt]s$/.test(name))
  .map((name) => join(SRC, name));
const roomOf = (file: string) => {
  const [first = '.', ...rest] = relative(SRC, file).split(sep);
  return rest.length === 0 ? '.' : first;
};
const imports = files.flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(IMPORT)].map(([, target = '']) => ({
    file: relative(SRC, file),
    from: roomOf(file),
    to: resolve(dirname(file), target),
  })),
);

describe('imports go one way through the house', () => {
  it('finds the imports it judges', () => {
    expect(imports.length).toBeGreaterThan(20);
  });

  it('every room is known', () => {
    const rooms = new Set(files.map(roomOf));
    expect([...rooms].filter((room) => MAY_IMPORT[room] === undefined)).toEqual([]);
  });

  it('no file imports from a room above it', () => {
    const wrong = imports
      .filter(({ from, to }) => roomOf(to) !== from && !MAY_IMPORT[from]?.includes(roomOf(to)))
      .map(({ file, to }) => `${file} imports ${relative(SRC, to)}`);
    expect(wrong).toEqual([]);
  });

  it('verify uses only hashing and parsing of the producer', () => {
    const wrong = imports
      .filter(({ from, to }) => from === 'verify' && ['record', 'seal'].includes(roomOf(to)))
      .map(({ file, to }) => ({ file, to: relative(SRC, to).split(sep).join('/') }))
      .filter(({ to }) => !VERIFY_MAY_USE.test(to))
      .map(({ file, to }) => `${file} imports ${to}`);
    expect(wrong).toEqual([]);
  });

  it('assess touches neither disk, clock nor chance', () => {
    const impure = files
      .filter((file) => roomOf(file) === 'assess')
      .flatMap((file) => {
        const text = readFileSync(file, 'utf8');
        return [
          'node:fs',
          'Date.now(',
          'new Date()',
          'Math.random(',
          'process.',
          'DateTime.now(',
          'DateTime.local(',
        ]
          .filter((word) => text.includes(word))
          .map((word) => `${relative(SRC, file)} uses ${word}`);
      });
    expect(impure).toEqual([]);
  });
});
