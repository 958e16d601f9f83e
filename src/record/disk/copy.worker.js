// Copies files and hashes what it copies, one after the other as it is asked to, in a thread of its own.

import { createHash } from 'node:crypto';
import { closeSync, constants, fstatSync, fsyncSync, openSync, readSync, writeSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';

/** @typedef {import('./ports.js').Copied} Copied */
/** @typedef {{ source: string, target: string, most: number }} Asked */
/** @typedef {Copied | { is: 'failed', code: string | undefined, message: string }} Answer */

// Both flags are missing on Windows, where opening follows links.
const READ = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
const CREATE = constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL;

const room = Buffer.allocUnsafeSlow(1024 ** 2);

/** The source can't be read, which is no fault of the record's. */
class Unreadable extends Error {}

/**
 * @template T
 * @param {() => T} action on the source
 * @returns {T}
 */
function reading(action) {
  try {
    return action();
  } catch (error) {
    throw new Unreadable(codeOf(error), { cause: error });
  }
}

/** @param {unknown} error */
function codeOf(error) {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

/**
 * @param {Asked} asked
 * @returns {Copied}
 */
function copyFile({ source, target, most }) {
  const from = reading(() => openSync(source, READ));
  try {
    const before = reading(() => fstatSync(from));
    if (before.isDirectory()) return { is: 'folder' };
    if (!before.isFile()) return { is: 'not-a-file' };
    if (before.size > most) return { is: 'too-large', bytes: before.size };
    const { bytes, hash } = copyOpen(from, target, most);
    if (bytes > most) return { is: 'too-large', bytes };
    const after = reading(() => fstatSync(from));
    if (bytes !== before.size || after.mtimeMs !== before.mtimeMs) return { is: 'changed' };
    return { is: 'copied', bytes, hash };
  } finally {
    closeSync(from);
  }
}

/**
 * @param {number} from
 * @param {string} target
 * @param {number} most
 */
function copyOpen(from, target, most) {
  const to = openSync(target, CREATE, 0o644);
  try {
    const hash = createHash('sha256');
    let bytes = 0;
    while (bytes <= most) {
      const read = reading(() => readSync(from, room, 0, room.length, null));
      if (read === 0) break;
      bytes += read;
      hash.update(room.subarray(0, read));
      for (let written = 0; written < read; ) written += writeSync(to, room, written, read - written, null);
    }
    fsyncSync(to);
    return { bytes, hash: hash.digest('hex') };
  } finally {
    closeSync(to);
  }
}

/**
 * @param {Asked} asked
 * @returns {Answer}
 */
function answerTo(asked) {
  try {
    return copyFile(asked);
  } catch (error) {
    if (error instanceof Unreadable && error.message !== '') return { is: 'unreadable', code: error.message };
    return {
      is: 'failed',
      code: codeOf(error),
      message: error instanceof Error ? error.message : String(error),
    };
  }
}

parentPort?.on('message', (/** @type {Asked} */ asked) => parentPort?.postMessage(answerTo(asked)));
