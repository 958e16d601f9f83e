import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { JpegLikeness } from './likeness.worker.js';

export type { JpegLikeness } from './likeness.worker.js';

/** One thread for each core; they are started as they are needed. */
const MOST_THREADS = Math.min(8, availableParallelism());

interface Asked {
  path: string;
  mostPixels: number;
  answer(likeness: JpegLikeness | undefined): void;
}

const waiting: Asked[] = [];
const idle: Worker[] = [];
let threads = 0;

/**
 * The small grey likeness of a large photo that is a plain JPEG, whole to its last bit: decoded to block means alone,
 * which takes half the time of a picture library. Undefined for every other file, which says nothing about it.
 */
export function likenessOfJpeg(path: string, mostPixels: number): Promise<JpegLikeness | undefined> {
  return new Promise((answer) => {
    waiting.push({ path, mostPixels, answer });
    hand();
  });
}

/** Hands what waits to threads that are free. */
function hand(): void {
  while (waiting.length > 0) {
    const worker = idle.pop() ?? (threads < MOST_THREADS ? start() : undefined);
    const asked = worker === undefined ? undefined : waiting.shift();
    if (worker === undefined || asked === undefined) return;
    ask(worker, asked);
  }
}

function start(): Worker {
  threads += 1;
  return new Worker(new URL('./likeness.worker.js', import.meta.url));
}

function ask(worker: Worker, { path, mostPixels, answer }: Asked): void {
  const answered = (likeness: JpegLikeness | undefined) => {
    worker.off('error', failed);
    idle.push(worker);
    // A thread that waits keeps no program from ending.
    worker.unref();
    answer(likeness);
    hand();
  };
  const failed = () => {
    worker.off('message', answered);
    threads -= 1;
    answer(undefined);
    hand();
  };
  worker.once('message', answered);
  worker.once('error', failed);
  worker.ref();
  worker.postMessage({ path, mostPixels });
}
