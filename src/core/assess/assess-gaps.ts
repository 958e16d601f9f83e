import { omitUndefined } from '../model/omit-undefined.js';
import type { Assessment, GapResult, TemperatureResult } from '../model/results.js';
import type { RuleSet, RuleSetOrigin } from '../model/rule-set.js';
import type { RecordState } from '../model/state.js';
import { type Instant, milliseconds } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import { setPointAgreement } from './agreement.js';
import { bandsOf } from './bands.js';
import type { GapsContext } from './gaps/context.js';
import { gapsOf } from './gaps/gaps.js';
import { isAround } from './logs/compartments.js';
import { readMilestones } from './milestones.js';
import { outcomesOf } from './outcomes.js';
import { withoutJumps } from './temperature/jumps.js';
import { temperatureResult } from './temperature/result.js';

/** What gaps are judged from. */
export interface GapsInput {
  state: RecordState;
  /** The unit logs of the record, parsed; in any order. */
  logs: UnitLog[];
  ruleSet: { ruleSet: RuleSet; sha256: string; origin?: RuleSetOrigin };
  /** The "now" that rules are held against. Events after it have not happened. */
  at: Instant;
}

/** What the rules are held against. */
export function gapsContext({ state, logs: asRead, ruleSet: { ruleSet }, at }: GapsInput): GapsContext {
  const now = milliseconds(at);
  const milestones = readMilestones(state, now);
  const cleaned = asRead.map(withoutJumps);
  const temperatures: TemperatureResult[] = cleaned.flatMap(({ log, jumps }) => {
    const lines = state.delivery.lines.filter((line) => isAround(log, line));
    return temperatureResult(log, milestones, bandsOf(lines, ruleSet), { lines, jumps }) ?? [];
  });
  return {
    state,
    ruleSet,
    now,
    milestones,
    outcomes: outcomesOf(state, milestones),
    logs: cleaned.map(({ log }) => log),
    temperatures,
    setPoints: setPointAgreement(state, temperatures, milestones),
  };
}

/**
 * The gaps of `assess` alone, in half the time, for what only pages show is not computed. What is due for a claim is
 * left out. Pure, as `assess` is.
 */
export function assessGaps(input: GapsInput): GapResult[] {
  return gapsOf(gapsContext(input));
}

/** The rule set as an assessment names it. */
export function nameOf({ ruleSet, sha256, origin }: GapsInput['ruleSet']): Assessment['ruleSet'] {
  return {
    name: ruleSet.ruleSet,
    version: ruleSet.version,
    sha256,
    title: ruleSet.title,
    ...omitUndefined({ origin }),
  };
}
