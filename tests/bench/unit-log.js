import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

export const name = 'Reading a unit log (a year of minutes, 6 temperatures, a mode; and 2 million rows)';
export const reference = 'a bare split of the same file into cells, in a process of its own';

const inProcess = promisify(execFile);
const WORKER = new URL('read-log.worker.js', import.meta.url).pathname;
const ROUNDS = 3;

/**
 * An invented log by the minute.
 * @param {string} file
 * @param {number} rows
 */
async function write(file, rows) {
  const out = createWriteStream(file);
  out.write(
    'Date time,Set point (F),Return air (F),Supply air (F),Ambient (F),Probe 1 (F),Probe 2 (F),Mode\n',
  );
  const start = Date.UTC(2026, 0, 1);
  for (let from = 0; from < rows; from += 10_000) {
    let text = '';
    for (let i = from; i < Math.min(rows, from + 10_000); i++) {
      const at = new Date(start + i * 60_000).toISOString().slice(0, 16).replace('T', ' ');
      const swing = Math.sin(i / 20) * 2;
      text += `${at},36.0,${(37 + swing).toFixed(1)},${(35 + swing).toFixed(1)},${(80 + 10 * swing).toFixed(1)},${(36.5 + swing / 4).toFixed(1)},${(36.2 + swing / 5).toFixed(1)},${i % 360 < 15 ? 'Defrost' : 'Cool'}\n`;
    }
    if (!out.write(text)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'close');
}

/**
 * The best of a few runs: what the machine can do when nothing else keeps it busy.
 * @param {'own' | 'split'} how
 * @param {string} file
 * @param {number} rows
 */
async function measure(how, file, rows) {
  const best = { seconds: Number.POSITIVE_INFINITY, megabytes: Number.POSITIVE_INFINITY };
  for (let i = 0; i < ROUNDS; i++) {
    const { stdout } = await inProcess(process.execPath, [WORKER, how, file]);
    const got = JSON.parse(stdout);
    if (got.rows !== rows) throw new Error(`${how} read ${got.rows} of ${rows} rows`);
    best.seconds = Math.min(best.seconds, got.seconds);
    best.megabytes = Math.min(best.megabytes, got.megabytes);
  }
  return best;
}

export async function run() {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const figures = [];
  try {
    for (const rows of [525_600, 2_000_000]) {
      const file = join(folder, `${rows}.csv`);
      await write(file, rows);
      const own = await measure('own', file, rows);
      const bare = await measure('split', file, rows);
      const what = rows.toLocaleString('en-US');
      figures.push({ what: `${what} rows, time`, unit: 's', own: own.seconds, reference: bare.seconds });
      figures.push({
        what: `${what} rows, peak memory`,
        unit: 'MB',
        own: own.megabytes,
        reference: bare.megabytes,
      });
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return figures;
}
