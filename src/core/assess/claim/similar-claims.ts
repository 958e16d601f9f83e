import type { ClaimResult, LineOutcome } from '../../model/results.js';
import { claimedLines } from './claimed-lines.js';
import { type ClaimEntries, entriesOf } from './terms.js';

/**
 * Other open claims of the delivery by others on the same goods, and other carriers to whom a similar claim on the
 * shipment was presented: 49 CFR 370.3(e). Undefined where there is neither.
 */
export function similarClaims(
  claim: ClaimEntries,
  all: readonly ClaimEntries[],
  outcomes: readonly LineOutcome[],
): ClaimResult['similar'] {
  const lines = claimedLines(claim.entries, outcomes);
  const carriers = claim.received.alsoFiledWith ?? [];
  const claims = all
    .filter((other) => other.claim !== claim.claim && entriesOf(other, 'closed').length === 0)
    .filter((other) => other.received.claimant.name !== claim.received.claimant.name)
    .filter((other) => {
      const theirs = claimedLines(other.entries, outcomes);
      return lines === undefined || theirs === undefined || [...lines].some((line) => theirs.has(line));
    })
    .map((other) => other.claim);
  return claims.length + carriers.length === 0 ? undefined : { claims, carriers };
}
