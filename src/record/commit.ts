import { join } from 'node:path';
import { type Checkpoint, parseCheckpoint, printCheckpoint } from '../core/ledger/checkpoint.js';
import { DossierError } from '../core/model/error.js';
import { onDisk } from './disk/disk-error.js';
import {
  appendDurably,
  createSynced,
  isTemporary,
  readIfThere,
  removeIfThere,
  using,
  writeDurably,
} from './disk/durable.js';
import type { Ports } from './disk/ports.js';
import { deliveryName, type RecoveredLedger, type StoredFiles } from './recovery.js';

export const LEDGER = 'ledger.jsonl';
export const CHECKPOINT = 'checkpoint';
/** The checkpoint that a write is going to leave; while it is there, that write has not been confirmed. */
export const INTENT = 'checkpoint.next';
export const ORIGINALS = 'originals';
/** A writer that never pauses must not keep a reader for ever. */
const MOST_TRIES = 100;

/** Reads the record's files without changing them. A writer may be at work: then it reads until nothing moved. */
export async function readFiles(folder: string, ports: Ports): Promise<StoredFiles> {
  const path = (name: string) => join(folder, name);
  const read = (name: string) => onDisk('read', path(name), () => readIfThere(ports.fs, path(name)));
  const text = (bytes: Uint8Array | undefined) =>
    bytes === undefined ? undefined : Buffer.from(bytes).toString('utf8');
  for (let tries = 1; ; tries += 1) {
    const head = text(await read(CHECKPOINT));
    const intent = text(await read(INTENT));
    const ledger = await read(LEDGER);
    // While both stay as they were, the ledger that was read between them belongs to them.
    const moved = text(await read(CHECKPOINT)) !== head || text(await read(INTENT)) !== intent;
    if (moved && tries < MOST_TRIES) continue;
    return {
      ledger: ledger ?? new Uint8Array(),
      ledgerFile: path(LEDGER),
      checkpointFile: path(CHECKPOINT),
      head: head === undefined ? undefined : (parseCheckpoint(head) ?? unreadable(path(CHECKPOINT))),
      // One that was cut off is as good as none: the ledger was not touched before it was whole.
      intent: intent === undefined ? undefined : parseCheckpoint(intent),
    };
  }
}

function unreadable(file: string): never {
  throw new DossierError('record-damaged', 'the checkpoint is not readable', {
    where: { file },
    fix: 'Put it back from a copy of this folder. If there is no copy, remove it: the ledger is then taken as it stands, and the tool says so.',
  });
}

/**
 * Adds rows to the ledger so that a crash at any point leaves all of them or none:
 * the coming checkpoint beside the old one, then the rows, then the coming checkpoint in place of the old (C2SP
 * tlog-checkpoint as the commit point). Each step is on the disk itself before the next begins.
 */
export async function commit(
  folder: string,
  ports: Ports,
  rows: Uint8Array,
  ledgerSize: number,
  head: Checkpoint,
): Promise<void> {
  const ledger = join(folder, LEDGER);
  await announce(folder, ports, head);
  const written = await onDisk('write', ledger, () => appendDurably(ports.fs, ledger, rows, ledgerSize));
  if (!written)
    throw new DossierError('record-damaged', 'the ledger was changed by another program meanwhile', {
      where: { file: ledger },
      fix: 'Find out what else writes into this folder, such as a sync program, and run the command again.',
    });
  await confirm(folder, ports);
}

async function announce(folder: string, ports: Ports, head: Checkpoint): Promise<void> {
  const path = join(folder, INTENT);
  await onDisk('write', path, async () => {
    await createSynced(ports.fs, path, Buffer.from(printCheckpoint(head)));
    await ports.fs.syncFolder(folder);
  });
}

async function confirm(folder: string, ports: Ports): Promise<void> {
  const path = join(folder, CHECKPOINT);
  await onDisk('write', path, async () => {
    await ports.fs.rename(join(folder, INTENT), path);
    await ports.fs.syncFolder(folder);
  });
}

/** Makes the files say what was settled, in an order that a second crash does no harm to. Returns the file with what was set aside. */
export async function repair(
  folder: string,
  ports: Ports,
  standing: RecoveredLedger,
): Promise<string | undefined> {
  const ledger = join(folder, LEDGER);
  const aside = await setAside(folder, ports, standing);
  await onDisk('write', ledger, async () => {
    await using(await ports.fs.open(ledger, 'append'), async (file) => {
      if (standing.setAside.length > 0) await file.truncate(standing.ledgerSize);
      // Kept rows may so far only be in the system's memory; a checkpoint must not cover what can still vanish.
      await file.sync();
    });
    await removeIfThere(ports.fs, join(folder, INTENT));
    for (const name of (await ports.fs.list(folder)).filter(isTemporary))
      await removeIfThere(ports.fs, join(folder, name));
    await ports.fs.syncFolder(folder);
  });
  const delivery = deliveryName(standing.entries);
  if (!standing.covered && delivery !== undefined) {
    await announce(folder, ports, { delivery, size: standing.tree.size, root: standing.tree.root() });
    await confirm(folder, ports);
  }
  return aside;
}

async function setAside(
  folder: string,
  ports: Ports,
  standing: RecoveredLedger,
): Promise<string | undefined> {
  if (standing.setAside.length === 0) return undefined;
  // Colons can't stand in a file name everywhere.
  const time = ports.now().toISOString().replaceAll(':', '');
  const path = join(folder, `ledger.torn-${time}`);
  await writeDurably(ports, path, standing.setAside);
  return path;
}
