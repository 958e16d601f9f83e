// Changes one byte at a random place, 10,000 times, over a dossier, a bag (folder and zip) and a record: each change
// inside a file must be found, and the failed check must belong to the part that was changed. Bytes of the zip that are
// no file's may be others: the bag stands by the hashes of its files.
//   node tests/stress/random-bytes.js [changes] [part]
import { randomInt } from 'node:crypto';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { makeDossier, makeRecord } from './sample.js';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const changes = Number(process.argv[2] ?? 10_000);
const { verify } = await dist('jobs/verify.js');
const only = process.argv[3];
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

/**
 * Whether a byte of a zip is in none of its files, which are stored as they are.
 * @param {string} zip @param {readonly string[]} files
 */
async function outside(zip, files) {
  const bytes = await readFile(zip);
  const held = await Promise.all(
    files.map(async (file) => {
      const content = await readFile(file);
      const from = bytes.indexOf(content);
      return { from, to: from + content.length };
    }),
  );
  return (/** @type {number} */ at) => !held.some(({ from, to }) => at >= from && at < to);
}

/** @type {Record<string, { changed: number, failed: number, noted: number, unseen: number }>} */
const tally = {};
/** @type {string[]} */
const missed = [];

const NOTES = ['delivery.same', 'bag.tags'];

/**
 * @param {string} what @param {string} path @param {readonly string[]} files
 * @param {(at: number) => boolean} mayBeOther whether a byte may be changed without a word
 */
async function attack(what, path, files, mayBeOther = () => false, rounds = changes / 4) {
  if (only !== undefined && !what.includes(only)) return;
  const count = { changed: 0, failed: 0, noted: 0, unseen: 0 };
  tally[what] = count;
  for (let round = 0; round < rounds; round += 1) {
    const file = files[randomInt(files.length)] ?? path;
    const bytes = await readFile(file);
    const at = randomInt(bytes.length);
    const before = bytes[at] ?? 0;
    bytes[at] = before ^ randomInt(1, 256);
    await writeFile(file, bytes);
    count.changed += 1;
    const { subjects } = await verify({ paths: [path], trust: [] });
    /** @type {{ id: string, result: string }[]} */
    const told = subjects[0].checks.filter(
      (/** @type {{ id: string, result: string }} */ { id, result }) =>
        result === 'failed' || (result === 'notice' && NOTES.includes(id)),
    );
    const named = told.filter(({ id }) => expected(file).test(id));
    const stumbled = told.some(({ id }) => id === 'check.finished');
    if (told.length === 0 && mayBeOther(at)) count.unseen += 1;
    else if (named.length === 0 || stumbled)
      missed.push(`${what}: ${relative(folder, file)} byte ${at}: ${JSON.stringify(told)}`);
    else if (named.some(({ result }) => result === 'failed')) count.failed += 1;
    else count.noted += 1;
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
  const bagged = await filesBelow(unpacked);
  await attack('bag as folder', unpacked, bagged);
  await attack('bag as zip', bag, [bag], await outside(bag, bagged));
  await attack('record', copy, await filesBelow(copy));
  console.table(tally);
  for (const one of missed.slice(0, 20)) console.log('MISSED', one);
  process.exitCode = missed.length === 0 ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
