import pLimit from 'p-limit';
import type { Checkpoint } from '../core/ledger/checkpoint.js';
import { foldEntries } from '../core/ledger/fold.js';
import { evidenceAdded } from '../core/ledger/references.js';
import type { Entry, NewEntry } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import { type EvidenceId, evidenceId, type Sha256 } from '../core/model/evidence.js';
import type { RecordState } from '../core/model/state.js';
import { toInstant } from '../core/model/time.js';
import { commit } from './commit.js';
import type { Lock } from './disk/lock.js';
import type { Ports } from './disk/ports.js';
import { LARGEST_ORIGINAL, type Originals, type StoredFile } from './originals.js';
import { deliveryName, type Notice, type RecoveredLedger } from './recovery.js';
import { type EntryDraft, stageEntries } from './staging.js';

/** What delivery.yaml says, to be compared with what the record last heard of it. */
export interface WrittenFacts {
  /** SHA-256 of the file's text. */
  sha256: Sha256;
  /** What the text holds, before any default is filled in. */
  facts: Readonly<Record<string, unknown>>;
  /** Who enters it. */
  by: string;
}

/** The record of one delivery: entries that are only ever added to, and the originals that they speak of. */
export class DeliveryRecord {
  readonly folder: string;
  /** What opening it found out of the ordinary; empty as a rule. */
  readonly notices: readonly Notice[];
  readonly #ports: Ports;
  readonly #lock: Lock | undefined;
  readonly #standing: RecoveredLedger;
  readonly #originals: Originals;
  /** Hashes of originals that an entry speaks of, or that were taken in since it was opened. */
  readonly #heldFiles: Set<Sha256>;
  #lastId: number;
  #state: RecordState | undefined;
  /** One write after the other, so that two callers can't write over each other. */
  readonly #turn = pLimit(1);
  #writable: 'yes' | 'no' | 'after-failure';

  /** Use `openRecord` or `createRecord`. */
  constructor(
    folder: string,
    ports: Ports,
    lock: Lock | undefined,
    standing: RecoveredLedger,
    notices: readonly Notice[],
    originals: Originals,
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

  /** Name, size and tree hash: what `printFingerprint` prints. */
  get head(): Checkpoint {
    const { entries, tree } = this.#standing;
    return { delivery: deliveryName(entries) ?? '', size: tree.size, root: tree.root() };
  }

  /** What all entries say together. */
  state(): RecordState {
    const { size, root } = this.head;
    if (this.#state?.size !== size) this.#state = foldEntries(this.entries, size, root);
    return this.#state;
  }

  /** A new id for evidence that will be appended; each call gives another one. */
  nextEvidenceId(): EvidenceId {
    this.#lastId += 1;
    return evidenceId.parse(`e${this.#lastId}`);
  }

  /**
   * Adds entries, all of them or none, and returns them as they stand in the ledger once they are on the disk.
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
      // Originals before the rows that speak of them.
      await this.#originals.flush();
      await commit(this.folder, this.#ports, rows, standing.ledgerSize, head);
    } catch (error) {
      // What is on the disk now can only be told by reading it, which is what opening does.
      this.#writable = 'after-failure';
      throw error;
    }
    for (const { entry: added, leaf } of staged) {
      standing.entries.push(added);
      standing.leaves.push(leaf);
      standing.tree.add(leaf);
      standing.known.add(added);
      const brought = evidenceAdded(added);
      if (brought === undefined) continue;
      this.#lastId = Math.max(this.#lastId, numberOf(brought.id));
    }
    standing.ledgerSize += rows.length;
    return staged.map((s) => s.entry);
  }

  /** Enters what delivery.yaml says now, if it is not what the record last heard; the new entry, if there is one. */
  async syncFacts({ sha256, facts, by }: WrittenFacts): Promise<Entry | undefined> {
    const last = this.entries.findLast((e) => e.type === 'delivery-facts');
    if (last?.type === 'delivery-facts' && last.body.sha256 === sha256) return undefined;
    const drafts = [{ type: 'delivery-facts' as const, by, body: { sha256, facts } }];
    const [added] = await this.#turn(() => this.#write(drafts));
    return added;
  }

  /**
   * Keeps a file: its bytes as they are, under their hash. `isNew` is false when an entry speaks of the same bytes
   * already or they were added before since the record was opened; they are one original then.
   * Its bytes are on the disk when this returns; its name is by the next append, or when the record is closed.
   * @param largest bytes; 2 GiB if not given
   * @throws DossierError 'unreadable-file' (missing, a link, a folder, a pipe, changing), 'file-too-large', 'disk'
   */
  async addOriginal(
    source: string,
    { largest = LARGEST_ORIGINAL }: { largest?: number } = {},
  ): Promise<{ file: StoredFile; isNew: boolean }> {
    this.#mustBeWritable();
    return this.#held(await this.#originals.add(source, largest));
  }

  /** The same for bytes in memory, such as an attachment of an e-mail; `extension` with or without its dot. */
  async addOriginalBytes(
    bytes: Uint8Array,
    extension: string,
  ): Promise<{ file: StoredFile; isNew: boolean }> {
    this.#mustBeWritable();
    return this.#held(await this.#originals.addBytes(bytes, extension));
  }

  /** The same for bytes that come in pieces, such as an entry of an archive. What the pieces throw passes through. */
  async addOriginalStream(
    chunks: AsyncIterable<Uint8Array>,
    extension: string,
    largest = LARGEST_ORIGINAL,
  ): Promise<{ file: StoredFile; isNew: boolean }> {
    this.#mustBeWritable();
    return this.#held(await this.#originals.addStream(chunks, extension, largest));
  }

  #held(file: StoredFile): { file: StoredFile; isNew: boolean } {
    const isNew = !this.#heldFiles.has(file.sha256);
    this.#heldFiles.add(file.sha256);
    return { file, isNew };
  }

  /** Where an original lies; undefined when it is not there. Its bytes are not looked at. */
  originalPath(sha256: Sha256): string | undefined {
    return this.#originals.path(sha256);
  }

  /** An original's bytes, checked against its hash. @throws DossierError 'record-damaged' when missing or changed */
  readOriginal(sha256: Sha256): Promise<Uint8Array> {
    return this.#originals.read(sha256);
  }

  /** Waits for what is being written and lets others write. */
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

function fileOf(of: Entry): Sha256[] {
  return of.type === 'evidence-received' ? [of.body.file.sha256] : [];
}

function numberOf(id: EvidenceId): number {
  return Number(id.slice(1));
}
