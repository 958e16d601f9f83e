import { createHash } from 'node:crypto';
import { errorCode } from './disk-error.js';
import { using } from './durable.js';
import type { FileSystem, OpenFile } from './ports.js';

const PIECE = 1024 ** 2;

/** What came of a copy; whatever is at the new name is on the disk itself, and of use only when it is `copied`. */
export type Copied =
  /** `hash` is the SHA-256 in hex of the bytes that were written. */
  | { is: 'copied'; bytes: number; hash: string }
  /** It was written to meanwhile. */
  | { is: 'changed' }
  | { is: 'too-large'; bytes: number }
  | { is: 'folder' }
  /** A pipe or a device, which can go on for ever and has no bytes to come back to. */
  | { is: 'not-a-file' }
  /** The source could not be opened or read; `code` is the system's. */
  | { is: 'unreadable'; code: string };

/** The source can't be read, which is no fault of the record's. */
class Unreadable extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

/**
 * Copies a file that is opened once, as by 'read', to a name that nothing has yet, and hashes what is stored, so that a
 * swap in between changes nothing. Stops soon after `most` bytes. Fails when the target can't be written.
 */
export async function copyFile(
  fs: Pick<FileSystem, 'open'>,
  source: string,
  target: string,
  most: number,
): Promise<Copied> {
  try {
    return await using(await reading(fs.open(source, 'read')), (from) => copyOpen(fs, from, target, most));
  } catch (error) {
    if (error instanceof Unreadable) return { is: 'unreadable', code: error.code };
    throw error;
  }
}

async function copyOpen(
  fs: Pick<FileSystem, 'open'>,
  from: OpenFile,
  target: string,
  most: number,
): Promise<Copied> {
  const before = await reading(from.stat());
  if (before.isFolder) return { is: 'folder' };
  if (!before.isFile) return { is: 'not-a-file' };
  if (before.size > most) return { is: 'too-large', bytes: before.size };
  const hash = createHash('sha256');
  let bytes = 0;
  await using(await fs.open(target, 'create'), async (to) => {
    // One byte more than there should be, so that the end is seen in the first piece of a small file.
    const length = Math.min(PIECE, before.size + 1);
    while (bytes <= most) {
      const piece = await reading(from.read(length));
      if (piece.length === 0) break;
      bytes += piece.length;
      hash.update(piece);
      await to.write(piece);
    }
    await to.sync();
  });
  if (bytes > most) return { is: 'too-large', bytes };
  const after = await reading(from.stat());
  if (bytes !== before.size || after.modified !== before.modified) return { is: 'changed' };
  return { is: 'copied', bytes, hash: hash.digest('hex') };
}

async function reading<T>(action: Promise<T>): Promise<T> {
  try {
    return await action;
  } catch (error) {
    const code = errorCode(error);
    throw code === undefined ? error : new Unreadable(code);
  }
}
