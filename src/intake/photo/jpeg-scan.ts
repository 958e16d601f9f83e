import { closeSync, fstatSync, openSync } from 'node:fs';
import { readInto } from '../table/bytes.js';
import { type JpegStructure, look } from './jpeg-scanner.js';

/** Finds out a JPEG's structure where its bytes are in memory anyway: a module for whoever copies files. */
export const JPEG_LOOK = new URL('./jpeg-scanner.js', import.meta.url);

/** Bytes that are read at once; a photo of a phone has a tenth of it. */
const MOST_BYTES = 64 * 1024 ** 2;

/** For the bytes of one file after the other: made anew for each it costs more than the reading. */
let room = Buffer.alloc(0);

/**
 * The structure of a JPEG on the disk. One that is too large or can't be read is `doubtful`: it has to be looked
 * through. Reads at once: the file was just written, and going through the thread pool takes as long again.
 */
export function structureOf(path: string): JpegStructure {
  try {
    const bytes = bytesOf(path);
    return bytes === undefined ? { is: 'doubtful' } : look(bytes);
  } catch {
    return { is: 'doubtful' };
  }
}

/** Good until the next file is read. */
function bytesOf(path: string): Buffer | undefined {
  const file = openSync(path, 'r');
  try {
    const { size } = fstatSync(file);
    if (size > MOST_BYTES) return undefined;
    // A little more, so that a photo that is a little larger fits as well.
    if (room.length < size) room = Buffer.allocUnsafe(Math.ceil(size * 1.25));
    return readInto(room, file, size);
  } finally {
    closeSync(file);
  }
}

/** What `JPEG_LOOK` gave, if it was asked. */
export function seenIn(seen: unknown): JpegStructure | undefined {
  return seen as JpegStructure | undefined;
}
