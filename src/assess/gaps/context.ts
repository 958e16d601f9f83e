import type { Line, Stop } from '../../model/delivery.js';
import type { SetPointAgreement, TemperatureResult } from '../../model/results.js';
import type { RuleSet, Stage } from '../../model/rule-set.js';
import type { RecordState } from '../../model/state.js';
import type { UnitLog } from '../../model/unit-log.js';
import type { Moments } from '../moments.js';
import type { EvidenceIndex } from './evidence-index.js';

/** What the rules are held against. */
export interface Context {
  state: RecordState;
  ruleSet: RuleSet;
  /** Milliseconds since 1970 UTC. */
  now: number;
  moments: Moments;
  logs: readonly UnitLog[];
  temperatures: readonly TemperatureResult[];
  setPoints: SetPointAgreement;
}
export interface IndexedContext extends Context {
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
