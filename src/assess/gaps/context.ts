import type { SetPointAgreement, TemperatureResult } from '../../model/results.js';
import type { RuleSet, Stage } from '../../model/rule-set.js';
import type { RecordState } from '../../model/state.js';
import type { UnitLog } from '../../model/unit-log.js';
import type { Moments } from '../moments.js';

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

/** The same, for one rule. */
export interface RuleContext extends Context {
  stage: Stage;
}
