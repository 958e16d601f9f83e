// Several processes record into one delivery at the same time: every entry that one of them said it recorded must be
// there once, and the record must verify.
//   node tests/stress/writers.js [processes] [entries each]
import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MAIN = new URL('../../dist/cli/main.js', import.meta.url).pathname;
const FACTS = new URL('../../fixtures/demo/delivery.yaml', import.meta.url).pathname;
const [processes = 2, each = 25] = process.argv.slice(2).map(Number);
const folder = await mkdtemp(join(tmpdir(), 'stress-writers-'));
const delivery = join(folder, 'delivery');

/** @param {string[]} args @returns {Promise<{ code: number | null, out: string }>} */
function run(args) {
  return new Promise((done) => {
    const child = spawn(process.execPath, [MAIN, ...args], {
      env: { ...process.env, DOSSIER_BY: 'Stress', NO_COLOR: '1' },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let out = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.on('close', (code) => done({ code, out }));
  });
}

try {
  await run(['new', delivery, '--file', FACTS]);
  /** @type {string[]} */
  const said = [];
  let refused = 0;
  const writer = async (/** @type {number} */ who) => {
    for (let i = 0; i < each; i += 1) {
      const number = `W${who}-${i}`;
      const { code } = await run([
        'record',
        'seal',
        number,
        '--state',
        'intact',
        '--stop',
        'load-1',
        '-d',
        delivery,
      ]);
      if (code === 0) said.push(number);
      else refused += 1;
    }
  };
  await Promise.all(Array.from({ length: processes }, (_, who) => writer(who)));
  const ledger = await readFile(join(delivery, 'ledger.jsonl'), 'utf8');
  const wrong = said.filter((number) => ledger.split(`"number":"${number}"`).length !== 2);
  const locks = (await readdir(delivery)).filter((name) => name.endsWith('.lock'));
  const { code } = await run(['verify', '--brief', delivery]);
  console.log(
    `${processes} writers: ${said.length} recorded, ${refused} refused, ${wrong.length} lost or doubled, ${locks.length} locks left, verify ends with ${code}`,
  );
  process.exitCode = wrong.length === 0 && locks.length === 0 && code === 0 ? 0 : 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
