import type { LineOutcome, SetPointAgreement, TemperatureResult } from '../model/results.js';
import type { RuleSet } from '../model/rule-set.js';
import type { RecordState } from '../model/state.js';
import type { UnitLog } from '../model/unit-log.js';
import type { Milestones } from './milestones.js';

/** What rules and findings are both computed from: the record, the rules, and what was computed of the record. */
export interface Computed {
  state: RecordState;
  ruleSet: RuleSet;
  /** Milliseconds since 1970 UTC. */
  now: number;
  milestones: Milestones;
  /** What became of each line, in the order of the bill of lading. */
  outcomes: readonly LineOutcome[];
  logs: readonly UnitLog[];
  temperatures: readonly TemperatureResult[];
  setPoints: SetPointAgreement;
}
