import { readFileSync } from 'node:fs';
import { relative, sep } from 'node:path';
import { describe, expect, it } from 'vitest';
import { files, imports, SRC } from './sources.js';

const CORE = [
  'core/model',
  'core/reference',
  'core/ports',
  'core/ledger',
  'core/assess',
  'core/words',
  'core/charts',
  'core/pictures',
  'core/verify',
];
/** What differs from platform to platform: the pieces behind `#platform/…`, and what is larger, folder by folder. */
const PLATFORM = ['platform', 'platform/container', 'platform/heic', 'platform/pictures', 'platform/worker'];
/** Which rooms each room may import from, besides itself. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  'core/model': [],
  'core/reference': ['core/model'],
  'core/ports': ['core/model'],
  'core/ledger': ['core/model', 'platform'],
  'core/assess': ['core/model', 'core/reference'],
  'core/words': ['core/model', 'core/reference'],
  'core/charts': ['core/model', 'core/reference', 'core/assess', 'core/words'],
  'core/pictures': [],
  'core/verify': ['core/model', 'core/ports', 'core/ledger', 'core/pictures', 'platform'],
  platform: ['core/model', 'core/ports'],
  'platform/container': ['core/model', 'core/verify'],
  'platform/heic': ['platform/worker'],
  'platform/pictures': ['core/ports', 'platform/worker'],
  'platform/worker': [],
  intake: ['core/model', 'core/reference', 'core/ports', ...PLATFORM],
  record: ['core/model', 'core/ports', 'core/ledger', ...PLATFORM],
  compose: [...CORE.filter((room) => room !== 'core/verify'), ...PLATFORM],
  signing: [...CORE, ...PLATFORM, 'record', 'compose'],
  jobs: [...CORE, ...PLATFORM, 'intake', 'record', 'compose', 'signing'],
  conformance: ['core/model', 'core/ports', 'core/ledger', 'core/verify', ...PLATFORM],
  cli: [...CORE, ...PLATFORM, 'intake', 'record', 'compose', 'signing', 'jobs', '.'],
  // Parts of the library as a page gets them; `platform.test.ts` says of which they are made.
  'in-page': [...CORE, 'platform', '.'],
  '.': [...CORE, ...PLATFORM, 'intake', 'record', 'compose', 'signing', 'jobs', 'conformance'],
};

const roomOf = (file: string) => {
  const [first = '.', second = '', ...rest] = relative(SRC, file).split(sep);
  if (second === '') return '.';
  const [third = '', ...below] = rest;
  if (first === 'platform' && below.length > 0) return `platform/${third}`;
  return first === 'core' && rest.length > 0 ? `core/${second}` : first;
};
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
      .filter(
        ({ from, to }) => roomOf(to) !== roomOf(from) && !MAY_IMPORT[roomOf(from)]?.includes(roomOf(to)),
      )
      .map(({ from, to }) => `${relative(SRC, from)} imports ${relative(SRC, to)}`);
    expect(wrong).toEqual([]);
  });

  it('assess touches neither disk, clock nor chance', () => {
    const impure = files
      .filter((file) => roomOf(file) === 'core/assess')
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
