import { readFile } from 'node:fs/promises';
import { Worker } from 'node:worker_threads';
import type { GreyPicture } from './grey.js';

/** A 12-megapixel photo takes about a second; a file that keeps the decoder longer is not waited for. */
const MOST_SECONDS = 60;

/** One at a time: the decoder takes up to 450 MB for 12 megapixels. */
let turn: Promise<unknown> = Promise.resolve();

/**
 * The small grey likeness of a HEIC or HEIF picture, upright. The caller has looked at its size already.
 * Throws an Error when it cannot be decoded.
 */
export function greyOfHeic(path: string): Promise<GreyPicture> {
  const mine = turn.then(async () => inThread(await readFile(path)));
  turn = mine.catch(() => undefined);
  return mine;
}

function inThread(bytes: Uint8Array): Promise<GreyPicture> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./heic.worker.js', import.meta.url), {
      workerData: bytes,
      // The decoder writes what it thinks of broken files; nobody needs to read it.
      stderr: true,
      stdout: true,
    });
    const timer = setTimeout(() => {
      void worker.terminate();
      reject(new Error(`decoding took longer than ${MOST_SECONDS} s`));
    }, MOST_SECONDS * 1000);
    worker.once('message', (message: { picture: GreyPicture } | { error: string }) => {
      if ('error' in message) reject(new Error(message.error));
      else resolve(message.picture);
    });
    worker.once('error', (error) => reject(error));
    worker.once('exit', () => {
      clearTimeout(timer);
      reject(new Error('the decoder stopped'));
    });
  });
}
