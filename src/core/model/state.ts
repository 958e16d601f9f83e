import type { z } from 'zod';
import type { ClaimNote } from './claim.js';
import type { Delivery } from './delivery.js';
import type { clockComparison, Entry, EntryOf, EntryOrigin } from './entry.js';
import type { Evidence, EvidenceId, Region, Sha256 } from './evidence.js';
import type { Instant } from './time.js';

/** Evidence with all descriptions and corrections applied, and the entries it rests on. */
export type EvidenceItem = Evidence & {
  /** Entry that added it. */
  seq: number;
  /** Where its entry was before it was taken over from another record of this delivery. */
  origin?: EntryOrigin;
  enteredAt: Instant;
  enteredBy: string;
  /** Later entries that described or corrected it, in order. */
  describedBy: number[];
  /** The later reading of the same file that counts in its place. */
  replacedBy?: EvidenceId;
  /** Later entries that gave it its right value, in order; the last one counts. */
  correctedBy: number[];
  /** Why it counts although the tool judged it to belong elsewhere. */
  admitted?: string;
  /** Reason, when it is withheld from copies for outsiders. */
  withheld?: string;
  /** Parts of its picture that are black in copies for outsiders. */
  blackOut?: Region[];
};
export type ItemOf<K extends Evidence['kind']> = Extract<EvidenceItem, { kind: K }>;

/** A claim note with the entry that holds it. */
export type ClaimEntry = ClaimNote & {
  seq: number;
  enteredAt: Instant;
  enteredBy: string;
  /** The entry that corrects it; a corrected entry no longer counts, and stays in the record. */
  replacedBy?: number;
};
/** What was said of a claim, of one kind. */
export type ClaimEntryOf<K extends ClaimNote['is']> = Extract<ClaimEntry, { is: K }>;

/** An entry that was put right, with what it said first and what counts now. */
export interface Correction {
  /** The entry that was wrong. */
  entry: Entry;
  /** The entries that correct it and were not struck, in order; the last one counts. */
  corrections: EntryOf<'entry-corrected'>[];
}

/** An entry that does not count any more. */
export interface Strike {
  entry: Entry;
  strike: EntryOf<'entry-struck'>;
}

/** The state of a record: everything its ledger says, folded from its entries. */
export interface RecordState {
  delivery: Delivery;
  /** Hash of the delivery.yaml text that `delivery` was read from. */
  deliveryHash: Sha256;
  /** What counts, in the order of the ledger; ids are unique. */
  evidence: EvidenceItem[];
  /** What the tool judged to belong to another trailer, delivery or time, and nobody has admitted. */
  notCounted: EvidenceItem[];
  corrections: Correction[];
  strikes: Strike[];
  /** Other records of this delivery that were merged in. */
  merges: EntryOf<'record-merged'>[];
  clocks: (z.infer<typeof clockComparison> & { seq: number })[];
  published: EntryOf<'fingerprint-published'>[];
  timeStamps: EntryOf<'time-stamp-received'>[];
  dossiers: EntryOf<'dossier-built'>[];
  /** What was said of claims, in the order of the ledger. */
  claims: ClaimEntry[];
  /** Number of entries and the tree hash over them (RFC 9162 §2.1). */
  size: number;
  root: Sha256;
}

export function findEvidence(state: RecordState, id: EvidenceId): EvidenceItem | undefined {
  return state.evidence.find((item) => item.evidence === id);
}
