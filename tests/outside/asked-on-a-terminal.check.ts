import { spawn } from 'node:child_process';
import { afterAll, beforeAll, beforeEach, describe, expect } from 'vitest';
import { checklistQuestions } from '../../src/jobs/checklist/enter.js';
import { type Yard, yard } from '../cli/a-delivery.js';
import { MAIN } from '../cli/run.js';
import { checkWith, script } from './programs.js';

let here: Yard;
let delivery: string;
beforeAll(() => {
  here = yard();
});
// One for each: the form goes on where it was left.
beforeEach(async ({ task }) => {
  delivery = await here.delivery(`of${task.id}`);
});
afterAll(() => here.end());

/** `script` of util-linux runs a command on a terminal of its own. Types on the terminal of `record --sheet`; each part once the terminal has shown the words before it. */
function typing(parts: readonly { after: string; type: string }[], ...more: string[]) {
  const line = [process.execPath, MAIN, 'record', '--sheet', '-d', delivery, ...more]
    .map((word) => `'${word}'`)
    .join(' ');
  const child = spawn(script.command?.[0] ?? 'script', ['-qec', line, '/dev/null'], {
    env: { ...process.env, DOSSIER_BY: 'Test', NO_COLOR: '1' },
  });
  let shown = '';
  const left = [...parts];
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    shown += text;
    for (let next = left[0]; next !== undefined && shown.includes(next.after); next = left[0]) {
      child.stdin.write(next.type);
      left.shift();
    }
  });
  return new Promise<{ code: number | null; shown: string }>((done, fail) => {
    child.on('error', fail);
    child.on('close', (code) => done({ code, shown }));
  });
}

/** Answers of all boxes of the form in order; those that are not given stay empty. */
async function boxes(answers: Record<number, string>): Promise<string> {
  const open = { folder: delivery, by: 'Test', now: () => new Date() };
  return (await checklistQuestions(open)).map(({ number }) => `${answers[number] ?? ''}\n`).join('');
}

describe('record --sheet on a terminal', () => {
  checkWith(
    script,
    'takes answers that were pasted at once, and asks again only what was not understood',
    async () => {
      const pasted = await boxes({ 1: 'M. Ortega', 2: '2026-07-14', 3: 'half past', 8: '6:10' });
      const { code, shown } = await typing(
        [
          { after: '1 Who writes', type: pasted },
          { after: 'Arrived [half past]', type: '3:58\r' },
        ],
        '--dry-run',
      );
      expect(shown).toMatch(/box 3: "half past" is not a time/);
      expect(shown).toContain('2 understood; nothing was written.');
      expect(code).toBe(0);
    },
  );

  checkWith(script, 'writes what was typed line by line', async () => {
    const { code, shown } = await typing([
      { after: '1 Who writes', type: 'M. Ortega\r' },
      { after: '2 Loading', type: '2026-07-14\r' },
      { after: '3 Loading', type: '3:58\r' },
      { after: '4 Loading', type: await boxes({}) },
    ]);
    expect(shown).toContain('1 recorded');
    expect(code).toBe(0);
    const readings = here.entries(delivery).filter(({ type }) => type === 'reading-recorded');
    expect(readings.map(({ body }) => body)).toMatchObject([{ kind: 'event', event: 'arrived' }]);
  });

  for (const [end, key, code, said] of [
    ['the end of the input (Ctrl-D)', '\u0004', 2, /input ended before everything was answered/],
    ['Ctrl-C', '\u0003', 130, /./],
  ] as const)
    checkWith(script, `ends at ${end}, with nothing written`, async () => {
      const before = here.entries(delivery).length;
      const ended = await typing([
        { after: '1 Who writes', type: 'M. Ortega\r' },
        { after: '2 Loading', type: key },
      ]);
      expect(ended.code).toBe(code);
      expect(ended.shown).toMatch(said);
      expect(here.entries(delivery)).toHaveLength(before);
    });
});
