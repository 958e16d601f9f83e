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
  /** Where the bytes lie now. */
  path: string;
}

interface Written {
  bytes: number;
  hash: Sha256;
}

/** The folder of originals: every file byte for byte, named by its SHA-256. */
export interface Originals {
  /** Copies a file in. Opened once, and hashed from the bytes that are stored, so that a swap in between changes nothing. */
  add(source: string, largest: number): Promise<StoredFile>;
  addBytes(bytes: Uint8Array, extension: string): Promise<StoredFile>;
  /** The same from a stream; what it throws passes through. */
  addStream(chunks: AsyncIterable<Uint8Array>, extension: string, largest: number): Promise<StoredFile>;
  /** Brings the names of what was added to the disk itself; the bytes are there already. Once for many files. */
  flush(): Promise<void>;
  /** Where the original is; undefined when it is not there. */
  path(of: Sha256): string | undefined;
  /** Its bytes, checked against the hash. @throws DossierError 'record-damaged' */
  read(of: Sha256): Promise<Uint8Array>;
}

/** Removes what a crash left half copied. Only for the one writer. */
export async function sweepOriginals(folder: string, ports: Ports): Promise<void> {
  await onDisk('clear up', folder, async () => {
    for (const name of (await ports.fs.list(folder)).filter(isTemporary))
      await removeIfThere(ports.fs, join(folder, name));
  });
}

/** Looks through the folder once; a missing folder holds nothing. */
export async function openOriginals(folder: string, ports: Ports): Promise<Originals> {
  const names = await storedNames(folder, ports);
  let unsettled = false;

  /** @param write makes a new file of that name, with its bytes on the disk itself */
  const place = async (write: (temporary: string) => Promise<Written>, extension: string) => {
    const temporary = join(folder, temporaryName(ports));
    const discard = () => removeIfThere(ports.fs, temporary).catch(() => undefined);
    try {
      const written = await onDisk('write', folder, () => write(temporary));
      // Bytes that are here already keep their name. They are put in place again all the same: it mends a damaged one.
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

/** What was copied, or why it wasn't. */
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
    // ELOOP is what O_NOFOLLOW answers, EMLINK on some systems.
    case 'ELOOP':
    case 'EMLINK':
      return refused('it is a symbolic link', 'Give the file itself that the link leads to.');
    // A socket.
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

/** `.JPG` to `.jpg`; nothing for what is not a plain ending, so that a name can't carry anything but the hash. */
function cleanExtension(extension: string): string {
  const plain = extension.replace(/^\./, '').toLowerCase();
  return /^[a-z0-9]{1,8}$/.test(plain) ? `.${plain}` : '';
}
