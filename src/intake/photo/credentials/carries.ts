import { closeSync, openSync, readSync } from 'node:fs';

/**
 * Begins the description of a store of content credentials, in every kind of file: a JUMBF box `jumd` with the type
 * `c2pa` (ISO/IEC 19566-5, C2PA technical specification 2.1 §11.1).
 */
const MARK = Buffer.from('jumdc2pa', 'latin1');
const CHUNK = 1024 * 1024;
/** Stores stand at the beginning of a JPEG, PNG or HEIF, and anywhere in the others. */
const MOST_AT_FRONT = 4 * CHUNK;
const MOST = 64 * CHUNK;

/** Whether a picture carries content credentials. Reads the file, and loads nothing. */
export function carriesCredentials(path: string, type: string): boolean {
  const most = type === 'image/webp' || type === 'image/tiff' ? MOST : MOST_AT_FRONT;
  const file = openSync(path, 'r');
  try {
    const room = Buffer.allocUnsafe(CHUNK + MARK.length);
    for (let at = 0; at < most; at += CHUNK) {
      const length = readSync(file, room, 0, room.length, at);
      if (room.subarray(0, length).includes(MARK)) return true;
      if (length < room.length) return false;
    }
    return false;
  } finally {
    closeSync(file);
  }
}
