// Decodes one HEIC or HEIF picture to RGBA; a thread of its own, since the decoder is slow and large.
import { parentPort, workerData } from 'node:worker_threads';
import decode from 'heic-decode';

try {
  const { width, height, data } = await decode({ buffer: workerData });
  parentPort?.postMessage({ decoded: { width, height, data: new Uint8Array(data) } });
} catch (cause) {
  parentPort?.postMessage({ error: cause instanceof Error ? cause.message : String(cause) });
}
