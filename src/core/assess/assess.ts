import type { ClaimDeadlines } from '../model/claim-deadlines.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Assessment, TemperatureResult } from '../model/results.js';
import { type GapsInput, gapsContext, nameOf } from './assess-gaps.js';
import { type ClaimContext, claimResults } from './claim/claim.js';
import { withDueDates } from './claim/due-gaps.js';
import { consignorNotices } from './claim/notices.js';
import { refusalDeadlinesOf } from './claim/refusal.js';
import { custodyOf } from './custody.js';
import { doorOpenings } from './doors.js';
import { findingsOf } from './findings/findings.js';
import { gapsOf } from './gaps/gaps.js';
import { inspectionsOf } from './inspections/inspections.js';
import { loadPlan } from './loading/plan.js';
import { loadWeights } from './loading/weights.js';
import { recordersOf } from './logs/recorders.js';
import { productResults } from './product/product.js';
import { comparePulps } from './pulp-pairs.js';
import { pulpGroups } from './pulps.js';
import { shocksOf } from './shocks.js';
import { lineMargins } from './temperature/margins.js';
import { monitoringOf } from './temperature/monitoring.js';
import { timelineOf } from './timeline.js';

export interface AssessInput extends GapsInput {
  /** Deadlines of claims and rejections; without them no deadline is computed. */
  claimDeadlines?: ClaimDeadlines;
}

/**
 * Everything that is computed of one delivery. Pure: no clock, no disk, no randomness; the same input gives the
 * same result to the last digit, in every engine. No state makes it throw, but for zones that the engine has no rules for
 * (DossierError `zone-rules`).
 */
export function assess({ claimDeadlines, ...input }: AssessInput): Assessment {
  const { state, at } = input;
  const { lines } = state.delivery;
  const context = gapsContext(input);
  const { ruleSet, logs, milestones, temperatures, setPoints, now } = context;
  const pulps = pulpGroups(state, ruleSet);
  const pulpComparisons = comparePulps(pulps, state.delivery);
  const margins = lineMargins(lines, logs, milestones, temperatures);
  const product = productResults({
    delivery: state.delivery,
    ruleSet,
    pulps,
    logs,
    milestones,
    temperatures,
  });
  const plan = loadPlan(state);
  const doors = doorOpenings(milestones, logs);
  const shocks = shocksOf(state, milestones);
  const loading = omitUndefined({
    loading: plan,
    weights: loadWeights(state, plan, milestones),
    doors: doors.length === 0 ? undefined : doors,
    shocks: shocks.length === 0 ? undefined : shocks,
  });
  const inspections = inspectionsOf(state, milestones);
  const gaps = gapsOf(context);
  const recorders = recordersOf(state, logs, recordersWindow(temperatures));
  const findings = findingsOf({
    ...context,
    ...loading,
    ...omitUndefined({ recorders }),
    ...{ pulps, pulpComparisons, margins, product, gaps },
  });
  const claimed: Pick<Assessment, 'claims' | 'refusalClocks'> =
    claimDeadlines === undefined
      ? {}
      : ofClaims({
          state,
          findings,
          gaps,
          rules: claimDeadlines,
          milestones,
          outcomes: context.outcomes,
          now,
        });
  return {
    at,
    ruleSet: nameOf(input.ruleSet),
    temperatures: [...temperatures],
    pulps,
    pulpComparisons,
    margins,
    product,
    ...monitoringOf(state, temperatures, logs),
    ...omitUndefined({ recorders }),
    setPoints,
    ...loading,
    outcomes: [...context.outcomes],
    ...omitUndefined({ inspections: inspections.length === 0 ? undefined : inspections }),
    ...omitUndefined({ custody: custodyOf(state, milestones, context.outcomes) }),
    timeline: timelineOf(state, milestones),
    gaps: withDueDates(gaps, claimed.claims ?? []),
    findings,
    ...claimed,
  };
}

const recordersWindow = ([first]: readonly TemperatureResult[]) =>
  first && { from: first.transitWindow.from.at, to: first.transitWindow.to.at };

function ofClaims(context: ClaimContext): Pick<Assessment, 'claims' | 'refusalClocks'> {
  const claims = claimResults(context);
  const { state, now } = context;
  const refusalClocks = refusalDeadlinesOf({
    ...context,
    delivery: state.delivery,
    notices: consignorNotices(state, now),
  });
  return {
    ...omitUndefined({
      claims: claims.length === 0 ? undefined : claims,
      refusalClocks: refusalClocks.length === 0 ? undefined : refusalClocks,
    }),
  };
}
