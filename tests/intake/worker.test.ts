import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { Turns } from '../../src/intake/mutex.js';
import { askThread } from '../../src/intake/worker.js';
import { emptyFolder, put } from './a-delivery.js';

const folder = await emptyFolder();

/** A script that a thread runs, with `port` and `data` at hand. */
async function script(name: string, text: string): Promise<URL> {
  const head = `import { parentPort as port, workerData as data } from 'node:worker_threads';\n`;
  await put(folder, `${name}.mjs`, head + text);
  return pathToFileURL(join(folder, `${name}.mjs`));
}

describe('a thread that is asked', () => {
  it('answers about what it is given', async () => {
    expect(
      await askThread(await script('sum', 'port.postMessage({ answer: data.length });'), 'four', 10),
    ).toBe(4);
  });

  it.each([
    ['says an error', "port.postMessage({ error: 'no picture' });", /^no picture$/],
    ['throws', "throw new Error('a bug');", /^a bug$/],
    ['ends without a word', 'port.close();', /ended without an answer/],
    ['goes on without end', 'for (;;);', /longer than 0.3 s/],
  ])('that %s is an error', async (name, text, message) => {
    const asked = askThread(
      await script(name.replaceAll(' ', '-'), text),
      undefined,
      name.startsWith('goes') ? 0.3 : 10,
    );
    await expect(asked).rejects.toThrow(message);
  });
});

it('turns are taken one after the other, also after one that fails', async () => {
  const turns = new Turns();
  const said: string[] = [];
  const work = (name: string, fails: boolean) => async () => {
    said.push(`${name} begins`);
    await new Promise((resolve) => setTimeout(resolve, 5));
    said.push(`${name} ends`);
    if (fails) throw new Error(name);
    return name;
  };
  const all = await Promise.allSettled([turns.take(work('a', true)), turns.take(work('b', false))]);
  expect(all.map(({ status }) => status)).toEqual(['rejected', 'fulfilled']);
  expect(said).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
});
