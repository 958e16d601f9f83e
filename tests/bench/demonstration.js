// What people do most, on a delivery of real size: the demonstration's (100 entries, 37 pages).
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { leastOf, measure } from './measuring/measure.js';

export const name = 'the demonstration: each command as people type it';
export const reference = 'what it may take';

const MAIN = fileURLToPath(new URL('../../dist/program/dossier.js', import.meta.url));
const FIXTURES = fileURLToPath(new URL('../../fixtures/demo/', import.meta.url));
const ROUNDS = 5;
/** Processor seconds. */
const GAPS_MAY_TAKE = 0.5;
/** Seconds on the clock. */
const BUILD_MAY_TAKE = 3;

export async function run() {
  const room = mkdtempSync(join(tmpdir(), 'bench-demonstration-'));
  Object.assign(process.env, {
    DOSSIER_BY: 'Bench',
    DOSSIER_IDENTITY: join(room, 'identity'),
    DOSSIER_PASSPHRASE: 'of-a-bench-that-forgets-it',
  });
  try {
    const folder = join(room, 'delivery');
    measure([MAIN, 'new', folder, '--file', join(FIXTURES, 'delivery.yaml')]);
    measure([MAIN, 'collect', join(FIXTURES, 'evidence'), '-d', folder]);
    const { gaps, build } = leastOf(
      {
        // It ends with 1 while something is open.
        gaps: () => measure([MAIN, 'gaps', folder], [0, 1]),
        build: () => {
          rmSync(join(folder, 'dossiers'), { recursive: true, force: true });
          return measure([MAIN, 'build', '-d', folder]);
        },
      },
      ROUNDS,
    );
    return [
      { what: 'gaps, processor time', unit: 's', own: gaps.cpuSeconds, reference: GAPS_MAY_TAKE },
      { what: 'build, time', unit: 's', own: build.seconds, reference: BUILD_MAY_TAKE },
    ];
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}
