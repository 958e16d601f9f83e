import type { ClaimId } from '../../model/claim.js';
import type { EvidenceId } from '../../model/evidence.js';

/**
 * Where two records of one delivery say different things of the same thing. The word of the record that takes stays,
 * and a person decides. Numbers are those of the record that takes, unless the name says otherwise.
 */
export type MergeConflict =
  /** A field of delivery.yaml. */
  | { is: 'facts'; field: string; here?: string; there?: string }
  /** What evidence shows. */
  | { is: 'described'; evidence: EvidenceId; field: string; here: string; there: string }
  /** The same bytes, taken in as a log in another way. */
  | { is: 'read-otherwise'; entry: number; evidence: EvidenceId }
  /** Both put the same entry right, and not alike. */
  | { is: 'corrected'; entry: number }
  /** It was struck here, and counts there. */
  | { is: 'struck-here'; entry: number; evidence?: EvidenceId }
  /** It was struck there, and others rest on it here. */
  | { is: 'carries-others'; entry: number; others: number[] }
  /** The same claimant and day, and not the same claim. */
  | { is: 'claim'; entry: number; claim: ClaimId }
  /** A word on an entry that was not taken. */
  | { is: 'of-what-is-not-here'; entryThere: number; of: number };
