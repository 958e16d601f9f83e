// The two forms of a zip that small bags never have: more than 65,535 files, and more than 4 GB. Each must be read as it
// was packed: every file is there, and verifying finds each whole. Takes 9 GB of disk.
//   node tests/stress/large-zip.js
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdtemp, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const { writeBag } = await dist('signing/bag/write-zip.js');
const { verify } = await dist('jobs/verify.js');
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

/** @param {string} what @param {object[]} payload */
async function attempt(what, payload) {
  const path = join(folder, 'x.zip');
  await writeBag(path, { ...facts, payload }, (/** @type {number} */ n) => Buffer.alloc(n, 1));
  const { subjects } = await verify({ paths: [path], trust: [] });
  /** @type {{ id: string, result: string, detail: string }[]} */
  const checks = subjects[0].checks.filter((/** @type {{ id: string }} */ { id }) => id.startsWith('bag.'));
  console.log(what, checks.map(({ id, detail }) => `${id}: ${detail}`).join('; '));
  await rm(path);
  const passed = checks.every(({ result }) => result === 'passed');
  return (
    passed && checks.some(({ id, detail }) => id === 'bag.payload' && detail === `${payload.length} files`)
  );
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
  const good = [await attempt('65,540 files', many), await attempt('4.4 GB', wide)];
  process.exitCode = good.every(Boolean) ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
