import type { NewEntry } from '../../core/model/entry.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { DeliveryRecord } from '../../record/store.js';

/** Entries that belong together, and what to do when the record does not let them in. */
export interface Pending {
  entries: NewEntry[];
  refused(problem: Problem): void;
}

/** Pending files that are written together: one commit for many, and a crash costs no more than these. */
const MOST_PENDING = 64;

/** Gathers entries and writes them in few commits. Nothing is in the record before `flush` came back. */
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
   * Writes what is pending. Where the record refuses an entry, the others are written one file at a time, so that
   * one bad file never stops the rest. Throws DossierError `disk` and the like.
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
