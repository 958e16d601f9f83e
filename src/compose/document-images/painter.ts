import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const WORKER = fileURLToPath(new URL('./pages.worker.js', import.meta.url));
const SECONDS = 30;
/** Megabytes of the worker's own heap; its pictures are bounded by their size. */
const HEAP = 512;

const answer = z.discriminatedUnion('is', [
  z.object({
    is: z.literal('drawn'),
    of: z.int().positive(),
    pages: z.array(
      z.object({ bytes: z.instanceof(Uint8Array), width: z.int().positive(), height: z.int().positive() }),
    ),
  }),
  z.object({ is: z.literal('failed'), why: z.string() }),
  z.object({ is: z.literal('missing') }),
]);
export type Painted = z.infer<typeof answer>;

/** A process that draws the pages of one PDF after another; a new one is started when it dies or hangs. */
export class Painter {
  #child: ChildProcess | undefined;
  readonly #seconds: number;

  constructor(seconds = SECONDS) {
    this.#seconds = seconds;
  }

  /** Draws the first pages. Never throws for a bad file: what went wrong is the answer. */
  async paint(bytes: Uint8Array, pages: number, longest: number): Promise<Painted> {
    this.#child ??= fork(WORKER, {
      serialization: 'advanced',
      execArgv: [`--max-old-space-size=${HEAP}`],
      // What the renderer says about a file is of no use to the reader of the dossier.
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    const child = this.#child;
    const painted = await new Promise<Painted>((done) => {
      const end = (result: Painted) => {
        clearTimeout(timer);
        child.removeAllListeners();
        done(result);
      };
      const timer = setTimeout(() => {
        this.close();
        end({ is: 'failed', why: `drawing it took longer than ${this.#seconds} seconds` });
      }, this.#seconds * 1000);
      child.once('message', (said) => {
        const read = answer.safeParse(said);
        end(read.success ? read.data : { is: 'failed', why: 'the page painter gave no pages' });
      });
      child.once('error', (error) => {
        this.close();
        end({ is: 'failed', why: error.message });
      });
      child.once('exit', (code, signal) => {
        this.#child = undefined;
        end({ is: 'failed', why: `the page painter ended (${signal ?? code ?? 'no reason'})` });
      });
      child.send({ bytes, pages, longest });
    });
    return painted;
  }

  /** Ends the process. */
  close(): void {
    this.#child?.removeAllListeners();
    this.#child?.kill('SIGKILL');
    this.#child = undefined;
  }
}
