import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256Of } from '../../src/record/tree.js';
import { planBag } from '../../src/seal/bag/plan.js';
import { type BagFile, type BagOrder, writeBag } from '../../src/seal/bag/write-zip.js';
import { readWhole } from '../../src/verify/container/container.js';
import { openZip } from '../../src/verify/container/zip.js';
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
    const { sha256 } = await import('../../src/model/evidence.js');
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
