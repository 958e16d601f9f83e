import type { ClaimDeadlines } from '../model/claim-deadlines.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Assessment } from '../model/results.js';
import type { RuleSet, RuleSetOrigin } from '../model/rule-set.js';
import type { RecordState } from '../model/state.js';
import { type Instant, milliseconds } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import { setPointAgreement } from './agreement.js';
import { bandsOf } from './bands.js';
import { type ClaimContext, claimResults } from './claim/claim.js';
import { withDueDates } from './claim/due-gaps.js';
import { refusalDeadlinesOf } from './claim/refusal.js';
import { findingsOf } from './findings/findings.js';
import { gapsOf } from './gaps/gaps.js';
import { loadPlan } from './loading/plan.js';
import { readMilestones } from './milestones.js';
import { productResults } from './product/product.js';
import { comparePulps } from './pulp-details.js';
import { pulpGroups } from './pulps.js';
import { withoutJumps } from './temperature/jumps.js';
import { lineMargins } from './temperature/margins.js';
import { monitoringOf } from './temperature/monitoring.js';
import { temperatureResult } from './temperature/result.js';
import { timelineOf } from './timeline.js';

export interface AssessInput {
  state: RecordState;
  /** The unit logs of the record, parsed; in any order. */
  logs: UnitLog[];
  ruleSet: { ruleSet: RuleSet; sha256: string; origin?: RuleSetOrigin };
  /** The "now" that rules are held against. Events after it have not happened. */
  at: Instant;
  /** Deadlines of claims and rejections; without them no deadline is computed. */
  claimDeadlines?: ClaimDeadlines;
}

/**
 * Everything that is computed of one delivery. Pure: no clock, no disk, no randomness; the same input gives the
 * same result to the last digit, in every engine. No state makes it throw, but for zones that the engine has no rules for
 * (DossierError `zone-rules`).
 */
export function assess({ state, logs: asRead, ruleSet: given, at, claimDeadlines }: AssessInput): Assessment {
  const { ruleSet, sha256 } = given;
  const now = milliseconds(at);
  const milestones = readMilestones(state, now);
  const bands = bandsOf(state.delivery.lines, ruleSet);
  const { lines } = state.delivery;
  const cleaned = asRead.map(withoutJumps);
  const logs = cleaned.map(({ log }) => log);
  const temperatures = cleaned.flatMap(
    ({ log, jumps }) => temperatureResult(log, milestones, bands, { lines, jumps }) ?? [],
  );
  const pulps = pulpGroups(state, ruleSet);
  const margins = lineMargins(lines, logs, milestones, temperatures);
  const product = productResults(lines, pulps, logs, milestones, temperatures);
  const setPoints = setPointAgreement(state, temperatures, milestones);
  const plan = loadPlan(state);
  const loading = omitUndefined({ loading: plan });
  const context = { state, ruleSet, now, milestones, logs, temperatures, setPoints };
  const gaps = gapsOf(context);
  const findings = findingsOf({ ...context, ...loading, pulps, margins, product, gaps });
  const claimed: Pick<Assessment, 'claims' | 'refusalClocks'> =
    claimDeadlines === undefined
      ? {}
      : ofClaims({ state, findings, gaps, rules: claimDeadlines, milestones, now });
  return {
    at,
    ruleSet: {
      name: ruleSet.ruleSet,
      version: ruleSet.version,
      sha256,
      title: ruleSet.title,
      ...omitUndefined({ origin: given.origin }),
    },
    temperatures,
    pulps,
    pulpComparisons: comparePulps(pulps),
    margins,
    product,
    ...monitoringOf(state, temperatures, logs),
    setPoints,
    ...loading,
    timeline: timelineOf(state, milestones),
    gaps: withDueDates(gaps, claimed.claims ?? []),
    findings,
    ...claimed,
  };
}

function ofClaims(context: ClaimContext): Pick<Assessment, 'claims' | 'refusalClocks'> {
  const claims = claimResults(context);
  const refusalClocks = refusalDeadlinesOf({ ...context, lines: context.state.delivery.lines });
  return {
    ...omitUndefined({
      claims: claims.length === 0 ? undefined : claims,
      refusalClocks: refusalClocks.length === 0 ? undefined : refusalClocks,
    }),
  };
}
