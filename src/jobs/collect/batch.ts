import type { NewEntry } from '../../core/model/entry.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { DeliveryRecord } from '../../record/store.js';

/** Entries of one file, and the callback for a refusal by the record. */
export interface Pending {
  entries: NewEntry[];
  refused(problem: Problem): void;
}

/** Files written in one commit; a crash costs no more than these. */
const MOST_PENDING = 64;

/** Gathers entries and writes them in few commits. An entry is in the record once `flush` has resolved. */
export class Batch {
  readonly #record: DeliveryRecord;
  #pending: Pending[] = [];

  constructor(record: DeliveryRecord) {
    this.#record = record;
  }

  async add(pending: Pending): Promise<void> {
    this.#pending.push(pending);
    if (this.#pending.length >= MOST_PENDING) await this.flush();
  }

  /**
   * Writes the pending entries. Where the record refuses one, the others are written file by file, so that one bad
   * file never stops the rest. Throws DossierError `disk` and the like.
   */
  async flush(): Promise<void> {
    const pending = this.#pending;
    this.#pending = [];
    try {
      await this.#record.append(pending.flatMap(({ entries }) => entries));
    } catch (error) {
      if (!isRefusal(error)) throw error;
      for (const one of pending) await this.#alone(one);
    }
  }

  async #alone({ entries, refused }: Pending): Promise<void> {
    try {
      await this.#record.append(entries);
    } catch (error) {
      if (!isRefusal(error)) throw error;
      refused(error.toProblem());
    }
  }
}

function isRefusal(error: unknown): error is DossierError {
  return error instanceof DossierError && error.code === 'bad-value';
}
