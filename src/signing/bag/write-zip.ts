import { createHash } from 'node:crypto';
import { type FileHandle, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { DossierError } from '../../core/model/error.js';
import { type BagFacts, type BagPlan, type PayloadFile, planBag } from './plan.js';
import { type Append, StoredZip } from './stored-zip.js';

/** Bytes that are read, hashed and written at a time: few enough for the processor's cache. */
const PIECE = 1024 * 1024;

/** A payload file with its bytes: in memory, or on the disk and then read as they are written. */
export interface BagFile extends PayloadFile {
  from: { is: 'memory'; bytes: Uint8Array } | { is: 'file'; path: string };
}

export interface BagOrder extends BagFacts {
  payload: readonly BagFile[];
}

/** A bag that is whole on the disk under a temporary name. */
export interface PackedBag {
  plan: BagPlan;
  /** Renames it to its own name, replacing a file of that name. @throws DossierError disk */
  place(): Promise<void>;
  /** Removes it, under either name. */
  discard(): Promise<void>;
}

/**
 * Writes a bag as one zip file, one payload file after the other, never more than a chunk of them in memory; the
 * zip grows to its 64-bit form only when it must. The same content and date give the same bytes; nothing is packed,
 * so that every byte is a file's own or the only one it can be.
 * Each file is hashed on its way: one that is not what the manifest says stops it, and nothing stays behind.
 * @throws DossierError record-damaged naming the file; disk; the signal's reason
 */
export async function packBag(
  file: string,
  order: BagOrder,
  random: (n: number) => Uint8Array,
  signal?: AbortSignal,
): Promise<PackedBag> {
  const plan = planBag(order, order.payload);
  let written = join(dirname(file), `.part-${Buffer.from(random(8)).toString('hex')}`);
  const discard = () => rm(written, { force: true });
  try {
    const handle = await open(written, 'wx', 0o644);
    try {
      await writeZip(appendTo(handle, signal), order, plan);
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (cause) {
    await discard().catch(() => undefined);
    signal?.throwIfAborted();
    throw cause instanceof DossierError ? cause : notWritten(file, cause);
  }
  return {
    plan,
    discard,
    async place() {
      try {
        await rename(written, file);
        written = file;
        await syncFolder(dirname(file));
      } catch (cause) {
        throw notWritten(file, cause);
      }
    },
  };
}

/** Packs a bag and renames it to its own name. */
export async function writeBag(
  file: string,
  order: BagOrder,
  random: (n: number) => Uint8Array,
): Promise<BagPlan> {
  const packed = await packBag(file, order, random);
  try {
    await packed.place();
  } catch (error) {
    await packed.discard().catch(() => undefined);
    throw error;
  }
  return packed.plan;
}

function notWritten(file: string, cause: unknown): DossierError {
  return new DossierError('disk', 'the bag of originals could not be written', {
    where: { file },
    fix: 'Check the disk and run the command again.',
    cause,
  });
}

async function writeZip(append: Append, { name, payload, builtAt }: BagOrder, plan: BagPlan): Promise<void> {
  const zip = new StoredZip(append, builtAt);
  for (const tag of plan.tags) await zip.addBytes(`${name}/${tag.name}`, tag.bytes);
  const room = Buffer.allocUnsafe(PIECE);
  for (const one of payload) await zip.addPieces(`${name}/data/${one.path}`, piecesOf(one, room));
  await zip.end();
}

/** Appends to a file; a disk may take less at a time than it was given. */
function appendTo(handle: FileHandle, signal: AbortSignal | undefined): Append {
  return async (pieces) => {
    signal?.throwIfAborted();
    let left = pieces.filter(({ length }) => length > 0);
    while (left.length > 0) {
      const { bytesWritten } = await handle.writev(left);
      left = after(left, bytesWritten);
    }
  };
}

function after(pieces: readonly Uint8Array[], count: number): Uint8Array[] {
  let skip = count;
  return pieces.flatMap((piece) => {
    const rest = piece.subarray(Math.min(skip, piece.length));
    skip -= piece.length - rest.length;
    return rest.length === 0 ? [] : [rest];
  });
}

async function* piecesOf(file: BagFile, room: Buffer): AsyncIterable<Uint8Array> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const piece of file.from.is === 'memory' ? [file.from.bytes] : read(file.from.path, room)) {
    hash.update(piece);
    bytes += piece.length;
    // Before it is written: a file that grows for ever would fill the disk.
    if (bytes > file.bytes) throw changed(file);
    yield piece;
  }
  if (hash.digest('hex') !== file.sha256) throw changed(file);
}

/** The bytes of a file in pieces; each is overwritten when the next one is asked for. */
async function* read(path: string, room: Buffer): AsyncIterable<Uint8Array> {
  const handle = await open(path, 'r');
  try {
    for (;;) {
      const { bytesRead } = await handle.read(room, 0, room.length);
      if (bytesRead === 0) return;
      yield room.subarray(0, bytesRead);
    }
  } finally {
    await handle.close();
  }
}

function changed(file: BagFile): DossierError {
  return new DossierError('record-damaged', `${file.path} was changed since it was recorded`, {
    where: { file: file.path },
    fix: 'Take the same file in once more: it is put back in its place.',
  });
}

async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
