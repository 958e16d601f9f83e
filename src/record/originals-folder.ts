import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { type Sha256, sha256 } from '../core/model/evidence.js';
import type { OriginalsStore } from '../core/ports/originals-store.js';
import { errorCode, onDisk } from './disk/disk-error.js';
import { isTemporary, removeIfThere, temporaryName, using } from './disk/durable.js';
import type { OpenFile, Ports } from './disk/ports.js';
import { tooLarge } from './disk/read-source.js';

const NAME = /^([0-9a-f]{64})(\.[a-z0-9]{1,8})?$/;

interface Written {
  bytes: number;
  sha256: Sha256;
}

/** Removes half-copied files left by a crash. Only for the writer. */
export async function sweepOriginals(folder: string, ports: Ports): Promise<void> {
  await onDisk('clear up', folder, async () => {
    for (const name of (await ports.fs.list(folder)).filter(isTemporary))
      await removeIfThere(ports.fs, join(folder, name));
  });
}

/** A folder of originals, named by their hashes. Lists the folder once; a missing folder is empty. */
export async function openOriginals(folder: string, ports: Ports): Promise<OriginalsStore> {
  const names = await storedNames(folder, ports);
  let unsettled = false;

  return {
    async add(bytes, { extension, most }) {
      const temporary = join(folder, temporaryName(ports));
      const onDiskHere = <T>(action: () => Promise<T>) => onDisk('write', folder, action);
      try {
        const file = await onDiskHere(() => ports.fs.open(temporary, 'create'));
        const to = {
          write: (piece: Uint8Array) => onDiskHere(() => file.write(piece)),
          sync: () => onDiskHere(() => file.sync()),
          close: () => onDiskHere(() => file.close()),
        };
        const written = await using(to, () => pour(bytes, to, most));
        // Bytes stored before keep their name. They are written again all the same, which repairs a damaged file.
        const known = names.get(written.sha256);
        const name = known ?? `${written.sha256}${cleanExtension(extension)}`;
        const path = join(folder, name);
        await onDisk('write', path, async () => {
          await ports.fs.rename(temporary, path);
          unsettled = true;
        });
        names.set(written.sha256, name);
        return { ...written, isNew: known === undefined };
      } catch (error) {
        await removeIfThere(ports.fs, temporary).catch(() => undefined);
        throw error;
      }
    },
    async flush() {
      if (!unsettled) return;
      unsettled = false;
      await onDisk('write', folder, () => ports.fs.syncFolder(folder));
    },
    async file(of) {
      const name = names.get(of);
      return name === undefined ? undefined : join(folder, name);
    },
    async remove(of) {
      const name = names.get(of);
      if (name === undefined) return;
      await onDisk('remove', join(folder, name), () => removeIfThere(ports.fs, join(folder, name)));
      names.delete(of);
      unsettled = true;
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

/** Size and hash of what was written. Errors of the stream pass through. */
async function pour(
  bytes: AsyncIterable<Uint8Array>,
  to: Pick<OpenFile, 'write' | 'sync'>,
  most: number,
): Promise<Written> {
  const hash = createHash('sha256');
  let size = 0;
  for await (const piece of bytes) {
    size += piece.length;
    if (size > most) throw tooLarge('stream', size, most);
    hash.update(piece);
    await to.write(piece);
  }
  await to.sync();
  return { sha256: sha256.parse(hash.digest('hex')), bytes: size };
}

/** `.JPG` becomes `.jpg`; empty for anything but a plain ending, so that a name carries nothing but the hash. */
function cleanExtension(extension: string): string {
  const plain = extension.replace(/^\./, '').toLowerCase();
  return /^[a-z0-9]{1,8}$/.test(plain) ? `.${plain}` : '';
}
