// Asking a thousand deliveries at once what is missing, as a dispatcher does: each quickly, and none held in memory.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { measure } from './measuring/measure.js';

export const name = 'gaps of 1,000 deliveries in one process';
export const reference = 'what each may take, and the memory for 100';

const MAIN = fileURLToPath(new URL('../../dist/program/dossier.js', import.meta.url));
const WORKER = fileURLToPath(new URL('fleet.worker.js', import.meta.url));
const FIXTURES = fileURLToPath(new URL('../../fixtures/demo/', import.meta.url));
/** Milliseconds of the processors for a delivery. */
const EACH_MAY_TAKE = 20;

export async function run() {
  const room = mkdtempSync(join(tmpdir(), 'bench-fleet-'));
  process.env.DOSSIER_BY = 'Bench';
  try {
    const first = join(room, '0');
    measure([MAIN, 'new', first, '--file', join(FIXTURES, 'delivery.yaml')]);
    measure([
      MAIN,
      'record',
      'pulp',
      '34.2F',
      '--stop',
      'load-1',
      '--line',
      'celery',
      '--at',
      '2026-07-14T04:30',
      '-d',
      first,
    ]);
    const folders = Array.from({ length: 1_000 }, (_, i) => join(room, String(i)));
    for (const folder of folders.slice(1)) cpSync(first, folder, { recursive: true });
    const asked = (/** @type {number} */ count) => {
      const took = measure(['--expose-gc', WORKER, room, String(count)]);
      const [open = 0, held = Number.NaN] = took.out.split(' ').map(Number);
      if (!(open >= count)) throw new Error(`${open} open requirements in ${count} deliveries`);
      return { ...took, held };
    };
    const [few, all] = [asked(100), asked(1_000)];
    return [
      {
        what: 'processor time of each',
        unit: 'ms',
        own: ((all.cpuSeconds - few.cpuSeconds) / 900) * 1000,
        reference: EACH_MAY_TAKE,
      },
      { what: 'objects held when all are answered', unit: 'MB', own: all.held, reference: few.held },
      // How much garbage the engine lets stand before it collects all of it.
      { what: 'peak memory', unit: 'MB', own: all.megabytes, reference: few.megabytes },
    ];
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}
