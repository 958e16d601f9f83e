import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

export const name = 'Reading a log and everything computed of it (6 temperatures by the minute)';
export const reference = 'a bare parse of the same file into numbers, in a process of its own';

const inProcess = promisify(execFile);
const WORKER = new URL('temperatures.worker.js', import.meta.url).pathname;
const ROUNDS = 3;
/** @param {number} rows */
const words = (rows) => rows.toLocaleString('en-US');
const GROWTH = [50_000, 500_000, 5_000_000];
const HEADINGS = 'Date time,Set point (F),Return air (F),Supply air (F),Ambient (F),Probe 1 (F),Probe 2 (F)';

/** @typedef {{ headings: string, row: (i: number) => string }} Kind */

/**
 * Temperatures that swing to and fro, with an excursion every two hours.
 * @returns {Kind}
 */
function even() {
  const start = Date.UTC(2016, 0, 1);
  return {
    headings: HEADINGS,
    row(i) {
      const at = new Date(start + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
      const swing = Math.sin(i / 20) * 2;
      return `${at},36.0,${(37 + swing).toFixed(1)},${(35 + swing).toFixed(1)},${(80 + 10 * swing).toFixed(1)},${(36.5 + swing / 4).toFixed(1)},${(36.2 + swing / 5).toFixed(1)}`;
    },
  };
}

/**
 * Uneven steps, noise, marks of a fault, defrosts, and an excursion every quarter of an hour.
 * @returns {Kind}
 */
function noisy() {
  let seed = 7;
  const chance = () => {
    seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
    return seed / 2_147_483_648;
  };
  let time = Date.UTC(2016, 0, 1);
  return {
    headings: `${HEADINGS},Mode`,
    row(i) {
      time += 60_000 + Math.floor(chance() * 5) * 1000;
      const at = new Date(time).toISOString().slice(0, 19).replace('T', ' ');
      const swing = Math.sin(i / 500) * 2;
      const near = (/** @type {number} */ value) => (value + (chance() - 0.5) * 1.5).toFixed(1);
      const air = chance() < 0.002 ? '----' : near(36.5 + swing);
      return `${at},36.0,${air},${near(35 + swing)},${near(80 + 10 * swing)},${near(36.5 + swing / 4)},${near(36.2 + swing / 5)},${i % 360 < 15 ? 'Defrost' : 'Cool'}`;
    },
  };
}

/**
 * An invented log by the minute.
 * @param {string} file
 * @param {number} rows
 * @param {Kind} kind
 */
async function write(file, rows, kind) {
  const out = createWriteStream(file);
  out.write(`${kind.headings}\n`);
  for (let from = 0; from < rows; from += 10_000) {
    let text = '';
    for (let i = from; i < Math.min(rows, from + 10_000); i++) text += `${kind.row(i)}\n`;
    if (!out.write(text)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'close');
}

/** @typedef {'own' | 'pulps' | 'bare'} How */

/**
 * The best of a few runs of each way, turn by turn: what the machine can do when nothing else keeps it busy, and what
 * does keeps all of them busy.
 * @template {How} H
 * @param {readonly H[]} ways
 * @param {string} file
 * @param {number} rounds
 * @returns {Promise<Record<H, { seconds: number, assess: number, megabytes: number }>>}
 */
async function measure(ways, file, rounds) {
  const most = Number.POSITIVE_INFINITY;
  const best = /** @type {Record<H, { seconds: number, assess: number, megabytes: number }>} */ (
    Object.fromEntries(ways.map((how) => [how, { seconds: most, assess: most, megabytes: most }]))
  );
  for (let i = 0; i < rounds; i++)
    for (const how of ways) {
      const { stdout } = await inProcess(process.execPath, [WORKER, how, file]);
      const got = JSON.parse(stdout);
      best[how].seconds = Math.min(best[how].seconds, got.seconds);
      best[how].assess = Math.min(best[how].assess, got.assess ?? most);
      best[how].megabytes = Math.min(best[how].megabytes, got.megabytes);
    }
  return best;
}

/**
 * Seconds and megabytes of more and more rows, each against those of the step before.
 * @param {string} folder
 * @param {string} what
 * @param {() => Kind} kind
 */
async function growth(folder, what, kind) {
  const figures = [];
  /** @type {{ rows: number, seconds: number, megabytes: number } | undefined} */
  let fewer;
  for (const rows of GROWTH) {
    const file = join(folder, `${rows}.csv`);
    await write(file, rows, kind());
    const { own } = await measure(['own'], file, rows > 1_000_000 ? 1 : ROUNDS);
    await rm(file);
    if (fewer !== undefined) {
      const times = rows / fewer.rows;
      figures.push({
        what: `${what}: ${words(rows)} rows, time against ${times} × that of ${words(fewer.rows)}`,
        unit: 's',
        own: own.seconds,
        reference: fewer.seconds * times,
      });
      figures.push({
        what: `${what}: ${words(rows)} rows, peak memory against that of ${words(fewer.rows)}`,
        unit: 'MB',
        own: own.megabytes,
        reference: fewer.megabytes,
      });
    }
    fewer = { rows, seconds: own.seconds, megabytes: own.megabytes };
  }
  return figures;
}

/** A year against a bare parse, without and with pulps; then seconds and memory from 50 thousand to 5 million rows. */
export async function run() {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const figures = [];
  try {
    const year = join(folder, 'year.csv');
    await write(year, 525_600, even());
    const { own, pulps, bare } = await measure(['own', 'pulps', 'bare'], year, ROUNDS);
    figures.push({ what: 'a year, read and computed', unit: 's', own: own.seconds, reference: bare.seconds });
    figures.push({ what: 'of which computed', unit: 's', own: own.assess, reference: bare.seconds });
    figures.push({
      what: 'with pulps of 3 lines and what product can have been like',
      unit: 's',
      own: pulps.seconds,
      reference: bare.seconds,
    });
    figures.push({ what: 'a year, peak memory', unit: 'MB', own: own.megabytes, reference: bare.megabytes });
    figures.push(...(await growth(folder, 'even', even)));
    figures.push(...(await growth(folder, 'noisy', noisy)));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return figures;
}
