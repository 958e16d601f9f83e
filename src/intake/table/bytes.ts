import { closeSync, createReadStream, openSync, readSync } from 'node:fs';

/** A file by its path, or something that gives its bytes anew each time it is called. */
export type ByteSource = string | (() => AsyncIterable<Uint8Array>);

export function bytesOf(source: ByteSource): AsyncIterable<Uint8Array> {
  // Larger chunks are no faster, and make strings that are collected late.
  return typeof source === 'string' ? createReadStream(source, { highWaterMark: 1 << 16 }) : source();
}

/** The first bytes of a file, at most `length`. */
export async function headOf(source: ByteSource, length: number): Promise<Uint8Array> {
  if (typeof source === 'string') return startOf(source, length);
  const chunks: Uint8Array[] = [];
  let total = 0;
  for await (const chunk of source()) {
    chunks.push(chunk);
    total += chunk.length;
    if (total >= length) break;
  }
  return Buffer.concat(chunks).subarray(0, length);
}

/** At once: for so little, going through the thread pool takes ten times as long as reading. */
function startOf(path: string, length: number): Uint8Array {
  const file = openSync(path, 'r');
  try {
    const room = Buffer.allocUnsafe(length);
    return room.subarray(0, readInto(room, file, length));
  } finally {
    closeSync(file);
  }
}

/** Reads the next bytes of an open file, `length` of them or what there is, into a room that is large enough, and says how many. */
export function readInto(room: Uint8Array, file: number, length: number): number {
  let filled = 0;
  for (let more = 1; more > 0 && filled < length; filled += more)
    more = readSync(file, room, filled, length - filled, null);
  return filled;
}
