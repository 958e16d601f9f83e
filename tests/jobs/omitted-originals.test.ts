import { expect, it } from 'vitest';
import { sha256 } from '../../src/core/model/evidence.js';
import type { OmittedOriginal } from '../../src/core/model/manifest.js';
import { formatOmittedOriginals } from '../../src/jobs/dossier/omitted-originals.js';

const left = (name: string, why: OmittedOriginal['why']): OmittedOriginal => ({
  name,
  bytes: 1,
  sha256: sha256.parse('0'.repeat(64)),
  why,
});

it('says each reason once, with the count and the names', () => {
  expect(
    formatOmittedOriginals(
      [
        left('b.jpg', 'position'),
        left('empty.txt', 'empty-file'),
        left('a.jpg', 'position'),
        left('c.pdf', 'size-budget'),
      ],
      20_000_000,
    ),
  ).toEqual([
    'The originals of 2 files are not inside, only their hashes: they may tell where they were made: a.jpg, b.jpg.',
    'The original of empty.txt is not inside, only its hash: it is empty.',
    'The original of c.pdf is not inside, only its hash: the dossier may be 20.0 MB.',
  ]);
});

it('says nothing when all are inside', () => {
  expect(formatOmittedOriginals([], 20_000_000)).toEqual([]);
});
