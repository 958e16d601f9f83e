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

/**
 * An invented log by the minute.
 * @param {string} file
 * @param {number} rows
 */
async function write(file, rows) {
  const out = createWriteStream(file);
  out.write('Date time,Set point (F),Return air (F),Supply air (F),Ambient (F),Probe 1 (F),Probe 2 (F)\n');
  const start = Date.UTC(2016, 0, 1);
  for (let from = 0; from < rows; from += 10_000) {
    let text = '';
    for (let i = from; i < Math.min(rows, from + 10_000); i++) {
      const at = new Date(start + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
      const swing = Math.sin(i / 20) * 2;
      text += `${at},36.0,${(37 + swing).toFixed(1)},${(35 + swing).toFixed(1)},${(80 + 10 * swing).toFixed(1)},${(36.5 + swing / 4).toFixed(1)},${(36.2 + swing / 5).toFixed(1)}\n`;
    }
    if (!out.write(text)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'close');
}

/**
 * The best of a few runs: what the machine can do when nothing else keeps it busy.
 * @param {'own' | 'bare'} how
 * @param {string} file
 * @param {number} rounds
 */
async function measure(how, file, rounds) {
  const best = {
    seconds: Number.POSITIVE_INFINITY,
    assess: Number.POSITIVE_INFINITY,
    megabytes: Number.POSITIVE_INFINITY,
  };
  for (let i = 0; i < rounds; i++) {
    const { stdout } = await inProcess(process.execPath, [WORKER, how, file]);
    const got = JSON.parse(stdout);
    best.seconds = Math.min(best.seconds, got.seconds);
    best.assess = Math.min(best.assess, got.assess ?? 0);
    best.megabytes = Math.min(best.megabytes, got.megabytes);
  }
  return best;
}

/** A year against a bare parse; then microseconds and bytes a row from 50 thousand to 5 million rows, against the year's. */
export async function run() {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const figures = [];
  try {
    const year = join(folder, 'year.csv');
    await write(year, 525_600);
    const own = await measure('own', year, ROUNDS);
    const bare = await measure('bare', year, ROUNDS);
    figures.push({ what: 'a year, read and computed', unit: 's', own: own.seconds, reference: bare.seconds });
    figures.push({ what: 'of which computed', unit: 's', own: own.assess, reference: bare.seconds });
    figures.push({ what: 'a year, peak memory', unit: 'MB', own: own.megabytes, reference: bare.megabytes });
    for (const rows of [50_000, 2_000_000, 5_000_000]) {
      const file = join(folder, `${rows}.csv`);
      await write(file, rows);
      const one = await measure('own', file, 1);
      await rm(file);
      const what = rows.toLocaleString('en-US');
      figures.push({
        what: `${what} rows, per row against a year's`,
        unit: 'µs',
        own: (one.seconds / rows) * 1e6,
        reference: (own.seconds / 525_600) * 1e6,
      });
      figures.push({
        what: `${what} rows, peak memory against the columns themselves`,
        unit: 'MB',
        own: one.megabytes,
        // Times and six temperatures in 8 bytes each.
        reference: (rows * 7 * 8) / 1e6,
      });
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return figures;
}
