import { mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type WorkerSettings, Workers } from '../../src/platform/node/worker/workers.js';

const ANSWERING = pathToFileURL('src/platform/node/worker/answering.js').href;
const folder = await mkdtemp(join(tmpdir(), 'workers-'));

/** A script whose worker does this with a request. */
async function script(name: string, work: string): Promise<URL> {
  const path = join(folder, `${name}.mjs`);
  await writeFile(path, `import { answering } from '${ANSWERING}';\nlet asked = 0;\nanswering(${work});\n`);
  return pathToFileURL(path);
}

const running: Workers<unknown, unknown>[] = [];
afterEach(() => {
  for (const one of running.splice(0)) one.close();
});
function workers(
  settings: Pick<WorkerSettings<unknown>, 'script' | 'runs'> & Partial<WorkerSettings<unknown>>,
) {
  const made = new Workers<unknown, unknown>({
    seconds: 20,
    megabytes: 64,
    answer: z.unknown(),
    ...settings,
  });
  running.push(made);
  return made;
}

describe.each(['thread', 'process'] as const)('a %s', (runs) => {
  it('answers about what it is given', async () => {
    const lengths = workers({ script: await script('length', '({ bytes }) => bytes.length'), runs });
    expect(await lengths.ask({ bytes: new Uint8Array(4) })).toBe(4);
  });

  it.each([
    ['fails', "() => { throw new Error('no picture'); }", 'refused', /^no picture$/],
    ['ends without a word', '() => process.exit(3)', 'ended', /^it ended/],
    ['goes on without end', '() => { for (;;); }', 'too-slow', /longer than 1 s/],
  ])('that %s is an error that says so', async (name, work, is, message) => {
    const seconds = is === 'too-slow' ? 1 : 20;
    const asked = workers({ script: await script(name.replaceAll(' ', '-'), work), runs, seconds }).ask({});
    await expect(asked).rejects.toMatchObject({
      name: 'WorkerError',
      is,
      message: expect.stringMatching(message),
    });
  });

  it('that is no worker is an error', async () => {
    const there = new URL(`file://${folder}/there-is-none.mjs`);
    await expect(workers({ script: there, runs }).ask({})).rejects.toMatchObject({ is: 'ended' });
  });

  it('is held to the form of its answer', async () => {
    const answer: z.ZodType<unknown> = z.object({ pages: z.int() });
    const asked = workers({ script: await script('pages', "() => ({ pages: 'two' })"), runs, answer }).ask(
      {},
    );
    await expect(asked).rejects.toMatchObject({
      is: 'ended',
      message: 'it sent something that is no answer',
    });
  });

  it('is a new one for each request, unless it is reused', async () => {
    const count = await script('count', '() => (asked += 1)');
    const fresh = workers({ script: count, runs });
    const reused = workers({ script: count, runs, reused: true });
    expect([await fresh.ask({}), await fresh.ask({})]).toEqual([1, 1]);
    expect([await reused.ask({}), await reused.ask({})]).toEqual([1, 2]);
  });

  it('is replaced when it was stopped', async () => {
    const work = '({ hang }) => { asked += 1; while (hang); return asked; }';
    const reused = workers({ script: await script('hang', work), runs, reused: true });
    expect(await reused.ask({ hang: false })).toBe(1);
    await expect(reused.ask({ hang: true }, { seconds: 0.5 })).rejects.toMatchObject({ is: 'too-slow' });
    expect(await reused.ask({ hang: false })).toBe(1);
  });

  it('answers one request at a time', async () => {
    const work =
      '() => new Promise((done) => { const from = Date.now(); setTimeout(() => done([from, Date.now()]), 50); })';
    const one = workers({ script: await script('one', work), runs });
    const turns = z.tuple([z.number(), z.number()]).array();
    const [first, second] = turns.parse(await Promise.all([one.ask({}), one.ask({})]));
    expect(second?.[0]).toBeGreaterThanOrEqual(first?.[1] ?? Number.NaN);
  });

  it('works beside others where more are wanted', async () => {
    // Each waits until the other has begun.
    const work = `async ({ own, other }) => {
      const { existsSync, writeFileSync } = await import('node:fs');
      writeFileSync(own, '');
      while (!existsSync(other)) await new Promise((done) => setTimeout(done, 5));
      return 'met';
    }`;
    const two = workers({ script: await script('two', work), runs, atOnce: 2 });
    const [a, b] = [join(folder, `${runs}-a`), join(folder, `${runs}-b`)];
    const met = [two.ask({ own: a, other: b }), two.ask({ own: b, other: a })];
    expect(await Promise.all(met)).toEqual(['met', 'met']);
  });
});

it('a thread whose objects fill its memory is stopped, and the program goes on', async () => {
  const work = '() => { const kept = []; for (;;) kept.push(new Array(1e5).fill(kept)); }';
  const full = workers({ script: await script('full', work), runs: 'thread', megabytes: 16 });
  await expect(full.ask({})).rejects.toMatchObject({ is: 'out-of-memory', message: /more than 16 MB/ });
});

it('a thread takes memory over instead of copying it', async () => {
  const bytes = new Uint8Array(8);
  const there = workers({ script: await script('taken', '(bytes) => bytes.length'), runs: 'thread' });
  expect(await there.ask(bytes, { handedOver: [bytes.buffer] })).toBe(8);
  expect(bytes.length).toBe(0);
});

it('a process says last words, which are kept beside the reason', async () => {
  const work =
    "() => { process.stderr.write('out of paper', () => process.exit(4)); return new Promise(() => {}); }";
  const asked = workers({ script: await script('words', work), runs: 'process' }).ask({});
  await expect(asked).rejects.toMatchObject({
    message: 'it ended (exit 4)',
    cause: { message: 'out of paper' },
  });
});

it('workers that were prepared answer the next request', async () => {
  const early = workers({ script: await script('early', '() => performance.now()'), runs: 'process' });
  early.prepare();
  expect(early.started).toBe(true);
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(await early.ask({})).toBeGreaterThan(100);
});
