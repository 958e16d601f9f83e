import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ARCHIVE_LIMITS, type ArchiveLimits, openArchive } from '../../../src/intake/archive.js';
import { cases } from '../../properties.js';
import { emptyFolder, put } from '../a-delivery.js';
import { type Made, zipOf } from './make-zip.js';

const folder = await emptyFolder();

async function opened(entries: readonly Made[] | Buffer, limits: ArchiveLimits = ARCHIVE_LIMITS) {
  const { path } = await put(folder, 'a.zip', Buffer.isBuffer(entries) ? entries : zipOf(entries));
  const archive = await openArchive(path, 'a.zip', limits);
  return {
    names: archive.entries.map((entry) => entry.name),
    said: archive.problems.map((problem) => problem.message),
    archive,
  };
}

async function textOf(chunks: AsyncIterable<Uint8Array>): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const chunk of chunks) parts.push(chunk);
  return Buffer.concat(parts).toString('utf8');
}

describe('an archive', () => {
  it('gives its files in order, with their bytes', async () => {
    const { names, said, archive } = await opened([
      { name: 'photos/', mode: 0o040755 },
      { name: 'photos/a.jpg', bytes: 'first' },
      { name: 'añejo.txt', bytes: 'second' },
    ]);
    expect([names, said]).toEqual([['photos/a.jpg', 'añejo.txt'], []]);
    expect(await Promise.all(archive.entries.map((entry) => textOf(entry.read())))).toEqual([
      'first',
      'second',
    ]);
  });

  it('leaves out what is hidden and what systems leave behind', async () => {
    const { names, archive } = await opened([
      { name: '__MACOSX/._a.jpg' },
      { name: '.hidden/a.jpg' },
      { name: 'a/Thumbs.db' },
      { name: 'a/b.jpg' },
    ]);
    expect(names).toEqual(['a/b.jpg']);
    expect(archive.skipped).toHaveLength(3);
  });

  // CWE-22 (names that lead out), CWE-59 (links), CWE-409 (bombs); yauzl's own list of bad names.
  it.each<[string, Made, RegExp]>([
    ['a name with ..', { name: '../evil.txt' }, /leads out/],
    ['a name with .. inside', { name: 'a/../../evil.txt' }, /leads out/],
    ['an absolute name', { name: '/etc/passwd' }, /leads out/],
    ['a drive', { name: 'C:/evil.txt' }, /leads out/],
    ['a backslash', { name: '..\\evil.txt' }, /leads out/],
    ['a zero byte', { name: 'a.jpg\0.txt' }, /zero byte/],
    ['a symbolic link', { name: 'link', bytes: '/etc/passwd', mode: 0o120777 }, /symbolic link/],
    ['a pipe', { name: 'pipe', mode: 0o010644 }, /not a regular file/],
    ['a bomb', { name: 'bomb', bytes: Buffer.alloc(2_000_000) }, /bomb/],
    ['an encrypted entry', { name: 'locked', bytes: 'x', claims: { flags: 0x0801 } }, /encrypted/],
    ['an unknown packing', { name: 'odd', bytes: 'x', claims: { method: 99 } }, /method 99/],
    ['a shared offset', { name: 'shared', bytes: 'good', claims: { offset: 0 } }, /shares bytes/],
    ['a second of the same name', { name: 'good.txt', bytes: 'other' }, /twice/],
  ])('refuses %s, names it, and gives the others', async (_, bad, message) => {
    const { names, said } = await opened([{ name: 'good.txt', bytes: 'good' }, bad, { name: 'last.txt' }]);
    expect(names).toEqual(['good.txt', 'last.txt']);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(message);
  });

  it('tells of the first fifty that it refuses, and how many more there are', async () => {
    const bad = Array.from({ length: 60 }, (_, i) => ({ name: `../${i}`, bytes: 'x' }));
    const { names, said } = await opened([...bad, { name: 'last.txt' }]);
    expect(names).toEqual(['last.txt']);
    expect(said).toHaveLength(51);
    expect(said.at(-1)).toBe('10 more are not taken out either');
  });

  it('holds to its limits', async () => {
    const three = [
      { name: 'a', bytes: 'aaaa' },
      { name: 'b', bytes: 'bbbb' },
      { name: 'c', bytes: 'cccc' },
    ];
    expect((await opened(three, { ...ARCHIVE_LIMITS, entries: 2 })).names).toEqual(['a', 'b']);
    expect((await opened(three, { ...ARCHIVE_LIMITS, totalBytes: 8 })).names).toEqual(['a', 'b']);
    expect((await opened(three, { ...ARCHIVE_LIMITS, entryBytes: 3 })).names).toEqual([]);
  });

  it.each<[string, Made['claims']]>([
    ['a wrong checksum', { crc: 1 }],
    ['more bytes than said', { bytes: 2 }],
    ['fewer bytes than said', { bytes: 9 }],
  ])('does not hand on an entry with %s', async (_, claims) => {
    const { archive } = await opened([{ name: 'a.txt', bytes: 'abcd', claims: claims ?? {} }]);
    await expect(textOf(archive.entries[0]?.read() ?? fail())).rejects.toMatchObject({
      code: 'unreadable-file',
    });
  });

  it('never throws, whatever the bytes', async () => {
    const whole = zipOf([
      { name: 'a.txt', bytes: 'one' },
      { name: 'b.txt', bytes: 'two' },
    ]);
    await fc.assert(
      fc.asyncProperty(
        fc.nat(whole.length - 1),
        fc.nat(255),
        fc.nat(whole.length),
        async (at, byte, length) => {
          const bytes = Buffer.from(whole.subarray(0, length < 40 ? whole.length : length));
          if (at < bytes.length) bytes[at] = byte;
          const { archive } = await opened(bytes);
          for (const entry of archive.entries)
            await textOf(entry.read()).catch((error: unknown) =>
              expect(error).toMatchObject({ code: 'unreadable-file' }),
            );
          archive.close();
        },
      ),
      { numRuns: cases(150) },
    );
  });
});

function fail(): never {
  throw new Error('no entry');
}
