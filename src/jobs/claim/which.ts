import type { ClaimId } from '../../core/model/claim.js';
import { DossierError } from '../../core/model/error.js';
import type { RecordState } from '../../core/model/state.js';
import { unknownWord } from '../typed/place-options.js';

/** The claims of a record, in the order received. */
export const claimsOf = (state: RecordState): ClaimId[] => [
  ...new Set(state.claims.flatMap((one) => (one.is === 'received' ? [one.claim] : []))),
];

/** The claim named, or the only one. */
export function whichClaim({ claim }: { claim?: string | undefined }, state: RecordState): ClaimId {
  const claims = claimsOf(state);
  const [only] = claims;
  if (only === undefined)
    throw new DossierError('bad-value', 'no claim is recorded', {
      fix: 'Record it first: dossier record claim received "Name of the claimant" --as receiver.',
    });
  if (claim === undefined) {
    if (claims.length === 1) return only;
    throw new DossierError('bad-value', `there are ${claims.length} claims`, {
      where: { field: '--claim' },
      fix: `Say which: ${claims.map((id) => `--claim ${id}`).join(' or ')}.`,
      choices: claims,
    });
  }
  const found = claims.find((id) => id === claim.toLowerCase());
  if (found === undefined) throw unknownWord('claim', claim, claims);
  return found;
}
