import type { EvidenceId } from '../../model/evidence.js';
import type { MergeConflict } from './conflict.js';

/** What becomes of one entry of the other record. */
export type Decision =
  | { is: 'take'; body: unknown }
  /** This record says so already; `as` is the entry that does. */
  | { is: 'held'; as?: number }
  | { is: 'conflict'; conflict: MergeConflict; as?: number }
  /** It speaks of the state of the other record, whose ledger is kept. */
  | { is: 'stays-there' };

/** This record struck what the other still counts. */
export const struckHere = (entry: number, evidence: EvidenceId): Decision => ({
  is: 'conflict',
  as: entry,
  conflict: { is: 'struck-here', entry, evidence },
});
