import type { DeadlineTime } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import { claimActionsOf, resolution } from '../../claim/claim-actions.js';
import { type ClaimEntries, claimsAt } from '../../claim/terms.js';
import type { RuleContext } from '../context.js';
import { shortfall } from '../shortfalls.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';

type ClaimNeed = Extract<SimpleNeed, { claim: unknown }>;

/**
 * Entries recorded for the claims: each claim must have one. A letter that was prepared counts only once it was
 * sent.
 */
export function claimVerdict(context: RuleContext, need: ClaimNeed): NeedVerdict {
  const claims = claimsAt(context.state, context.now);
  const done = claims.flatMap((claim) => doneFor(context, need, claim) ?? []);
  const counted = [...new Set(done.flatMap(({ evidence }) => evidence))];
  if (claims.length > 0 && done.length === claims.length)
    return { ...emptyVerdict(), outcome: 'met', counted };
  const lacking = [
    shortfall('too-few', {
      thing: `claim-${need.claim}`,
      have: done.length,
      need: Math.max(1, claims.length),
    }),
  ];
  return { ...emptyVerdict(), outcome: done.length > 0 ? 'short' : 'missing', counted, lacking };
}

function doneFor(
  { milestones }: RuleContext,
  need: ClaimNeed,
  claim: ClaimEntries,
): Pick<DeadlineTime, 'evidence'> | undefined {
  switch (need.claim) {
    case 'received':
      return claim.received;
    case 'acknowledged':
      return claimActionsOf({ letter: 'acknowledgement', way: 'sent' }, claim, milestones)[0];
    case 'resolved':
      return resolution(claim);
  }
}
