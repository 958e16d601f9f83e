import type { Line, Stop } from '../../model/delivery.js';
import type { Stage } from '../../model/rule-set.js';
import type { Computed } from '../computed.js';
import type { EvidenceIndex } from './evidence-index.js';

/** What the rules are held against. */
export type GapsContext = Computed;
export interface IndexedContext extends GapsContext {
  evidence: EvidenceIndex;
}

/** The one line or stop that a rule is being held against; empty for the whole delivery. */
export interface Scope {
  line?: Line;
  stop?: Stop;
}

/** The same, for one rule. */
export interface RuleContext extends IndexedContext {
  stage: Stage;
  scope: Scope;
  /** The lines that the rule is about, in the order of the bill. */
  lines: readonly Line[];
}
