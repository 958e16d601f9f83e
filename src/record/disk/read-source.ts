import { DossierError } from '../../core/model/error.js';
import { errorCode, reasonOf } from './disk-error.js';
import type { FileSystem, OpenFile } from './ports.js';

const PIECE = 1024 ** 2;

/** Where a source is read from, and how far. */
export interface SourceOptions {
  fs: Pick<FileSystem, 'open'>;
  /** Bytes that it may have. */
  most: number;
  /** Stops the reading. */
  signal?: AbortSignal | undefined;
}

/**
 * The bytes of a file that somebody named, which is opened once: swapping it meanwhile changes nothing. A piece is good
 * until the next is asked for.
 * @throws DossierError 'unreadable-file' for what is no plain file or was written to meanwhile, 'file-too-large';
 *   the signal's reason
 */
export async function* readSource(path: string, options: SourceOptions): AsyncGenerator<Uint8Array, void> {
  const file = await reading(path, options.fs.open(path, 'read'));
  try {
    yield* piecesOf(path, file, options);
  } finally {
    await file.close();
  }
}

async function* piecesOf(
  path: string,
  file: OpenFile,
  { most, signal }: SourceOptions,
): AsyncGenerator<Uint8Array, void> {
  const before = await reading(path, file.stat());
  if (before.isFolder) throw refused(path, 'it is a folder', 'Give a file.');
  // A pipe or a device can go on for ever, and has no bytes to come back to.
  if (!before.isFile) throw refused(path, 'it is not a regular file', 'Give a file.');
  if (before.size > most) throw tooLarge(path, before.size, most);
  let bytes = 0;
  // One byte more than there should be, so that the end is seen in the first piece of a small file.
  const length = Math.min(PIECE, before.size + 1);
  for (;;) {
    signal?.throwIfAborted();
    const piece = await reading(path, file.read(length));
    if (piece.length === 0) break;
    bytes += piece.length;
    if (bytes > most) throw tooLarge(path, bytes, most);
    yield piece;
  }
  const after = await reading(path, file.stat());
  if (bytes !== before.size || after.modified !== before.modified)
    throw refused(
      path,
      'it was changed while it was being read',
      'Wait until the program that writes it has finished, and take it in again.',
    );
}

/** Says of a file or stream that it has more bytes than are taken in. */
export function tooLarge(file: string, bytes: number, most: number): DossierError {
  return new DossierError('file-too-large', `it has ${bytes} bytes or more, and ${most} is the limit`, {
    where: { file },
    fix: 'Cut it down to what belongs to this delivery, such as the days of the trip.',
  });
}

async function reading<T>(path: string, action: Promise<T>): Promise<T> {
  try {
    return await action;
  } catch (error) {
    const code = errorCode(error);
    throw code === undefined ? error : unreadable(path, code);
  }
}

function unreadable(path: string, code: string): DossierError {
  switch (code) {
    // O_NOFOLLOW answers ELOOP, on some systems EMLINK.
    case 'ELOOP':
    case 'EMLINK':
      return refused(path, 'it is a symbolic link', 'Give the file itself that the link leads to.');
    // A socket answers ENXIO.
    case 'ENXIO':
      return refused(path, 'it is not a regular file', 'Give a file.');
    default:
      return refused(path, `cannot read it: ${reasonOf(code)}`, 'Check the name and who may read it.');
  }
}

function refused(file: string, message: string, fix: string): DossierError {
  return new DossierError('unreadable-file', message, { where: { file }, fix });
}
