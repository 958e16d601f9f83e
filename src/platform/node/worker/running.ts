import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { WorkerError } from './worker-error.js';

/** What a worker sends back, once for each request. */
export type Reply = { is: 'answered'; answer: unknown } | { is: 'refused'; why: string };

/** One thread or process that was started. */
export interface Running {
  /** Asks it, and gives what it sends back. Throws WorkerError when it ends instead. One request at a time. */
  ask(request: unknown, handedOver: readonly ArrayBuffer[]): Promise<unknown>;
  /** Whether it keeps the program from ending. */
  keepAlive(yes: boolean): void;
  stop(): void;
}

export interface Start {
  script: URL;
  megabytes: number;
}

/** What an error stream said last, for the message when a process ends. */
const MOST_LAST_WORDS = 2_000;

/** A promise that others settle. */
class Pending {
  #settle: { resolve(reply: unknown): void; reject(error: WorkerError): void } | undefined;
  #failure: WorkerError | undefined;

  begin(): Promise<unknown> {
    return new Promise((resolve, reject) => {
      if (this.#failure === undefined) this.#settle = { resolve, reject };
      else reject(this.#failure);
    });
  }

  answered(reply: unknown): void {
    this.#settle?.resolve(reply);
    this.#settle = undefined;
  }

  /** What is asked after it fails too. The first reason counts. */
  failed(error: WorkerError): void {
    this.#failure ??= error;
    this.#settle?.reject(this.#failure);
    this.#settle = undefined;
  }
}

/** What it writes to the terminal is dropped. */
export function startThread({ script, megabytes }: Start): Running {
  const worker = new Worker(script, {
    execArgv: [],
    stderr: true,
    stdout: true,
    resourceLimits: { maxOldGenerationSizeMb: megabytes },
  });
  const pending = new Pending();
  worker.stdout.resume();
  worker.stderr.resume();
  worker.on('message', (reply: unknown) => pending.answered(reply));
  worker.on('messageerror', (cause) => pending.failed(new WorkerError('ended', cause.message, { cause })));
  worker.on('error', (cause: NodeJS.ErrnoException) => {
    const full = cause.code === 'ERR_WORKER_OUT_OF_MEMORY';
    const message = full ? `it took more than ${megabytes} MB of memory` : cause.message;
    pending.failed(new WorkerError(full ? 'out-of-memory' : 'ended', message, { cause }));
  });
  worker.on('exit', () => pending.failed(new WorkerError('ended', 'it ended without an answer')));
  return {
    ask(request, handedOver) {
      const reply = pending.begin();
      worker.postMessage(request, handedOver);
      return reply;
    },
    keepAlive: (yes) => (yes ? worker.ref() : worker.unref()),
    stop: () => void worker.terminate(),
  };
}

export function startProcess({ script, megabytes }: Start): Running {
  const child = fork(fileURLToPath(script), {
    serialization: 'advanced',
    execArgv: [`--max-old-space-size=${megabytes}`],
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  const pending = new Pending();
  let lastWords = '';
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    lastWords = (lastWords + text).slice(-MOST_LAST_WORDS);
  });
  child.on('message', (reply) => pending.answered(reply));
  child.on('error', (cause) => pending.failed(new WorkerError('ended', cause.message, { cause })));
  child.on('exit', (code, signal) => {
    const cause = lastWords.trim() === '' ? undefined : new Error(lastWords.trim());
    pending.failed(new WorkerError('ended', `it ended (${signal ?? `exit ${code}`})`, { cause }));
  });
  return {
    ask(request) {
      const reply = pending.begin();
      child.send(Object(request), (error) => {
        if (error !== null) pending.failed(new WorkerError('ended', error.message, { cause: error }));
      });
      return reply;
    },
    keepAlive(yes) {
      for (const one of [child, child.channel]) yes ? one?.ref() : one?.unref();
    },
    stop: () => void child.kill('SIGKILL'),
  };
}
