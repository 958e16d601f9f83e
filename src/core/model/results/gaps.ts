/** Which rules are met, and what is missing. */
import type { ClaimId } from '../claim.js';
import type { EvidenceId, FlagName } from '../evidence.js';
import type { Element, Milestone, RuleWeight, Stage, Substitute } from '../rule-set.js';
import type { Instant } from '../time.js';
import type { ClaimDeadline, DeadlineTime } from './claim.js';
import type { Finding } from './findings.js';

/** How a requirement stands. */
export type GapOutcome = 'met' | 'short' | 'missing' | 'contradicted' | 'not-yet-due' | 'does-not-apply';

/**
 * Until when an open gap can be closed. `seconds` is added to the milestone; `at` is given where the milestone is
 * recorded; `stop` where it is one stop's own.
 */
export type Closable =
  | { is: 'now' }
  | { is: 'until'; moment: Milestone; seconds?: number; stop?: string; at?: Instant }
  | { is: 'lost'; since: Milestone; seconds?: number; stop?: string; at?: Instant };

/** Evidence of the right kind that does not count, and why. */
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
    | 'other-subject'
    | 'not-signed'
    | 'incomplete'
    | FlagName;
}

/**
 * A shortfall of a rule, or a remark on counted evidence. Names and facts are in
 * src/core/assess/gaps/shortfalls.ts, the words in templates/words under `lacking`.
 */
export interface Shortfall {
  is: string;
  facts: Finding['facts'];
  /** For `one-of`: the alternatives, each with its shortfalls. */
  ways?: Shortfall[][];
  line?: string;
  stop?: string;
}

/** One line's or stop's part of a rule that is evaluated for each. */
export interface GapPart {
  line?: string;
  stop?: string;
  outcome: GapOutcome;
  lacking: Shortfall[];
  closable: Closable;
}

/** How one rule of required evidence stands: what counts, what is lacking, and until when it can be closed. */
export interface GapResult {
  rule: string;
  stage: Stage;
  weight: RuleWeight;
  /** Why it weighs so, where the rule set says. */
  weightWhy?: string;
  title: string;
  outcome: GapOutcome;
  /** Evidence that counts. */
  counted: EvidenceId[];
  nearly: RejectedEvidence[];
  /** Evidence that contradicts the rule. */
  against: EvidenceId[];
  lacking: Shortfall[];
  /** Remarks on the counted evidence. */
  notes: Shortfall[];
  /** For a rule with parts: of the part that can be closed longest. */
  closable: Closable;
  /** Accepted substitutes on file, best first. */
  substitutes: { what: Substitute; evidence: EvidenceId[] }[];
  /** Accepted substitutes not on file. */
  wanted: Substitute[];
  /** Present where the rule is evaluated for several lines or stops. */
  parts?: GapPart[];
  /** The claim deadline by which it is due. */
  clock?: string;
  /** Open deadlines claim by claim, earliest due first. They apply where their source applies. */
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
