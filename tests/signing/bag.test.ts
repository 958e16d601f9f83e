import { mkdtemp, open, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import yazl from 'yazl';
import { sha256Of } from '../../src/core/ledger/tree.js';
import { readWhole } from '../../src/core/verify/container/container.js';
import { openZip } from '../../src/platform/node/container/zip.js';
import { planBag } from '../../src/signing/bag/plan.js';
import { StoredZip } from '../../src/signing/bag/stored-zip.js';
import { type BagFile, type BagOrder, writeBag } from '../../src/signing/bag/write-zip.js';
import { BUILT_AT, text } from './sample.js';
import { countingBytes } from './sample-identity.js';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bag-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const memory = (path: string, bytes: Uint8Array): BagFile => ({
  path,
  bytes: bytes.length,
  sha256: sha256Of(bytes),
  from: { is: 'memory', bytes },
});
const order = (payload: BagFile[]): BagOrder => ({
  name: 'my-bag',
  delivery: '2026-0714-A\nPayload-Oxum: 0.0',
  fingerprint: '2026-0714-A 4 00',
  builtAt: BUILT_AT,
  tool: { name: 'load-dossier', version: '1.2.3' },
  payload,
});

describe('a bag', () => {
  it('has its tag files and payload in one folder, and the hash that was planned', async () => {
    const original = text('the bytes of a photo');
    await writeFile(join(folder, 'photo'), original);
    const payload: BagFile[] = [
      memory('ledger.jsonl', text('{}\n')),
      { ...memory('originals/a.jpg', original), from: { is: 'file', path: join(folder, 'photo') } },
    ];
    const file = join(folder, 'x.bag.zip');
    const plan = await writeBag(file, order(payload), countingBytes());
    const zip = await openZip(file);
    const read = async (name: string) => {
      const found = zip.files.get(`my-bag/${name}`);
      return found === undefined
        ? undefined
        : Buffer.from(await readWhole(found, 1e6, name)).toString('utf8');
    };
    expect([...zip.files.keys()]).toEqual(
      [
        'bagit.txt',
        'bag-info.txt',
        'manifest-sha256.txt',
        'tagmanifest-sha256.txt',
        'data/ledger.jsonl',
        'data/originals/a.jpg',
      ].map((name) => `my-bag/${name}`),
    );
    expect(await read('bagit.txt')).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
    expect(await read('bag-info.txt')).toBe(
      'Bagging-Date: 2026-07-17\nBag-Software-Agent: load-dossier 1.2.3\nExternal-Identifier: 2026-0714-A Payload-Oxum: 0.0\nPayload-Oxum: 23.2\nRecord-Fingerprint: 2026-0714-A 4 00\n',
    );
    expect(await read('manifest-sha256.txt')).toBe(
      `${sha256Of(text('{}\n'))}  data/ledger.jsonl\n${sha256Of(original)}  data/originals/a.jpg\n`,
    );
    expect(await read('data/originals/a.jpg')).toBe('the bytes of a photo');
    expect(sha256Of(text((await read('tagmanifest-sha256.txt')) ?? ''))).toBe(plan.tagManifestSha256);
    zip.close();
  });

  it('has the same bytes for the same content and date', async () => {
    const payload = [memory('ledger.jsonl', text('{}\n'))];
    await writeBag(join(folder, 'a.zip'), order(payload), countingBytes());
    await writeBag(join(folder, 'b.zip'), order(payload), countingBytes(9));
    expect(await readFile(join(folder, 'a.zip'))).toEqual(await readFile(join(folder, 'b.zip')));
  });

  it.each<[string, (file: string) => BagFile, object]>([
    [
      'was changed',
      (file) => ({ ...memory('x', text('the bytes of a photo')), from: { is: 'file', path: file } }),
      { code: 'record-damaged' },
    ],
    [
      'is longer than it was',
      (file) => ({ ...memory('x', text('other')), from: { is: 'file', path: file } }),
      { name: 'DossierError' },
    ],
    [
      'is gone',
      () => ({ ...memory('x', text('x')), from: { is: 'file', path: '/nowhere/at/all' } }),
      { code: 'disk' },
    ],
  ])('stops at a file that %s, and leaves nothing behind', async (_, make, expected) => {
    await writeFile(join(folder, 'photo'), 'the bytes of a movie');
    const file = join(folder, 'x.zip');
    await expect(writeBag(file, order([make(join(folder, 'photo'))]), countingBytes())).rejects.toMatchObject(
      expected,
    );
    expect(await readdir(folder)).toEqual(['photo']);
  });

  it('does not need the memory for all of it', async () => {
    const size = 64 * 1024 * 1024;
    await writeFile(join(folder, 'large'), Buffer.alloc(size));
    const { createHash } = await import('node:crypto');
    const hash = createHash('sha256').update(Buffer.alloc(size)).digest('hex');
    const { sha256 } = await import('../../src/core/model/evidence.js');
    const files = Array.from(
      { length: 4 },
      (_, i): BagFile => ({
        path: `originals/${i}`,
        bytes: size,
        sha256: sha256.parse(hash),
        from: { is: 'file', path: join(folder, 'large') },
      }),
    );
    const before = process.memoryUsage().rss;
    await writeBag(join(folder, 'x.zip'), order(files), countingBytes());
    expect((await stat(join(folder, 'x.zip'))).size).toBeGreaterThan(4 * size);
    expect(process.memoryUsage().rss - before).toBeLessThan(2 * size);
  });

  it.each(['../x', '/x', 'a//b', 'a/../b', 'a b', '.hidden', ''])('does not take %j for a path', (path) => {
    expect(() => planBag(order([]), [{ path, bytes: 1, sha256: sha256Of(text('x')) }])).toThrow(/not a path/);
  });
});

describe('the zip of a bag', () => {
  const files: [string, Uint8Array][] = [
    ['bag/empty', new Uint8Array()],
    ['bag/short', text('a')],
    ['bag/olé.txt', new Uint8Array(3_000_000).fill(7)],
  ];
  async function* pieces(bytes: Uint8Array) {
    for (let at = 0; at < bytes.length; at += 1_000_000) yield bytes.subarray(at, at + 1_000_000);
  }

  it('is byte for byte what yazl makes of the same files', async () => {
    const own: Uint8Array[] = [];
    const zip = new StoredZip(async (some) => {
      own.push(...some.map((one) => Uint8Array.from(one)));
    }, BUILT_AT);
    for (const [path, bytes] of files) await zip.addBytes(path, bytes);
    for (const [path, bytes] of files) await zip.addPieces(`${path}-streamed`, pieces(bytes));
    await zip.end();

    const theirs = new yazl.ZipFile();
    // A date whose parts on this machine's clock are those of UTC, since yazl writes the machine's.
    const utc = DateTime.fromISO(BUILT_AT, { zone: 'utc' }).setZone('local', { keepLocalTime: true });
    const fixed = { mtime: utc.toJSDate(), mode: 0o100644, forceDosTimestamp: true, compress: false };
    for (const [path, bytes] of files) theirs.addBuffer(Buffer.from(bytes), path, fixed);
    for (const [path, bytes] of files)
      theirs.addReadStream(Readable.from([Buffer.from(bytes)]), `${path}-streamed`, {
        ...fixed,
        size: bytes.length,
      });
    theirs.end();
    expect(Buffer.concat(own).equals(await buffer(theirs.outputStream))).toBe(true);
  });

  it('takes its 64-bit form beyond four gigabytes', async () => {
    const file = join(folder, 'large.bag.zip');
    const handle = await open(file, 'wx');
    let at = 0;
    // What is not written is zeros without room on the disk.
    const zip = new StoredZip(async (some) => {
      for (const piece of some) {
        if (piece !== zeros) await handle.write(piece, 0, piece.length, at);
        at += piece.length;
      }
    }, BUILT_AT);
    const zeros = new Uint8Array(8 * 1024 * 1024);
    async function* gigabytes(count: number) {
      for (let i = 0; i < count * 128; i += 1) yield zeros;
    }
    await zip.addBytes('bag/bagit.txt', text('x'));
    await zip.addPieces('bag/data/a', gigabytes(4));
    await zip.addPieces('bag/data/b', pieces(text('the last')));
    await zip.end();
    await handle.close();
    expect(at).toBeGreaterThan(2 ** 32);
    const opened = await openZip(file);
    const last = opened.files.get('bag/data/b');
    expect(last === undefined ? '' : Buffer.from(await readWhole(last, 100, 'b')).toString()).toBe(
      'the last',
    );
    expect(opened.files.get('bag/data/a')?.bytes).toBe(2 ** 32);
    opened.close();
  });
});
