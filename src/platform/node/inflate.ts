import { createInflate } from 'node:zlib';
import type { Inflate } from '../../core/ports/cryptography.js';

/** Bytes of a piece. */
const SMALLEST = 1024;
const LARGEST = 1024 * 1024;
/** Text is seldom packed more tightly. */
const USUAL = 8;

export const inflate: Inflate = async (packed, most) => {
  // Mostly all at once: every further piece is another turn, and a large empty one takes longer than a small file.
  const likely = Math.min(most, USUAL * packed.length);
  const unpacking = createInflate({ chunkSize: Math.min(Math.max(likely, SMALLEST), LARGEST) });
  const pieces: Uint8Array[] = [];
  let size = 0;
  unpacking.end(packed);
  try {
    for await (const piece of unpacking) {
      size += piece.length;
      if (size > most) return undefined;
      pieces.push(piece);
    }
  } catch {
    return undefined;
  }
  return unpacking.bytesWritten === packed.length ? Buffer.concat(pieces) : undefined;
};
