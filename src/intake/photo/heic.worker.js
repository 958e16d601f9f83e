// Decodes one HEIC or HEIF picture and hands back its small grey likeness; a thread of its own, since the
// decoder is slow and takes hundreds of megabytes, which end with the thread.
import { parentPort, workerData } from 'node:worker_threads';
import decode from 'heic-decode';

/** Longer side of the likeness. */
const SIDE = 512;

/**
 * The mean of the pixels behind each pixel of the likeness, weighted to grey (ITU-R BT.601), on white.
 * @param {{ width: number, height: number, data: Uint8ClampedArray }} picture RGBA
 */
function reduce({ width, height, data }) {
  const scale = Math.max(1, width / SIDE, height / SIDE);
  const [columns, rows] = [Math.max(1, Math.floor(width / scale)), Math.max(1, Math.floor(height / scale))];
  const grey = new Uint8Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const [top, bottom] = [Math.floor((row * height) / rows), Math.floor(((row + 1) * height) / rows)];
    for (let column = 0; column < columns; column++) {
      const [left, right] = [
        Math.floor((column * width) / columns),
        Math.floor(((column + 1) * width) / columns),
      ];
      let sum = 0;
      for (let y = top; y < bottom; y++)
        for (let x = left; x < right; x++) {
          const at = (y * width + x) * 4;
          const light = 0.299 * (data[at] ?? 0) + 0.587 * (data[at + 1] ?? 0) + 0.114 * (data[at + 2] ?? 0);
          const cover = (data[at + 3] ?? 255) / 255;
          sum += light * cover + 255 * (1 - cover);
        }
      grey[row * columns + column] = Math.round(sum / ((right - left) * (bottom - top)));
    }
  }
  return { grey, width: columns, height: rows };
}

try {
  parentPort?.postMessage({ answer: reduce(await decode({ buffer: workerData })) });
} catch (cause) {
  parentPort?.postMessage({ error: cause instanceof Error ? cause.message : String(cause) });
}
