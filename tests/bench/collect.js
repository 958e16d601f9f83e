// Taking in a clerk's folder: 500 files, 60 of them broken, against hashing and copying the same files and reading
// the photos' EXIF by general-purpose programs. Both sides start their own processes.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PDFDocument } from 'pdf-lib';
import sharp from 'sharp';
import { TAGS } from '../../dist/intake/photo/exif.js';
import { withExif } from '../../fixtures/demo/make/exif.js';
import { measure } from './measuring/measure.js';

export const name = 'collect: 500 mixed files, 60 of them broken';
export const reference = 'openssl dgst -sha256, cp, and ExifTool or exifr over the photos';

const PHOTOS = 300;
const KINDS = 12;
const PAPERS = 60;
const TEXTS = 80;
const BROKEN = 60;
const FACTS = `delivery: BENCH-1
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix, at: [32.7, -114.3], planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Chicago, at: [41.3, -96.4], planned: 2026-07-16T06:00 }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1 }
`;

/** @returns {Promise<{ folder: string, photos: number }>} */
async function makeFiles(/** @type {string} */ folder) {
  const put = (/** @type {string} */ file, /** @type {Uint8Array | string} */ bytes) =>
    writeFileSync(join(folder, file), bytes);
  const photos = await Promise.all(Array.from({ length: KINDS }, (_, i) => photo(i)));
  for (let i = 0; i < PHOTOS; i += 1) {
    // Bytes behind the end marker keep the picture and change the hash.
    const base = photos[i % KINDS] ?? Buffer.alloc(0);
    put(`IMG_${1000 + i}.jpg`, Buffer.concat([base, Buffer.from(`\n${i}`)]));
  }
  for (let i = 0; i < PAPERS; i += 1) put(`paper-${i}.pdf`, await paper(i));
  for (let i = 0; i < TEXTS; i += 1)
    put(`message-${i}.txt`, `From: dispatch\nTo: driver\n\nRun it at ${30 + i}.\n`);
  for (let i = 0; i < BROKEN; i += 1) {
    const whole = photos[i % KINDS] ?? Buffer.alloc(0);
    if (i % 4 === 0) put(`broken-${i}.jpg`, whole.subarray(0, whole.length / 2 + i));
    else if (i % 4 === 1) put(`broken-${i}.pdf`, (await paper(i + 500)).subarray(0, 400));
    else if (i % 4 === 2) put(`broken-${i}.heic`, Buffer.alloc(2000 + i, i));
    else put(`broken-${i}.csv`, `kind,time,value\npulp,never ${i},warm\n`);
  }
  return { folder, photos: PHOTOS };
}

async function photo(/** @type {number} */ seed) {
  const small = Buffer.alloc(400 * 300 * 3);
  let state = seed + 1;
  for (let i = 0; i < small.length; i += 1) {
    state = (state * 1103515245 + 12345) & 0x7fffffff;
    small[i] = 60 + ((state >> 16) % 140);
  }
  const image = await sharp(small, { raw: { width: 400, height: 300, channels: 3 } })
    .resize(4000, 3000, { kernel: 'cubic' })
    .jpeg({ quality: 85 })
    .toBuffer();
  return withExif(image, {
    make: 'Demo',
    model: 'Phone A',
    orientation: 1,
    width: 4000,
    height: 3000,
    taken: '2026:07:14 04:10:00',
    preview: await sharp(image).resize(160, 120).jpeg({ quality: 75 }).toBuffer(),
  });
}

async function paper(/** @type {number} */ number) {
  const pdf = await PDFDocument.create();
  pdf.addPage().drawText(`Scale ticket ${number}`);
  return Buffer.from(await pdf.save());
}

const worker = (/** @type {string} */ file) => fileURLToPath(new URL(file, import.meta.url));

function timed(/** @type {string} */ command, /** @type {string[]} */ args) {
  const begin = performance.now();
  const done = spawnSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (done.error !== undefined) throw done.error;
  if (done.status !== 0) throw new Error(`${command}: ${done.stderr}`);
  return { seconds: (performance.now() - begin) / 1000, out: done.stdout };
}

