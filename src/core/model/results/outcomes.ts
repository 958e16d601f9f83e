/** What became of the goods, line by line and stop by stop. */
import type { EvidenceId, OutcomeHow, OutcomeReason, OutcomeTold, OutcomeVerdict } from '../evidence.js';
import type { TradeQuantity, TradeUnit } from '../quantity.js';

/** What was done with a part of the goods. `unloaded`: off the truck, and no word on acceptance. */
export type OutcomeFate = 'accepted' | 'excepted' | 'refused' | 'unloaded' | 'short';

/**
 * Amounts of one line in one unit. `open` is what nobody has spoken of; `over` came in excess of what was shipped.
 * Without `shipped` the record does not say how much there was in this unit, and what is left is not known.
 */
export interface OutcomeAmount extends Partial<Record<OutcomeFate | 'open' | 'over', number>> {
  unit: TradeUnit;
  shipped?: number;
}

/** One statement about the goods of a line at its stop, in the order in which they count. */
export interface OutcomeStatement {
  evidence: EvidenceId;
  outcome: OutcomeVerdict | 'unloaded';
  /** Milliseconds since 1970 UTC; absent when the time is not known. */
  at?: number;
  /** Absent: what no other statement speaks of, or with `all` every one of the goods. */
  quantity?: TradeQuantity;
  all?: true;
  rest?: 'accepted' | 'refused';
  reasons: OutcomeReason[];
  words?: string;
  saidBy?: string;
  told?: OutcomeTold;
  toldName?: string;
  how?: OutcomeHow;
  documents: EvidenceId[];
  document?: string;
  /** Of the whole stop: it names no line. */
  ofStop: boolean;
}

/** What became of one line at the stop where it is delivered. */
export interface LineOutcome {
  stop: string;
  line: string;
  is:
    | 'accepted'
    | 'accepted-with-exceptions'
    | 'refused'
    | 'refused-in-part'
    | 'unloaded'
    /** Nothing of it is on record. */
    | 'not-recorded';
  amounts: OutcomeAmount[];
  /** Of what is refused or excepted still. */
  reasons: OutcomeReason[];
  statements: OutcomeStatement[];
}
