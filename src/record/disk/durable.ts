import { dirname, join } from 'node:path';
import { errorCode, onDisk } from './disk-error.js';
import type { FileSystem, OpenFile, Ports } from './ports.js';

/** Runs an action on an open file and closes it, whatever happens. */
export async function using<F extends Pick<OpenFile, 'close'>, T>(
  file: F,
  action: (file: F) => Promise<T>,
): Promise<T> {
  let result: T;
  try {
    result = await action(file);
  } catch (error) {
    // The first error says what went wrong; one from closing after it would only hide it.
    await file.close().catch(() => undefined);
    throw error;
  }
  await file.close();
  return result;
}

/** Writes a file that must not exist yet, and its bytes to the disk itself. Its name is durable after `syncFolder`. */
export async function createSynced(fs: FileSystem, path: string, bytes: Uint8Array): Promise<void> {
  await using(await fs.open(path, 'create'), async (file) => {
    await file.write(bytes);
    await file.sync();
  });
}

/**
 * Writes a whole file so that after a crash there is all of it or nothing:
 * temporary name in the same folder, write, fsync, rename, fsync of the folder.
 * @param before done when the bytes are on the disk, just before they get their name
 */
export async function writeDurably(
  ports: Ports,
  path: string,
  bytes: Uint8Array,
  before: () => Promise<void> = async () => undefined,
): Promise<void> {
  const folder = dirname(path);
  const temporary = join(folder, temporaryName(ports));
  await onDisk('write', path, async () => {
    try {
      await createSynced(ports.fs, temporary, bytes);
      await before();
      await ports.fs.rename(temporary, path);
    } catch (error) {
      await removeIfThere(ports.fs, temporary).catch(() => undefined);
      throw error;
    }
    await ports.fs.syncFolder(folder);
  });
}

/**
 * Adds bytes at the end of a file and waits until they are on the disk.
 * Returns false, with nothing written, when the file is not `expectedSize` bytes long.
 */
export async function appendDurably(
  fs: FileSystem,
  path: string,
  bytes: Uint8Array,
  expectedSize: number,
): Promise<boolean> {
  return using(await fs.open(path, 'append'), async (file) => {
    const { size } = await file.stat();
    if (size !== expectedSize) return false;
    await file.write(bytes);
    await file.sync();
    return true;
  });
}

/** A name for a file that is still being written; `isTemporary` recognises it after a crash. */
export function temporaryName(ports: Ports): string {
  return `.part-${Buffer.from(ports.random(8)).toString('hex')}`;
}

export function isTemporary(name: string): boolean {
  return /^\.part-[0-9a-f]{16}$/.test(name);
}

export async function removeIfThere(fs: FileSystem, path: string): Promise<void> {
  try {
    await fs.remove(path);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT') throw error;
  }
}

/** The file's bytes, or undefined when there is no such file. */
export async function readIfThere(fs: FileSystem, path: string): Promise<Uint8Array | undefined> {
  try {
    return await fs.readFile(path);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}
