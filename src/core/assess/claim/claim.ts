import { omitUndefined } from '../../model/omit-undefined.js';
import type { AmountWorksheet, ClaimResult, Finding, GapResult, LineOutcome } from '../../model/results.js';
import type { ClaimEntry, RecordState } from '../../model/state.js';
import { amountsOf } from './amounts.js';
import { burdenOfProof } from './burden-of-proof.js';
import { claimedLines, milestonesOfLines, stopsOfOthers } from './claimed-lines.js';
import { contentsOf } from './contents.js';
import { claimDeadlinesOf, type DeadlineContext } from './deadlines.js';
import { supportingDocuments } from './documents.js';
import { exceptionsNoted } from './exceptions.js';
import { quantitiesFromOutcomes } from './outcome-quantities.js';
import { quantitiesOf } from './quantities.js';
import { similarClaims } from './similar-claims.js';
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
  const all = claimsAt(state, now);
  return all.map((claim) => {
    const seen = quantitiesFromOutcomes(claim, outcomes, state);
    const said = [...claim.entries, ...seen];
    const amounts = amountsOf(said);
    const lines = claimedLines(claim.entries, outcomes);
    const milestones = milestonesOfLines(context.milestones, state.delivery, lines);
    const quantities = quantitiesOf(said);
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
      ...omitUndefined({
        similar: similarClaims(claim, all, outcomes),
        amounts: amounts && withSource(amounts, seen),
        quantities: quantities.length === 0 ? undefined : quantities,
      }),
    };
  });
}

/** A worksheet that counts by the outcomes says so. */
function withSource(amounts: AmountWorksheet, seen: readonly ClaimEntry[]): AmountWorksheet {
  const seqs = new Set(seen.map(({ seq }) => seq));
  const used = amounts.steps.flatMap((step) => step.seqs).filter((seq) => seqs.has(seq));
  return used.length === 0
    ? amounts
    : {
        ...amounts,
        notes: [
          ...amounts.notes,
          { is: 'counted-once', seqs: [...new Set(used)], detail: 'quantities-from-outcomes' },
        ],
      };
}
