import type { ClaimId, Day, ExceptedCause, Governing, ValueMeasure } from '../claim.js';
import type { EvidenceId } from '../evidence.js';
import type { Currency, MinorUnits, Money } from '../money.js';
import type { Element } from '../rule-set.js';
import type { ClaimEntryOf } from '../state.js';
import type { CalendarDay, Zone } from '../time.js';

/** Basis of a quoted rule: its text was read, a secondary source quotes it, or it is a practice of the trade without a source. */
export type TextBasis = 'read' | 'secondary' | 'common-practice';

/** The start or due time of a deadline: a day, or a time of day where hours count. */
export type DeadlineTime =
  | { is: 'day'; day: Day; evidence: EvidenceId[]; seq?: number }
  | { is: 'time'; at: number; zone: Zone; evidence: EvidenceId[]; seq?: number };

/** One deadline of one claim or rejection, under one candidate of the governing terms. */
export interface ClaimDeadline {
  /** Its id in templates/claim-deadlines.yaml; a recurring deadline has `turn` 1, 2 … */
  id: string;
  turn?: number;
  title: { en: string; es: string };
  /** What is to be done until then. */
  duty: { en: string; es: string };
  source: string;
  basis: TextBasis;
  /** Which edition of the text was read, where that is not the current one. */
  edition?: { en: string; es: string };
  /** The party whose duty or right it is. */
  binds: 'carrier' | 'claimant' | 'receiver';
  /**
   * A deadline in itself, the minimum that a contract may leave (49 U.S.C. 14706(e)(1)), or a time for which papers
   * are kept.
   */
  nature: 'deadline' | 'least-time' | 'keep-until';
  /** Governing terms under which it applies; empty: under any. */
  governs: readonly Governing[];
  /** The start in words, and its time; absent: it has not happened or is not recorded. */
  starts: { en: string; es: string };
  from?: DeadlineTime;
  /** Last day or moment. */
  due?: DeadlineTime;
  /** What was done about it, and when. */
  done?: DeadlineTime;
  /** `not-shown`: something was done in time that may meet it, and the record does not hold what would show that. */
  state: 'not-started' | 'running' | 'done' | 'done-late' | 'overdue' | 'no-longer-needed' | 'not-shown';
  /** The entry by which the contract sets another term. */
  setBy?: { seq: number; note?: string; evidence: EvidenceId[] };
  /** For a minimum that the contract shortens further than the rule allows: the last day under the rule. */
  leastDue?: DeadlineTime;
  /** Present where not all days or hours counted. */
  counting?: DeadlineCounting;
  /**
   * Suspension by a written claim, from its day until all that ends it has happened; `due` is absent while
   * suspended. `until` without the return of the documents is the earliest day on which it can have ended, so that
   * the due time is the earliest too (`notBefore`).
   */
  stopped?: { from: Day; until?: Day; notBefore?: true };
  /** What is said of it and is not counted, or limits what it says. */
  remarks?: DeadlineRemark[];
  /** The unloading stop, for what is counted there. */
  stop?: string;
}

/** Something that a reader of a deadline must know, with the evidence or the entry that it is about. */
export interface DeadlineRemark {
  is:
    | 'refused-before-arrival'
    | 'refused-without-arrival'
    | 'consignor-not-told'
    | 'diverted'
    | 'unloading-began'
    | 'no-right-of-rejection'
    | 'inspection-after-period'
    | 'inspection-in-time'
    | 'inspection-not-refused'
    | 'inspection-consignor-not-told'
    | 'inspection-moved-end'
    | 'inspection-awaited'
    | 'sent-day-unknown'
    | 'hour-unknown'
    | 'insurer-notice-incomplete'
    | 'papers-returned-never-came'
    | 'papers-not-returned'
    | 'part-admitted'
    | 'part-declined';
  evidence: EvidenceId[];
  seq?: number;
  amount?: Money;
}

/** What a count excluded, so that a reader can repeat it. */
export interface DeadlineCounting {
  leftOut: { date: CalendarDay; why: 'saturday' | 'sunday' | 'holiday' | 'not-a-working-day' }[];
  /** Holiday list that was used, and whether it names any day. */
  holidays?: { list: string; known: boolean };
  /** Working hours that a count depends on, in local time, and how it went on. */
  hours?: {
    from: string;
    to: string;
    assumed: boolean;
    /** `at-work`: only these hours counted. The others are the sentences of 7 CFR 46.2(cc)(4). */
    counted: 'at-work' | 'uninterrupted' | 'from-opening' | 'rest-from-opening';
    /** The opening at which counting began or went on, milliseconds since 1970 UTC. */
    opening?: number;
  };
  /** The due time on a 24-hour count: an action by then is in time whatever the working hours are. */
  ifEveryHourCounts?: DeadlineTime;
}

/** One of the minimum contents of a claim: 49 CFR 370.3(b). */
export interface ContentsItem {
  id: 'form' | 'shipment' | 'liability' | 'amount';
  state: 'said' | 'not-said' | 'not-looked-at';
  source: string;
  basis: TextBasis;
}

