// Looks at large plain JPEG photos, one after the other as they are asked for, in a thread of its own.

import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import { readHead } from './head.worker.js';
import { decodeMeans, roomFor } from './scan.worker.js';
import { orientationOf, upright } from './upright.worker.js';

/** @typedef {import('./scan.worker.js').GreyPicture} GreyPicture */

/**
 * @typedef {object} JpegLikeness
 * @property {number} width of the photo as it is stored
 * @property {number} height
 * @property {Uint8Array | undefined} exif the Exif block, from its byte order mark on
 * @property {GreyPicture} picture small, grey and upright
 */

/** Longer side of the likeness: not less, or edges are gone, and less than twice that. */
const LEAST_SIDE = 400;
/** Bytes; a photo of a phone has a tenth of it. */
const LARGEST = 64 * 1024 ** 2;

/** Kept from one photo to the next: to have them anew each time takes as long as reading. */
const rooms = { file: new Uint8Array(), scan: new Uint8Array() };

/**
 * Undefined for a photo that is coded in another way, small, or not whole.
 * @param {string} path
 * @param {number} mostPixels
 * @returns {JpegLikeness | undefined}
 */
function likenessOf(path, mostPixels) {
  const file = readFile(path);
  if (file === undefined) return undefined;
  const head = readHead(file);
  if (head === undefined) return undefined;
  const { width, height, exif } = head;
  if (width * height > mostPixels || Math.max(width, height) < LEAST_SIDE * 8) return undefined;
  let picture = decodeMeans(file, head, rooms.scan);
  if (picture === undefined) return undefined;
  while (Math.max(picture.width, picture.height) >= LEAST_SIDE * 2) picture = halved(picture);
  return {
    width,
    height,
    exif: exif === undefined ? undefined : Uint8Array.from(exif),
    picture: upright(picture, orientationOf(exif)),
  };
}

/**
 * The bytes of a file, good until the next is read; undefined for one that is too large.
 * @param {string} path
 */
function readFile(path) {
  const file = openSync(path, 'r');
  try {
    const { size } = fstatSync(file);
    if (size > LARGEST) return undefined;
    if (rooms.file.length < size) {
      // A little more, so that a photo that is a little larger fits as well.
      rooms.file = new Uint8Array(Math.ceil(size * 1.25));
      rooms.scan = new Uint8Array(roomFor(rooms.file.length));
    }
    let length = 0;
    for (let read = 1; read > 0 && length < size; length += read)
      read = readSync(file, rooms.file, length, size - length, null);
    return rooms.file.subarray(0, length);
  } finally {
    closeSync(file);
  }
}

/**
 * @param {GreyPicture} picture
 * @returns {GreyPicture}
 */
function halved({ grey, width, height }) {
  const [columns, rows] = [Math.max(1, width >> 1), Math.max(1, height >> 1)];
  const half = new Uint8Array(columns * rows);
  const [right, below] = [width > 1 ? 1 : 0, height > 1 ? width : 0];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at = row * 2 * width + column * 2;
      const four =
        (grey[at] ?? 0) + (grey[at + right] ?? 0) + (grey[at + below] ?? 0) + (grey[at + below + right] ?? 0);
      half[row * columns + column] = (four + 2) >> 2;
    }
  return { grey: half, width: columns, height: rows };
}

parentPort?.on('message', (/** @type {{ path: string, mostPixels: number }} */ { path, mostPixels }) => {
  /** @type {JpegLikeness | undefined} */
  let likeness;
  try {
    likeness = likenessOf(path, mostPixels);
  } catch {
    // The one who asks looks at it in another way, and says what is wrong with it.
  }
  parentPort?.postMessage(likeness);
});
