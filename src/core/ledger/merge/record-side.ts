import type { Entry } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';

/** A record: its entries in order, and the leaf hash of each. */
export interface RecordSide {
  entries: readonly Entry[];
  leaves: readonly Sha256[];
}

/** How many entries both records begin with. */
export function sharedBeginning(a: readonly Sha256[], b: readonly Sha256[]): number {
  const apart = a.findIndex((leaf, i) => leaf !== b[i]);
  return apart < 0 ? a.length : apart;
}
