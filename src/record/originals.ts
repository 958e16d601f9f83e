import { createHash } from 'node:crypto';
import { extname, join } from 'node:path';
import { sha256Of } from '../core/ledger/tree.js';
import { assertNever, DossierError } from '../core/model/error.js';
import { type Sha256, sha256 } from '../core/model/evidence.js';
import { type Copied, copyFile } from './disk/copy-file.js';
import { errorCode, onDisk, reasonOf } from './disk/disk-error.js';
import { createSynced, isTemporary, removeIfThere, temporaryName, using } from './disk/durable.js';
import type { OpenFile, Ports } from './disk/ports.js';

/** Bytes. */
export const LARGEST_ORIGINAL = 2 * 1024 ** 3;
const NAME = /^([0-9a-f]{64})(\.[a-z0-9]{1,8})?$/;

export interface StoredFile {
  bytes: number;
  sha256: Sha256;
  /** Path of the stored bytes. */
  path: string;
}

interface Written {
  bytes: number;
  hash: Sha256;
}

/** The folder of originals: every file byte for byte, named by its SHA-256. */
export interface Originals {
  /**
   * Copies a file in. It is opened once and hashed from the stored bytes, so that swapping the file meanwhile
   * changes nothing.
   */
  add(source: string, largest: number): Promise<StoredFile>;
  addBytes(bytes: Uint8Array, extension: string): Promise<StoredFile>;
  /** Stores bytes from a stream; its errors pass through. */
  addStream(chunks: AsyncIterable<Uint8Array>, extension: string, largest: number): Promise<StoredFile>;
  /** Flushes the names of added files to the disk; their bytes are there already. Once for many files. */
  flush(): Promise<void>;
  /** Path of the original; undefined when it is missing. */
  path(of: Sha256): string | undefined;
  /** The bytes, checked against the hash. @throws DossierError 'record-damaged' */
  read(of: Sha256): Promise<Uint8Array>;
}

/** Removes half-copied files left by a crash. Only for the writer. */
export async function sweepOriginals(folder: string, ports: Ports): Promise<void> {
  await onDisk('clear up', folder, async () => {
    for (const name of (await ports.fs.list(folder)).filter(isTemporary))
      await removeIfThere(ports.fs, join(folder, name));
  });
}

/** Lists the folder once; a missing folder is empty. */
export async function openOriginals(folder: string, ports: Ports): Promise<Originals> {
  const names = await storedNames(folder, ports);
  let unsettled = false;

  /** @param write makes a new file of that name, with its bytes on the disk itself */
  const place = async (write: (temporary: string) => Promise<Written>, extension: string) => {
    const temporary = join(folder, temporaryName(ports));
    const discard = () => removeIfThere(ports.fs, temporary).catch(() => undefined);
    try {
      const written = await onDisk('write', folder, () => write(temporary));
      // Bytes stored before keep their name. They are written again all the same, which repairs a damaged file.
      const name = names.get(written.hash) ?? `${written.hash}${extension}`;
      const path = join(folder, name);
      await onDisk('write', path, async () => {
        await ports.fs.rename(temporary, path);
        unsettled = true;
      });
      names.set(written.hash, name);
      return { bytes: written.bytes, sha256: written.hash, path };
    } catch (error) {
      await discard();
      throw error;
    }
  };

  const path = (of: Sha256) => {
    const name = names.get(of);
    return name === undefined ? undefined : join(folder, name);
  };

  return {
    add: (source, largest) =>
      place(
        async (temporary) => accepted(await copyFile(ports.fs, source, temporary, largest), source, largest),
        cleanExtension(extname(source)),
      ),
    addBytes: (bytes, extension) =>
      place(async (temporary) => {
        await createSynced(ports.fs, temporary, bytes);
        return { hash: sha256Of(bytes), bytes: bytes.length };
      }, cleanExtension(extension)),
    addStream: (chunks, extension, largest) =>
      place(
        async (temporary) =>
          using(await ports.fs.open(temporary, 'create'), (to) => pour(chunks, to, largest)),
        cleanExtension(extension),
      ),
    async flush() {
      if (!unsettled) return;
      unsettled = false;
      await onDisk('write', folder, () => ports.fs.syncFolder(folder));
    },
    path,
    async read(of) {
      const file = path(of);
      const bytes =
        file === undefined ? undefined : await onDisk('read', file, () => ports.fs.readFile(file));
      if (bytes !== undefined && sha256Of(bytes) === of) return bytes;
      const what = bytes === undefined ? 'is missing' : 'was changed';
      throw new DossierError('record-damaged', `the original ${of} ${what}`, {
        where: { file: file ?? join(folder, of) },
        fix: 'Take the same file in once more: it is put back in its place.',
      });
    },
  };
}

async function storedNames(folder: string, ports: Ports): Promise<Map<Sha256, string>> {
  const names = new Map<Sha256, string>();
  let listed: string[] = [];
  try {
    listed = await ports.fs.list(folder);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') return onDisk('read', folder, () => Promise.reject(error));
  }
  for (const name of listed.sort()) {
    const hash = sha256.safeParse(NAME.exec(name)?.[1]);
    if (hash.success && !names.has(hash.data)) names.set(hash.data, name);
  }
  return names;
}

/** The copy, or why it failed. */
function accepted(copied: Copied, source: string, largest: number): Written {
  const refused = (message: string, fix: string) =>
    new DossierError('unreadable-file', message, { where: { file: source }, fix });
  switch (copied.is) {
    case 'copied':
      return { bytes: copied.bytes, hash: sha256.parse(copied.hash) };
    case 'changed':
      throw refused(
        'it was changed while it was being read',
        'Wait until the program that writes it has finished, and take it in again.',
      );
    case 'too-large':
      throw tooLarge(source, copied.bytes, largest);
    case 'folder':
      throw refused('it is a folder', 'Give a file.');
    case 'not-a-file':
      throw refused('it is not a regular file', 'Give a file.');
    case 'unreadable':
      throw unreadableSource(copied.code, refused);
    default:
      return assertNever(copied);
  }
}

function unreadableSource(
  code: string,
  refused: (message: string, fix: string) => DossierError,
): DossierError {
  switch (code) {
    // O_NOFOLLOW answers ELOOP, on some systems EMLINK.
    case 'ELOOP':
    case 'EMLINK':
      return refused('it is a symbolic link', 'Give the file itself that the link leads to.');
    // A socket answers ENXIO.
    case 'ENXIO':
      return refused('it is not a regular file', 'Give a file.');
    default:
      return refused(`cannot read it: ${reasonOf(code)}`, 'Check the name and who may read it.');
  }
}

async function pour(chunks: AsyncIterable<Uint8Array>, to: OpenFile, largest: number): Promise<Written> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const chunk of chunks) {
    bytes += chunk.length;
    if (bytes > largest) throw tooLarge('stream', bytes, largest);
    hash.update(chunk);
    await to.write(chunk);
  }
  await to.sync();
  return { hash: sha256.parse(hash.digest('hex')), bytes };
}

function tooLarge(source: string, bytes: number, largest: number): DossierError {
  return new DossierError('file-too-large', `it has ${bytes} bytes or more, and ${largest} is the limit`, {
    where: { file: source },
    fix: 'Cut it down to what belongs to this delivery, such as the days of the trip.',
  });
}

/** `.JPG` becomes `.jpg`; empty for anything but a plain ending, so that a name carries nothing but the hash. */
function cleanExtension(extension: string): string {
  const plain = extension.replace(/^\./, '').toLowerCase();
  return /^[a-z0-9]{1,8}$/.test(plain) ? `.${plain}` : '';
}
