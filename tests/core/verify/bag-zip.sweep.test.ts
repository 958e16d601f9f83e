import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { type BagFile, writeBag } from '../../../src/signing/bag/write-zip.js';
import { sweepStep } from '../../properties.js';
import { BUILT_AT } from '../../signing/sample.js';
import { countingBytes } from '../../signing/sample-identity.js';
import {
  bagFiles,
  DELIVERY,
  failedOf,
  only,
  recordFiles,
  type Scratch,
  scratch,
  verifyPaths,
} from './files.js';

let disk: Scratch;
let own: string;
let bytes: Buffer;
beforeAll(async () => {
  disk = await scratch();
  own = disk.path('own.bag.zip');
  const payload = [...recordFiles()]
    .map(
      ([path, content]): BagFile => ({
        path,
        bytes: content.length,
        sha256: sha256Of(content),
        from: { is: 'memory', bytes: content },
      }),
    )
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  await writeBag(
    own,
    {
      ...{ name: 'bag', delivery: DELIVERY, fingerprint: 'x', builtAt: BUILT_AT, payload },
      tool: { name: 'load-dossier', version: '0.0.0' },
    },
    countingBytes(),
  );
  bytes = readFileSync(own);
});
afterAll(() => disk.end());

const checked = async (path: string) => only(await verifyPaths([path]));
const changed = async (at: number, by: number) => {
  const copy = Buffer.from(bytes);
  copy[at] = (copy[at] ?? 0) ^ by;
  const path = disk.path('changed.zip');
  await writeFile(path, copy);
  return path;
};

/** Where the bytes of each file stand, by the directory of the sound zip. */
function filesIn(zip: Buffer): { name: string; from: number; to: number }[] {
  const found: { name: string; from: number; to: number }[] = [];
  for (let at = zip.indexOf('PK\x01\x02', 0, 'latin1'); at >= 0; ) {
    const [size, length, local] = [
      zip.readUInt32LE(at + 24),
      zip.readUInt16LE(at + 28),
      zip.readUInt32LE(at + 42),
    ];
    const from = local + 30 + length;
    found.push({ name: zip.toString('utf8', at + 46, at + 46 + length), from, to: from + size });
    at = zip.indexOf('PK\x01\x02', at + 4, 'latin1');
  }
  return found;
}

describe('the zip of a bag (PKWARE APPNOTE 6.3)', () => {
  it('is sound as it was made', async () => {
    expect(failedOf(await checked(own))).toEqual([]);
  });

  it('tells of a byte that was changed inside of its files, also one that means the same', async () => {
    for (const { name, from, to } of filesIn(bytes))
      for (
        let at = from;
        at < to;
        at += name === 'bag/tagmanifest-sha256.txt' ? 3 * sweepStep(7) : 41 * sweepStep(5)
      ) {
        const { checks } = await checked(await changed(at, 0x20));
        const told = checks.filter(({ id, result }) =>
          id === 'bag.tags' ? result === 'failed' || result === 'notice' : result === 'failed',
        );
        expect(
          told.map(({ id }) => id),
          `byte ${at} of ${name}`,
        ).not.toEqual([]);
      }
  });

  it('is refused for a byte that was changed outside of its files, or has the same files', async () => {
    const sound = await checked(own);
    const inside = filesIn(bytes);
    // Neither five nor seven has a factor in common with the sizes of records and fields, so that every field has its turn.
    for (let at = 0; at < bytes.length; at += 5 * sweepStep(7)) {
      if (inside.some(({ from, to }) => at >= from && at < to)) continue;
      const subject = await checked(await changed(at, 1 << (at % 8)));
      const failed = failedOf(subject);
      expect(failed, `byte ${at}`).not.toContain('check.finished');
      if (failed.length === 0) expect({ ...subject, path: own }, `byte ${at}`).toEqual(sound);
    }
  });

  it.each([0, 1, 2, 3])('is judged as a bag also when its byte %i was changed', async (at) => {
    const failed = failedOf(await checked(await changed(at, 0x20)));
    expect(failed.filter((id) => !/^bag\./.test(id))).toEqual([]);
    expect(failed).not.toEqual([]);
  });

  it('may be packed again by any program', async () => {
    expect(failedOf(await checked(await disk.zip('again.zip', bagFiles())))).toEqual([]);
  });
});
