import { readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { nonCanonicalZipFields } from '../../../src/core/verify/container/zip-form.js';
import { verifyAll } from '../../../src/core/verify/verify-all.js';
import { type BagFile, writeBag } from '../../../src/signing/bag/write-zip.js';
import { BUILT_AT } from '../../signing/sample.js';
import { countingBytes } from '../../signing/sample-identity.js';
import { bagFiles, DELIVERY, failedOf, only, recordFiles, type Scratch, scratch } from './files.js';

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

const judged = async (path: string) => {
  const subject = only(await verifyAll([path]));
  return { failed: failedOf(subject), zip: subject.checks.find(({ id }) => id === 'bag.zip') };
};
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
  it('as it was made has no byte that could be another', async () => {
    expect(await nonCanonicalZipFields(own)).toEqual([]);
    expect(await judged(own)).toMatchObject({
      failed: [],
      zip: { result: 'passed', detail: 'as it was made' },
    });
  });

  it('of every byte that was changed outside of the files something is said', async () => {
    const silent: number[] = [];
    const inside = filesIn(bytes);
    for (let at = 0; at < bytes.length; at += 1) {
      if (inside.some(({ from, to }) => at >= from && at < to)) continue;
      if ((await nonCanonicalZipFields(await changed(at, 1 << (at % 8)))).length === 0) silent.push(at);
    }
    // Names in the directory are whatever it says; that a file is missing and another is not listed is for the bag.
    for (const at of silent) expect((await judged(await changed(at, 1 << (at % 8)))).failed).not.toEqual([]);
  });

  it('of a byte that was changed inside of the files, also one that means the same', async () => {
    for (const { name, from, to } of filesIn(bytes))
      for (let at = from; at < to; at += name === 'bag/tagmanifest-sha256.txt' ? 3 : 41) {
        const subject = only(await verifyAll([await changed(at, 0x20)]));
        const told = subject.checks.filter(({ id, result }) =>
          id === 'bag.tags' ? result === 'failed' || result === 'notice' : result === 'failed',
        );
        expect(
          told.map(({ id }) => id),
          `byte ${at} of ${name}`,
        ).not.toEqual([]);
      }
  });

  it.each([0, 1, 2, 3])('is judged as a bag also when its byte %i was changed', async (at) => {
    const { checks } = only(await verifyAll([await changed(at, 0x20)]));
    const told = checks.filter(({ result }) => result === 'failed' || result === 'notice');
    expect(told.map(({ id }) => id).filter((id) => !/^bag\./.test(id))).toEqual([]);
    expect(told).not.toEqual([]);
  });

  it.each([
    ['a date', 10, 'bag/bagit.txt: time in its header'],
    ['a name that only the header has', 31, 'bag/bagit.txt: name in its header'],
    ['a checksum', 14, 'bag/bagit.txt: checksum in its header'],
  ])('names the file and the field of %s', async (_, at, words) => {
    const { failed, zip } = await judged(await changed(at, 1));
    expect(failed).toEqual([]);
    expect(zip).toMatchObject({ result: 'notice', detail: expect.stringContaining(words) });
  });

  it('with something put behind it, between its parts, or into its comment', async () => {
    const directory = bytes.indexOf('PK\x01\x02', 0, 'latin1');
    const put = async (name: string, at: number, mend: (copy: Buffer) => void) => {
      const copy = Buffer.concat([bytes.subarray(0, at), Buffer.from('more'), bytes.subarray(at)]);
      mend(copy);
      const path = disk.path(name);
      await writeFile(path, copy);
      return nonCanonicalZipFields(path);
    };
    expect(await put('comment.zip', bytes.length, (copy) => copy.writeUInt16LE(4, bytes.length - 2))).toEqual(
      ['the end record is not where the file ends'],
    );
    expect(
      await put('between.zip', directory, (copy) => copy.writeUInt32LE(directory + 4, copy.length - 6)),
    ).toEqual(['something stands between the files and the directory']);
    expect(await put('behind.zip', bytes.length - 22, () => undefined)).toEqual([
      'something stands between the directory and the end',
    ]);
  });

  it('packed again by other programs is only noted', async () => {
    const again = await disk.zip('again.zip', bagFiles());
    expect(await judged(again)).toMatchObject({
      failed: [],
      zip: { result: 'notice', detail: expect.stringContaining('packed again by another program') },
    });
    const folder = await disk.write('unpacked', new Map([...bagFiles()].map(([n, b]) => [`bag/${n}`, b])));
    expect(await judged(folder)).toMatchObject({ failed: [], zip: { result: 'not-checked' } });
  });
});
