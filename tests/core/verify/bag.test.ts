import { symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sha256Of } from '../../../src/core/ledger/tree.js';
import { PHOTO, text } from '../../signing/sample.js';
import {
  bagFiles,
  type Files,
  failedOf,
  only,
  patch,
  recordFiles,
  retagged,
  type Scratch,
  scratch,
  verifyPaths,
} from './files.js';

let disk: Scratch;
let count = 0;
const next = () => {
  count += 1;
  return count;
};
beforeAll(async () => {
  disk = await scratch();
});
afterAll(() => disk.end());

const MANIFEST = 'manifest-sha256.txt';
const check = async (files: Files) => only(await verifyPaths([await disk.write(`bag-${next()}`, files)]));
const words = (files: Files, name: string) => Buffer.from(files.get(name) ?? '').toString('utf8');
const withText = (name: string, content: string, files = bagFiles()) =>
  retagged(new Map([...files, [name, text(content)]]));

describe('a sound bag (BagIt 1.0, RFC 8493)', () => {
  it('as a folder and as a zip file', async () => {
    const zip = await disk.zip('sound.zip', bagFiles());
    for (const subject of [await check(bagFiles()), only(await verifyPaths([zip]))]) {
      expect(failedOf(subject)).toEqual([]);
      expect(subject.is).toBe('bag');
      expect(subject.verdict).toBe('intact-signer-not-vouched-for');
      expect(subject.fingerprint?.size).toBe(4);
    }
  });

  it('with lines that end in CR LF, a tab, a star, upper-case digits (RFC 8493 §2.1.3)', async () => {
    const files = bagFiles();
    const lines = words(files, MANIFEST)
      .split('\n')
      .map((line) => line.replace(/^([0-9a-f]+) {2}/, (_, hash: string) => `${hash.toUpperCase()}\t*`));
    expect(failedOf(await check(withText(MANIFEST, lines.join('\r\n'))))).toEqual([]);
  });

  it('in a folder of its own inside another', async () => {
    const path = await disk.write('outer/inner', bagFiles());
    expect(failedOf(only(await verifyPaths([join(path, '..')])))).toEqual([]);
  });
});

/** One row each: what is wrong with the bag, how it is made, what must fail. Section of RFC 8493 beside it. */
const photo = `data/originals/${sha256Of(PHOTO)}.jpg`;
const without = (name: string) => {
  const files = bagFiles();
  files.delete(name);
  return files;
};
const changed = (name: string, bytes: Uint8Array) => new Map([...bagFiles(), [name, bytes]]);
const line = (path: string) => `${sha256Of(PHOTO)}  ${path}\n`;
const listedToo = (path: string) => withText(MANIFEST, words(bagFiles(), MANIFEST) + line(path));

