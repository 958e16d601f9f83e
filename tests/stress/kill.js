// Kills commands at random moments with SIGKILL and looks at what is left: nothing that was acknowledged may be lost,
// the next command must run, no lock may stay, and the record must verify.
//   node tests/stress/kill.js [kills]
import { spawn } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MAIN = new URL('../../dist/cli/main.js', import.meta.url).pathname;
const FACTS = new URL('../../fixtures/demo/delivery.yaml', import.meta.url).pathname;
const kills = Number(process.argv[2] ?? 500);
const folder = await mkdtemp(join(tmpdir(), 'stress-kill-'));
const delivery = join(folder, 'delivery');
const env = {
  ...process.env,
  DOSSIER_IDENTITY: join(folder, 'identity'),
  DOSSIER_PASSPHRASE: 'only for a stress run',
  DOSSIER_BY: 'Stress',
  NO_COLOR: '1',
};

/**
 * Runs a command, killed after some milliseconds when given.
 * @param {string[]} args @param {number} [killAfter] @returns {Promise<{ code: number | null, out: string, err: string, ms: number }>}
 */
function run(args, killAfter) {
  return new Promise((done) => {
    const from = performance.now();
    const child = spawn(process.execPath, [MAIN, ...args], { env, stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let err = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killAfter);
    child.on('close', (code) => {
      clearTimeout(timer);
      done({ code, out, err, ms: performance.now() - from });
    });
  });
}

/** @type {string[]} */
const wrong = [];
/** Lines of the ledger that a finished or acknowledged command has shown. */
let confirmed = 0;
let serial = 0;

/** Each command, and what its output acknowledges: text that must then be in the ledger. */
const COMMANDS = {
  collect: async () => {
    serial += 1;
    const file = join(folder, `note-${serial}.txt`);
    await writeFile(file, `note ${serial}`);
    return ['collect', file, '-d', delivery];
  },
  record: async () => {
    serial += 1;
    return ['record', 'seal', `S${serial}`, '--state', 'intact', '--stop', 'load-1', '-d', delivery];
  },
  fingerprint: async () => {
    serial += 1;
    return ['fingerprint', '-d', delivery, '--to', `P${serial}`, '--how', 'text'];
  },
  build: async () => ['build', '-d', delivery],
};

/** What a line on the output promises to be in the record. @param {string} name @param {string} out */
function acknowledged(name, out) {
  if (name === 'build') return /SHA-256 ([0-9a-f]{64})\n/.exec(out)?.[1];
  if (name === 'fingerprint') return out.includes('\n') ? `"to":"P${serial}"` : undefined;
  if (name === 'record') return /^e\d+ {2}/m.test(out) ? `"number":"S${serial}"` : undefined;
  return out.includes(`note-${serial}.txt`) ? `note-${serial}.txt` : undefined;
}

/** @param {string} after */
async function inspect(after) {
  const say = (/** @type {string} */ words) => wrong.push(`after killing ${after}: ${words}`);
  const next = await run(['record', 'event', 'stopped', '--stop', 'load-1', '-d', delivery]);
  if (next.code !== 0) say(`the next command ends with ${next.code}: ${next.err}`);
  const names = await readdir(delivery);
  const left = names.filter(
    (one) => one.endsWith('.lock') || one.startsWith('.part-') || one === 'checkpoint.next',
  );
  if (left.length > 0) say(`left behind: ${left.join(', ')}`);
  const ledger = (await readFile(join(delivery, 'ledger.jsonl'), 'utf8')).split('\n').length - 1;
  if (ledger < confirmed) say(`the ledger has ${ledger} entries and had ${confirmed}`);
  confirmed = ledger;
}

try {
  await mkdir(join(folder, 'identity'));
  await rm(join(folder, 'identity'), { recursive: true });
  const made = await run(['new', delivery, '--file', FACTS]);
  if (made.code !== 0) throw new Error(made.err);
  /** @type {Record<string, { kills: number, finished: number, acknowledged: number, milliseconds: number }>} */
  const tally = {};
  for (const [name, make] of Object.entries(COMMANDS)) {
    const whole = await run(await make());
    if (whole.code !== 0) throw new Error(`${name}: ${whole.err}`);
    const count = { kills: 0, finished: 0, acknowledged: 0, milliseconds: Math.round(whole.ms) };
    tally[name] = count;
    // A command that ended before its moment tells how long it takes now; it is no kill and is made up for.
    while (count.kills < kills / 4 && count.finished < kills) {
      const { code, out, ms } = await run(await make(), randomInt(Math.max(50, count.milliseconds)));
      if (code === null) count.kills += 1;
      else {
        count.finished += 1;
        count.milliseconds = Math.round((count.milliseconds + ms) / 2);
      }
      const promise = acknowledged(name, out);
      if (promise !== undefined) {
        count.acknowledged += 1;
        const ledger = await readFile(join(delivery, 'ledger.jsonl'), 'utf8');
        if (!ledger.includes(promise)) wrong.push(`${name} said ${promise} and the ledger does not have it`);
      }
      await inspect(name);
    }
    const { code, out } = await run(['verify', '--brief', delivery]);
    if (code !== 0) wrong.push(`after ${name} the record does not verify: ${out}`);
  }
  console.table(tally);
  for (const one of wrong.slice(0, 20)) console.log('WRONG', one);
  console.log(`${wrong.length} wrong; ${confirmed} entries in the ledger`);
  process.exitCode = wrong.length === 0 ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
