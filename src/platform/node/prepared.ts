import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';

/** Beside what was built; there is none beside the sources, where everything is read anew. */
const FOLDER = new URL('../../prepared/', import.meta.url);

/** By what a text was read as, and its SHA-256: a text that was changed since the build has no prepared form. */
function fileOf(form: string, text: string): URL {
  return new URL(`${form}-${createHash('sha256').update(text, 'utf8').digest('hex')}.json`, FOLDER);
}

/**
 * What the build made of a shipped text, so that reading and checking it once is enough; undefined for any other text.
 * `T` is what the build wrote under the name of the form. Read at once: for so little, going through the thread pool
 * takes ten times as long.
 */
export function prepared<T>(form: string, text: string): T | undefined {
  let json: string;
  try {
    json = readFileSync(fileOf(form, text), 'utf8');
  } catch {
    return undefined;
  }
  return JSON.parse(json);
}

/** Keeps what was made of a text for `prepared`. Throws an Error for a value that JSON does not keep as it is. */
export function prepare(form: string, text: string, value: unknown): void {
  const json = JSON.stringify(value);
  if (!isDeepStrictEqual(JSON.parse(json), value)) throw new Error(`JSON does not keep a ${form} as it is`);
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(fileOf(form, text), json);
}
