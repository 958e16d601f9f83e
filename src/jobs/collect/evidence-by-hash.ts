import { isDeepStrictEqual } from 'node:util';
import type { EvidenceId, LogMapping, ReceivedEvidence, Sha256 } from '../../core/model/evidence.js';
import type { EvidenceItem, RecordState } from '../../core/model/state.js';

const CONTAINERS = new Set(['application/zip', 'message/rfc822']);
const TABLES = new Set(['text/csv', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet']);

/** Evidence by file hash, from the record and from the current run. */
export class EvidenceByHash {
  readonly #byHash = new Map<Sha256, EvidenceId>();
  readonly #struck = new Set<Sha256>();
  readonly #containers = new Set<Sha256>();
  /** Tables not read as logs before, for want of a zone, a unit or known columns. */
  readonly #unread = new Set<Sha256>();

  /** Tables of readings that the record had before this run. */
  readonly #tables = new Map<Sha256, EvidenceId>();
  /** The mapping of each log. */
  readonly #logs = new Map<Sha256, { evidence: EvidenceId; mapping: LogMapping }>();
  readonly #items = new Map<EvidenceId, EvidenceItem>();

  constructor(state: RecordState) {
    for (const item of state.evidence) {
      this.#items.set(item.evidence, item);
      if ('file' in item) this.add(item);
      if (item.kind === 'readings') this.#tables.set(item.file.sha256, item.evidence);
    }
    // What was struck or seems to belong elsewhere is held too: the same file again adds nothing.
    for (const item of state.notCounted)
      if ('file' in item) this.#byHash.set(item.file.sha256, item.evidence);
    for (const { entry } of state.strikes)
      if (entry.type === 'evidence-received' && !this.#byHash.has(entry.body.file.sha256)) {
        this.#struck.add(entry.body.file.sha256);
        this.#byHash.set(entry.body.file.sha256, entry.body.evidence);
      }
  }

  /** Adds evidence in the order of the record: of two with the same file the later one counts. */
  add(received: ReceivedEvidence): void {
    const { evidence, file } = received;
    this.#byHash.set(file.sha256, evidence);
    if (CONTAINERS.has(file.type)) this.#containers.add(file.sha256);
    if (received.kind === 'unit-log') {
      this.#unread.delete(file.sha256);
      this.#logs.set(file.sha256, { evidence, mapping: received.mapping });
    } else if (received.kind === 'document' && TABLES.has(file.type)) this.#unread.add(file.sha256);
  }

  /** Whether the evidence with these bytes was struck. */
  isStruck(sha256: Sha256): boolean {
    return this.#struck.has(sha256);
  }

  of(sha256: Sha256): EvidenceId | undefined {
    return this.#byHash.get(sha256);
  }

  isContainer(sha256: Sha256): boolean {
    return this.#containers.has(sha256);
  }

  /** The readings table with these bytes, of which doubted rows may still be taken in. */
  readingsTable(sha256: Sha256): EvidenceId | undefined {
    return this.#tables.get(sha256);
  }

  /** Evidence as it was before this run. */
  item(evidence: EvidenceId): EvidenceItem | undefined {
    return this.#items.get(evidence);
  }

  /** Whether log options may now make a log of it, or another reading. */
  mayBeRead(sha256: Sha256): boolean {
    return this.#unread.has(sha256) || this.#logs.has(sha256);
  }

  /** The current reading of a file as a log. */
  log(sha256: Sha256): { evidence: EvidenceId; mapping: LogMapping } | undefined {
    return this.#logs.get(sha256);
  }

  /** Whether a log is already read with this mapping. */
  isReadBy(sha256: Sha256, mapping: LogMapping): boolean {
    return isDeepStrictEqual(this.#logs.get(sha256)?.mapping, mapping);
  }
}
