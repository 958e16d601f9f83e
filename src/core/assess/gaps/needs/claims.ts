import type { ClockMoment } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import { doingsOf, resolution } from '../../claim/claim-actions.js';
import { type ClaimEntries, claimsAt } from '../../claim/terms.js';
import type { RuleContext } from '../context.js';
import { lack } from '../shortfalls.js';
import { type NeedVerdict, nothing } from '../verdict.js';

type ClaimNeed = Extract<SimpleNeed, { claim: unknown }>;

/** What was recorded of the claims: each of them must have it. A letter that was only put together was not sent. */
export function claimVerdict(context: RuleContext, need: ClaimNeed): NeedVerdict {
  const claims = claimsAt(context.state, context.now);
  const done = claims.flatMap((claim) => doneFor(context, need, claim) ?? []);
  const counted = [...new Set(done.flatMap(({ evidence }) => evidence))];
  if (claims.length > 0 && done.length === claims.length) return { ...nothing(), outcome: 'met', counted };
  const lacking = [
    lack('too-few', { thing: `claim-${need.claim}`, have: done.length, need: Math.max(1, claims.length) }),
  ];
  return { ...nothing(), outcome: done.length > 0 ? 'short' : 'missing', counted, lacking };
}

function doneFor(
  { moments }: RuleContext,
  need: ClaimNeed,
  claim: ClaimEntries,
): Pick<ClockMoment, 'evidence'> | undefined {
  switch (need.claim) {
    case 'received':
      return claim.received;
    case 'acknowledged':
      return doingsOf({ letter: 'acknowledgement', way: 'sent' }, claim, moments)[0];
    case 'resolved':
      return resolution(claim);
  }
}
