// Records, collects, fingerprints and builds on a small disk with no room, or with a few pages of room so that it
// fills at different steps: the command must end well or say that the disk is full and end with 2, nothing confirmed may be lost, and once there is room again everything goes on. Needs to be root for the disk.
//   node tests/stress/disk-full.js [megabytes]
import { execFileSync, spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MAIN = new URL('../../dist/cli/main.js', import.meta.url).pathname;
const FACTS = new URL('../../fixtures/demo/delivery.yaml', import.meta.url).pathname;
const megabytes = Number(process.argv[2] ?? 64);
const folder = mkdtempSync(join(tmpdir(), 'stress-full-'));
const disk = join(folder, 'disk');
mkdirSync(disk);

function mounted() {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', disk], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

if (!mounted()) {
  console.log('not run: a small disk can only be mounted by root');
  rmSync(folder, { recursive: true });
  process.exit(0);
}

/** @type {string[]} */
const wrong = [];
const delivery = join(disk, 'delivery');
const dossier = (/** @type {string[]} */ ...args) => {
  const done = spawnSync(process.execPath, [MAIN, ...args], {
    encoding: 'utf8',
    env: {
      ...process.env,
      DOSSIER_IDENTITY: join(folder, 'identity'),
      DOSSIER_PASSPHRASE: 'only for a stress run',
      DOSSIER_BY: 'Stress',
      NO_COLOR: '1',
    },
  });
  return { code: done.status, out: done.stdout, err: done.stderr };
};
const filler = join(disk, 'filler');
const entries = () => readFileSync(join(delivery, 'ledger.jsonl'), 'utf8').split('\n').length - 1;

/** Leaves so many pages free. @param {number} pages */
function fill(pages) {
  const free = Number(
    execFileSync('df', ['--output=avail', '-B4096', disk], { encoding: 'utf8' }).split('\n')[1],
  );
  const count = Math.max(0, free - pages);
  spawnSync('dd', ['if=/dev/zero', `of=${filler}`, 'bs=4096', `count=${count}`], { stdio: 'ignore' });
}

try {
  if (dossier('new', delivery, '--file', FACTS).code !== 0) throw new Error('no delivery');
  /** @type {[string, () => string[]][]} */
  const commands = [
    ['collect', () => ['collect', join(folder, 'photo.bin'), '-d', delivery]],
    ['record', () => ['record', 'seal', 'S1', '--state', 'intact', '--stop', 'load-1', '-d', delivery]],
    ['fingerprint', () => ['fingerprint', '--to', 'P', '--how', 'text', '-d', delivery]],
    ['build', () => ['build', '-d', delivery]],
  ];
  for (const [name, args] of commands) {
    /** @type {string[]} */
    const said = [];
    for (const pages of name === 'build' ? [0, 4, 200] : [0, 1, 2, 3, 4, 6, 20, 60]) {
      writeFileSync(join(folder, 'photo.bin'), randomBytes(300_000));
      const before = entries();
      fill(pages);
      const full = dossier(...args());
      const told = full.code === 2 && /full|ENOSPC/.test(full.err);
      if (!told && full.code !== 0)
        wrong.push(`${name} with ${pages} pages ends with ${full.code}: ${full.err.slice(0, 300)}`);
      said.push(
        `${pages}: ${full.code === 0 ? 'fits' : full.err.split('\n')[0]?.split(': ').slice(1).join(': ')}`,
      );
      rmSync(filler, { force: true });
      if (entries() < before) wrong.push(`${name}: ${entries()} entries, ${before} before`);
      const after = dossier(...args());
      if (after.code !== 0)
        wrong.push(`${name} with room again ends with ${after.code}: ${after.err.slice(0, 300)}`);
      const { code, out } = dossier('verify', '--brief', delivery);
      if (code !== 0) wrong.push(`${name}: the record does not verify: ${out}`);
    }
    console.log(`${name}, by pages of 4 KB left: ${said.join('; ')}`);
  }
  for (const one of wrong) console.log('WRONG', one);
  process.exitCode = wrong.length === 0 ? 0 : 1;
} finally {
  execFileSync('umount', [disk]);
  rmSync(folder, { recursive: true, force: true });
}
