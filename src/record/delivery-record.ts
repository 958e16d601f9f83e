import { extname, join } from 'node:path';
import pLimit from 'p-limit';
import type { Checkpoint } from '../core/ledger/checkpoint.js';
import { foldEntries } from '../core/ledger/fold.js';
import { evidenceAdded } from '../core/ledger/references.js';
import { sha256Of } from '../core/ledger/tree.js';
import type { Entry, NewEntry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import { type EvidenceId, evidenceId, type Sha256 } from '../core/model/evidence.js';
import type { RecordState } from '../core/model/state.js';
import { toInstant } from '../core/model/time.js';
import type { OriginalsStore } from '../core/ports/originals-store.js';
import { commit } from './commit.js';
import { onDisk } from './disk/disk-error.js';
import type { Lock } from './disk/lock.js';
import type { Ports } from './disk/ports.js';
import { readSource } from './disk/read-source.js';
import { deliveryName, type Notice, type RecoveredLedger } from './recovery.js';
import { type EntryDraft, stageEntries } from './staging.js';

/** Bytes. */
export const LARGEST_ORIGINAL = 2 * 1024 ** 3;

/** An original with a file that has its bytes. */
export interface StoredFile {
  bytes: number;
  sha256: Sha256;
  path: string;
}

/** What adding an original gives. */
export interface AddedOriginal {
  file: StoredFile;
  /** False when an entry refers to the same bytes, or they were added since opening: they are one original. */
  isNew: boolean;
}

/** The facts of delivery.yaml, to be compared with the last facts in the record. */
export interface WrittenFacts {
  /** SHA-256 of the file's text. */
  sha256: Sha256;
  /** The facts as written, without defaults. */
  facts: Readonly<Record<string, unknown>>;
  /** Who enters it. */
  by: string;
}

/** The record of one delivery: append-only entries, and the originals they refer to. */
export class DeliveryRecord {
  readonly folder: string;
  /** Irregularities found on opening; usually empty. */
  readonly notices: readonly Notice[];
  readonly #ports: Ports;
  readonly #lock: Lock | undefined;
  readonly #standing: RecoveredLedger;
  readonly #originals: OriginalsStore;
  /** Hashes of originals that an entry refers to, or that were added since opening. */
  readonly #heldFiles: Set<Sha256>;
  /** Those that were added since opening, were not kept before, and that no entry refers to yet. */
  readonly #unnamed = new Set<Sha256>();
  #lastId: number;
  #state: RecordState | undefined;
  /** Serialises writes, so that two callers can't overwrite each other. */
  readonly #turn = pLimit(1);
  #writable: 'yes' | 'no' | 'after-failure';

  /** Use `openRecord` or `createRecord`. */
  constructor(
    folder: string,
    ports: Ports,
    lock: Lock | undefined,
    standing: RecoveredLedger,
    notices: readonly Notice[],
    originals: OriginalsStore,
  ) {
    this.folder = folder;
    this.notices = notices;
    this.#ports = ports;
    this.#lock = lock;
    this.#standing = standing;
    this.#originals = originals;
    this.#writable = lock === undefined ? 'no' : 'yes';
    this.#heldFiles = new Set(standing.entries.flatMap(fileOf));
    this.#lastId = 0;
    for (const id of standing.known.evidence()) this.#lastId = Math.max(this.#lastId, numberOf(id));
  }

  get entries(): readonly Entry[] {
    return this.#standing.entries;
  }

  /** Leaf hash of each entry: SHA-256(0x00 ‖ entry bytes), RFC 9162 §2.1.1. */
  get leaves(): readonly Sha256[] {
    return this.#standing.leaves;
  }

  /** Name, size and tree hash: the head that `printFingerprint` prints. */
  get head(): Checkpoint {
    const { entries, tree } = this.#standing;
    return { delivery: deliveryName(entries) ?? '', size: tree.size, root: tree.root() };
  }

  /** The state folded from all entries. */
  state(): RecordState {
    const { size, root } = this.head;
    if (this.#state?.size !== size) this.#state = foldEntries(this.entries, size, root);
    return this.#state;
  }

  /** A new id for evidence to be appended; each call gives another one. */
  nextEvidenceId(): EvidenceId {
    this.#lastId += 1;
    return evidenceId.parse(`e${this.#lastId}`);
  }

  /**
   * Appends entries, all of them or none, and returns them as stored once they are on the disk.
   * @throws DossierError 'bad-value' naming the field, or 'disk'; after 'disk' the record must be opened again
   */
  append(newEntries: readonly NewEntry[]): Promise<Entry[]> {
    return this.#turn(() => this.#write(newEntries));
  }

  async #write(drafts: readonly EntryDraft[]): Promise<Entry[]> {
    this.#mustBeWritable();
    if (drafts.length === 0) return [];
    const standing = this.#standing;
    const at = toInstant(this.#ports.now().getTime());
    const staged = stageEntries(drafts, at, standing.entries.length, standing.known);
    const rows = Buffer.concat(staged.map(({ row }) => row));
    const tree = standing.tree.copy();
    for (const { leaf } of staged) tree.add(leaf);
    const delivery = deliveryName([...standing.entries.slice(0, 1), ...staged.map((s) => s.entry)]);
    const head = { delivery: delivery ?? '', size: tree.size, root: tree.root() };
    try {
      // Originals are on the disk before the rows that refer to them.
      await this.#originals.flush();
      await commit(this.folder, this.#ports, rows, standing.ledgerSize, head);
    } catch (error) {
      // After a failed write only opening the record again shows what is on the disk.
      this.#writable = 'after-failure';
      throw error;
    }
    for (const { entry: added, leaf } of staged) {
      standing.entries.push(added);
      standing.leaves.push(leaf);
      standing.tree.add(leaf);
      standing.known.add(added);
      for (const hash of fileOf(added)) this.#unnamed.delete(hash);
      const brought = evidenceAdded(added);
      if (brought === undefined) continue;
      this.#lastId = Math.max(this.#lastId, numberOf(brought.id));
    }
    standing.ledgerSize += rows.length;
    return staged.map((s) => s.entry);
  }

  /** Records the facts of delivery.yaml if they differ from the last recorded ones; returns the new entry, if any. */
  async syncFacts({ sha256, facts, by }: WrittenFacts): Promise<Entry | undefined> {
    const last = this.entries.findLast((e) => e.type === 'delivery-facts');
    if (last?.type === 'delivery-facts' && last.body.sha256 === sha256) return undefined;
    const drafts = [{ type: 'delivery-facts' as const, by, body: { sha256, facts } }];
    const [added] = await this.#turn(() => this.#write(drafts));
    return added;
  }

  /**
   * Stores a file's bytes under their hash. The bytes are on the disk on return; the name is by the next append or on
   * close.
   * @param largest bytes; 2 GiB by default
   * @throws DossierError 'unreadable-file' (missing, a link, a folder, a pipe, changing), 'file-too-large', 'disk';
   *   the signal's reason
   */
  addOriginal(
    source: string,
    { largest = LARGEST_ORIGINAL, signal }: { largest?: number; signal?: AbortSignal | undefined } = {},
  ): Promise<AddedOriginal> {
    const bytes = readSource(source, { fs: this.#ports.fs, most: largest, signal });
    return this.addOriginalStream(bytes, extname(source), largest);
  }

  /** Stores bytes in memory, such as an attachment of an e-mail; `extension` with or without its dot. */
  addOriginalBytes(bytes: Uint8Array, extension: string): Promise<AddedOriginal> {
    return this.addOriginalStream(only(bytes), extension, bytes.length);
  }

  /** Stores bytes from a stream, such as an entry of an archive. Errors of the stream pass through. */
  async addOriginalStream(
    chunks: AsyncIterable<Uint8Array>,
    extension: string,
    largest = LARGEST_ORIGINAL,
  ): Promise<AddedOriginal> {
    this.#mustBeWritable();
    const kept = await this.#originals.add(chunks, { extension, most: largest });
    const { sha256, bytes } = kept;
    const isNew = !this.#heldFiles.has(sha256);
    if (isNew && kept.isNew) this.#unnamed.add(sha256);
    this.#heldFiles.add(sha256);
    return { file: { sha256, bytes, path: await this.#fileOf(sha256) }, isNew };
  }

  async #fileOf(sha256: Sha256): Promise<string> {
    const path = await this.#originals.file(sha256);
    if (path !== undefined) return path;
    throw new DossierError('disk', `the original ${sha256} is not where it was just put`, {
      where: { file: this.folder },
      fix: 'Check the store of originals and run the command again.',
    });
  }

  /** Takes back the originals that were added since opening and that no entry refers to: of work that was called off. */
  takeBackUnnamed(): Promise<void> {
    return this.#turn(async () => {
      if (this.#writable !== 'yes') return;
      for (const sha256 of this.#unnamed) {
        await this.#originals.remove(sha256);
        this.#unnamed.delete(sha256);
        this.#heldFiles.delete(sha256);
      }
    });
  }

  /** A file with an original's bytes; undefined when it is missing. The bytes are not read. */
  originalPath(sha256: Sha256): Promise<string | undefined> {
    return this.#originals.file(sha256);
  }

  /** An original's bytes, checked against its hash. @throws DossierError 'record-damaged' when missing or changed */
  async readOriginal(sha256: Sha256): Promise<Uint8Array> {
    const file = await this.#originals.file(sha256);
    const bytes =
      file === undefined ? undefined : await onDisk('read', file, () => this.#ports.fs.readFile(file));
    if (bytes !== undefined && sha256Of(bytes) === sha256) return bytes;
    const what = bytes === undefined ? 'is missing' : 'was changed';
    throw new DossierError('record-damaged', `the original ${sha256} ${what}`, {
      where: { file: file ?? join(this.folder, sha256) },
      fix: 'Take the same file in once more: it is put back in its place.',
    });
  }

  /** Waits for running writes and releases the lock. */
  async close(): Promise<void> {
    await this.#turn(async () => {
      try {
        if (this.#writable === 'yes') await this.#originals.flush();
      } finally {
        this.#writable = 'no';
        await this.#lock?.release();
      }
    });
  }

  #mustBeWritable(): void {
    if (this.#writable === 'no') throw new Error('the record is not open for writing');
    if (this.#writable === 'after-failure')
      throw new DossierError('disk', 'an earlier write failed, so nothing more is written', {
        where: { file: this.folder },
        fix: 'Mend the cause of the first error and run the command again.',
      });
  }
}

async function* only(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

function fileOf(of: Entry): Sha256[] {
  if (of.type === 'record-merged') return [of.body.ledger.sha256];
  return of.type === 'evidence-received' ? [of.body.file.sha256] : [];
}

function numberOf(id: EvidenceId): number {
  return Number(id.slice(1));
}
