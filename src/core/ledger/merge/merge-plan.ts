import type { Entry, EntryOf, EntryOrigin } from '../../model/entry.js';
import type { MergeConflict } from './conflict.js';
import type { RecordSide } from './record-side.js';

/** The record that is merged in, with its name and the file that its ledger is kept as. */
export interface MergedSide extends RecordSide {
  delivery: string;
  ledger: RecordMerge['ledger'];
}

/** An entry of the other record that this one lacks, as this one would hold it. */
export interface TakenEntry {
  entry: Entry;
  origin: EntryOrigin;
}

export type RecordMerge = EntryOf<'record-merged'>['body'];

/** What a merge takes, and what it leaves to a person. */
export interface MergePlan {
  /** This record as it would be. */
  result: readonly Entry[];
  /** What the entry says that tells of the merge. */
  merge: RecordMerge;
  taken: TakenEntry[];
  /** How many entries this record has already, the shared ones aside. */
  held: number;
  conflicts: MergeConflict[];
  /** Whether this record can already prove each fingerprint of the other. */
  isKnown: boolean;
}
