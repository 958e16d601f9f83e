import { readFile } from 'node:fs/promises';
import { Turns } from '../mutex.js';
import { askThread } from '../worker.js';
import type { GreyPicture } from './grey.js';

/** A 12-megapixel photo takes about a second; a file that keeps the decoder longer is not waited for. */
const MOST_SECONDS = 60;

/** One at a time: the decoder takes up to 450 MB for 12 megapixels. */
const turns = new Turns();

/**
 * The small grey likeness of a HEIC or HEIF picture, upright. The caller has looked at its size already.
 * Throws an Error when it cannot be decoded.
 */
export function greyOfHeic(path: string): Promise<GreyPicture> {
  const script = new URL('./heic.worker.js', import.meta.url);
  return turns.take(async () => askThread<GreyPicture>(script, await readFile(path), MOST_SECONDS));
}
