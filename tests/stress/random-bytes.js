// Changes one byte at a random place, 10,000 times, over a dossier, a bag (folder and zip) and a record: each change
// must be found, and the failed check must belong to the part that was changed.
//   node tests/stress/random-bytes.js [changes]
import { randomInt } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { makeDossier, makeRecord } from './sample.js';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const changes = Number(process.argv[2] ?? 10_000);
const { verifyAll } = await dist('verify/verify-all.js');
const { openZip } = await dist('verify/container/zip.js');
const { hashOf } = await dist('verify/container/container.js');
const folder = await mkdtemp(join(tmpdir(), 'stress-bytes-'));

/** Checks that may answer for a changed file, by the beginning of their ids. @param {string} file */
function expected(file) {
  if (file.endsWith('.pdf')) return /^(pdf|signature|certificate|attachments|manifest)\./;
  if (/originals\//.test(file)) return /^(originals|bag)\./;
  if (/ledger\.jsonl$/.test(file)) return /^(ledger|record|bag|originals)\./;
  if (/checkpoint$/.test(file)) return /^(record|bag)\./;
  if (/delivery\.yaml$/.test(file)) return /^(delivery|bag)\./;
  return /^bag\./;
}

/** @param {string} top @returns {Promise<string[]>} */
async function filesBelow(top) {
  const all = await readdir(top, { recursive: true, withFileTypes: true });
  return all.filter((one) => one.isFile()).map((one) => join(one.parentPath, one.name));
}

/** What the files of a zip are, or undefined when it cannot be opened. @param {string} file */
async function contents(file) {
  try {
    const zip = await openZip(file);
    const all = [];
    for (const [path, one] of zip.files) all.push(`${path} ${(await hashOf(one)).sha256}`);
    zip.close();
    return all.join('\n');
  } catch {
    return undefined;
  }
}

/** @type {Record<string, { changed: number, found: number, harmless: number }>} */
const tally = {};
/** @type {string[]} */
const missed = [];

/** @param {string} what @param {string} path @param {readonly string[]} files */
async function attack(what, path, files, rounds = changes / 4) {
  const count = { changed: 0, found: 0, harmless: 0 };
  tally[what] = count;
  const whole = what === 'bag as zip' ? await contents(path) : undefined;
  for (let round = 0; round < rounds; round += 1) {
    const file = files[randomInt(files.length)] ?? path;
    const bytes = await readFile(file);
    const at = randomInt(bytes.length);
    const before = bytes[at] ?? 0;
    bytes[at] = before ^ randomInt(1, 256);
    await writeFile(file, bytes);
    count.changed += 1;
    const { subjects } = await verifyAll([path]);
    const wrong = subjects[0].checks.filter(
      (/** @type {{ id: string, result: string }} */ { id, result }) =>
        result === 'failed' || (id === 'delivery.same' && result === 'notice'),
    );
    const named = wrong.some((/** @type {{ id: string }} */ { id }) => expected(file).test(id));
    const stumbled = wrong.some((/** @type {{ id: string }} */ { id }) => id === 'check.finished');
    if (named && !stumbled) count.found += 1;
    // A zip has bytes that say nothing about its files, such as their dates.
    else if (whole !== undefined && wrong.length === 0 && (await contents(path)) === whole)
      count.harmless += 1;
    else missed.push(`${what}: ${relative(folder, file)} byte ${at}: ${JSON.stringify(wrong)}`);
    bytes[at] = before;
    await writeFile(file, bytes);
  }
}

try {
  const { record, bag } = await makeRecord(folder, 6, 3000);
  const { dossier } = await makeDossier(folder, 4, 3000);
  const unpacked = join(folder, 'unpacked');
  const { execFileSync } = await import('node:child_process');
  execFileSync('python3', ['-m', 'zipfile', '-e', bag, unpacked]);
  const copy = join(folder, 'copy');
  await cp(record, copy, { recursive: true });
  await attack('dossier', dossier, [dossier]);
  await attack('bag as folder', unpacked, await filesBelow(unpacked));
  await attack('bag as zip', bag, [bag]);
  await attack('record', copy, await filesBelow(copy));
  console.table(tally);
  for (const one of missed.slice(0, 20)) console.log('MISSED', one);
  process.exitCode = missed.length === 0 ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
