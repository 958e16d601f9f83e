import { writeSync } from 'node:fs';
import { register } from 'node:module';
import { isMainThread } from 'node:worker_threads';

/** Given to `node --import`: writes the address of every module that is loaded to the file descriptor 3. */
if (isMainThread) register(import.meta.url);

/**
 * @param {string} url
 * @param {import('node:module').LoadHookContext} context
 * @param {(url: string, context: import('node:module').LoadHookContext) => unknown} next
 */
export async function load(url, context, next) {
  writeSync(3, `${url}\n`);
  return next(url, context);
}