const seconds = (/** @type {string} */ command, /** @type {string[]} */ args) => timed(command, args).seconds;

/** Seconds that ExifTool takes for the photos; undefined where it is not installed. @param {string[]} files */
function exifTool(files) {
  if (spawnSync('exiftool', ['-ver']).status !== 0) return undefined;
  const photos = files.filter((file) => file.endsWith('.jpg'));
  const begin = performance.now();
  // It ends with 1 where a photo is broken.
  const { stdout } = spawnSync('exiftool', ['-j', ...TAGS.map((tag) => `-${tag}`), ...photos], {
    maxBuffer: 1 << 28,
  });
  const took = (performance.now() - begin) / 1000;
  if (JSON.parse(String(stdout)).length !== photos.length) throw new Error('exiftool left photos out');
  return took;
}

/** Both sides in turn, and the best of each: on a shared machine taking fresh memory alone can double a time. */
const ROUNDS = 5;

export async function run() {
  const scratch = mkdtempSync(join(tmpdir(), 'bench-collect-'));
  try {
    const folder = join(scratch, 'in');
    mkdirSync(folder);
    await makeFiles(folder);
    const files = readdirSync(folder).map((file) => join(folder, file));
    const facts = join(scratch, 'facts.yaml');
    writeFileSync(facts, FACTS);
    const copies = join(scratch, 'copies');
    const made = join(scratch, 'delivery');
    const clear = () => {
      for (const one of [copies, made]) rmSync(one, { recursive: true, force: true });
      mkdirSync(copies);
    };
    /** Copies the files unmeasured, so that each side finds them, and room for three times as much, in memory. */
    const prepare = () => {
      clear();
      for (const one of ['a', 'b', 'c']) {
        const copy = join(copies, one);
        mkdirSync(copy);
        timed('cp', [...files, copy]);
      }
      clear();
    };
    let own = Number.POSITIVE_INFINITY;
    let reference = Number.POSITIVE_INFINITY;
    let synced = Number.POSITIVE_INFINITY;
    let byProgram = Number.POSITIVE_INFINITY;
    let peak = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      prepare();
      const copy = seconds('cp', [...files, copies]);
      // What is taken in is on the disk itself before it is acknowledged; cp leaves that to the system.
      const copied = readdirSync(copies).map((file) => join(copies, file));
      const sync = seconds('sync', copied);
      const hash = seconds('openssl', ['dgst', '-sha256', ...files]);
      const exif = seconds(process.execPath, [worker('./read-exif.worker.js'), folder]);
      reference = Math.min(reference, copy + hash + exif);
      synced = Math.min(synced, copy + sync + hash + exif);
      const programs = exifTool(files);
      if (programs !== undefined) byProgram = Math.min(byProgram, copy + hash + programs);
      prepare();
      const collect = measure([worker('./collect.worker.js'), facts, made, folder]);
      const { taken } = JSON.parse(collect.out);
      if (taken !== files.length) throw new Error(`${taken} of ${files.length} were taken in`);
      own = Math.min(own, collect.seconds);
      peak = Math.max(peak, collect.megabytes);
    }
    const decode = seconds(process.execPath, [worker('./decode.worker.js'), folder]);
    return [
      ...(Number.isFinite(byProgram)
        ? [{ what: 'time, EXIF read by ExifTool', unit: 's', own, reference: byProgram }]
        : []),
      { what: 'time, EXIF read by exifr', unit: 's', own, reference },
      {
        what: 'the same, when the reference also brings its copies to the disk itself (sync)',
        unit: 's',
        own,
        reference: synced,
      },
      {
        what: 'the same, when the reference also decodes each photo once (to see that it is whole, bright and sharp)',
        unit: 's',
        own,
        reference: reference + decode,
      },
      { what: 'peak memory, against the 400 MB it may take', unit: 'MB', own: peak, reference: 400 },
    ];
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
