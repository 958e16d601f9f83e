import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { yard } from './a-delivery.js';
import { MAIN } from './run.js';

const here = yard();
afterAll(here.end);

/** Runs a command as a process, presses Ctrl-C as soon as `when` says so, and gives its exit code and what it said. */
function interrupted(args: string[], when: () => boolean): Promise<{ code: number | null; err: string }> {
  const child = spawn(process.execPath, [MAIN, ...args], {
    cwd: here.folder,
    env: {
      ...process.env,
      DOSSIER_BY: 'Test',
      DOSSIER_IDENTITY: here.at('identity'),
      DOSSIER_PASSPHRASE: 'of-a-test-that-forgets-it',
    },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let err = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  const watching = (async () => {
    while (child.exitCode === null && !when()) await wait(1);
    child.kill('SIGINT');
  })();
  return new Promise((done) => child.on('close', (code) => watching.then(() => done({ code, err }))));
}

const namesIn = (folder: string) => (existsSync(folder) ? readdirSync(folder) : []);

describe('Ctrl-C', () => {
  it('stops collect with 130: every original has its entry, and the next one takes the rest', async () => {
    const delivery = await here.delivery('stopped');
    mkdirSync(here.at('many'));
    const FILES = 400;
    for (let i = 0; i < FILES; i += 1) writeFileSync(here.at('many', `${i}.txt`), `note ${i}\n`.repeat(2000));
    const originals = join(delivery, 'originals');
    const args = ['collect', 'many', '-d', delivery];
    const { code, err } = await interrupted(args, () => namesIn(originals).length > 20);
    expect([code, err]).toEqual([130, 'Stopped by Ctrl-C.\n']);
    const ledger = readFileSync(join(delivery, 'ledger.jsonl'), 'utf8');
    const left = namesIn(originals);
    expect(left.length).toBeLessThan(FILES);
    expect(left.filter((name) => !ledger.includes(name.slice(0, 64)))).toEqual([]);
    const again = await here.process(...args);
    expect([again.code, namesIn(originals).length]).toEqual([0, FILES]);
  });

  it('stops build with 130 and leaves no dossier, whole or in part', async () => {
    const delivery = await here.delivery('unbuilt');
    // The identity is made first; the pages are set after it.
    const { code } = await interrupted(['build', '-d', delivery], () => existsSync(here.at('identity')));
    expect(code).toBe(130);
    expect(namesIn(join(delivery, 'dossiers'))).toEqual([]);
    expect((await here.process('build', '-d', delivery)).code).toBe(0);
  });
});
