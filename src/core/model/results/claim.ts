import type { ClaimId, Day, ExceptedCause, Governing } from '../claim.js';
import type { EvidenceId } from '../evidence.js';
import type { Currency, MinorUnits } from '../money.js';
import type { Element } from '../rule-set.js';
import type { ClaimEntryOf } from '../state.js';
import type { CalendarDay, Zone } from '../time.js';

/** What a text of a published rule rests on for us: its own words read, another's report of them, or memory. */
export type TextBasis = 'read' | 'secondary' | 'from-memory' | 'common-practice';

/** The moment that starts a clock, or that ends what it asks for: a day, or a time of day where hours count. */
export type DeadlineTime =
  | { is: 'day'; day: Day; evidence: EvidenceId[]; seq?: number }
  | { is: 'time'; at: number; zone: Zone; evidence: EvidenceId[]; seq?: number };

/** One clock of one claim or refusal, under one candidate of what governs. */
export interface ClaimDeadline {
  /** Its id in templates/claim-deadlines.yaml; one that recurs has `turn` 1, 2 … */
  id: string;
  turn?: number;
  title: { en: string; es: string };
  /** What is to be done until then. */
  duty: { en: string; es: string };
  source: string;
  basis: TextBasis;
  /** Whose duty or right it is. */
  binds: 'carrier' | 'claimant' | 'receiver';
  /** A deadline by itself, or only the least time that a contract may leave (49 U.S.C. 14706(e)(1)). */
  nature: 'deadline' | 'least-time';
  /** Under what governs it counts; empty: whatever governs. */
  governs: readonly Governing[];
  /** What starts it, in words, and when that was; absent: it has not happened, or nobody has recorded it. */
  starts: { en: string; es: string };
  from?: DeadlineTime;
  /** Last day or moment. */
  due?: DeadlineTime;
  /** What was done about it. */
  done?: DeadlineTime;
  state: 'not-started' | 'running' | 'done' | 'done-late' | 'overdue' | 'no-longer-needed';
  /** The entry by which the contract sets it otherwise. */
  setBy?: { seq: number; note?: string; evidence: EvidenceId[] };
  /** Of a least time that the contract sets shorter than the rule lets it: the last day under the rule. */
  leastDue?: DeadlineTime;
  /** Where it was not all the days or hours that counted. */
  counting?: DeadlineCounting;
  /** A claim in writing stopped it on that day, until it was declined in writing; `due` is absent while it stands still. */
  stopped?: { from: Day; until?: Day };
  /** The stop of unloading, for what is counted there. */
  stop?: string;
}

/** What was left out of a count, so that a reader can count again. */
export interface DeadlineCounting {
  leftOut: { date: CalendarDay; why: 'saturday' | 'sunday' | 'holiday' | 'not-a-working-day' }[];
  /** List of holidays that was used, and whether it names any day at all. */
  holidays?: { list: string; known: boolean };
  /** Hours at work that alone were counted, in local time. */
  hours?: { from: string; to: string; assumed: boolean };
  /** The end if every hour counted: what is done by then is in time whatever the hours at work. */
  ifEveryHourCounts?: DeadlineTime;
  /** An inspection moved the end: its request, and its result where there is one. */
  inspection?: { evidence: EvidenceId[] };
}

/** One of the least contents of a claim: 49 CFR 370.3(b). */
export interface ContentsItem {
  id: 'form' | 'shipment' | 'liability' | 'amount';
  state: 'said' | 'not-said' | 'not-looked-at';
  source: string;
  basis: TextBasis;
}

/** A paper that supports a claim (49 CFR 370.7(b)), and whether the record has it. */
export interface SupportingDocument {
  id:
    | 'bill-of-lading'
    | 'freight-charges'
    | 'invoice'
    | 'inspection-certificate'
    | 'sale-account'
    | 'rejection-notice';
  /** Asked by the rule, or wished because it decides an amount. */
  asked: 'by-rule' | 'to-judge-the-amount';
  have: EvidenceId[];
}

/** What speaks for or against one thing that a side must show. */
export interface PositionPoint {
  /**
   * A finding of the assessment by its id and, where it is about one, its line; a requirement by its rule's id; or an
   * entry of the claim.
   */
  from:
    | { is: 'finding'; id: string; line?: string }
    | { is: 'gap'; id: string }
    | { is: 'claim-entry'; seq: number };
  evidence: EvidenceId[];
}

/** One row of the table of positions (Missouri Pacific R. Co. v. Elmore & Stahl, 377 U.S. 134 (1964)). */
export interface PositionRow {
  /** What must be shown. */
  element: Element | 'freedom-from-negligence' | 'excepted-cause';
  /** Which excepted cause, where it is one. */
  cause?: ExceptedCause;
  /** Who must show it. */
  by: 'claimant' | 'carrier';
  forCarrier: PositionPoint[];
  againstCarrier: PositionPoint[];
  /** What is open or missing and would decide it. */
  weak: PositionPoint[];
  /** As the record stands. An excepted cause with no evidence behind it is not offered at all. */
  stands: 'for-carrier' | 'against-carrier' | 'disputed' | 'open';
}

/** Least and most, where papers disagree; equal where they do not. */
export interface MoneyRange {
  low: MinorUnits;
  high: MinorUnits;
}

/** One step of the worksheet, with the entries it was taken from. */
export interface AmountStep {
  id:
    | 'value-sound'
    | 'value-arrived'
    | 'salvage-net'
    | 'freight'
    | 'credits'
    | 'costs'
    | 'loss'
    | 'released-value'
    | 'claimable';
  /** Line of the delivery; absent: the whole claim. */
  line?: string;
  range: MoneyRange;
  /** Entries of the claim by number. */
  seqs: number[];
  /** Minor units that rounding added or took away in this step. */
  rounded?: number;
}

export interface AmountWorksheet {
  currency: Currency;
  steps: AmountStep[];
  /** What was claimed, and what the papers come to. */
  claimed?: MinorUnits;
  computed?: MoneyRange;
  /** Why something is not in the sum, or papers disagree. `detail` is a name of an item, a currency or a reason. */
  notes: {
    is: 'disagree' | 'other-currency' | 'no-paper' | 'quantity-unknown' | 'counted-once';
    seqs: number[];
    detail: string;
  }[];
}

/** How much of one line was in which state, from the least that anybody says to the most. */
export interface QuantityRow {
  line: string;
  unit: ClaimEntryOf<'quantity'>['unit'];
  /** Decimal numbers as they were written. */
  states: { state: ClaimEntryOf<'quantity'>['state']; low: string; high: string; seqs: number[] }[];
  /** Whether accepted, rejected and short can come to what was shipped; absent when too little is said. */
  addsUp?: boolean;
}

/** Everything computed of one claim. */
export interface ClaimResult {
  claim: ClaimId;
  received: ClaimEntryOf<'received'>;
  governs: Governing;
  /** What says so; absent: nobody has said. */
  terms?: ClaimEntryOf<'terms'>;
  clocks: ClaimDeadline[];
  contents: ContentsItem[];
  papers: SupportingDocument[];
  position: PositionRow[];
  amounts?: AmountWorksheet;
  /** Absent when nobody said how much was in which state. */
  quantities?: QuantityRow[];
}
