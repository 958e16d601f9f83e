import { Worker } from 'node:worker_threads';

/** What a thread sends back, once. */
export type ThreadAnswer<T> = { answer: T } | { error: string };

/** Of objects; pixels and other bare bytes do not count. */
const MOST_MEGABYTES = 512;

/**
 * Has a thread of its own answer: for libraries that take long, or much memory, over files that a stranger made. It is
 * stopped when it takes longer than `seconds` or fills its memory, and what it writes to the terminal is dropped.
 * Throws an Error when it is stopped, ends without an answer, or answers with an error.
 * @param script takes `data` as its workerData and sends a ThreadAnswer
 */
export function askThread<T>(script: URL, data: unknown, seconds: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(script, {
      workerData: data,
      stderr: true,
      stdout: true,
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES },
    });
    const timer = setTimeout(() => {
      void worker.terminate();
      reject(new Error(`it took longer than ${seconds} s`));
    }, seconds * 1000);
    worker.once('message', (message: ThreadAnswer<T>) => {
      if ('error' in message) reject(new Error(message.error));
      else resolve(message.answer);
    });
    worker.once('error', reject);
    worker.once('exit', () => {
      clearTimeout(timer);
      reject(new Error('it ended without an answer'));
    });
  });
}
