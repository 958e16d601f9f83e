import { omitUndefined } from '../../model/omit-undefined.js';
import type { ClaimResult, Finding, GapResult, LineOutcome } from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import { amountsOf } from './amounts.js';
import { burdenOfProof } from './burden-of-proof.js';
import { claimedLines, milestonesOfLines, stopsOfOthers } from './claimed-lines.js';
import { contentsOf } from './contents.js';
import { claimDeadlinesOf, type DeadlineContext } from './deadlines.js';
import { supportingDocuments } from './documents.js';
import { exceptionsNoted } from './exceptions.js';
import { quantitiesOf } from './quantities.js';
import { claimsAt, termsOf } from './terms.js';

export interface ClaimContext extends Omit<DeadlineContext, 'lines' | 'exceptions'> {
  state: RecordState;
  findings: readonly Finding[];
  gaps: readonly GapResult[];
  outcomes: readonly LineOutcome[];
}

/** Everything computed of each claim of a delivery at a moment, in the order received. */
export function claimResults(context: ClaimContext): ClaimResult[] {
  const { state, now, findings, gaps, outcomes } = context;
  const exceptions = exceptionsNoted(state, now);
  return claimsAt(state, now).map((claim) => {
    const amounts = amountsOf(claim.entries);
    const lines = claimedLines(claim.entries, outcomes);
    const milestones = milestonesOfLines(context.milestones, state.delivery, lines);
    const quantities = quantitiesOf(claim.entries);
    return {
      claim: claim.claim,
      received: claim.received,
      ...termsOf(claim),
      clocks: claimDeadlinesOf(claim, { ...context, milestones, lines: state.delivery.lines, exceptions }),
      contents: contentsOf(claim.received),
      papers: supportingDocuments(claim, state),
      position: burdenOfProof({
        entries: claim.entries,
        findings,
        gaps,
        lines,
        otherStops: stopsOfOthers(state.delivery, lines),
      }),
      ...omitUndefined({ amounts, quantities: quantities.length === 0 ? undefined : quantities }),
    };
  });
}
