import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Typeset } from './typeset.js';

const WORKER = fileURLToPath(new URL('./typeset.worker.js', import.meta.url));

export type Answer = Typeset | { error: string; at?: { file: string; row?: number } };

/**
 * A process that sets one document: a fresh one for each, since a second document in one process can carry text of the
 * first, and nothing it does can take the caller down. Started early, it loads while its document is being made.
 */
export class Typesetter {
  readonly #child: ChildProcess;
  /** What it says, or that it ended without a word. */
  readonly #said: Promise<Answer>;

  constructor() {
    const child = fork(WORKER, {
      serialization: 'advanced',
      execArgv: [],
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    let noise = '';
    child.stderr?.setEncoding('utf8').on('data', (chunk: string) => {
      noise = (noise + chunk).slice(-2000);
    });
    this.#child = child;
    this.#said = new Promise((resolve) => {
      child.once('message', (answer) => resolve(answer as Answer));
      child.once('error', ({ message }) => resolve({ error: message }));
      child.once('exit', (code, signal) =>
        resolve({ error: `the typesetter stopped (${signal ?? `exit ${code}`}) ${noise.trim()}`.trim() }),
      );
    });
  }

  /** Hands it the document; whatever happens is the answer. */
  async ask(request: object, timeoutSeconds: number): Promise<Answer> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<Answer>((resolve) => {
      timer = setTimeout(
        () => resolve({ error: `it took longer than ${timeoutSeconds} s` }),
        timeoutSeconds * 1000,
      );
      this.#child.send(request, (error) => {
        if (error !== null) resolve({ error: error.message });
      });
    });
    try {
      return await Promise.race([this.#said, late]);
    } finally {
      clearTimeout(timer);
    }
  }

  /** Ends it, whatever it is doing. */
  stop(): void {
    this.#child.kill('SIGKILL');
  }
}
