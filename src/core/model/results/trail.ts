import type { ClaimId } from '../claim.js';
import type { EntryOrigin, EntryType } from '../entry.js';
import type { EvidenceId } from '../evidence.js';
import type { EventTime, Instant } from '../time.js';

/** One field of an entry, by its name in the record, and its value in plain text. */
export interface TrailField {
  field: string;
  value: string;
}

/** A field that an entry changed: from an earlier value, or for the first time. */
export interface TrailChange {
  field: string;
  before?: string;
  after?: string;
}

/** One entry of the record, for a reader. */
export interface TrailRow {
  seq: number;
  type: EntryType;
  /** When it was entered, by the clock of the machine. */
  at: Instant;
  /** Who entered it. */
  by: string;
  /** Evidence that it adds or concerns. */
  evidence: EvidenceId[];
  claim?: ClaimId;
  /** Time of what it reports, with the time's basis. */
  time?: EventTime;
  /** The file that it adds, or the dossier that was built. */
  file?: { name: string; bytes: number; sha256: string };
  /** The evidence that it was read from or came in, and the row or name there. */
  from?: { evidence: EvidenceId; row?: number; entry?: string };
  /** Where it was entered first: in another record, which the entry `merge` tells of. */
  origin?: Pick<EntryOrigin, 'merge' | 'entry' | 'at' | 'by'>;
  /** Whole days from the time that it tells of to the time of its first entry; nothing below one day. */
  daysLate?: number;
  fields: TrailField[];
  changes: TrailChange[];
  /** The entry that it corrects. */
  corrects?: number;
  /** The entry that this one strikes. */
  strikes?: number;
  /** Number of entries that a fingerprint, a time stamp or a dossier covers. */
  covers?: number;
}
