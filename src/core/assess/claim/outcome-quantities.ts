import type { LineOutcome, OutcomeAmount } from '../../model/results.js';
import type { ClaimEntryOf, RecordState } from '../../model/state.js';
import { claimedLines } from './claimed-lines.js';
import { currentEntries } from './quantities.js';
import type { ClaimEntries } from './terms.js';

type QuantityEntry = ClaimEntryOf<'quantity'>;

const STATE_OF = { refused: 'rejected', excepted: 'damaged', short: 'short', accepted: 'accepted' } as const;
const FATES = ['refused', 'excepted', 'short', 'accepted'] as const;

/**
 * Quantities as entries of a claim would state them, from the outcomes at the dock, for the lines of which the claim states
 * none. Each has the number of the outcome's own entry, and is said by the receiver.
 */
export function quantitiesFromOutcomes(
  claim: Pick<ClaimEntries, 'claim' | 'entries'>,
  outcomes: readonly LineOutcome[],
  { evidence }: Pick<RecordState, 'evidence'>,
): QuantityEntry[] {
  const stated = new Set(
    currentEntries(claim.entries).flatMap((one) => (one.is === 'quantity' ? [one.line] : [])),
  );
  const concerned = claimedLines(claim.entries, outcomes);
  return outcomes
    .filter(({ line }) => !stated.has(line) && (concerned === undefined || concerned.has(line)))
    .flatMap((outcome) => {
      const said = outcome.statements.map((one) => one.evidence);
      const item = evidence.findLast((one) => said.includes(one.evidence));
      if (item === undefined) return [];
      return outcome.amounts.filter(isHarmed).flatMap((amount) =>
        statesOf(amount).map(
          ([state, count]): QuantityEntry => ({
            is: 'quantity',
            claim: claim.claim,
            evidence: said,
            line: outcome.line,
            state,
            quantity: String(count),
            unit: amount.unit,
            saidBy: 'receiver',
            seq: item.seq,
            enteredAt: item.enteredAt,
            enteredBy: item.enteredBy,
          }),
        ),
      );
    });
}

const isHarmed = ({ refused = 0, excepted = 0, short = 0 }: OutcomeAmount) => refused + excepted + short > 0;

function statesOf(amount: OutcomeAmount): [QuantityEntry['state'], number][] {
  return [
    ...(amount.shipped === undefined
      ? []
      : [['shipped', amount.shipped] satisfies [QuantityEntry['state'], number]]),
    ...FATES.flatMap((fate): [QuantityEntry['state'], number][] => {
      const count = amount[fate];
      return count === undefined || count === 0 ? [] : [[STATE_OF[fate], count]];
    }),
  ];
}
