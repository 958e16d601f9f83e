import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimResult, Finding, GapResult } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import { amountsOf } from './amounts.js';
import { positionOf } from './burden-of-proof.js';
import { contentsOf } from './contents.js';
import { type ClockContext, claimClocksOf } from './deadlines.js';
import { papersOf } from './documents.js';
import { quantitiesOf } from './quantities.js';
import { claimsAt, termsOf } from './terms.js';

export interface ClaimContext extends ClockContext {
  state: RecordState;
  findings: readonly Finding[];
  gaps: readonly GapResult[];
}

/** Everything computed of each claim of a delivery at a moment, in the order received. */
export function claimResults(context: ClaimContext): ClaimResult[] {
  const { state, now, findings, gaps } = context;
  return claimsAt(state, now).map((claim) => {
    const amounts = amountsOf(claim.entries);
    const quantities = quantitiesOf(claim.entries);
    return {
      claim: claim.claim,
      received: claim.received,
      ...termsOf(claim),
      clocks: claimClocksOf(claim, context),
      contents: contentsOf(claim.received),
      papers: papersOf(claim, state),
      position: positionOf({ entries: claim.entries, findings, gaps }),
      ...omitUndefined({ amounts, quantities: quantities.length === 0 ? undefined : quantities }),
    };
  });
}
