// Reads the tags of a picture from the file itself, in a thread that can be stopped, since the library never ends
// on some files.
import { open } from 'node:fs/promises';
import exifr from '#exifr';
import { answering } from '../../platform/node/worker/answering.js';

/** Of larger files only the two ends are read. */
const WHOLE = 128 * 1024 * 1024;
/** Beyond this size the end is not read either. */
const MOST_BYTES = 1024 ** 3;

/**
 * A file in its own memory, with zeros between its ends when it is large: the library reads past the end of its
 * input, into whatever is in memory behind it.
 * @param {string} path
 */
async function bytesOf(path) {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const bytes = new Uint8Array(size <= MOST_BYTES ? size : WHOLE);
    const first = bytes.length <= WHOLE ? bytes.length : WHOLE / 2;
    await file.read(bytes, 0, first, 0);
    const last = Math.min(bytes.length - first, WHOLE / 2);
    if (last > 0) await file.read(bytes, bytes.length - last, last, bytes.length - last);
    return bytes;
  } finally {
    await file.close();
  }
}

answering(async (/** @type {{ path: string, options: object }} */ { path, options }) =>
  exifr.parse(await bytesOf(path), options),
);
