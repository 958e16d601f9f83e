/** Which rules are met, and what is lacking. */
import type { ClaimId } from '../claim.js';
import type { EvidenceId, FlagName } from '../evidence.js';
import type { Element, Milestone, Stage, Substitute } from '../rule-set.js';
import type { Instant } from '../time.js';
import type { ClaimDeadline, DeadlineTime } from './claim.js';
import type { Finding } from './findings.js';

export type GapOutcome = 'met' | 'short' | 'missing' | 'contradicted' | 'not-yet-due' | 'does-not-apply';

/**
 * Until when an open gap can still be closed. `seconds` is added to the moment; `at` is given where the moment itself
 * is recorded; `stop` where it is one stop's own.
 */
export type Closable =
  | { is: 'now' }
  | { is: 'until'; moment: Milestone; seconds?: number; stop?: string; at?: Instant }
  | { is: 'lost'; since: Milestone; seconds?: number; stop?: string; at?: Instant };

/** Evidence that nearly counted. */
export interface RejectedEvidence {
  evidence: EvidenceId;
  why:
    | 'wrong-stop'
    | 'wrong-line'
    | 'no-stop'
    | 'no-line'
    | 'no-time'
    | 'too-early'
    | 'too-late'
    | 'only-proposed'
    | 'withheld'
    | 'bad-value'
    | 'wrong-source'
    | FlagName;
}

/**
 * What a rule lacks, or what a reader should know of what counts. The names and facts stand in
 * src/core/assess/gaps/shortfalls.ts, the words in templates/words under `lacking`.
 */
export interface Shortfall {
  is: string;
  facts: Finding['facts'];
  /** Of `one-of`: the ways in which it could be met, each with what it lacks. */
  ways?: Shortfall[][];
  line?: string;
  stop?: string;
}

/** One line's or one stop's part of a rule that is held against each. */
export interface GapPart {
  line?: string;
  stop?: string;
  outcome: GapOutcome;
  lacking: Shortfall[];
  closable: Closable;
}

export interface GapResult {
  rule: string;
  stage: Stage;
  title: string;
  outcome: GapOutcome;
  /** Evidence that counts. */
  counted: EvidenceId[];
  nearly: RejectedEvidence[];
  /** Evidence that speaks against the rule, when contradicted. */
  against: EvidenceId[];
  lacking: Shortfall[];
  /** What a reader should know of what counts. */
  notes: Shortfall[];
  /** Of the part that can be closed longest, where the rule has parts. */
  closable: Closable;
  /** What is in the record and says something of the same, best first. */
  substitutes: { what: Substitute; evidence: EvidenceId[] }[];
  /** What would stand in and is not in the record yet. */
  wanted: Substitute[];
  /** Where the rule is held against each line or stop, and there are several. */
  parts?: GapPart[];
  /** The clock of a claim by which it is due. */
  clock?: string;
  /** What of that clock is open, claim by claim, what is due first at the front. It counts where its source applies. */
  due?: {
    claim: ClaimId;
    at: DeadlineTime;
    state: Extract<ClaimDeadline['state'], 'running' | 'overdue'>;
    source: string;
  }[];
  proves: Element[];
  why: string;
  how: string;
  basis: string;
}
