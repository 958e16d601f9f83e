import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { deserialize, serialize } from 'node:v8';
import { inject } from 'vitest';

type Outcome<T> = { value: T } | { error: string };

/**
 * What is dear to make and is only read: made once in a run of the tests, by the first process that asks for it, in a
 * folder of its own; the others wait for it.
 */
export function madeOnce<T>(name: string, make: (folder: string) => Promise<T>): () => Promise<T> {
  let asked: Promise<T> | undefined;
  return () => {
    asked ??= makeOrWait(name, make);
    return asked;
  };
}

async function makeOrWait<T>(name: string, make: (folder: string) => Promise<T>): Promise<T> {
  const folder = join(inject('runFolder'), name);
  const done = `${folder}.done`;
  if (await isNew(folder)) {
    const outcome = await make(folder).then(
      (value): Outcome<T> => ({ value }),
      (error: unknown): Outcome<T> => ({
        error: error instanceof Error ? (error.stack ?? error.message) : String(error),
      }),
    );
    await writeFile(`${done}.part`, serialize(outcome));
    await rename(`${done}.part`, done);
  }
  while (!existsSync(done)) await wait(20);
  const outcome: Outcome<T> = deserialize(await readFile(done));
  if ('error' in outcome) throw new Error(`${name} was not made: ${outcome.error}`);
  return outcome.value;
}

async function isNew(folder: string): Promise<boolean> {
  try {
    await mkdir(folder);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}
