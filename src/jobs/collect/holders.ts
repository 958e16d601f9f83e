import type { EvidenceId, Sha256 } from '../../model/evidence.js';
import type { RecordState } from '../../model/state.js';

const CONTAINERS = new Set(['application/zip', 'message/rfc822']);
const TABLES = new Set(['text/csv', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet']);

/** Which evidence holds which file, from the record and from the run that is under way. */
export class Holders {
  readonly #byHash = new Map<Sha256, EvidenceId>();
  readonly #containers = new Set<Sha256>();
  /** Tables that could not be read as logs before, for want of a zone, a unit or words on their columns. */
  readonly #unread = new Set<Sha256>();

  constructor(state: RecordState) {
    for (const item of state.evidence) {
      if (!('file' in item)) continue;
      this.add(item.file.sha256, item.evidence, item.file.type);
      if (item.kind === 'unit-log') this.#unread.delete(item.file.sha256);
      if (item.kind === 'document' && TABLES.has(item.file.type)) this.#unread.add(item.file.sha256);
    }
  }

  add(sha256: Sha256, evidence: EvidenceId, type: string): void {
    this.#byHash.set(sha256, evidence);
    if (CONTAINERS.has(type)) this.#containers.add(sha256);
  }

  of(sha256: Sha256): EvidenceId | undefined {
    return this.#byHash.get(sha256);
  }

  isContainer(sha256: Sha256): boolean {
    return this.#containers.has(sha256);
  }

  /** Whether a person's word on logs may make one of it now. */
  isUnreadTable(sha256: Sha256): boolean {
    return this.#unread.has(sha256);
  }
}
