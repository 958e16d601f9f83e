import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';

/** A file by its path, or something that gives its bytes anew each time it is called. */
export type ByteSource = string | (() => AsyncIterable<Uint8Array>);

export function bytesOf(source: ByteSource): AsyncIterable<Uint8Array> {
  // Larger chunks are no faster, and make strings that are collected late.
  return typeof source === 'string' ? createReadStream(source, { highWaterMark: 1 << 16 }) : source();
}

/** The first bytes of a file, at most `length`. */
export async function headOf(source: ByteSource, length: number): Promise<Uint8Array> {
  if (typeof source === 'string') {
    const file = await open(source, 'r');
    try {
      const buffer = Buffer.alloc(length);
      let filled = 0;
      while (filled < length) {
        const { bytesRead } = await file.read(buffer, filled, length - filled, filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return buffer.subarray(0, filled);
    } finally {
      await file.close();
    }
  }
  const chunks: Uint8Array[] = [];
  let total = 0;
  for await (const chunk of source()) {
    chunks.push(chunk);
    total += chunk.length;
    if (total >= length) break;
  }
  return Buffer.concat(chunks).subarray(0, length);
}
