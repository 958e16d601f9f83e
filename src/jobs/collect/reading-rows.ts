import type { NewEntry } from '../../core/model/entry.js';
import { DossierError, type Problem } from '../../core/model/error.js';
import type { EvidenceId, ReadingBody } from '../../core/model/evidence.js';
import type { RecordState } from '../../core/model/state.js';
import type { LongWork } from '../../core/ports/work.js';
import type { ReadingDraft, ReceivedDraft } from '../../intake/draft.js';
import type { DeliveryRecord } from '../../record/store.js';
import type { OpenDelivery } from '../delivery.js';
import { doubtProblem, KnownKin, type Sure } from '../doubts.js';
import { ofRow } from '../notes/line.js';
import { requireRoom } from '../outcome-room.js';
import { readingKey, recordedReadings } from '../recorded-readings.js';

/** Who takes rows in, and whether those far from their kin are right. */
export interface TakingIn extends Pick<OpenDelivery, 'by' | 'now'>, Pick<LongWork, 'signal'> {
  sure?: Sure;
}

/** Rows of a readings table that become readings, and what became of the others. */
export interface ChosenRows {
  readings: ReadingDraft[];
  /** Rows whose words were recorded before. */
  repeated: number;
  /** Rows far from their kin, or of more goods than there were, with a problem each. */
  doubted: number;
  problems: Problem[];
}

/** Chooses the rows of tables that become readings, in the order in which the tables come. */
export class ReadingRows {
  readonly #record: DeliveryRecord;
  readonly #input: TakingIn;
  readonly #kin: KnownKin;
  readonly #state: RecordState;
  /** Outcomes of goods that rows have already added. */
  readonly #outcomes: ReadingBody[] = [];
  /** Readings that files have already added. */
  readonly #said: Map<string, EvidenceId>;

  constructor(record: DeliveryRecord, input: TakingIn) {
    this.#record = record;
    this.#input = input;
    this.#state = record.state();
    this.#kin = new KnownKin(this.#state, input.now());
    this.#said = recordedReadings(record);
  }

  /** Rows of an earlier file add nothing; equal rows in one file are two readings. */
  choose(rows: readonly ReadingDraft[], file: string): ChosenRows {
    const fresh = rows.filter(({ reading }) => !this.#said.has(readingKey(reading)));
    const problems: Problem[] = [];
    const readings = fresh.filter(({ row, reading }) => {
      const found = this.#problemsOf(reading);
      problems.push(...found.map((problem) => ofRow(problem, file, row)));
      if (found.length > 0) return false;
      this.#kin.add(reading);
      if (reading.kind === 'outcome') this.#outcomes.push(reading);
      return true;
    });
    return {
      readings,
      repeated: rows.length - fresh.length,
      doubted: fresh.length - readings.length,
      problems,
    };
  }

  #problemsOf(reading: ReadingBody): Problem[] {
    try {
      requireRoom(this.#state, reading, this.#input.now(), { drafts: this.#outcomes });
    } catch (error) {
      if (!(error instanceof DossierError) || error.code !== 'bad-value') throw error;
      return [error.toProblem()];
    }
    return this.#kin
      .doubts(reading, 'typed', this.#input.sure)
      .map((doubt) => doubtProblem(doubt, reading, this.#kin.delivery));
  }

  /** Rows of a table that was taken in before without them. */
  chooseMissing(evidence: EvidenceId, rows: readonly ReadingDraft[], file: string): ChosenRows {
    const recorded = new Set(
      this.#record.entries.flatMap(({ type, body }) =>
        type === 'reading-recorded' && body.source.is === 'row' && body.source.evidence === evidence
          ? [body.source.row]
          : [],
      ),
    );
    return this.choose(
      rows.filter(({ row }) => !recorded.has(row)),
      file,
    );
  }

  /** The entries of chosen rows, from now on said by this table. */
  entries(readings: readonly ReadingDraft[], evidence: EvidenceId): NewEntry[] {
    return readings.map(({ row, reading }) => {
      this.#said.set(readingKey(reading), evidence);
      return {
        type: 'reading-recorded',
        by: this.#input.by,
        body: {
          ...reading,
          evidence: this.#record.nextEvidenceId(),
          source: { is: 'row', evidence, row },
        },
      };
    });
  }
}

/** A table counts the rows that became readings. */
export function withoutDoubted(received: ReceivedDraft, doubted: number): ReceivedDraft {
  return received.kind === 'readings' && doubted > 0
    ? { ...received, rows: received.rows - doubted, rowsLeftOut: received.rowsLeftOut + doubted }
    : received;
}
