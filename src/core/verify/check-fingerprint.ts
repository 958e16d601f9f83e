import { treeHash } from '../ledger/tree.js';
import type { Sha256 } from '../model/evidence.js';
import type { CheckResults } from './check-results.js';
import type { KnownFingerprint } from './options.js';

/** A record whose fingerprints can be proven: the one at hand, and after it those that were merged into it. */
export interface ProvableRecord {
  delivery: string;
  leaves: readonly Sha256[];
  /** The entry that tells of its merge. */
  seq?: number;
}

/** Whether the record, or one that was merged into it, begins with each of the states whose fingerprints the reader has. */
export function checkFingerprints(
  records: readonly [ProvableRecord, ...ProvableRecord[]],
  results: CheckResults,
  known: readonly KnownFingerprint[],
  here: string,
): void {
  if (known.length === 0) {
    results.skip('fingerprint.matches', 'No fingerprint was given to compare with.');
    return;
  }
  const [own] = records;
  const proven: string[] = [];
  const wrong = known.flatMap((one) => {
    const record = records.find((any) => beginsWith(any, one));
    if (record === undefined) return [whyNot(own, one, here)];
    const of = record.seq === undefined ? '' : ` of the record merged in by entry ${record.seq}`;
    proven.push(`the first ${one.size} of ${record.leaves.length} entries${of} are the same`);
    return [];
  });
  if (wrong.length > 0) results.failIf('fingerprint.matches', wrong, '');
  else if (known.every((one) => beginsWith(own, one))) results.pass('fingerprint.matches', proven.join('; '));
  else results.notice('fingerprint.matches', proven.join('; '));
}

function beginsWith({ delivery, leaves }: ProvableRecord, one: KnownFingerprint): boolean {
  return (
    one.delivery === delivery &&
    one.size >= 1 &&
    one.size <= leaves.length &&
    treeHash(leaves.slice(0, one.size)) === one.root
  );
}

function whyNot({ delivery, leaves }: ProvableRecord, one: KnownFingerprint, here: string): string {
  if (one.delivery !== delivery)
    return `the fingerprint is of "${one.delivery}", this record is "${delivery}"`;
  return one.size > leaves.length
    ? `the fingerprint is newer than ${here}: it counts ${one.size} entries, and ${leaves.length} are here; either ${here} was made before the fingerprint, then ask for the record or a newer dossier, or entries were taken out`
    : `the first ${one.size} entries are not the ones of the fingerprint`;
}
