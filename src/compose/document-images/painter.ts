import { z } from 'zod';
import { WorkerError } from '../../platform/node/worker/worker-error.js';
import { Workers } from '../../platform/node/worker/workers.js';

const answer = z.discriminatedUnion('is', [
  z.object({
    is: z.literal('drawn'),
    of: z.int().positive(),
    pages: z.array(
      z.object({ bytes: z.instanceof(Uint8Array), width: z.int().positive(), height: z.int().positive() }),
    ),
  }),
  z.object({ is: z.literal('missing') }),
]);
export type DrawingResult = z.infer<typeof answer> | { is: 'failed'; why: string };

/** Renders the pages of one PDF after another in a process; a new one is started when it dies or hangs. */
export class PageRenderer {
  readonly #workers: Workers<{ bytes: Uint8Array; pages: number; longest: number }, z.infer<typeof answer>>;

  constructor(seconds = 30) {
    this.#workers = new Workers({
      script: new URL('./pages.worker.js', import.meta.url),
      runs: 'process',
      seconds,
      // The count of pictures is bounded by their size.
      megabytes: 512,
      answer,
      reused: true,
    });
  }

  /** Renders the first pages. Never throws for a bad file: the reason is in the result. */
  async paint(bytes: Uint8Array, pages: number, longest: number): Promise<DrawingResult> {
    try {
      return await this.#workers.ask({ bytes, pages, longest });
    } catch (cause) {
      if (cause instanceof WorkerError) return { is: 'failed', why: cause.message };
      throw cause;
    }
  }

  /** Ends the process. */
  close(): void {
    this.#workers.close();
  }
}
