import { dirname, join } from 'node:path';
import { DossierError } from '../core/model/error.js';
import type { OriginalsStore } from '../core/ports/originals-store.js';
import { CHECKPOINT, LEDGER, ORIGINALS, readFiles, repair } from './commit.js';
import { DeliveryRecord, type WrittenFacts } from './delivery-record.js';
import { errorCode, onDisk } from './disk/disk-error.js';
import { acquireLock, type Lock } from './disk/lock.js';
import type { Ports } from './disk/ports.js';
import { openOriginals, sweepOriginals } from './originals-folder.js';
import { recover } from './recovery.js';

export { type DeliveryRecord, LARGEST_ORIGINAL, type WrittenFacts } from './delivery-record.js';

export interface OpenOptions {
  write: boolean;
  /** Where originals are kept; in the folder of the record when left out. */
  originals?: OriginalsStore | undefined;
  /** Milliseconds to wait for another writer; 5,000 by default. */
  wait?: number;
}

/** Creates a record in a folder, with the delivery's facts as its first entry, and leaves it open for writing. */
export async function createRecord(
  folder: string,
  ports: Ports,
  facts: WrittenFacts,
  options: Omit<OpenOptions, 'write'> = {},
): Promise<DeliveryRecord> {
  const originals = join(folder, ORIGINALS);
  await onDisk('make', folder, async () => {
    await ports.fs.makeFolder(folder);
    await ports.fs.syncFolder(dirname(folder));
  });
  const lock = await acquireLock(folder, ports, options.wait);
  try {
    await onDisk('make', originals, () => ports.fs.makeFolder(originals));
    const record = await load(folder, ports, lock, options.originals);
    if (record.entries.length > 0)
      throw new DossierError('bad-usage', 'there is a record in this folder already', {
        where: { file: join(folder, LEDGER) },
        fix: 'Use the one that is there, or another folder.',
      });
    await record.syncFacts(facts);
    return record;
  } catch (error) {
    await lock.release();
    throw error;
  }
}

/**
 * Opens a record. For writing it takes the lock and repairs what a crash left; for reading it changes nothing.
 * @throws DossierError 'record-missing', 'record-damaged', 'record-locked' or 'disk'
 */
export async function openRecord(
  folder: string,
  ports: Ports,
  options: OpenOptions,
): Promise<DeliveryRecord> {
  const names = await onDisk('read', folder, async () => {
    try {
      return await ports.fs.list(folder);
    } catch (error) {
      if (errorCode(error) === 'ENOENT') return [];
      throw error;
    }
  });
  if (!names.includes(LEDGER) && !names.includes(CHECKPOINT)) throw missing(folder);
  const lock = options.write ? await acquireLock(folder, ports, options.wait) : undefined;
  try {
    const record = await load(folder, ports, lock, options.originals);
    if (record.entries.length === 0) throw missing(folder);
    return record;
  } catch (error) {
    await lock?.release();
    throw error;
  }
}

function missing(folder: string): DossierError {
  return new DossierError('record-missing', 'there is no record of a delivery in this folder', {
    where: { file: folder },
    fix: 'Give the delivery’s folder, or make one with: dossier new',
  });
}

async function load(
  folder: string,
  ports: Ports,
  lock: Lock | undefined,
  elsewhere: OriginalsStore | undefined,
): Promise<DeliveryRecord> {
  const standing = recover(await readFiles(folder, ports));
  const originals = join(folder, ORIGINALS);
  const notices = [...standing.notices];
  if (lock !== undefined) {
    const aside = await repair(folder, ports, standing);
    if (elsewhere === undefined) await sweepOriginals(originals, ports);
    if (aside !== undefined)
      notices.push({ is: 'set-aside', message: `what is not counted was moved to ${aside}` });
  }
  const store = elsewhere ?? (await openOriginals(originals, ports));
  return new DeliveryRecord(folder, ports, lock, standing, notices, store);
}
