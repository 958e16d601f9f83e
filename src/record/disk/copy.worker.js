// Copies files and hashes what it copies, one after the other as it is asked to, in a thread of its own.

import { createHash } from 'node:crypto';
import { closeSync, constants, fstatSync, fsyncSync, openSync, readSync, writeSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';

/** @typedef {import('./ports.js').Copied} Copied */
/** @typedef {{ source: string, target: string, most: number, look?: string | undefined }} Asked */
/** @typedef {(bytes: Buffer) => unknown} Look */
/** @typedef {Copied | { is: 'failed', code: string | undefined, message: string }} Answer */

// Both flags are missing on Windows, where opening follows links.
const READ = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
const CREATE = constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL;

const PIECE = 1024 ** 2;
/** Files of up to this many bytes are looked at: they are held in memory as a whole, one in each thread. */
const MOST_WHOLE = 16 * 1024 ** 2;

let room = Buffer.allocUnsafeSlow(PIECE);
/** @type {Map<string, Look>} */
const looks = new Map();

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
 * @param {Look | undefined} look
 * @returns {Copied}
 */
function copyFile({ source, target, most }, look) {
  const from = reading(() => openSync(source, READ));
  try {
    const before = reading(() => fstatSync(from));
    if (before.isDirectory()) return { is: 'folder' };
    if (!before.isFile()) return { is: 'not-a-file' };
    if (before.size > most) return { is: 'too-large', bytes: before.size };
    const whole = look !== undefined && before.size <= MOST_WHOLE;
    // One byte more than there should be, so that the end is seen with the last piece.
    if (whole && room.length <= before.size) room = Buffer.allocUnsafeSlow(Math.ceil(before.size * 1.25) + 1);
    const { bytes, hash } = copyOpen(from, target, most, whole);
    if (bytes > most) return { is: 'too-large', bytes };
    const after = reading(() => fstatSync(from));
    if (bytes !== before.size || after.mtimeMs !== before.mtimeMs) return { is: 'changed' };
    return { is: 'copied', bytes, hash, ...(whole ? seenBy(look, room.subarray(0, bytes)) : {}) };
  } finally {
    closeSync(from);
  }
}

/**
 * What a look finds; one that fails finds nothing, and the copy is as good as without it.
 * @param {Look} look
 * @param {Buffer} bytes
 * @returns {{ seen?: unknown }}
 */
function seenBy(look, bytes) {
  try {
    return { seen: look(bytes) };
  } catch {
    return {};
  }
}

/**
 * @param {number} from
 * @param {string} target
 * @param {number} most
 * @param {boolean} whole to keep all of it together in `room`, which has the size for it
 */
function copyOpen(from, target, most, whole) {
  const to = openSync(target, CREATE, 0o644);
  try {
    const hash = createHash('sha256');
    let bytes = 0;
    while (bytes <= most) {
      // A file that has grown beyond the room is thrown away as changed.
      const at = whole && bytes < room.length ? bytes : 0;
      const read = reading(() => readSync(from, room, at, Math.min(PIECE, room.length - at), null));
      if (read === 0) break;
      bytes += read;
      const piece = room.subarray(at, at + read);
      hash.update(piece);
      for (let written = 0; written < read; ) written += writeSync(to, piece, written, read - written, null);
    }
    fsyncSync(to);
    return { bytes, hash: hash.digest('hex') };
  } finally {
    closeSync(to);
  }
}

/**
 * @param {string | undefined} href
 * @returns {Promise<Look | undefined>}
 */
async function lookOf(href) {
  if (href === undefined) return undefined;
  const look = looks.get(href) ?? (await import(href)).look;
  looks.set(href, look);
  return look;
}

/**
 * @param {Asked} asked
 * @returns {Promise<Answer>}
 */
async function answerTo(asked) {
  try {
    return copyFile(asked, await lookOf(asked.look));
  } catch (error) {
    if (error instanceof Unreadable && error.message !== '') return { is: 'unreadable', code: error.message };
    return {
      is: 'failed',
      code: codeOf(error),
      message: error instanceof Error ? error.message : String(error),
    };
  }
}

parentPort?.on('message', async (/** @type {Asked} */ asked) =>
  parentPort?.postMessage(await answerTo(asked)),
);
