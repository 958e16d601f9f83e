import type { Entry } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';

/** A record: its entries in order, and the leaf hash of each. */
export interface RecordSide {
  entries: readonly Entry[];
  leaves: readonly Sha256[];
}
