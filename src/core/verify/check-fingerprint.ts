import { treeHash } from '../ledger/tree.js';
import type { Sha256 } from '../model/evidence.js';
import type { CheckResults } from './check-results.js';
import type { KnownFingerprint } from './options.js';

/** Whether the record begins with each of the states whose fingerprints the reader has. */
export function checkFingerprints(
  own: { delivery: string; leaves: readonly Sha256[] },
  results: CheckResults,
  known: readonly KnownFingerprint[],
  here: string,
): void {
  if (known.length === 0) {
    results.skip('fingerprint.matches', 'No fingerprint was given to compare with.');
    return;
  }
  const size = own.leaves.length;
  const wrong = known.flatMap((one) => {
    if (one.delivery !== own.delivery)
      return [`the fingerprint is of "${one.delivery}", this record is "${own.delivery}"`];
    if (one.size > size)
      return [
        `the fingerprint is newer than ${here}: it counts ${one.size} entries, and ${size} are here; either ${here} was made before the fingerprint, then ask for the record or a newer dossier, or entries were taken out`,
      ];
    const same = one.size >= 1 && treeHash(own.leaves.slice(0, one.size)) === one.root;
    return same ? [] : [`the first ${one.size} entries are not the ones of the fingerprint`];
  });
  results.failIf(
    'fingerprint.matches',
    wrong,
    known.map((one) => `the first ${one.size} of ${size} entries are the same`).join('; '),
  );
}