/** A document that supports a claim (49 CFR 370.7(b), (c)), and the evidence on file for it. */
export interface SupportingDocument {
  id:
    | 'bill-of-lading'
    | 'freight-charges'
    | 'invoice'
    | 'inspection-certificate'
    | 'sale-account'
    | 'rejection-notice'
    | 'destination-value'
    | 'statement-of-non-receipt'
    | 'dumping-certificate';
  /** Required by the rule, or requested to judge an amount. */
  asked: 'by-rule' | 'if-sold-or-not-invoiced' | 'if-lost' | 'if-dumped' | 'to-judge-the-amount';
  have: EvidenceId[];
  /**
   * Of a dumping certificate on record: what it lacks of 7 CFR 46.23, and what share of each line was dumped, in percent;
   * from five percent of a shipment on 46.22 asks for a certificate or other adequate evidence.
   */
  dumping?: { lacks: DumpingContent[]; shares: { line: string; percent: number }[] };
}

/** What 7 CFR 46.23 asks a certificate of dumping to show. */
export type DumpingContent =
  | 'commodity'
  | 'lot'
  | 'marks'
  | 'quantity'
  | 'shipper'
  | 'applicant'
  | 'condition'
  | 'time'
  | 'place'
  | 'no-commercial-value';

/** A supporting or adverse point on one thing to be proved. */
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

/** One row of the table on the burden of proof (Missouri Pacific R. Co. v. Elmore & Stahl, 377 U.S. 134 (1964)). */
export interface PositionRow {
  /** What must be proved. */
  element: Element | 'freedom-from-negligence' | 'excepted-cause';
  /** Which excepted cause, where it is one. */
  cause?: ExceptedCause;
  /** The burdens are those of CMR, articles 17 and 18; absent: of the case named above. */
  under?: 'cmr';
  /** The party with the burden. */
  by: 'claimant' | 'carrier';
  forCarrier: PositionPoint[];
  againstCarrier: PositionPoint[];
  /** Points that are open or missing and would decide it. */
  weak: PositionPoint[];
  /** Position by the record. An excepted cause without evidence has no row. */
  stands: 'for-carrier' | 'against-carrier' | 'disputed' | 'open';
}

/** Lowest and highest amount; equal where the documents agree. */
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
    | 'carriage-charges'
    | 'loss'
    | 'released-value'
    | 'claimable';
  /** Line of the delivery; absent: the whole claim. */
  line?: string;
  range: MoneyRange;
  /** Entries of the claim by number. */
  seqs: number[];
  /** Minor units of rounding in this step. */
  rounded?: number;
}

/** The amount of a claim, step by step: what was claimed, what the documents come to, what it comes down to. */
export interface AmountWorksheet {
  currency: Currency;
  /** How the goods are valued, by the law that governs or by the stated terms. */
  measure: ValueMeasure;
  measureBy: 'law' | 'contract';
  /** Nothing states the value by that measure, so that the invoice stands in: for all lines, or for some. */
  invoiceStandsIn?: 'all' | 'some';
  steps: AmountStep[];
  /** Amount claimed, and amount supported by documents. */
  claimed?: MinorUnits;
  computed?: MoneyRange;
  /**
   * The limit of CMR, article 23(3): 8.33 Special Drawing Rights for each kilogram of gross weight of the goods
   * affected, in hundredths of one. It is not converted: that is done at the date of judgment, or one agreed (23(7)).
   */
  weightLimit?: {
    sdr: { low: number; high: number };
    kilograms: { low: string; high: string };
    seqs: number[];
  };
  /** Why something is not in the sum, or that documents disagree. `detail` names an item, a currency or a reason. */
  notes: {
    is: 'disagree' | 'other-currency' | 'no-paper' | 'quantity-unknown' | 'counted-once';
    seqs: number[];
    detail: string;
  }[];
}

/** Quantity of one line in each state, from the lowest stated to the highest. */
export interface QuantityRow {
  line: string;
  unit: ClaimEntryOf<'quantity'>['unit'];
  /** Decimal numbers as they were written. */
  states: { state: ClaimEntryOf<'quantity'>['state']; low: string; high: string; seqs: number[] }[];
  /** Whether accepted, rejected and short reconcile with shipped; absent when too little is stated. */
  addsUp?: boolean;
}

/** Everything computed of one claim. */
export interface ClaimResult {
  claim: ClaimId;
  received: ClaimEntryOf<'received'>;
  governs: Governing;
  /** Terms that hold beside these, such as those of a bill of lading. */
  beside?: Governing[];
  /** Entries that state governing terms which can't hold together: nothing is counted then. */
  contradicts?: number[];
  /** The entry that states the governing terms; absent when none does. */
  terms?: ClaimEntryOf<'terms'>;
  /** Other claims of the delivery on the same goods, and other carriers with a similar one: 49 CFR 370.3(e). */
  similar?: { claims: ClaimId[]; carriers: string[] };
  clocks: ClaimDeadline[];
  contents: ContentsItem[];
  papers: SupportingDocument[];
  position: PositionRow[];
  amounts?: AmountWorksheet;
  /** Absent when no quantity is stated. */
  quantities?: QuantityRow[];
}
