import { z } from 'zod';
import { WorkerError } from '../platform/node/worker/worker-error.js';
import { Workers } from '../platform/node/worker/workers.js';

/** The frame for the signature: page from 1, points from its lower left corner. */
const signaturePlace = z.object({
  page: z.int().positive(),
  rectangle: z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly(),
});
export type SignaturePlace = z.infer<typeof signaturePlace>;

const typeset = z.object({
  pdf: z.custom<Uint8Array>((value) => value instanceof Uint8Array),
  pages: z.int().positive(),
  /** Absent when the page templates draw no frame. */
  signature: signaturePlace.exactOptional(),
});
export type Typeset = z.infer<typeof typeset>;

const answer = z.union([
  typeset,
  z.object({
    error: z.string(),
    at: z.object({ file: z.string(), row: z.int().exactOptional() }).exactOptional(),
  }),
]);
export type TypesetterReply = z.infer<typeof answer>;

/**
 * A process that typesets one document: a new one for each, since a second document in one process can carry text
 * of the first, and a crash must not take the caller down. Started early, it loads while its document is being
 * made.
 */
export class Typesetter {
  readonly #workers = new Workers<object, TypesetterReply>({
    script: new URL('./typeset.worker.js', import.meta.url),
    runs: 'process',
    seconds: 300,
    megabytes: 2048,
    answer,
  });

  constructor() {
    this.#workers.prepare();
  }

  /** Sends it the document; errors are part of the reply. */
  async ask(request: object, seconds: number | undefined): Promise<TypesetterReply> {
    try {
      return await this.#workers.ask(request, { seconds });
    } catch (cause) {
      if (!(cause instanceof WorkerError)) throw cause;
      const lastWords = cause.cause instanceof Error ? cause.cause.message : '';
      return { error: `the typesetter stopped: ${cause.message} ${lastWords}`.trim() };
    }
  }

  /** Ends the process. */
  stop(): void {
    this.#workers.close();
  }
}
