import pLimit from 'p-limit';
import { z } from 'zod';
import { type Reply, type Running, startProcess, startThread } from './running.js';
import { WorkerError } from './worker-error.js';

/** Work that runs apart, and the bounds that it is kept within. */
export interface WorkerSettings<Answer> {
  /** A module that calls `answering`. */
  script: URL;
  /** A process for native code, whose crash takes down all of the process that it runs in. */
  runs: 'thread' | 'process';
  /** For one request, starting included; without end if not given. */
  seconds?: number;
  /** Of JavaScript objects; pixels and other bare bytes do not count. */
  megabytes: number;
  answer: z.ZodType<Answer>;
  /** Workers side by side, started as they are needed; one if not given. What asks beyond waits its turn. */
  atOnce?: number;
  /** A worker answers one request after the other. If not, each gets a new one, which nothing before it has touched. */
  reused?: boolean;
}

export interface AskOptions {
  /** In place of those of the settings. */
  seconds?: number | undefined;
  /** Memory of the request that a thread takes over instead of copying it; the caller can't use it any more. */
  handedOver?: readonly ArrayBuffer[];
}

const reply: z.ZodType<Reply> = z.discriminatedUnion('is', [
  z.object({ is: z.literal('answered'), answer: z.unknown() }),
  z.object({ is: z.literal('refused'), why: z.string() }),
]);

/** Threads or processes for libraries that take long, or much memory, over files that a stranger made. */
export class Workers<Request, Answer> {
  readonly #settings: WorkerSettings<Answer>;
  readonly #turn: ReturnType<typeof pLimit>;
  readonly #idle: Running[] = [];
  readonly #busy = new Set<Running>();

  constructor(settings: WorkerSettings<Answer>) {
    this.#settings = settings;
    this.#turn = pLimit(settings.atOnce ?? 1);
  }

  /** Whether one is there already. */
  get started(): boolean {
    return this.#idle.length + this.#busy.size > 0;
  }

  /** Starts one, which loads while its request is being made. */
  prepare(): void {
    this.#idle.push(this.#start());
  }

  /**
   * Has a worker answer. One that takes too long or too much memory is stopped.
   * @throws WorkerError when there is no answer; the next request gets another worker then
   */
  ask(request: Request, options: AskOptions = {}): Promise<Answer> {
    return this.#turn(() => this.#answer(request, options));
  }

  /** Ends all of them, whatever they are doing. */
  close(): void {
    for (const worker of [...this.#idle.splice(0), ...this.#busy]) worker.stop();
    this.#busy.clear();
  }

  async #answer(request: Request, { seconds, handedOver = [] }: AskOptions): Promise<Answer> {
    const worker = this.#idle.pop() ?? this.#start();
    this.#busy.add(worker);
    worker.keepAlive(true);
    let good = false;
    try {
      const said = reply.safeParse(
        await within(seconds ?? this.#settings.seconds, worker.ask(request, handedOver)),
      );
      if (!said.success) throw noAnswer(said.error);
      // One that refuses is as good as before.
      good = true;
      if (said.data.is === 'refused') throw new WorkerError('refused', said.data.why);
      const answer = this.#settings.answer.safeParse(said.data.answer);
      if (!answer.success) throw noAnswer(answer.error);
      return answer.data;
    } finally {
      this.#busy.delete(worker);
      if (good && this.#settings.reused === true) {
        // One that waits keeps no program from ending.
        worker.keepAlive(false);
        this.#idle.push(worker);
      } else worker.stop();
    }
  }

  #start(): Running {
    return this.#settings.runs === 'thread' ? startThread(this.#settings) : startProcess(this.#settings);
  }
}

function noAnswer(cause: z.ZodError): WorkerError {
  return new WorkerError('ended', 'it sent something that is no answer', { cause });
}

async function within<T>(seconds: number | undefined, work: Promise<T>): Promise<T> {
  if (seconds === undefined) return work;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(new WorkerError('too-slow', `it took longer than ${seconds} s`)),
      seconds * 1000,
    );
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
