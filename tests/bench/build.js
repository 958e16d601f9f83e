// Building a dossier of 300 photos of 12 megapixels, against bare scaling of the same photos to the size and quality
// that the dossier has them in. Both sides are processes of their own.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';

export const name = 'build: 300 photos of 12 megapixels';
export const reference =
  'sharp, scaling the same photos to the same size and quality by its own settings for small files, two at a time';

const PHOTOS = 300;
const KINDS = 12;
const TAKEN = '2026:07:14 04:10:00';
const FACTS = `delivery: BENCH-2
parties: { carrier: { name: Example Haulage } }
equipment: { trailer: { number: T-7 } }
stops:
  - { id: load-1, does: load, place: Esparto Flats, zone: America/Phoenix }
  - { id: drop-1, does: unload, place: Mock Elms, zone: America/Chicago }
lines:
  - { id: romaine, goods: lettuce-romaine, from: load-1, to: drop-1 }
`;

/** A picture with the detail of a photo: coarse and fine noise over large shapes. @param {number} seed */
async function photo(seed) {
  let state = seed + 1;
  const noise = (/** @type {number} */ width, /** @type {number} */ height) => {
    const bytes = Buffer.alloc(width * height * 3);
    for (let i = 0; i < bytes.length; i += 1) {
      state = (state * 1103515245 + 12345) & 0x7fffffff;
      bytes[i] = 60 + ((state >> 16) % 140);
    }
    return sharp(bytes, { raw: { width, height, channels: 3 } });
  };
  const fine = await noise(800, 600)
    .resize(4000, 3000, { kernel: 'cubic' })
    .png({ compressionLevel: 0 })
    .toBuffer();
  return noise(40, 30)
    .resize(4000, 3000, { kernel: 'cubic' })
    .composite([{ input: fine, blend: 'soft-light' }])
    .withExif({
      IFD0: { Make: 'Demo', Model: 'Phone A' },
      IFD2: { DateTimeOriginal: TAKEN, OffsetTimeOriginal: '-07:00' },
    })
    .jpeg({ quality: 85 })
    .toBuffer();
}

/**
 * The photo with its own time and its own colours: two steps of its second quantization table (ITU-T T.81, B.2.4.1)
 * are taken larger, so that no two pictures are the same when they are scaled, and none had to be encoded anew.
 * @param {Buffer} jpeg @param {number} index
 */
function variant(jpeg, index) {
  const made = Buffer.from(jpeg);
  made.write(takenAt(index), made.indexOf(TAKEN), 'latin1');
  const table = made.indexOf(Buffer.from([0xff, 0xdb, 0, 67, 1])) + 5;
  const nth = Math.floor(index / KINDS);
  made.writeUInt8(made.readUInt8(table + 1) + (nth % 5), table + 1);
  made.writeUInt8(made.readUInt8(table + 2) + Math.floor(nth / 5), table + 2);
  return made;
}

/** As EXIF writes it, two minutes after the one before. @param {number} index */
function takenAt(index) {
  const at = new Date(Date.UTC(2026, 6, 14, 4, 10) + index * 120_000).toISOString();
  return at.slice(0, 19).replace('T', ' ').replaceAll('-', ':');
}

/**
 * Runs a worker and watches what it and its children hold in memory together, and what they take of the processors,
 * where the system tells (Linux).
 * @param {string} worker @param {string[]} args
 */
async function timed(worker, ...args) {
  const begin = performance.now();
  const child = spawn(process.execPath, [new URL(worker, import.meta.url).pathname, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (/** @type {string} */ text) => {
    out += text;
  });
  let [peak, cores] = [0, 0];
  const watch = setInterval(() => {
    peak = Math.max(peak, megabytesOf(child.pid ?? 0));
    cores = Math.max(cores, coreSecondsOf(child.pid ?? 0));
  }, 50);
  const [code] = await once(child, 'close');
  clearInterval(watch);
  if (code !== 0) throw new Error(`${worker} ended with ${code}`);
  return { seconds: (performance.now() - begin) / 1000, peak, cores, said: JSON.parse(out) };
}

/** Processor time of a process and of its children that ended: seconds of one core. @param {number} pid */
function coreSecondsOf(pid) {
  try {
    // proc(5): utime, stime, cutime and cstime in hundredths, counted from behind the name in brackets.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /, '')
      .split(' ');
    return fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks), 0) / 100;
  } catch {
    return 0;
  }
}

/** Resident memory of a process and its children. @param {number} pid @returns {number} */
function megabytesOf(pid) {
  try {
    const [, kilobytes = '0'] = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8')) ?? [];
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8')
      .trim()
      .split(' ')
      .filter(Boolean);
    return (
      Number(kilobytes) / 1024 + children.map((one) => megabytesOf(Number(one))).reduce((a, b) => a + b, 0)
    );
  } catch {
    return 0;
  }
}

/** All sides in turn, and the best of each. */
const ROUNDS = 3;

class Best {
  seconds = Number.POSITIVE_INFINITY;
  cores = Number.POSITIVE_INFINITY;
  peak = 0;

  /** Takes one run into account and hands on what it said. @param {Awaited<ReturnType<typeof timed>>} run */
  of({ seconds, cores, peak, said }) {
    this.seconds = Math.min(this.seconds, seconds);
    this.cores = Math.min(this.cores, cores);
    this.peak = Math.max(this.peak, peak);
    return said;
  }
}

export async function run() {
  const scratch = mkdtempSync(join(tmpdir(), 'bench-build-'));
  try {
    const folder = join(scratch, 'in');
    mkdirSync(folder);
    const photos = await Promise.all(Array.from({ length: KINDS }, (_, i) => photo(i)));
    for (let i = 0; i < PHOTOS; i += 1)
      writeFileSync(join(folder, `IMG_${1000 + i}.jpg`), variant(photos[i % KINDS] ?? Buffer.alloc(0), i));
    writeFileSync(join(scratch, 'facts.yaml'), FACTS);
    const delivery = join(scratch, 'd');
    await timed('./collect.worker.js', join(scratch, 'facts.yaml'), delivery, folder);
    /** Room in memory for what is written, fetched unmeasured: on a shared machine that alone can take a second. */
    const prepare = () => {
      const room = join(scratch, 'room');
      for (const one of ['a', 'b']) cpSync(folder, join(room, one), { recursive: true });
      rmSync(room, { recursive: true });
    };
    const [own, scaled, alike] = [new Best(), new Best(), new Best()];
    let [longest, quality] = [0, 0];
    for (let round = 0; round < ROUNDS; round += 1) {
      prepare();
      const { longest: pixels, quality: fine } = own.of(
        await timed('./build.worker.js', delivery, join(scratch, 'identity')),
      );
      [longest, quality] = [pixels, fine];
      rmSync(join(delivery, 'dossiers'), { recursive: true });
      const scale = (/** @type {string} */ coding) =>
        timed('./scale.worker.js', folder, String(longest), String(quality), coding);
      scaled.of(await scale('preset'));
      alike.of(await scale('own'));
    }
    return [
      { what: `time, pictures of ${longest} pixels`, unit: 's', own: own.seconds, reference: scaled.seconds },
      {
        what: 'time, when the reference codes its pictures just as the dossier does',
        unit: 's',
        own: own.seconds,
        reference: alike.seconds,
      },
      {
        what: 'processor time, of one core',
        unit: 's',
        own: own.cores,
        reference: scaled.cores,
      },
      {
        what: 'peak memory, against the 1200 MB it may take',
        unit: 'MB',
        own: own.peak,
        reference: 1200,
      },
    ];
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}
