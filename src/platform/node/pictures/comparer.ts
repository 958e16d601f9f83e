import { z } from 'zod';
import type { PictureComparer, PictureDistance } from '../../../core/ports/picture-comparer.js';
import { WorkerError } from '../worker/worker-error.js';
import { Workers } from '../worker/workers.js';

const difference = z.object({ shape: z.number(), worst: z.number() });

/** Compares pictures, one pair after the other, in a process that is started anew when one brings it down. */
export class SeparateComparer implements PictureComparer {
  readonly #workers = new Workers<{ original: Uint8Array; plate: Uint8Array }, z.infer<typeof difference>>({
    script: new URL('./alike.worker.js', import.meta.url),
    runs: 'process',
    seconds: 30,
    megabytes: 512,
    answer: difference,
    reused: true,
  });

  async compare(original: Uint8Array, plate: Uint8Array): Promise<PictureDistance> {
    try {
      return await this.#workers.ask({ original, plate });
    } catch (cause) {
      if (cause instanceof WorkerError) return { why: cause.message.split('\n')[0] ?? '' };
      throw cause;
    }
  }

  close(): void {
    this.#workers.close();
  }
}
