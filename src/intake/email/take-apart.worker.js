// Takes an e-mail apart; a thread of its own, which can be stopped, since some mails take minutes and gigabytes.
import { parentPort, workerData } from 'node:worker_threads';
import PostalMime from 'postal-mime';

/** @type {{ bytes: Uint8Array, nesting: number }} */
const { bytes, nesting } = workerData;
try {
  const answer = await PostalMime.parse(bytes, {
    forceRfc822Attachments: true,
    attachmentEncoding: 'arraybuffer',
    maxNestingDepth: nesting,
  });
  parentPort?.postMessage({ answer });
} catch (cause) {
  parentPort?.postMessage({ error: cause instanceof Error ? cause.message : String(cause) });
}
