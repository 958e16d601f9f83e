import { z } from 'zod';
import { Workers } from '../worker/workers.js';

/** Red, green, blue and cover of each pixel, row by row; upright. */
const pixels = z.object({
  width: z.int().positive(),
  height: z.int().positive(),
  data: z.instanceof(Uint8Array),
});
export type Pixels = z.infer<typeof pixels>;

/** A photo of 12 megapixels takes about a second. One at a time, and a new thread for each: what one takes of memory ends with it. */
const decoder = new Workers<Uint8Array, Pixels>({
  script: new URL('./heic.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 60,
  megabytes: 256,
  answer: pixels,
});

/** Decodes a HEIC or HEIF picture. @throws WorkerError when it cannot be decoded within a minute and 640 MB */
export function decodeHeic(bytes: Uint8Array): Promise<Pixels> {
  return decoder.ask(bytes);
}
