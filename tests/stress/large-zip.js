// The two forms of a zip that small bags never have: more than 65,535 files, and more than 4 GB. Each must be packed so
// that every byte of its records is the only one it can be, and a changed one must be named. Takes 9 GB of disk.
//   node tests/stress/large-zip.js
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdtemp, open, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const { writeBag } = await dist('signing/bag/write-zip.js');
const { nonCanonicalZipFields } = await dist('core/verify/container/zip-form.js');
const folder = await mkdtemp(join(tmpdir(), 'stress-zip-'));
const facts = {
  name: 'bag',
  delivery: 'sample',
  fingerprint: 'x',
  builtAt: '2026-07-17T09:00:00.000Z',
  tool: { name: 'load-dossier', version: '0.0.0' },
};

/** @param {string} path */
async function hashOf(path) {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 1024 * 1024 })) hash.update(chunk);
  return hash.digest('hex');
}

/** @param {string} what @param {object[]} payload @param {number} fromEnd a byte of the last records */
async function attempt(what, payload, fromEnd) {
  const path = join(folder, 'x.zip');
  await writeBag(path, { ...facts, payload }, (/** @type {number} */ n) => Buffer.alloc(n, 1));
  const whole = await nonCanonicalZipFields(path);
  const file = await open(path, 'r+');
  const at = (await file.stat()).size - fromEnd;
  const { buffer } = await file.read(Buffer.alloc(1), 0, 1, at);
  await file.write(Buffer.of((buffer[0] ?? 0) ^ 1), 0, 1, at);
  await file.close();
  const changed = await nonCanonicalZipFields(path);
  console.log(what, { whole, changed });
  await rm(path);
  return whole.length === 0 && changed.length > 0;
}

try {
  const one = Buffer.of(1);
  const sha256 = createHash('sha256').update(one).digest('hex');
  const many = Array.from({ length: 65_540 }, (_, i) => ({
    path: `originals/${String(i).padStart(6, '0')}`,
    bytes: 1,
    sha256,
    from: { is: 'memory', bytes: one },
  }));
  const large = join(folder, 'large');
  const bytes = 4.4e9;
  await writeFile(large, '');
  await truncate(large, bytes);
  const wide = [
    { path: 'originals/a', bytes, sha256: await hashOf(large), from: { is: 'file', path: large } },
    // Begins beyond four gigabytes, and so takes the wide form too.
    { path: 'originals/b', bytes: 1, sha256, from: { is: 'memory', bytes: one } },
    { ...{ path: 'originals/c', bytes: 1, sha256 }, from: { is: 'memory', bytes: one } },
  ];
  const good = [await attempt('65,540 files', many, 22 + 30), await attempt('4.4 GB', wide, 22 + 76 + 10)];
  process.exitCode = good.every(Boolean) ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
