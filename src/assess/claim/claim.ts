import type { ClaimResult } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import { amountsOf } from './amounts.js';
import { type ClockContext, claimClocksOf } from './clocks.js';
import { contentsOf } from './contents.js';
import { papersOf } from './papers.js';
import { claimsAt, termsOf } from './terms.js';

export interface ClaimContext extends ClockContext {
  state: RecordState;
}

/** Everything computed of each claim of a delivery at a moment, in the order received. */
export function claimResults(context: ClaimContext): ClaimResult[] {
  const { state, now } = context;
  return claimsAt(state, now).map((claim) => {
    const amounts = amountsOf(claim.entries);
    return {
      claim: claim.claim,
      received: claim.received,
      ...termsOf(claim),
      clocks: claimClocksOf(claim, context),
      contents: contentsOf(claim.received),
      papers: papersOf(claim, state),
      position: [],
      ...(amounts === undefined ? {} : { amounts }),
    };
  });
}
