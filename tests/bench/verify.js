// What checking costs beyond hashing the same bytes: verify as a command against `openssl dgst -sha256` over the same
// files plus verify's own start-up, measured on a record of one entry.
import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeDossier, makeRecord } from '../stress/sample.js';

const MAIN = new URL('../../dist/program/dossier.js', import.meta.url).pathname;
const MB = 1_000_000;
const FILES = 40;
const ROUNDS = 9;

export const name = 'verify';
export const reference = 'openssl dgst -sha256 of the same bytes, and start-up';

export async function run() {
  const folder = await mkdtemp(join(tmpdir(), 'bench-verify-'));
  try {
    const { record: small } = await makeRecord(folder, 1, 1);
    const made = await makeRecord(folder, FILES, (400 * MB) / FILES);
    const { dossier } = await makeDossier(folder, 9, 2 * MB);
    const tagged = await demonstration(folder);
    return [
      figure('record, 400 MB in 40 files', small, [made.record], made.originals),
      figure('bag as zip, 400 MB', small, [made.bag], [made.bag]),
      figure('dossier, 18 MB inside', small, [dossier], [dossier]),
      figure('the demonstration: 9 MB, tagged pages', small, [tagged], [tagged]),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** A dossier as carriers make them, with tags, fonts, drawings and plates. @param {string} folder */
async function demonstration(folder) {
  const { build, collect, newDelivery } = await import(new URL('../../dist/index.js', import.meta.url).href);
  const fixtures = new URL('../../fixtures/demo/', import.meta.url).pathname;
  const progress = () => undefined;
  const who = { folder: join(folder, 'demo'), by: 'bench', now: () => new Date('2026-07-17T09:05:00Z') };
  await newDelivery({ ...who, file: join(fixtures, 'delivery.yaml') });
  await collect({
    ...who,
    paths: [join(fixtures, 'evidence')],
    logZone: undefined,
    logUnit: undefined,
    progress,
  });
  const out = join(folder, 'demo.pdf');
  const passphrase = async () => 'only for a bench';
  const identityFolder = join(folder, 'identity');
  await build({ ...who, out, paper: undefined, identityFolder, passphrase, progress });
  return out;
}

/**
 * The quickest of some rounds of each, taken in turn, so that a machine that is busy for a while is so for all three.
 * @param {string} what @param {string} small a record of one entry @param {string[]} paths @param {string[]} bytes
 */
function figure(what, small, paths, bytes) {
  const actions = [
    () => verify(...paths),
    () => execFileSync('openssl', ['dgst', '-sha256', ...bytes]),
    () => verify(small),
  ];
  const least = actions.map(() => Number.POSITIVE_INFINITY);
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [i, action] of actions.entries()) {
      const from = performance.now();
      action();
      least[i] = Math.min(least[i] ?? 0, (performance.now() - from) / 1000);
    }
  const [own = 0, hashed = 0, startUp = 0] = least;
  return { what, unit: 's', own, reference: hashed + startUp };
}

/** @param {string[]} paths */
function verify(...paths) {
  execFileSync(process.execPath, [MAIN, 'verify', '--brief', ...paths], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}
