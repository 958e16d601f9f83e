/** What assess computes: plain data that the CLI prints, compose renders, and `--json` shows. */
import type { ChannelDifference } from './results/channels.js';
import type { ClaimDeadline, ClaimResult } from './results/claim.js';
import type { Finding } from './results/findings.js';
import type { GapResult } from './results/gaps.js';
import type { ShockResult, StopDoors } from './results/handling.js';
import type { InspectionResult } from './results/inspections.js';
import type { LoadPlan } from './results/loading.js';
import type { LineMargin } from './results/margins.js';
import type { LineOutcome } from './results/outcomes.js';
import type { ProductResult } from './results/product.js';
import type { PulpComparison, PulpGroup } from './results/pulps.js';
import type { RecordersResult } from './results/recorders.js';
import type { SetPointAgreement } from './results/set-points.js';
import type { TemperatureResult } from './results/temperature.js';
import type { Timeline } from './results/timeline.js';
import type { LoadWeights } from './results/weights.js';
import type { CustodySpan, TimeRange } from './results/window.js';
import type { RuleSetOrigin } from './rule-set.js';
import type { Instant } from './time.js';

export type * from './results/channels.js';
export type * from './results/claim.js';
export type * from './results/doubts.js';
export type * from './results/findings.js';
export type * from './results/gaps.js';
export type * from './results/handling.js';
export type * from './results/inspections.js';
export type * from './results/loading.js';
export type * from './results/margins.js';
export type * from './results/measurement.js';
export type * from './results/outcomes.js';
export type * from './results/product.js';
export type * from './results/published.js';
export type * from './results/pulps.js';
export type * from './results/recorders.js';
export type * from './results/set-points.js';
export type * from './results/temperature.js';
export type * from './results/timeline.js';
export type * from './results/trail.js';
export type * from './results/weights.js';
export type * from './results/window.js';

/**
 * What the record of a delivery shows at a moment: temperatures in °C, differences in K, durations in seconds, moments
 * in milliseconds UTC.
 */
export interface Assessment {
  /** The instant of assessment, given by the caller. */
  at: Instant;
  ruleSet: {
    name: string;
    version: string;
    /** SHA-256 over all files of the rule set: see docs/formats/rule-sets-and-templates.md. */
    sha256: string;
    title: string;
    /** The files, and what an extension changed or switched off. */
    origin?: RuleSetOrigin;
  };
  temperatures: TemperatureResult[];
  pulps: PulpGroup[];
  setPoints: SetPointAgreement;
  /** Absent when no row was recorded. */
  loading?: LoadPlan;
  /** Absent when no weight is known and nothing was weighed. */
  weights?: LoadWeights;
  /** Openings of the doors by stop; absent when none was noted or logged. */
  doors?: StopDoors[];
  /** Shocks and hard braking; absent when nothing was recorded of them. */
  shocks?: ShockResult[];
  /** What became of each line at its stop, in the order of the bill of lading. */
  outcomes: LineOutcome[];
  /** What inspections state of each lot; absent when there is none. */
  inspections?: InspectionResult[];
  /** Absent when nothing shows that the carrier received the goods. */
  custody?: CustodySpan;
  timeline: Timeline;
  gaps: GapResult[];
  findings: Finding[];
  product?: ProductResult[];
  margins?: LineMargin[];
  pulpComparisons?: PulpComparison[];
  /** Absent when there is no claim. */
  claims?: ClaimResult[];
  /** Whether the receiver rejected in time, for each unloading stop that was reached. */
  refusalClocks?: ClaimDeadline[];
  /** Sensors of the same kind in different logs, and probes against return air. */
  sensorDifferences?: ChannelDifference[];
  /** Recorders in the load beside the unit's own log. */
  recorders?: RecordersResult;
  /** Longest interval in custody without a unit check. */
  longestWithoutRound?: TimeRange & { seconds: number };
}
