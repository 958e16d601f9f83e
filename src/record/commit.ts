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
/** The checkpoint of a write in progress; while the file exists, that write is unconfirmed. */
export const INTENT = 'checkpoint.next';
export const ORIGINALS = 'originals';
/** Longest wait of a reader for a writer that never pauses. */
const MOST_TRIES = 100;

/** Reads the record's files without changing them. While a writer is at work it reads again until nothing changed. */
export async function readFiles(folder: string, ports: Ports): Promise<StoredFiles> {
  const path = (name: string) => join(folder, name);
  const read = (name: string) => onDisk('read', path(name), () => readIfThere(ports.fs, path(name)));
  const text = (bytes: Uint8Array | undefined) =>
    bytes === undefined ? undefined : Buffer.from(bytes).toString('utf8');
  for (let tries = 1; ; tries += 1) {
    const head = text(await read(CHECKPOINT));
    const intent = text(await read(INTENT));
    const ledger = await read(LEDGER);
    // While both checkpoints stay the same, the ledger read in between belongs to them.
    const moved = text(await read(CHECKPOINT)) !== head || text(await read(INTENT)) !== intent;
    if (moved && tries < MOST_TRIES) continue;
    return {
      ledger: ledger ?? new Uint8Array(),
      ledgerFile: path(LEDGER),
      checkpointFile: path(CHECKPOINT),
      head: head === undefined ? undefined : (parseCheckpoint(head) ?? unreadable(path(CHECKPOINT))),
      // A truncated intent counts as none: the ledger is not touched before the intent is whole.
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
 * Appends rows to the ledger so that a crash at any point leaves all of them or none: the new checkpoint beside the
 * old one, then the rows, then the new checkpoint in place of the old (C2SP tlog-checkpoint as the commit point).
 * Each step is on the disk before the next begins.
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

/**
 * Repairs the files to match the recovered ledger, in an order that a second crash does not harm. Returns the file
 * with the bytes set aside.
 */
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
      // Kept rows may still be only in the system's memory; a checkpoint must not cover what can vanish.
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
  // Some systems do not allow colons in file names.
  const time = ports.now().toISOString().replaceAll(':', '');
  const path = join(folder, `ledger.torn-${time}`);
  await writeDurably(ports, path, standing.setAside);
  return path;
}
