// Counts the pages of a PDF by its page tree; a thread of its own, which can be stopped: the library takes seconds for
// each megabyte of what is no PDF, and unpacks without bounds.
import { parentPort, workerData } from 'node:worker_threads';
import { pagesOf } from './pdf-pages.js';

try {
  parentPort?.postMessage({ answer: await pagesOf(workerData) });
} catch (cause) {
  parentPort?.postMessage({ error: cause instanceof Error ? cause.message : String(cause) });
}
