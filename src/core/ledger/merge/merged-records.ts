import type { Entry } from '../../model/entry.js';
import type { Sha256 } from '../../model/evidence.js';

/** A record that was merged in, with the leaf hash of every entry that it had. */
export interface MergedRecord {
  /** The entry that tells of the merge. */
  seq: number;
  delivery: string;
  size: number;
  root: Sha256;
  leaves: readonly Sha256[];
}

/**
 * The records that were merged into one, and those that were merged into these before. A merge whose entry is not at
 * hand is left out, with what came by it.
 * @param own leaf hashes of the record itself
 */
export function mergedRecords(entries: readonly Entry[], own: readonly Sha256[]): MergedRecord[] {
  const merged = new Map<number, MergedRecord>();
  for (const { seq, type, body, origin } of entries) {
    if (type !== 'record-merged') continue;
    const into = origin === undefined ? own : merged.get(origin.merge)?.leaves;
    if (into === undefined) continue;
    const leaves = [...into.slice(0, body.shared), ...body.leaves];
    merged.set(seq, { seq, ...body.other, leaves });
  }
  return [...merged.values()];
}
