import type { Line, Stop } from '../../model/delivery.js';
import type { Stage } from '../../model/rule-set.js';
import type { Computed } from '../computed.js';
import type { EvidenceIndex } from './evidence-index.js';

/** What rules are evaluated against. */
export type GapsContext = Computed;
export interface IndexedContext extends GapsContext {
  evidence: EvidenceIndex;
}

/** The line or stop that a rule is evaluated for; empty for the whole delivery. */
export interface Scope {
  line?: Line;
  stop?: Stop;
}

/** The context of one rule. */
export interface RuleContext extends IndexedContext {
  stage: Stage;
  scope: Scope;
  /** The lines that the rule applies to, in the order of the bill. */
  lines: readonly Line[];
}