describe('a bag that is not sound', () => {
  it.each<[string, () => Files, string[]]>([
    ['§2.1.1 no bagit.txt', () => without('bagit.txt'), ['pdf.header']],
    [
      '§2.1.1 another version',
      () => withText('bagit.txt', 'BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n'),
      ['bag.declaration'],
    ],
    [
      '§2.1.1 another encoding',
      () => withText('bagit.txt', 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-16\n'),
      ['bag.declaration'],
    ],
    [
      '§2.1.1 a byte-order mark',
      () => withText('bagit.txt', '\ufeffBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'),
      ['bag.declaration'],
    ],
    ['§2.1.3 no manifest', () => retagged(without(MANIFEST)), ['bag.complete']],
    [
      '§2.1.3 a manifest by MD5 alone',
      () => withText('manifest-md5.txt', 'x', retagged(without(MANIFEST))),
      ['bag.complete'],
    ],
    ['§2.1.3 a line that is none', () => withText(MANIFEST, 'hello\n'), ['bag.complete']],
    ['§2.1.3 a path that stands twice', () => listedToo(photo), ['bag.complete']],
    [
      '§2.1.3 a manifest that is not UTF-8',
      () => retagged(changed(MANIFEST, Uint8Array.of(0xff, 0xfe, 0x0a))),
      ['bag.complete'],
    ],
    [
      '§3 a listed file that is missing',
      () => without(photo),
      ['bag.complete', 'bag.oxum', 'originals.present'],
    ],
    ['§3 a file that is not listed', () => changed('data/more.txt', text('x')), ['bag.complete', 'bag.oxum']],
    [
      '§3 a file that was changed',
      () => changed(photo, text('x'.repeat(PHOTO.length))),
      ['bag.payload', 'originals.present'],
    ],
    [
      '§3 a file that was cut off',
      () => changed(photo, PHOTO.subarray(1)),
      ['bag.payload', 'bag.oxum', 'originals.present'],
    ],
    [
      '§2.2.1 a tag file that was changed',
      () => changed('bag-info.txt', text('Payload-Oxum: 1.1\n')),
      ['bag.tags', 'bag.oxum'],
    ],
    ['§2.2.1 a tag file that is not listed', () => changed('notes.txt', text('x')), ['bag.tags']],
    [
      '§2.2.2 another size of the payload',
      () => withText('bag-info.txt', 'Payload-Oxum: 1.1\n'),
      ['bag.oxum'],
    ],
    [
      '§2.2.3 files that lie elsewhere',
      () => withText('fetch.txt', `https://example.org/x 1 ${photo}\n`),
      ['bag.tags'],
    ],
    ['§5.2.1 a path that climbs out', () => listedToo('data/../../etc/passwd'), ['bag.complete']],
    ['§5.2.1 an absolute path', () => listedToo('/etc/passwd'), ['bag.complete']],
    ['§5.2.1 a home folder', () => listedToo('~/x'), ['bag.complete']],
    ['§5.2.1 a home folder of someone else', () => listedToo('~root/x'), ['bag.complete']],
    ['§5.2.1 a drive', () => listedToo('C:/x'), ['bag.complete']],
    ['§5.2.1 backslashes', () => listedToo('data\\..\\x'), ['bag.complete']],
    ['§5.2.1 a climb that is written with %25', () => listedToo('data/%2e%2e/x'), ['bag.complete']],
    ['§5.2 a payload outside data/', () => listedToo('bag-info.txt'), ['bag.complete']],
    ['§6.1 a device of Windows', () => listedToo('data/CON.txt'), ['bag.complete']],
    ['§6.1 a name with a point at its end', () => listedToo('data/x.'), ['bag.complete']],
    [
      'a record whose ledger is another',
      () => bagFiles(recordFiles().set('ledger.jsonl', text('{}\n'))),
      ['ledger.readable'],
    ],
    [
      'a record without a checkpoint',
      () => {
        const files = recordFiles();
        files.delete('checkpoint');
        return bagFiles(files);
      },
      ['record.files'],
    ],
    [
      'facts that the ledger never heard of',
      () => bagFiles(recordFiles().set('delivery.yaml', text('delivery: X\n'))),
      ['delivery.same'],
    ],
  ])('%s', async (_, make, ids) => {
    const subject = await check(make());
    const found = failedOf(subject);
    if (ids[0] === 'pdf.header') expect(found.length).toBeGreaterThan(0);
    else expect(found).toEqual(ids);
    expect(subject.verdict).toBe('broken');
  });

  it('%-signs are decoded once, and only the three of §2.1.3', async () => {
    const files = bagFiles(recordFiles().set('originals/a', text('x')));
    const bytes = text('odd');
    const made = new Map([...files, ['data/o%0Ad%25.txt', bytes]]);
    const listed = `${words(files, MANIFEST)}${sha256Of(bytes)}  data/o%250Ad%2525.txt\n`;
    expect(failedOf(await check(withText(MANIFEST, listed, made)))).toEqual(['bag.oxum']);
  });

  it('a link in the place of a file is not followed (CWE-59)', async () => {
    const path = await disk.write('linked', without(photo));
    await symlink('/etc/hostname', join(path, photo));
    const subject = only(await verifyPaths([path]));
    expect(failedOf(subject)).toEqual(['bag.container']);
    expect(subject.checks.find(({ id }) => id === 'bag.container')?.detail).toContain('link');
  });
});

describe('a zip file made to do harm', () => {
  const containerOf = async (path: string) => {
    const subject = only(await verifyPaths([path]));
    expect(subject.verdict).toBe('broken');
    return subject.checks.find(({ id }) => id === 'bag.container');
  };
  const named = async (name: string, by: string) => {
    const path = await disk.zip(`zip-${next()}.zip`, new Map([...bagFiles(), [name, text('x')]]));
    await patch(path, `bag/${name}`, by);
    return path;
  };

  it.each([
    ['climbs out (Snyk, "Zip Slip", 2018; CWE-22)', 'aaaaaa.txt', '../../a.txt/../'.slice(0, 14)],
    ['starts at the root', 'aaaaaa.txt', '/etc/x/aa.txts'.slice(0, 14)],
    ['has a drive', 'aaaaaa.txt', 'C:/x/aaaaa.txt'],
    ['has backslashes', 'aaaaaa.txt', 'bag\\..\\aaa.txt'],
    ['is a device', 'aaaaaa.txt', 'bag/nul.aaaaaa'],
  ])('a name that %s', async (_, name, by) => {
    expect((await containerOf(await named(name, by)))?.result).toBe('failed');
  });

  it('two files of one name', async () => {
    const path = await disk.zip('twice.zip', new Map([...bagFiles(), ['bag-infx.txt', text('x')]]));
    await patch(path, 'bag/bag-infx.txt', 'bag/bag-info.txt');
    expect((await containerOf(path))?.detail).toContain('two files of one name');
  });

  it('two names that are one where capitals do not count', async () => {
    const path = await disk.zip('case.zip', new Map([...bagFiles(), ['BAG-INFO.txt', text('x')]]));
    expect((await containerOf(path))?.detail).toContain('two files of one name');
  });

  it('a file that unpacks to ten thousand times its size', async () => {
    const path = await disk.zip('bomb.zip', new Map([...bagFiles(), ['bomb', Buffer.alloc(50_000_000)]]));
    expect((await containerOf(path))?.detail).toContain('would grow');
  });

  it('files that share their bytes (Fifield, "A better zip bomb", WOOT 2019)', async () => {
    const path = disk.path('overlap.zip');
    await writeFile(path, overlapping());
    expect((await containerOf(path))?.detail).toContain('share their bytes');
  });

  it.each([
    ['nothing but the mark', Buffer.from('PK\x03\x04')],
    ['an empty archive', Buffer.from(`PK\x05\x06${'\0'.repeat(18)}`, 'latin1')],
  ])('%s', async (name, bytes) => {
    const path = disk.path(`${name.length}.zip`);
    await writeFile(path, bytes);
    expect((await containerOf(path))?.result).toBe('failed');
  });

  it('a zip that was cut off', async () => {
    const { readFile } = await import('node:fs/promises');
    const whole = await readFile(await disk.zip('whole.zip', bagFiles()));
    const path = disk.path('cut.zip');
    await writeFile(path, whole.subarray(0, whole.length / 2));
    expect((await containerOf(path))?.result).toBe('failed');
  });
});

/** Two entries of the central directory over one local file. */
function overlapping(): Buffer {
  const data = deflateRawSync(Buffer.from('kernel'));
  const header = (signature: number, name: string, more: (b: Buffer) => void, size: number) => {
    const b = Buffer.alloc(size);
    b.writeUInt32LE(signature, 0);
    more(b);
    return Buffer.concat([b, Buffer.from(name)]);
  };
  const local = header(
    0x04034b50,
    'bag/a',
    (b) => {
      b.writeUInt16LE(20, 4);
      b.writeUInt16LE(8, 8);
      b.writeUInt32LE(data.length, 18);
      b.writeUInt32LE(6, 22);
      b.writeUInt16LE(5, 26);
    },
    30,
  );
  const central = (name: string) =>
    header(
      0x02014b50,
      name,
      (b) => {
        b.writeUInt16LE(20, 4);
        b.writeUInt16LE(20, 6);
        b.writeUInt16LE(8, 10);
        b.writeUInt32LE(data.length, 20);
        b.writeUInt32LE(6, 24);
        b.writeUInt16LE(5, 28);
        b.writeUInt32LE(0, 42);
      },
      46,
    );
  const directory = Buffer.concat([central('bag/a'), central('bag/b')]);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(2, 8);
  end.writeUInt16LE(2, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(local.length + data.length, 16);
  return Buffer.concat([local, data, directory, end]);
}
