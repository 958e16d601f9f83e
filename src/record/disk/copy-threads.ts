import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Answer, Asked } from './copy.worker.js';
import type { Copied } from './ports.js';

/** One for each core, and one since some of the time goes into waiting for the disk. They are started as they are needed. */
const MOST_THREADS = Math.min(8, availableParallelism() + 1);

interface Waiting {
  asked: Asked;
  resolve(copied: Copied): void;
  reject(error: unknown): void;
}

const waiting: Waiting[] = [];
const idle: Worker[] = [];
let threads = 0;

/** Whether there are threads already: starting one takes as long as copying twenty small files. */
export function threadsRun(): boolean {
  return threads > 0;
}

/** What `FileSystem.copyFile` asks for, in another thread. */
export function copyInThread(source: string, target: string, most: number, look?: URL): Promise<Copied> {
  return new Promise((resolve, reject) => {
    waiting.push({ asked: { source, target, most, look: look?.href }, resolve, reject });
    hand();
  });
}

/** Hands what waits to threads that are free. */
function hand(): void {
  while (waiting.length > 0) {
    const worker = idle.pop() ?? (threads < MOST_THREADS ? start() : undefined);
    const next = worker === undefined ? undefined : waiting.shift();
    if (worker === undefined || next === undefined) return;
    ask(worker, next);
  }
}

function start(): Worker {
  threads += 1;
  return new Worker(new URL('./copy.worker.js', import.meta.url));
}

function ask(worker: Worker, { asked, resolve, reject }: Waiting): void {
  const answered = (answer: Answer) => {
    worker.off('error', failed);
    worker.off('exit', ended);
    idle.push(worker);
    // A thread that waits keeps no program from ending.
    worker.unref();
    if (answer.is === 'failed') reject(Object.assign(new Error(answer.message), { code: answer.code }));
    else resolve(answer);
    hand();
  };
  const failed = (error: unknown) => {
    worker.off('message', answered);
    worker.off('exit', ended);
    threads -= 1;
    reject(error);
    hand();
  };
  const ended = () => failed(new Error('a thread that copies has ended'));
  worker.once('message', answered);
  worker.once('error', failed);
  worker.once('exit', ended);
  worker.ref();
  worker.postMessage(asked);
}
