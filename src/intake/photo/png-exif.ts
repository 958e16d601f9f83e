import { closeSync, openSync, readSync } from 'node:fs';
import { crc32 } from 'node:zlib';

/** The Exif block of a whole file is at most 64 KiB in a JPEG; none is longer in practice. */
const MOST_BYTES = 1024 * 1024;
const MOST_CHUNKS = 200_000;

/**
 * The Exif block of a PNG (PNG 3 §11.3.4.4), wherever it stands: decoders that read only the head of a picture miss
 * the one behind its pixels. Undefined where there is none, or its check sum is wrong.
 */
export function pngExif(path: string): Uint8Array | undefined {
  const file = openSync(path, 'r');
  try {
    const head = Buffer.alloc(8);
    for (let at = 8, count = 0; count < MOST_CHUNKS; count += 1) {
      if (readSync(file, head, 0, 8, at) < 8) return undefined;
      const length = head.readUInt32BE(0);
      const type = head.toString('latin1', 4, 8);
      if (type === 'IEND') return undefined;
      if (type === 'eXIf') return length > MOST_BYTES ? undefined : checked(file, at + 4, length);
      at += 12 + length;
    }
    return undefined;
  } finally {
    closeSync(file);
  }
}

/** Content of the chunk whose type stands at a place. */
function checked(file: number, at: number, length: number): Uint8Array | undefined {
  const bytes = Buffer.alloc(4 + length + 4);
  if (readSync(file, bytes, 0, bytes.length, at) < bytes.length) return undefined;
  const signed = bytes.subarray(0, 4 + length);
  return crc32(signed) === bytes.readUInt32BE(4 + length)
    ? new Uint8Array(bytes.subarray(4, 4 + length))
    : undefined;
}
